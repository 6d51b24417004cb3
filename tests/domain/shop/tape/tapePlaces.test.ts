import { describe, expect, it } from 'vitest'

import { pointMm, type PointMm } from '../../../../src/domain/geometry/point'
import type { Tube } from '../../../../src/domain/geometry/tube'
import { tapePlaces } from '../../../../src/domain/shop/tape/tapePlace'

const tube = (id: string, points: readonly PointMm[], outsideDiameterMm = 40): Tube => ({
  id,
  name: id,
  role: 'floor',
  points,
  outsideDiameterMm,
  wallMm: 2,
})

const named = (id: string, point: PointMm) => ({ id, name: id, point })

describe('tapePlaces', () => {
  it('start with the datum, which is a place as it is when nothing is around it', () => {
    expect(tapePlaces({ tapePoints: [], tubes: [] })).toEqual([
      { source: { kind: 'datum' }, point: pointMm(0, 0, 0) },
    ])
  })

  it('take the mark above a datum that lies inside a tube, since no tape can be held there', () => {
    const across = tube('front', [pointMm(0, -300, 0), pointMm(0, 300, 0)])
    expect(tapePlaces({ tapePoints: [], tubes: [across] })[0]).toEqual({
      source: { kind: 'datum-mark', tubeId: 'front', side: 'top' },
      point: pointMm(0, 0, 20),
    })
    // On top of the tube it is free.
    const under = tube('front', [pointMm(0, -300, -20), pointMm(0, 300, -20)])
    expect(tapePlaces({ tapePoints: [], tubes: [under] })[0]?.source.kind).toBe('datum')
  })

  it('take the mark plumb above the datum on a tube that slopes, since that is where a plumb line shows it', () => {
    // Falling rearward at 3:4: the top lies 20 / cos = 20 × 5/4 above the centre line, not on the cross-section square to it.
    const falling = tube('rail', [pointMm(0, 0, 0), pointMm(400, 0, -300)])
    const [mark] = tapePlaces({ tapePoints: [], tubes: [falling] })
    expect(mark?.point.xMm).toBeCloseTo(0, 9)
    expect(mark?.point.zMm).toBeCloseTo(25, 9)
    // A datum 6 mm to one side of a level tube: √(20² − 6²) above it.
    const beside = tube('rail', [pointMm(-300, 6, 0), pointMm(300, 6, 0)])
    const [off] = tapePlaces({ tapePoints: [], tubes: [beside] })
    expect(off?.point.yMm).toBeCloseTo(0, 9)
    expect(off?.point.zMm).toBeCloseTo(Math.sqrt(364), 9)
    // Near plumb, 7 rearward on 24 up (7, 24, 25): level ahead of the datum by 20 / cos = 20 × 25/24.
    const leg = tube('leg', [pointMm(0, 0, 0), pointMm(140, 0, 480)])
    const [ahead] = tapePlaces({ tapePoints: [], tubes: [leg] })
    expect(ahead?.source).toEqual({ kind: 'datum-mark', tubeId: 'leg', side: 'front' })
    expect(ahead?.point.xMm).toBeCloseTo((-20 * 25) / 24, 9)
    expect(ahead?.point.zMm).toBeCloseTo(0, 9)
  })

  it('mark the end of a sloping tube plumb above the tube it ends on, and a free end on its edge', () => {
    // Falls 70 in 220: sine 0.303, below that of 20°. The cross tube's centre line is 3 mm ahead of where the rail was drawn to end.
    const rail = tube('rail', [pointMm(500, 0, 0), pointMm(720, 0, -70)])
    const cross = tube('cross', [pointMm(497, 0, 0), pointMm(497, 600, 0)])
    const ends = tapePlaces({ tapePoints: [], tubes: [rail, cross] }).filter(
      ({ source }) => source.kind === 'tube-end' && source.tubeId === 'rail',
    )
    const length = Math.hypot(220, 70)
    const [front, rear] = ends.map(({ point }) => point)
    expect(front?.xMm).toBeCloseTo(497, 9)
    // On the rail's top line, drawn on to there: 3 mm ahead it lies 3 × 70/220 higher.
    expect(front?.zMm).toBeCloseTo((3 * 70) / 220 + (20 * length) / 220, 9)
    expect(rear?.xMm).toBeCloseTo(720 + (20 * 70) / length, 9)
    expect(rear?.zMm).toBeCloseTo(-70 + (20 * 220) / length, 9)
  })

  it('keep the builder’s points but for those at the datum, and one of two that are one place', () => {
    const places = tapePlaces({
      tapePoints: [
        named('at-datum', pointMm(3, 0, 0)),
        named('bolt', pointMm(500, 100, 0)),
        named('same', pointMm(505, 100, 0)),
        named('other', pointMm(520, 100, 0)),
      ],
      tubes: [],
    })
    expect(places.map(({ source }) => (source.kind === 'named' ? source.tapePointId : source.kind))).toEqual([
      'datum',
      'bolt',
      'other',
    ])
  })

  it('mark both ends of a tube, named by the way it runs', () => {
    const endsOf = (points: readonly PointMm[]): readonly string[] =>
      tapePlaces({ tapePoints: [], tubes: [tube('t', points)] }).flatMap(({ source }) =>
        source.kind === 'tube-end' ? [source.end] : [],
      )
    expect(endsOf([pointMm(900, 0, 0), pointMm(100, 50, 0)])).toEqual(['rear', 'front'])
    expect(endsOf([pointMm(900, 300, 0), pointMm(900, -300, 10)])).toEqual(['right', 'left'])
    expect(endsOf([pointMm(900, 0, 0), pointMm(900, 50, 400)])).toEqual(['lower', 'upper'])
  })

  it('leave out an end that lies inside another tube, or in the weld where it slopes', () => {
    const rail = tube('rail', [pointMm(100, 0, 0), pointMm(900, 0, 0)])
    const kinds = (...others: readonly Tube[]): readonly string[] =>
      tapePlaces({ tapePoints: [], tubes: [rail, ...others] }).flatMap(({ source }) =>
        source.kind === 'tube-end' && source.tubeId !== 'rail' ? [`${source.end} ${source.meets}`] : [],
      )
    // As thick as the rail and level: its top and the rail's touch above the crossing.
    expect(kinds(tube('across', [pointMm(400, 0, 0), pointMm(400, 600, 0)]))).toEqual([
      'left rail',
      'right null',
    ])
    // Thinner: its top at that end lies inside the rail.
    expect(kinds(tube('across', [pointMm(400, 0, 0), pointMm(400, 600, 0)], 25))).toEqual(['right null'])
    // Rising 45° from the rail: there is weld.
    expect(kinds(tube('leg', [pointMm(400, 0, 0), pointMm(400, 400, 400)]))).toEqual(['right null'])
  })
})

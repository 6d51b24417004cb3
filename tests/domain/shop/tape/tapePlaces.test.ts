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

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pointMm, type PointMm } from '../../../../src/domain/geometry/point'
import type { Tube } from '../../../../src/domain/geometry/tube'
import {
  type StripAnchor,
  type TubeStrip,
  tubeStrips as stripsWith,
} from '../../../../src/domain/shop/tab/tubeStrip'
import type { Mount, TabMount } from '../../../../src/domain/straps/anchor'
import { sinDeg } from '../../../../src/domain/units/angle'

const tube = (id: string, points: readonly PointMm[], outsideDiameterMm = 40): Tube => ({
  id,
  name: id,
  role: 'cage',
  points,
  outsideDiameterMm,
  wallMm: 2,
})

/** Across the car from left to right, so that rear is on the right hand of somebody who looks along it. */
const bar = tube('bar', [pointMm(1000, -600, 500), pointMm(1000, 600, 500)])
/** A hoop that the bar is welded to at y = −300, 38 mm. */
const hoop = tube('hoop', [pointMm(1000, -300, 0), pointMm(1000, -300, 900)], 38)

const on = (mount: Mount, label = '1'): StripAnchor => ({
  label,
  anchor: { id: label, strap: 'shoulder-left', mount },
  webbingMm: 76,
})
const wrap = (yMm: number, guideHoops = true): Mount => ({
  kind: 'wrap',
  tubeId: 'bar',
  point: pointMm(1000, yMm, 500),
  over: 'over',
  guideHoops,
})
const tab = (point: PointMm, changes: Partial<TabMount> = {}): TabMount => ({
  kind: 'tab',
  point,
  planDeg: 0,
  leanDeg: 0,
  thicknessMm: 5,
  holeDiameterMm: 12,
  widthMm: 40,
  edgeDistanceMm: 20,
  shear: 'single',
  tubeId: 'bar',
  ...changes,
})
/** Long strips at a whole 5 mm. */
const tubeStrips = (
  along: Tube,
  anchors: readonly StripAnchor[],
  tubes: readonly Tube[],
  mostMm = 2000,
): readonly TubeStrip[] => stripsWith(along, anchors, { tubes, stepMm: 5, mostMm })

const only = (strips: readonly TubeStrip[]): TubeStrip => {
  const [strip] = strips
  if (strip === undefined || strips.length > 1) throw new Error(`${strips.length} strips`)
  return strip
}

describe('tubeStrips', () => {
  it('is as wide as the tube is round, and starts clear of the joining tube at a whole 5 mm', () => {
    const strip = only(tubeStrips(bar, [on(wrap(-120))], [bar, hoop]))
    expect(strip.circumferenceMm).toBeCloseTo(Math.PI * 40, 9)
    expect(strip.start.mark).toMatchObject({ kind: 'crossing', otherTubeId: 'hoop' })
    // Radius 19 and 5 mm of room are 24 mm: the next whole five is 25.
    expect(strip.start.edgeMm).toBe(25)
    expect(strip).toMatchObject({ rightWay: 'right', zeroLine: 'top', upWay: 'front' })
  })

  it('puts a wrap’s middle, webbing edges and hoops where a tape finds them', () => {
    const strip = only(tubeStrips(bar, [on(wrap(-120))], [bar, hoop]))
    const [feature] = strip.features
    if (feature?.kind !== 'wrap') throw new Error('no wrap')
    // 180 mm from the hoop's centre line, the edge of the strip 25 mm from it.
    expect(feature.centreMm).toBeCloseTo(155, 9)
    expect(feature.edgesMm.map((x) => x - feature.centreMm)).toEqual([
      expect.closeTo(-38, 9),
      expect.closeTo(38, 9),
    ])
    // Inside faces of the hoops 3 mm beside the webbing: 6 mm over the strap's width, under the 13 mm of MIL-S-58095A 3.11.7.3.
    expect(feature.hoopsMm?.map((x) => x - feature.centreMm)).toEqual([
      expect.closeTo(-41, 9),
      expect.closeTo(41, 9),
    ])
    const bare = only(tubeStrips(bar, [on(wrap(-120, false))], [bar, hoop])).features[0]
    expect(bare).toMatchObject({ hoopsMm: null })
  })

  it('starts nearer to the mark when the first thing leaves no room', () => {
    // The hoops' outside face at 180 − 41 = 139 of a wrap at 20 mm behind the crossing is before it.
    const strip = only(tubeStrips(bar, [on(wrap(-250))], [bar, hoop]))
    // From the hoop's centre line 50 − 41 = 9 mm to the first guide hoop: less 5 mm of room, down to a whole five.
    expect(strip.start).toMatchObject({ edgeMm: 0, mark: { otherTubeId: 'hoop' } })
  })

  it('unrolls the foot of a plate square across the tube as a line straight round it', () => {
    const strip = only(tubeStrips(bar, [on(tab(pointMm(960, 0, 500)))], [bar]))
    const feature = strip.features.find((each) => each.kind === 'tab')
    if (feature?.kind !== 'tab') throw new Error('no tab')
    // In front of the bar: a quarter turn from the top. Seen from outside with P1 at the left, front is up.
    expect(feature.at.yMm).toBeCloseTo(strip.circumferenceMm / 4, 9)
    expect(feature.at.xMm + strip.start.mark.alongTubeMm + strip.start.edgeMm).toBeCloseTo(600, 9)
    for (const line of feature.lines) {
      const xs = line.map(({ xMm }) => xMm - feature.at.xMm)
      expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(0, 6)
      expect(Math.abs(xs[0] ?? 0)).toBeCloseTo(2.5, 6)
      // The foot goes ±60° round the tube: a third of a turn.
      const ys = line.map(({ yMm }) => yMm)
      expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(strip.circumferenceMm / 3, 5)
    }
  })

  it('unrolls the foot of a slanted plate as a sine: x = r·cot θ·sin φ', () => {
    // Source: the development of a cylinder cut by a plane at θ to its axis, any handbook of sheet-metal development.
    const planDeg = 40 // the plate stands at 50° to the bar
    const strip = only(tubeStrips(bar, [on(tab(pointMm(1000, 0, 550), { planDeg }))], [bar]))
    const feature = strip.features.find((each) => each.kind === 'tab')
    if (feature?.kind !== 'tab') throw new Error('no tab')
    for (const line of feature.lines) {
      const middles = line.map(({ xMm, yMm }) => {
        const turnDeg = (360 * yMm) / strip.circumferenceMm
        // Plan turn carries the rear edge to the right, so that toward the front (up) the line runs to the left.
        return (
          xMm +
          20 * (Math.sin((planDeg * Math.PI) / 180) / Math.cos((planDeg * Math.PI) / 180)) * sinDeg(turnDeg)
        )
      })
      expect(Math.max(...middles) - Math.min(...middles)).toBeLessThan(1e-6)
    }
  })

  it('marks an eye bolt and an insert where their axes meet the tube, not where they are nearest to it', () => {
    // 60 mm above the centre line, leaning 45° to the left (the shank rises to the right): 40 mm down to the crest, 40 mm to the left.
    const eye = {
      kind: 'eye',
      point: pointMm(1000, 0, 560),
      planDeg: 90,
      riseDeg: 45,
      threadDiameterMm: 11,
      eyeDiameterMm: 25,
      tubeId: 'bar',
    } as const
    const insert = tab(pointMm(1000, 0, 560), { form: 'insert', leanDeg: 45, planDeg: 0 })
    for (const mount of [eye, insert]) {
      const strip = only(tubeStrips(bar, [on(mount)], [bar]))
      const feature = strip.features.find((each) => each.kind === 'point')
      if (feature?.kind !== 'point') throw new Error('no point')
      expect(strip.start.mark.alongTubeMm + strip.start.edgeMm + feature.at.xMm).toBeCloseTo(560, 9)
      expect(feature.at.yMm).toBeCloseTo(0, 9)
    }
    // A shank that passes beside the bar: straight below its eye.
    const beside = only(tubeStrips(bar, [on({ ...eye, planDeg: 0, riseDeg: 0 })], [bar]))
    const [feature] = beside.features
    if (feature?.kind !== 'point') throw new Error('no point')
    expect(beside.start.mark.alongTubeMm + beside.start.edgeMm + feature.at.xMm).toBeCloseTo(600, 9)
  })

  it('cuts lines at the seam instead of drawing them across the strip', () => {
    const strip = only(tubeStrips(bar, [on(tab(pointMm(1000, 0, 450)))], [bar]))
    const feature = strip.features.find((each) => each.kind === 'tab')
    if (feature?.kind !== 'tab') throw new Error('no tab')
    expect(feature.lines.length).toBe(4)
    for (const line of feature.lines)
      for (const [index, { yMm }] of line.entries())
        expect(Math.abs(yMm - (line[index - 1]?.yMm ?? yMm))).toBeLessThan(5)
  })

  it('marks tubes that join within the strip, and gives each straight piece a strip of its own', () => {
    const bent = tube('bar', [pointMm(0, 0, 0), pointMm(0, 400, 0), pointMm(400, 400, 0)])
    const brace = tube('brace', [pointMm(0, 150, 0), pointMm(-300, 150, 300)])
    const strips = tubeStrips(
      bent,
      [
        on(tab(pointMm(-45, 100, 0)), '1'),
        on(tab(pointMm(-45, 250, 0)), '2'),
        on(tab(pointMm(200, 445, 0), { planDeg: 90 }), '3'),
      ],
      [bent, brace],
    )
    expect(strips.map(({ pieceIndex }) => pieceIndex)).toEqual([0, 1])
    const joins = strips[0]?.features.filter((each) => each.kind === 'mark') ?? []
    expect(joins).toMatchObject([{ kind: 'mark', mark: { otherTubeId: 'brace' } }])
    expect(strips[1]?.start.mark).toMatchObject({ kind: 'bend', pointNumber: 2 })
  })

  it('is mirrored nowhere: wrapped round the tube with the print outside, every foot is where it was in the car', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -180, max: 180, noNaN: true }),
        fc.double({ min: -45, max: 45, noNaN: true }),
        (turnDeg, planDeg) => {
          const hole = pointMm(1000 + 45 * sinDeg(turnDeg), 20, 500 + 45 * sinDeg(90 - turnDeg))
          const strip = only(tubeStrips(bar, [on(tab(hole, { planDeg }))], [bar]))
          const feature = strip.features.find((each) => each.kind === 'tab')
          fc.pre(feature?.kind === 'tab')
          if (feature?.kind !== 'tab') return
          const leftMm = strip.start.mark.alongTubeMm + strip.start.edgeMm
          for (const { xMm, yMm } of feature.lines.flat()) {
            // Paper to car: the print is outside, P1 at the left is the left end of the bar; from the top line, up the paper leads forward.
            const deg = (360 * yMm) / strip.circumferenceMm
            const point = {
              x: 1000 - 20 * sinDeg(deg),
              y: -600 + leftMm + xMm,
              z: 500 + 20 * sinDeg(90 - deg),
            }
            // Signed distance from the plate's mid-plane: half its thickness on every face line.
            const offMm =
              (point.x - hole.xMm) * -sinDeg(planDeg) + (point.y - hole.yMm) * sinDeg(90 - planDeg)
            expect(Math.abs(Math.abs(offMm) - 2.5)).toBeLessThan(1e-6)
          }
        },
      ),
    )
  })

  it('gives things far apart strips of their own, each at a whole step of the tape from the mark before it', () => {
    const anchors = [on(wrap(-100), '1'), on(wrap(150), '2')]
    // 250 mm apart and 82 mm wide: 332 mm, 32 mm before and 18 mm after them do not go on 381 mm, but on 382.
    expect(tubeStrips(bar, anchors, [bar, hoop], 381).length).toBe(2)
    expect(tubeStrips(bar, anchors, [bar, hoop], 382).length).toBe(1)
    const strips = stripsWith(bar, anchors, { tubes: [bar, hoop], stepMm: 6.35, mostMm: 132 })
    for (const { start, lengthMm } of strips) {
      expect(start.mark.otherTubeId).toBe('hoop')
      // A quarter inch is 6.35 mm: the tape shows the edge on a mark of its own.
      expect(start.edgeMm / 6.35).toBeCloseTo(Math.round(start.edgeMm / 6.35), 9)
      expect(lengthMm).toBeLessThanOrEqual(132)
    }
    // Hoops at 200 ± 41 and 450 ± 41 mm from the hoop's centre line stay where they are.
    const middles = strips.map(({ start, features: [feature] }) =>
      feature?.kind === 'wrap' ? start.edgeMm + feature.centreMm : Number.NaN,
    )
    expect(middles).toEqual([expect.closeTo(200, 9), expect.closeTo(450, 9)])
  })

  it('has nothing for a tube without anchors', () => {
    expect(tubeStrips(hoop, [on(wrap(0))], [bar, hoop])).toEqual([])
  })
})

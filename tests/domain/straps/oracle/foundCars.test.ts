import { describe, expect, it } from 'vitest'
import type { Anchor } from '../../../../src/domain/straps/anchor'
import type { PointMm } from '../../../../src/domain/geometry/point'
import type { Tube } from '../../../../src/domain/geometry/tube'
import type { StrapScene } from '../../../../src/domain/straps/scene'
import type { Slot } from '../../../../src/domain/straps/seat'
import { point, scene, slot, tab, wrap } from '../scenes'
import { compared } from './compare'

/** Cars that random search once found the two solvers to differ on, or one of them to give up on. */

const tube = (points: Tube['points'], outsideDiameterMm: number): Tube => ({
  id: 'bar',
  name: 'bar',
  role: 'harness-bar',
  points,
  outsideDiameterMm,
  wallMm: 2,
})

/** What the solvers say: that they agree on one strap's path. */
const agreed = (strap: Anchor['strap']): object => ({
  straps: [strap],
  differences: [],
  onlyOracle: [],
  onlySolver: [],
})

const said = (given: StrapScene): object => {
  const { compared: both, differences, onlyOracle, onlySolver } = compared(given)
  return { straps: both.map(({ strap }) => strap), differences, onlyOracle, onlySolver }
}

describe('a lap strap from a wrapped tube', () => {
  it('is found where the tube, seen along it, covers the hip point', () => {
    const given = scene({
      hip: point(74.453, -306.4056, 230.09),
      reclineDeg: 12.329,
      lapRadiusMm: 102.1691,
      lapLowestDeg: 9.362_88,
      hipHalfBreadthMm: 187.665_945,
      bone: { aheadMm: 20, aboveMm: 80, halfMm: 108.092 },
      anchors: [wrap('lap-right', point(177.4215, 0.6233, 227.1215), 'over')],
      tubes: [tube([point(156.0346, -59.3767, 231.2589), point(198.8084, 60.6233, 222.9841)], 50.2746)],
    })
    expect(said(given)).toEqual(agreed('lap-right'))
  })

  it('is found though the straight strap would pass its slot inside the tube', () => {
    const given = scene({
      hip: point(-485.141, 60.656, 72.692),
      reclineDeg: 11.529_84,
      lapRadiusMm: 107.469_359,
      lapLowestDeg: 55.307_94,
      hipHalfBreadthMm: 148.133_295,
      bone: { aheadMm: 20, aboveMm: 80, halfMm: 95.092_22 },
      seat: {
        slots: [
          slot({
            straps: ['lap-left'],
            face: 'side',
            centre: point(101.3332, -163.665_333, -46.666_75),
            lengthMm: 123.331_03,
            heightMm: 16.616_265,
            turnDeg: 29.657_58,
          }),
        ],
      },
      anchors: [wrap('lap-left', point(-330.595_99, -151.550_453, 18.146_99), 'under')],
      tubes: [
        tube(
          [point(-307.322_614, -211.550_453, 1.735_55), point(-353.869_366, -91.550_453, 34.558_43)],
          45.997_76,
        ),
      ],
    })
    expect(said(given)).toEqual(agreed('lap-left'))
  })
})

describe('a lap strap through a thick wall close beside the hip point', () => {
  const through = (
    thickMm: number,
    opening: Omit<Slot, 'id' | 'straps' | 'face'>,
    at: PointMm,
    lapLowestDeg: number,
  ): StrapScene =>
    scene({
      hipHalfBreadthMm: 148,
      lapLowestDeg,
      seat: {
        shellThicknessMm: thickMm,
        slots: [slot({ straps: ['lap-left'], face: 'side', ...opening })],
      },
      anchors: [tab('lap-left', at)],
    })

  it('may bear on the outer edge behind the hip point and pass the inner one ahead of it', () => {
    const given = through(
      16,
      { centre: point(5, -180, 9), lengthMm: 54, heightMm: 34, turnDeg: -29 },
      point(215, -245, -51),
      16,
    )
    expect(said(given)).toEqual(agreed('lap-left'))
    const [, edge, onBody] = compared(given).solved.paths[0]?.contacts ?? []
    expect([edge?.on, onBody?.on]).toEqual(['slot', 'body'])
    // Straight on from the outer face of the wall it comes by its inner face ahead of the hip point.
    const x = edge?.point.xMm ?? 0
    const y = edge?.point.yMm ?? 0
    expect(y).toBeCloseTo(-188, 9)
    expect(x).toBeGreaterThan(0)
    expect(x + ((onBody?.point.xMm ?? 0) - x) * (16 / ((onBody?.point.yMm ?? 0) - y))).toBeLessThan(0)
  })

  it('has no path where it finds no rest behind the hip point', () => {
    const { oracle, solved } = compared(
      through(
        20,
        { centre: point(20, -180, -10), lengthMm: 60, heightMm: 30, turnDeg: 0 },
        point(20, -260, -200),
        20,
      ),
    )
    expect(oracle.straps).toEqual([])
    expect(solved.paths).toEqual([])
  })
})

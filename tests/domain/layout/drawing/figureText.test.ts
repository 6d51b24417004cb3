import { describe, expect, it } from 'vitest'
import { angleTextAt, arcPoints, dimensionLine } from '../../../../src/domain/layout/drawing/figureText'
import { pointMm } from '../../../../src/domain/geometry/point'
import { projectedRing } from '../../../../src/domain/layout/drawing/ring'

const dimension = (toU: number, toV: number, offsetMm: number) =>
  ({
    kind: 'dimension',
    key: 'd',
    part: null,
    from: { uMm: 0, vMm: 0 },
    to: { uMm: toU, vMm: toV },
    offsetMm,
    text: '100',
  }) as const

describe('dimensionLine', () => {
  it('lies to the left of its direction and carries its text above', () => {
    const line = dimensionLine(dimension(100, 0, 20), 10)
    expect(line.from).toEqual({ uMm: 0, vMm: 20 })
    expect(line.to).toEqual({ uMm: 100, vMm: 20 })
    expect(line.textAt.uMm).toBeCloseTo(50, 9)
    expect(line.textAt.vMm).toBeCloseTo(27.5, 9) // 20 + 3/4 of 10
    expect(line.textTurnDeg).toBe(0)
  })

  it('keeps its text upright when it runs the other way', () => {
    const line = dimensionLine(dimension(-100, 0, 20), 10)
    expect(line.from.vMm).toBeCloseTo(-20, 9)
    expect(line.textTurnDeg).toBe(0)
    expect(line.textAt.vMm).toBeCloseTo(-12.5, 9) // above the line
  })

  it('reads from the right when it is upright, whichever way it runs', () => {
    expect(dimensionLine(dimension(0, 100, 20), 10).textTurnDeg).toBe(90)
    const down = dimensionLine(dimension(0, -100, 20), 10)
    expect(down.textTurnDeg).toBe(90)
    expect(down.textAt.uMm).toBeCloseTo(12.5, 9) // line at u = +20, text on its left
  })
})

describe('arcPoints', () => {
  it('goes anticlockwise from the first to the second direction, over the 0° line if need be', () => {
    const points = arcPoints({ uMm: 0, vMm: 0 }, 10, -90, 0)
    expect(points[0]?.vMm).toBeCloseTo(-10, 9)
    expect(points.at(-1)?.uMm).toBeCloseTo(10, 9)
    expect(points.every(({ uMm, vMm }) => uMm > -1e-9 && vMm < 1e-9)).toBe(true)
    expect(points.every(({ uMm, vMm }) => Math.abs(Math.hypot(uMm, vMm) - 10) < 1e-9)).toBe(true)
  })
})

describe('angleTextAt', () => {
  it('stands outside the arc on its bisector', () => {
    const at = angleTextAt(
      {
        kind: 'angle',
        key: 'a',
        part: null,
        apex: { uMm: 0, vMm: 0 },
        radiusMm: 50,
        fromDeg: 60,
        toDeg: 120,
        text: '60°',
      },
      10,
    )
    expect(at.uMm).toBeCloseTo(0, 9)
    expect(at.vMm).toBeCloseTo(59, 9) // 50 + half of 10 + 4
  })
})

describe('projectedRing', () => {
  const centre = pointMm(100, 20, 300)

  it('seen along its axis is a full circle', () => {
    const ring = projectedRing(centre, { x: 0, y: 1, z: 0 }, 12, 'side')
    for (const { uMm, vMm } of ring) expect(Math.hypot(uMm - 100, vMm - 300)).toBeCloseTo(12, 9)
  })

  it('seen edge on is a line of its diameter', () => {
    const ring = projectedRing(centre, { x: 0, y: 1, z: 0 }, 12, 'top')
    for (const { vMm } of ring) expect(vMm).toBeCloseTo(20, 9)
    const us = ring.map(({ uMm }) => uMm)
    expect(Math.max(...us) - Math.min(...us)).toBeCloseTo(24, 9)
  })

  it('seen at 60° is half as wide as high', () => {
    // The normal is 60° out of the lateral axis in plan, so the plate's fore-and-aft width shrinks by cos 60°.
    const ring = projectedRing(centre, { x: -Math.sqrt(3) / 2, y: 0.5, z: 0 }, 12, 'side')
    const us = ring.map(({ uMm }) => uMm)
    const vs = ring.map(({ vMm }) => vMm)
    expect(Math.max(...us) - Math.min(...us)).toBeCloseTo(12, 6)
    expect(Math.max(...vs) - Math.min(...vs)).toBeCloseTo(24, 6)
  })
})

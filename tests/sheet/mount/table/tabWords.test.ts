import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pointMm } from '../../../../src/domain/geometry/point'
import type { TabMount } from '../../../../src/domain/straps/anchor'
import { plainPlane, tabNormal } from '../../../../src/domain/straps/tabPlane'
import { leanText, shankText, tabTurnText } from '../../../../src/sheet/mount/table/anchorCells'

const tab = (planDeg: number, leanDeg: number): TabMount => ({
  kind: 'tab',
  point: pointMm(0, 0, 0),
  planDeg,
  leanDeg,
  thicknessMm: 5,
  holeDiameterMm: 11.5,
  shear: 'double',
  tubeId: null,
})

const plan = fc.integer({ min: -180, max: 180 })
const lean = fc.integer({ min: -89, max: 89 })

describe('plainPlane', () => {
  it('is the same plane, turned by a quarter at most', () => {
    fc.assert(
      fc.property(plan, lean, (planDeg, leanDeg) => {
        const plain = plainPlane({ planDeg, leanDeg })
        expect(Math.abs(plain.planDeg)).toBeLessThanOrEqual(90)
        const [a, b] = [tabNormal({ planDeg, leanDeg }), tabNormal(plain)]
        // One plane has two normals, one opposite to the other.
        expect(Math.abs(a.x * b.x + a.y * b.y + a.z * b.z)).toBeCloseTo(1, 9)
      }),
    )
  })
})

describe('what is said of a tab’s plane', () => {
  it('names the face that looks up', () => {
    fc.assert(
      fc.property(plan, lean, (planDeg, leanDeg) => {
        fc.pre(leanDeg !== 0)
        const normal = tabNormal({ planDeg, leanDeg })
        const upward = normal.z > 0 ? normal : { x: -normal.x, y: -normal.y, z: -normal.z }
        const isAcross = Math.abs(planDeg) === 90
        const face = isAcross ? (upward.x < 0 ? 'front' : 'rear') : upward.y > 0 ? 'right' : 'left'
        expect(leanText(tab(planDeg, leanDeg))).toBe(`leaning ${Math.abs(leanDeg)}°, ${face} face up`)
      }),
    )
  })

  it('names the side that the rear edge is turned to', () => {
    fc.assert(
      fc.property(plan, (planDeg) => {
        fc.pre(planDeg % 90 !== 0)
        // Along the plate, rearward: square to the normal and level. Right is +y.
        const { x, y } = tabNormal({ planDeg, leanDeg: 0 })
        const edge = y > 0 ? { x: y, y: -x } : { x: -y, y: x }
        const turnDeg = (Math.atan2(Math.abs(edge.y), edge.x) / Math.PI) * 180
        expect(tabTurnText(tab(planDeg, 0))).toBe(
          `turned ${Math.round(turnDeg)}° in plan, rear edge ${edge.y > 0 ? 'right' : 'left'}`,
        )
      }),
    )
    expect(tabTurnText(tab(180, 0))).toBe('fore and aft')
  })

  it('says how a shank points', () => {
    const eye = {
      kind: 'eye',
      point: pointMm(0, 0, 0),
      threadDiameterMm: 11,
      eyeDiameterMm: 25,
      tubeId: null,
    } as const
    expect(shankText({ ...eye, planDeg: 144, riseDeg: 44 })).toBe(
      'turned 144° right from rearward, 44° upward',
    )
    expect(shankText({ ...eye, planDeg: 0, riseDeg: 0 })).toBe('rearward, level')
    expect(shankText({ ...eye, planDeg: 30, riseDeg: -90 })).toBe('plumb, downward')
  })
})

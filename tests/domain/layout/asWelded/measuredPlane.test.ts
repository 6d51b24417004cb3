import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { measuredPlane, planeOff } from '../../../../src/domain/layout/asWelded/measuredPlane'
import { tabNormal } from '../../../../src/domain/straps/tabPlane'

const turnDeg = fc.integer({ min: -180, max: 180 })
const leanDeg = fc.integer({ min: -90, max: 90 })

describe('a measured plane', () => {
  it('is the plane that was measured, turned by no more than a quarter from the plan', () => {
    fc.assert(
      fc.property(turnDeg, leanDeg, turnDeg, leanDeg, (planDeg, lean, measuredDeg, measuredLean) => {
        const measured = { planDeg: measuredDeg, leanDeg: measuredLean }
        const plane = measuredPlane({ planDeg, leanDeg: lean }, measured)
        const [a, b] = [tabNormal(plane), tabNormal(measured)]
        // One plane: its normals are alike or opposite.
        expect(Math.abs(a.x * b.x + a.y * b.y + a.z * b.z)).toBeCloseTo(1, 9)
        expect(Math.abs(planeOff({ planDeg, leanDeg: lean }, plane).planDeg)).toBeLessThanOrEqual(90)
      }),
    )
  })

  it('has the planned turn or lean where that was not measured', () => {
    const planned = { planDeg: -31, leanDeg: 20 }
    expect(measuredPlane(planned, { planDeg: null, leanDeg: null })).toEqual(planned)
    expect(measuredPlane(planned, { planDeg: null, leanDeg: -12 })).toEqual({ planDeg: -31, leanDeg: -12 })
    expect(measuredPlane(planned, { planDeg: 150, leanDeg: null })).toEqual({ planDeg: -30, leanDeg: 20 })
  })

  it('of a flat plate is the same with its lean written either way', () => {
    const flat = { planDeg: 10, leanDeg: 90 }
    expect(planeOff(flat, { planDeg: 10, leanDeg: -90 })).toEqual({ planDeg: 0, leanDeg: 0 })
    // 88° and −88° lean to the two sides of flat: 4° apart.
    expect(planeOff({ planDeg: 0, leanDeg: 88 }, { planDeg: 0, leanDeg: -88 }).leanDeg).toBe(4)
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lineOfPullAngles } from '../../../src/domain/shop/lineOfPullAngles'

describe('lineOfPullAngles', () => {
  it('reads back a strap 20° in plan and 10° down', () => {
    // Components of a unit line 20° off the centre-line and 10° below level, derived: cos 10° cos 20° = 0.9254,
    // cos 10° sin 20° = 0.3368, sin 10° = 0.1736. Side view: atan(0.1736 / 0.9254) = 10.62°.
    const angles = lineOfPullAngles({ x: 0.925_417, y: 0.336_824, z: -0.173_648 })
    expect(angles.planFromCentreDeg).toBeCloseTo(20, 3)
    expect(angles.stringFromLevelDeg).toBeCloseTo(-10, 3)
    expect(angles.sideFromLevelDeg).toBeCloseTo(-10.6278, 3)
    expect(angles.runs).toBe('rearward')
    expect(angles.turns).toBe('right')
  })

  it.each([
    // 3-4-5 triangles: atan(4/3) = 53.1301°.
    { x: -0.6, y: 0, z: 0.8, side: 53.1301, plan: 0, string: 53.1301, runs: 'forward', turns: 'neither' },
    { x: 0.6, y: 0, z: 0.8, side: 53.1301, plan: 0, string: 53.1301, runs: 'rearward', turns: 'neither' },
    { x: -0.6, y: -0.8, z: 0, side: 0, plan: 53.1301, string: 0, runs: 'forward', turns: 'left' },
    { x: 0, y: 0.6, z: 0.8, side: 90, plan: 90, string: 53.1301, runs: 'neither', turns: 'right' },
    { x: 0, y: -0.6, z: -0.8, side: -90, plan: 90, string: -53.1301, runs: 'neither', turns: 'left' },
  ])('of ($x, $y, $z) are side $side°, plan $plan°, string $string°', (given) => {
    const angles = lineOfPullAngles(given)
    expect(angles.sideFromLevelDeg).toBeCloseTo(given.side, 3)
    expect(angles.planFromCentreDeg).toBeCloseTo(given.plan, 3)
    expect(angles.stringFromLevelDeg).toBeCloseTo(given.string, 3)
    expect(angles.runs).toBe(given.runs)
    expect(angles.turns).toBe(given.turns)
  })

  it('names no plan angle for a plumb line, and does for one that leans a degree', () => {
    expect(lineOfPullAngles({ x: 0, y: 0, z: 1 }).planFromCentreDeg).toBeNull()
    // sin 0.4° = 0.00698 and sin 1° = 0.01745, on both sides of the half degree that counts as plumb.
    expect(lineOfPullAngles({ x: 0.006_98, y: 0, z: 0.999_98 }).planFromCentreDeg).toBeNull()
    expect(lineOfPullAngles({ x: 0.017_45, y: 0, z: 0.999_85 }).planFromCentreDeg).toBeCloseTo(0, 6)
  })

  it('always gives back the elevation and plan angle that a line was built from', () => {
    const degrees = fc.double({ min: -89, max: 89, noNaN: true })
    fc.assert(
      fc.property(degrees, degrees, (upDeg, planDeg) => {
        const [up, plan] = [(upDeg * Math.PI) / 180, (planDeg * Math.PI) / 180]
        const angles = lineOfPullAngles({
          x: -Math.cos(up) * Math.cos(plan),
          y: Math.cos(up) * Math.sin(plan),
          z: Math.sin(up),
        })
        expect(angles.stringFromLevelDeg).toBeCloseTo(upDeg, 6)
        expect(angles.planFromCentreDeg).toBeCloseTo(Math.abs(planDeg), 6)
        // The side view can only make a line look steeper, never flatter.
        expect(Math.abs(angles.sideFromLevelDeg)).toBeGreaterThanOrEqual(Math.abs(upDeg) - 1e-9)
      }),
    )
  })

  it('turns the other way for the mirrored strap and changes nothing else', () => {
    const left = lineOfPullAngles({ x: -0.48, y: -0.36, z: 0.8 })
    const right = lineOfPullAngles({ x: -0.48, y: 0.36, z: 0.8 })
    expect(right).toEqual({ ...left, turns: 'right' })
    expect(left.turns).toBe('left')
  })
})

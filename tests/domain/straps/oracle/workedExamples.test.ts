import { describe, expect, it } from 'vitest'
import { directionBetween, type PointMm } from '../../../../src/domain/geometry/point'
import { downTorsoShare } from '../../../../src/domain/straps/shoulderQuantities'
import { solvePlace } from '../../../../src/domain/straps/solve'
import { lapTabs, pathOf, point, scene, tab, valueOf } from '../scenes'

const DEG = Math.PI / 180

describe('the effective-anchor region of 76/115/EEC', () => {
  /*
   * Annex I 4.4.4.3: BR = 260 mm + S along the torso line. Torso line 25° back from vertical, S = 140 mm: BR = 400 mm, B lies
   * 169.0 mm aft and 362.5 mm up of R. Worked from the directive's printed lengths.
   */
  const beyond = (mm: number): PointMm => {
    // The limiting plane's normal leans 30° more than the torso line; 300 mm further down in the plane measures the same.
    const [x, z] = [Math.sin(55 * DEG), Math.cos(55 * DEG)]
    return point(169.0 + mm * x + 300 * z, 140, 362.5 + mm * z - 300 * x)
  }

  it.each([0, 25, 80])('measures %i mm beyond the point B', (mm) => {
    const given = scene({
      reclineDeg: 25,
      hipToShoulderMm: 560,
      anchors: [...lapTabs, tab('shoulder-right', beyond(mm)), tab('shoulder-left', point(600, -140, 500))],
    })
    // B is printed to 0.1 mm.
    expect(Math.abs(valueOf(solvePlace(given), 'shoulder-behind-fk', 'shoulder-right') - mm)).toBeLessThan(
      0.1,
    )
  })
})

describe('a frictionless strap over the shoulder', () => {
  /*
   * Rear leg δ below level, front leg level, needed forward-resisting force 1: tension 1/cos δ and down-force tan δ. Simple
   * statics (derived); the published reasoning on harness anchors behind it was read second-hand only.
   */
  it.each([
    [0, 1.0, 0],
    [5, 1.004, 0.087],
    [10, 1.015, 0.176],
    [20, 1.064, 0.364],
    [30, 1.155, 0.577],
    [40, 1.305, 0.839],
    [45, 1.414, 1.0],
  ])('δ = %i°: tension %f, down-force %f', (deg, tension, downForce) => {
    const rear = { x: Math.cos(deg * DEG), y: 0, z: -Math.sin(deg * DEG) }
    const share = downTorsoShare(0, rear, { x: -1, y: 0, z: 0 })
    expect(share / rear.x).toBeCloseTo(downForce, 3)
    expect(1 / rear.x).toBeCloseTo(tension, 3)
  })
})

describe('a strap 20° in plan and 10° down', () => {
  // Unit pull: 0.9254 rearward, 0.3368 sideways, 0.1736 down (spherical coordinates).
  const pull = { x: 0.9254, y: 0.3368, z: -0.1736 }

  it('pulls along the three parts of its tension', () => {
    // The strap leaves the arc of 100 mm about (0, 490) square to the radius there, inward from y = 80.
    const flat = Math.hypot(pull.x, pull.z)
    const touch = point((-pull.z / flat) * 100, 80, 490 + (pull.x / flat) * 100)
    const at = point(touch.xMm + 400 * pull.x, touch.yMm - 400 * pull.y, touch.zMm + 400 * pull.z)
    const solved = solvePlace(scene({ anchors: [...lapTabs, tab('shoulder-right', at)] }))
    const path = pathOf(solved, 'shoulder-right')
    const found = directionBetween(path.bodyContact, path.effectiveAnchor)
    expect(found?.x).toBeCloseTo(pull.x, 4)
    expect(found?.y).toBeCloseTo(-pull.y, 4)
    expect(found?.z).toBeCloseTo(pull.z, 4)
    // In plan 20°; seen from the side tan 10°/cos 20° makes 10.63°.
    expect(valueOf(solved, 'shoulder-plan', 'shoulder-right')).toBeCloseTo(20, 1)
    expect(valueOf(solved, 'shoulder-drop', 'shoulder-right')).toBeCloseTo(10.63, 1)
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { movedInPlane, planePoint, type PlanePointMm, projected } from '../../../src/domain/geometry/plane'
import { isWithin } from '../../../src/domain/rules/check'
import { roomInPlaneMm, ruleRoomMm } from '../../../src/domain/zones/room'
import { anyScene } from '../straps/arbitraryScenes'
import { lapTabs, point, scene as handScene, tab } from '../straps/scenes'
import { isThin, planeOrigin, valueAt } from './bruteForce'
import { quantityRule, zoneCaseOf } from './zoneCases'

describe('ruleRoomMm', () => {
  it('is the distance square to the nearer line of a wedge', () => {
    // Tab 200 mm behind and 250 mm below the hip point, at 51.34°. To the 45° line: 50·cos 45° = 35.355 mm. To the 60° line:
    // (200·tan 60° − 250)·cos 60° = 48.205 mm.
    const scene = handScene({
      anchors: [tab('lap-left', point(200, -250, -250)), tab('lap-right', point(200, 250, -250))],
    })
    const zoneCase = zoneCaseOf([scene], 'lap-left', false)
    expect(ruleRoomMm(quantityRule('lap-angle', 45, 60), zoneCase)).toBeCloseTo(35.355, 3)
    expect(ruleRoomMm(quantityRule('lap-angle', null, 60), zoneCase)).toBeCloseTo(48.205, 3)
  })

  it('is the distance along x to the nearer limit in the top elevation, where the height stays', () => {
    // The same tab: 45° lies 250 mm behind the hip point at its height, 60° 250/tan 60° = 144.338 mm behind.
    const scene = handScene({
      anchors: [tab('lap-left', point(200, -250, -250)), tab('lap-right', point(200, 250, -250))],
    })
    const zoneCase = zoneCaseOf([scene], 'lap-left', false)
    expect(roomInPlaneMm(quantityRule('lap-angle', 45, 60), zoneCase, 'top')).toBeCloseTo(50, 3)
    expect(roomInPlaneMm(quantityRule('lap-angle', null, 60), zoneCase, 'top')).toBeCloseTo(55.662, 3)
    expect(roomInPlaneMm(quantityRule('lap-angle', 60, 90), zoneCase, 'top')).toBeCloseTo(-55.662, 3)
  })

  it('is 0 on a limit and negative outside it', () => {
    // lapTabs are at exactly 45°. From there to the 50° line: 200·√2·sin 5° = 24.651 mm.
    const zoneCase = zoneCaseOf([handScene()], 'lap-left', false)
    expect(ruleRoomMm(quantityRule('lap-angle', 45, 60), zoneCase)).toBeCloseTo(0, 6)
    expect(ruleRoomMm(quantityRule('lap-angle', 50, 60), zoneCase)).toBeCloseTo(-24.651, 3)
  })

  it('is measured across the seat for a spacing, and half of it when the pair moves together', () => {
    // lapTabs are 500 mm apart. 165 mm at least (49 CFR 571.210 S4.3.1.3) leaves 335 mm to one tab alone, 167.5 mm to each of two.
    const rule = quantityRule('lap-spacing', 165, null)
    expect(ruleRoomMm(rule, zoneCaseOf([handScene()], 'lap-left', false))).toBeCloseTo(335, 9)
    expect(ruleRoomMm(rule, zoneCaseOf([handScene()], 'lap-left', true))).toBeCloseTo(167.5, 9)
  })

  it('is the least over the sittings', () => {
    // From a hip point 10 mm further forward the tab is 210 behind and 250 below: (250 − 210)·cos 45° = 28.284 mm from the 45°
    // line, against 35.355 mm in the first sitting.
    const anchors = [tab('lap-left', point(200, -250, -250)), tab('lap-right', point(200, 250, -250))]
    const scenes = [handScene({ anchors }), handScene({ anchors, hip: point(-10, 0, 0) })]
    const zoneCase = zoneCaseOf(scenes, 'lap-left', false)
    expect(ruleRoomMm(quantityRule('lap-angle', 45, 60), zoneCase)).toBeCloseTo(28.284, 3)
  })

  it('is how far the anchor must move until every sitting is clear', () => {
    // From a hip point 100 mm further forward the tab is at 39.81°, (300 − 250)·cos 45° = 35.355 mm from the 45° line.
    const anchors = [tab('lap-left', point(200, -250, -250)), tab('lap-right', point(200, 250, -250))]
    const scenes = [handScene({ anchors }), handScene({ anchors, hip: point(-100, 0, 0) })]
    const zoneCase = zoneCaseOf(scenes, 'lap-left', false)
    expect(ruleRoomMm(quantityRule('lap-angle', 45, 60), zoneCase)).toBeCloseTo(-35.355, 3)
  })

  it('is null where no position decides, where nothing is broken within reach and where nothing clears', () => {
    const zoneCase = zoneCaseOf([handScene()], 'lap-left', true)
    expect(ruleRoomMm(quantityRule('tab-twist', null, 5), zoneCase)).toBeNull()
    expect(ruleRoomMm(quantityRule('lap-spacing', -4000, null), zoneCase)).toBeNull()
    expect(ruleRoomMm(quantityRule('lap-spacing', 100, 99), zoneCase)).toBeNull()
  })

  it('reaches to where the strap solver flips, and not before, in random places', () => {
    const asked = [
      { quantity: 'shoulder-drop', strap: 'shoulder-left', min: -10, max: 20 },
      { quantity: 'lap-angle', strap: 'lap-left', min: 30, max: 75 },
      { quantity: 'sub-to-vertical', strap: 'sub-left', min: -20, max: 30 },
      { quantity: 'slot-bend', strap: 'lap-right', min: null, max: 10 },
    ] as const
    fc.assert(
      fc.property(anyScene, fc.constantFrom(...asked), (scene, { quantity, strap, min, max }) => {
        fc.pre(quantity !== 'slot-bend' || scene.seat.slots.length > 0)
        const rule = quantityRule(quantity, min, max)
        const zoneCase = zoneCaseOf([scene], strap, false)
        const { point: from } = zoneCase.anchor.mount
        const roomMm = ruleRoomMm(rule, zoneCase)
        if (roomMm === null || Math.abs(roomMm) < 0.5) return
        const at = projected(from, 'side')
        const isKeptAt = (moved: PlanePointMm): boolean => {
          const there = movedInPlane(from, moved, 'side')
          const value = valueAt({ scene, strap, at: there, mirrored: false }, quantity, strap)
          return value !== null && isWithin(value, rule)
        }
        const onRing = (distanceMm: number, angle: number): PlanePointMm =>
          planePoint(at.uMm + distanceMm * Math.cos(angle), at.vMm + distanceMm * Math.sin(angle))
        const isKept = (distanceMm: number, angle: number): boolean => isKeptAt(onRing(distanceMm, angle))
        const here = roomMm > 0
        const angles = Array.from({ length: 720 }, (_, index) => (index * Math.PI) / 360)
        expect(isKept(0, 0)).toBe(here)
        const body = planeOrigin(scene, strap, 'side')
        const before = angles
          .map((angle) => onRing(Math.abs(roomMm) - 0.3, angle))
          .filter((place) => isKeptAt(place) !== here && !isThin(isKeptAt, place, body))
        expect(before).toEqual([])
        // 3 mm further on, a ring of 7200 directions meets even a sharp corner of the other side.
        const meets = Array.from({ length: 7200 }, (_, index) => (index * Math.PI) / 3600).some((angle) => {
          const kept = isKept(Math.abs(roomMm) + 3, angle)
          return kept !== here
        })
        expect(meets).toBe(true)
      }),
      { numRuns: 12 },
    )
  }, 120_000)

  it('never becomes smaller when limits are widened', () => {
    fc.assert(
      fc.property(anyScene, fc.double({ min: 0, max: 10, noNaN: true }), (scene, moreDeg) => {
        const zoneCase = zoneCaseOf([scene], 'lap-left', false)
        const narrow = ruleRoomMm(quantityRule('lap-angle', 30, 60), zoneCase)
        const wide = ruleRoomMm(quantityRule('lap-angle', 30 - moreDeg, 60 + moreDeg), zoneCase)
        fc.pre(narrow !== null && wide !== null)
        expect(wide ?? 0).toBeGreaterThanOrEqual((narrow ?? 0) - 1e-6)
      }),
      { numRuns: 100 },
    )
  })

  it('leaves a shoulder tab 0 room where a level strap is the limit', () => {
    // Shoulder arc top at z = 590, tab at z = 590: the strap is level, drop 0.
    const scene = handScene({ anchors: [...lapTabs, tab('shoulder-left', point(400, -80, 590))] })
    expect(
      ruleRoomMm(quantityRule('shoulder-drop', 0, 45), zoneCaseOf([scene], 'shoulder-left', false)),
    ).toBeCloseTo(0, 6)
  })
})

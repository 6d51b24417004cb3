import { describe, expect, it } from 'vitest'
import { downTorsoShare } from '../../../src/domain/straps/shoulderQuantities'
import { lineOfPull } from '../../../src/domain/straps/lineOfPull'
import { solvePlace, type SolvedPlace } from '../../../src/domain/straps/solve'
import { hasValue, lapTabs, pathOf, point, problemOf, scene, slot, tab, valueOf, wrap, bar } from './scenes'

/** A shoulder without thickness: the strap leaves it at (0, ∓80, 590), so that a fall is a plain triangle. */
const thin = (rightAnchor: ReturnType<typeof point>): SolvedPlace =>
  solvePlace(scene({ shoulderRadiusMm: 0, anchors: [...lapTabs, tab('shoulder-right', rightAnchor)] }))

describe('shoulder-drop', () => {
  // 300 mm of strap in plan; fall = 300·tan δ. Source: the limits of the published shoulder rules (1°, 10°, 20°, 45°), worked out
  // with a calculator: 5.2, 52.9, 109.2, 300.0 mm.
  it.each([
    { fallMm: 5.2, expectedDeg: 1 },
    { fallMm: 52.9, expectedDeg: 10 },
    { fallMm: 109.2, expectedDeg: 20 },
    { fallMm: 300, expectedDeg: 45 },
  ])('of a strap 300 mm long in plan that falls $fallMm mm is $expectedDeg°', ({ fallMm, expectedDeg }) => {
    const dropDeg = valueOf(thin(point(300, 80, 590 - fallMm)), 'shoulder-drop', 'shoulder-right')
    expect(Math.abs(dropDeg - expectedDeg)).toBeLessThan(0.01) // the fall is rounded to 0.1 mm
  })

  // An anchor 4 in (101.6 mm) below the shoulder: 101.6/tan δ away.
  it.each([
    { awayMm: 576.2, expectedDeg: 10 },
    { awayMm: 279.1, expectedDeg: 20 },
    { awayMm: 101.6, expectedDeg: 45 },
    { awayMm: 203, expectedDeg: 26.6 },
  ])('with the anchor 101.6 mm below and $awayMm mm behind is $expectedDeg°', ({ awayMm, expectedDeg }) => {
    const solved = thin(point(awayMm, 80, 590 - 101.6))
    expect(Math.abs(valueOf(solved, 'shoulder-drop', 'shoulder-right') - expectedDeg)).toBeLessThan(0.05)
    expect(valueOf(solved, 'shoulder-height', 'shoulder-right')).toBeCloseTo(101.6, 9)
  })

  it('is negative when the strap rises to the rear', () => {
    const solved = thin(point(300, 80, 590 + 52.9))
    expect(valueOf(solved, 'shoulder-drop', 'shoulder-right')).toBeCloseTo(-10, 1)
    expect(valueOf(solved, 'shoulder-height', 'shoulder-right')).toBeCloseTo(-52.9, 9)
  })

  // Published flat figure of a large man (Formula SAE Rules 2026 V1, F.5.6): hip to shoulder circle centre 490 mm, radius 100 mm.
  // Back at 30°: centre (490 sin 30°, 490 cos 30°) = (245.0, 424.4). A strap square to the spine leaves the circle at its top,
  // centre + 100·(sin 30°, cos 30°), and runs along (cos 30°, −sin 30°): it falls 30°, and 0° from square.
  it('of the published figure with its back at 30° equals the recline when the strap is square to the spine', () => {
    const topX = 245 + 50
    const topZ = 490 * Math.cos(Math.PI / 6) + 100 * Math.cos(Math.PI / 6)
    const anchorX = topX + 300 * Math.cos(Math.PI / 6)
    const anchorZ = topZ - 150
    const solved = solvePlace(
      scene({
        reclineDeg: 30,
        anchors: [...lapTabs, tab('shoulder-left', point(anchorX, -80, anchorZ))],
      }),
    )
    expect(valueOf(solved, 'shoulder-drop', 'shoulder-left')).toBeCloseTo(30, 6)
    expect(valueOf(solved, 'shoulder-to-spine', 'shoulder-left')).toBeCloseTo(0, 6)
    const contact = pathOf(solved, 'shoulder-left').bodyContact
    expect(contact.xMm).toBeCloseTo(topX, 6)
    expect(contact.zMm).toBeCloseTo(topZ, 6)
    expect(valueOf(solved, 'shoulder-free-length', 'shoulder-left')).toBeCloseTo(300, 6)
  })
})

describe('shoulder-plan', () => {
  // 20° in plan over 300 mm: 300·tan 20° = 109.2 mm; over 250 mm: 91.0 mm. The FIA-style limit, worked out.
  it.each([
    { alongMm: 300, acrossMm: 109.2 },
    { alongMm: 250, acrossMm: 91 },
  ])('converging $acrossMm mm over $alongMm mm is +20° on both sides', ({ alongMm, acrossMm }) => {
    const solved = solvePlace(
      scene({
        shoulderRadiusMm: 0,
        shoulderHalfSpacingMm: 150,
        anchors: [
          ...lapTabs,
          tab('shoulder-left', point(alongMm, -150 + acrossMm, 590)),
          tab('shoulder-right', point(alongMm, 150 - acrossMm, 590)),
        ],
      }),
    )
    expect(valueOf(solved, 'shoulder-plan', 'shoulder-left')).toBeCloseTo(20, 1)
    expect(valueOf(solved, 'shoulder-plan', 'shoulder-right')).toBeCloseTo(20, 1)
  })

  it('is negative for straps that spread to the rear', () => {
    const solved = thin(point(300, 80 + 109.2, 590))
    expect(valueOf(solved, 'shoulder-plan', 'shoulder-right')).toBeCloseTo(-20, 1)
  })
})

describe('shoulder-spacing and shoulder-free-length', () => {
  it('measure between the contacts and along the strap', () => {
    const solved = solvePlace(
      scene({
        shoulderRadiusMm: 0,
        anchors: [
          ...lapTabs,
          tab('shoulder-left', point(300, -100, 590)),
          tab('shoulder-right', point(300, 140, 600)),
        ],
      }),
    )
    expect(valueOf(solved, 'shoulder-spacing', 'shoulder-pair')).toBeCloseTo(Math.hypot(240, 10), 9)
    expect(valueOf(solved, 'shoulder-free-length', 'shoulder-left')).toBeCloseTo(Math.hypot(300, 20), 9)
  })
})

describe('shoulder-rim-drop and shoulder-length-behind-seat', () => {
  const rim = { xMm: 100, zMm: 580 }

  it('are taken from the rim, even where the strap passes above it', () => {
    const solved = solvePlace(
      scene({
        shoulderRadiusMm: 0,
        seat: { backrestRim: rim },
        anchors: [...lapTabs, tab('shoulder-right', point(400, 80, 590))],
      }),
    )
    // Level strap at 590, 10 mm above the rim; from the rim the anchor is 10 mm higher over 300 mm.
    expect(valueOf(solved, 'shoulder-drop', 'shoulder-right')).toBeCloseTo(0, 9)
    expect(valueOf(solved, 'shoulder-rim-drop', 'shoulder-right')).toBeCloseTo(-1.909_152, 5) // −atan(10/300)
    expect(valueOf(solved, 'shoulder-length-behind-seat', 'shoulder-right')).toBeCloseTo(300, 9)
  })

  it('see the strap bend over a rim that is in its way, and the fall from the shoulder change', () => {
    const solved = solvePlace(
      scene({
        shoulderRadiusMm: 0,
        seat: { backrestRim: rim },
        anchors: [...lapTabs, tab('shoulder-right', point(400, 80, 280))],
      }),
    )
    expect(valueOf(solved, 'shoulder-drop', 'shoulder-right')).toBeCloseTo(5.710_593, 5) // atan(10/100)
    expect(valueOf(solved, 'shoulder-rim-drop', 'shoulder-right')).toBeCloseTo(45, 9) // 300 down over 300
    expect(valueOf(solved, 'shoulder-length-behind-seat', 'shoulder-right')).toBeCloseTo(
      Math.hypot(300, 300),
      9,
    )
    expect(valueOf(solved, 'shoulder-free-length', 'shoulder-right')).toBeCloseTo(
      Math.hypot(100, 10) + Math.hypot(300, 300),
      9,
    )
    const bend = pathOf(solved, 'shoulder-right').contacts.find(({ on }) => on === 'rim')
    expect(bend?.bendDeg).toBeCloseTo(45 - 5.710_593, 5)
  })

  it('leave the rim out when the anchor is ahead of it', () => {
    const solved = solvePlace(
      scene({
        shoulderRadiusMm: 0,
        seat: { backrestRim: { xMm: 500, zMm: 580 } },
        anchors: [...lapTabs, tab('shoulder-right', point(400, 80, 280))],
      }),
    )
    expect(hasValue(solved, 'shoulder-rim-drop', 'shoulder-right')).toBe(false)
    expect(valueOf(solved, 'shoulder-length-behind-seat', 'shoulder-right')).toBe(0)
  })

  it('count from the slot where a strap has one', () => {
    const solved = solvePlace(
      scene({
        shoulderRadiusMm: 0,
        seat: {
          slots: [slot({ straps: ['shoulder-right'], face: 'back', centre: point(100, 80, 590) })],
        },
        anchors: [...lapTabs, tab('shoulder-right', point(400, 80, 590))],
      }),
    )
    expect(valueOf(solved, 'shoulder-rim-drop', 'shoulder-right')).toBeCloseTo(0, 9)
    expect(valueOf(solved, 'shoulder-length-behind-seat', 'shoulder-right')).toBeCloseTo(300, 9)
    expect(valueOf(solved, 'slot-bend', 'shoulder-right')).toBe(0)
  })
})

describe('spine-load-share', () => {
  // Frictionless strap over the shoulder, front leg level, rear leg at δ, force F along the car: tension F/cos δ, down-force
  // F·tan δ. Ratio of the two: sin δ. Table of F·tan δ for δ = 0, 5, 10, 20, 30, 40, 45°: simple statics.
  it.each([
    { dropDeg: 0, tensionShare: 1, downShare: 0 },
    { dropDeg: 5, tensionShare: 1.004, downShare: 0.087 },
    { dropDeg: 10, tensionShare: 1.015, downShare: 0.176 },
    { dropDeg: 20, tensionShare: 1.064, downShare: 0.364 },
    { dropDeg: 30, tensionShare: 1.155, downShare: 0.577 },
    { dropDeg: 40, tensionShare: 1.305, downShare: 0.839 },
    { dropDeg: 45, tensionShare: 1.414, downShare: 1 },
  ])('of a rear leg falling $dropDeg° alone is $downShare over $tensionShare', (row) => {
    const drop = (row.dropDeg * Math.PI) / 180
    const rear = { x: Math.cos(drop), y: 0, z: -Math.sin(drop) }
    const levelFront = { x: -1, y: 0, z: 0 }
    expect(downTorsoShare(0, rear, levelFront)).toBeCloseTo(row.downShare / row.tensionShare, 2)
  })

  it('counts the front leg too: straight down the spine it is the whole tension', () => {
    expect(downTorsoShare(0, { x: 1, y: 0, z: 0 }, { x: 0, y: 0, z: -1 })).toBe(1)
  })

  it('is of the whole place and turns with the torso line', () => {
    const rise = 25
    const turned = (deg: number): { x: number; y: number; z: number } => ({
      x: Math.cos((deg * Math.PI) / 180),
      y: 0,
      z: Math.sin((deg * Math.PI) / 180),
    })
    // Reclining turns every direction by −β in the x–z plane (from up toward rearward).
    expect(downTorsoShare(rise, turned(-10 - rise), turned(-120 - rise))).toBeCloseTo(
      downTorsoShare(0, turned(-10), turned(-120)),
      12,
    )
  })

  it('is missing while a strap has no front part', () => {
    const solved = solvePlace(
      scene({
        anchors: [tab('shoulder-left', point(400, -80, 590)), tab('shoulder-right', point(400, 80, 590))],
      }),
    )
    expect(hasValue(solved, 'spine-load-share', 'shoulder-pair')).toBe(false)
    expect(hasValue(solved, 'strap-length', 'shoulder-left')).toBe(false)
    expect(valueOf(solved, 'shoulder-drop', 'shoulder-left')).toBeCloseTo(0, 6)
    expect(problemOf(solved, 'shoulder-left')?.kind).toBe('buckle-unknown')
  })
})

describe('lineOfPull', () => {
  // Unit tension, 20° in plan and 10° down: (0.9254, 0.3368, −0.1736) from the body; the anchor is pulled the opposite way.
  it('has the components of a strap 20° in plan that falls 10°', () => {
    const plan = (20 * Math.PI) / 180
    const down = (10 * Math.PI) / 180
    const away = [Math.cos(down) * Math.cos(plan), Math.cos(down) * Math.sin(plan), Math.sin(down)] as const
    const solved = solvePlace(
      scene({
        shoulderRadiusMm: 0,
        shoulderHalfSpacingMm: 80,
        anchors: [
          ...lapTabs,
          tab('shoulder-right', point(300 * away[0], 80 + 300 * away[1], 590 - 300 * away[2])),
        ],
      }),
    )
    const pull = lineOfPull(pathOf(solved, 'shoulder-right'))
    expect(pull.x).toBeCloseTo(-0.9254, 4)
    expect(pull.y).toBeCloseTo(-0.3368, 4)
    expect(pull.z).toBeCloseTo(0.1736, 4)
  })
})

describe('a shoulder strap round a bar', () => {
  // Shoulder without thickness, bar of 40 mm at the shoulder's height, 400 mm behind: the tangent touches the bar where the
  // radius is square to it; asin(20/400) = 2.866°. Over the top the strap rises, under the bottom it falls by that angle.
  it.each([
    { over: 'over', expectedDeg: -2.865_984 },
    { over: 'under', expectedDeg: 2.865_984 },
  ] as const)('reaches it $over it at $expectedDeg°', ({ over, expectedDeg }) => {
    const solved = solvePlace(
      scene({
        shoulderRadiusMm: 0,
        tubes: [bar(400, 590, 40)],
        anchors: [...lapTabs, wrap('shoulder-right', point(400, 80, 590), over)],
      }),
    )
    expect(valueOf(solved, 'shoulder-drop', 'shoulder-right')).toBeCloseTo(expectedDeg, 5)
    expect(valueOf(solved, 'shoulder-free-length', 'shoulder-right')).toBeCloseTo(
      Math.sqrt(400 ** 2 - 20 ** 2),
      9,
    )
    expect(valueOf(solved, 'wrap-square', 'shoulder-right')).toBeCloseTo(90, 9)
  })

  // Rim at (100, 600), tube of 40 mm at (400, 300): from the rim to the tube's centre it falls 45° over 424.26 mm, to its top
  // asin(20/424.264) = 2.7020° less, to its bottom as much more.
  it.each([
    { over: 'over', expectedDeg: 45 - 2.701_95 },
    { over: 'under', expectedDeg: 45 + 2.701_95 },
  ] as const)('is still reached $over it when the strap bends over the rim', ({ over, expectedDeg }) => {
    const solved = solvePlace(
      scene({
        shoulderRadiusMm: 0,
        seat: { backrestRim: { xMm: 100, zMm: 600 } },
        tubes: [bar(400, 300, 40)],
        anchors: [...lapTabs, wrap('shoulder-right', point(400, 80, 300), over)],
      }),
    )
    expect(valueOf(solved, 'shoulder-rim-drop', 'shoulder-right')).toBeCloseTo(expectedDeg, 5)
  })
})

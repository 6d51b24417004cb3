import { describe, expect, it } from 'vitest'
import type { Anchor } from '../../../src/domain/straps/anchor'
import { solvePlace } from '../../../src/domain/straps/solve'
import {
  bar,
  belt,
  hasValue,
  lapTabs,
  pathOf,
  point,
  problemOf,
  scene,
  slot,
  tab,
  valueOf,
  wrap,
  type SceneChoice,
} from './scenes'

/** A level strap from a shoulder without thickness at (0, −80, 590) to a tab 400 behind it. */
const level = (choice: SceneChoice = {}) =>
  scene({
    shoulderRadiusMm: 0,
    anchors: [
      ...lapTabs,
      tab('shoulder-left', point(400, -80, 590)),
      tab('shoulder-right', point(400, 80, 590)),
    ],
    ...choice,
  })

describe('a slot in a thick shell', () => {
  const thick = (shoulderUpMm: number): ReturnType<typeof solvePlace> =>
    solvePlace(
      scene({
        shoulderRadiusMm: 0,
        hipToShoulderMm: shoulderUpMm,
        seat: {
          shellThicknessMm: 20,
          slots: [
            slot({ straps: ['shoulder-left'], face: 'back', centre: point(120, -80, 590), lengthMm: 600 }),
          ],
        },
        anchors: [...lapTabs, tab('shoulder-left', point(430, -80, 290))],
      }),
    )

  it('holds a strap at the edge it meets and lets it clear of the other', () => {
    // From (0, 590) to the outer lower edge (130, 570) the strap is 573.1 high at the inner one, 110 behind: above its edge at 570.
    const path = pathOf(thick(590), 'shoulder-left')
    expect(path.contacts.filter(({ on }) => on === 'slot').map(({ point: at }) => [at.xMm, at.zMm])).toEqual([
      [130, 570],
    ])
    expect(valueOf(thick(590), 'shoulder-drop', 'shoulder-left')).toBeCloseTo(8.746_162, 5) // atan(20/130)
  })

  it('holds it at both lower edges when the shoulder is lower than the slot', () => {
    const solved = thick(500)
    expect(
      pathOf(solved, 'shoulder-left')
        .contacts.map(({ on }) => on)
        .slice(0, 3),
    ).toEqual(['anchor', 'slot', 'slot'])
    // Up from the shoulder 70 over 110, and down 280 over 300 from the outer edge: atan 32.471° and 43.025°.
    expect(valueOf(solved, 'shoulder-drop', 'shoulder-left')).toBeCloseTo(-32.471_192, 5)
    expect(valueOf(solved, 'slot-bend', 'shoulder-left')).toBeCloseTo(32.471_192 + 43.025_066, 5)
  })

  it('is not reached by an anchor that is not beyond its outer opening', () => {
    const short = (xMm: number) =>
      problemOf(
        solvePlace(
          level({
            seat: {
              shellThicknessMm: 20,
              slots: [slot({ straps: ['shoulder-left'], face: 'back', centre: point(120, -80, 590) })],
            },
            anchors: [...lapTabs, tab('shoulder-left', point(xMm, -80, 590))],
          }),
        ),
        'shoulder-left',
      )
    expect(short(115)).toEqual({ kind: 'slot-not-reached', strap: 'shoulder-left', shortMm: 15 })
    expect(short(130)).toEqual({ kind: 'slot-not-reached', strap: 'shoulder-left', shortMm: 0 })
    expect(short(130.01)).toBeUndefined()
  })

  it('that is cut ahead of the shoulder, or in a cushion above the hips, is itself what is wrong', () => {
    const problem = (slots: Parameters<typeof slot>[0], strap: 'shoulder-left' | 'sub-centre') =>
      problemOf(
        solvePlace(
          level({
            belt: belt(5),
            seat: { slots: [slot(slots)] },
            anchors: [
              ...lapTabs,
              tab('shoulder-left', point(300, -80, 590)),
              tab('sub-centre', point(0, 0, -300)),
            ],
          }),
        ),
        strap,
      )
    expect(
      problem({ straps: ['shoulder-left'], face: 'back', centre: point(-120, -80, 590) }, 'shoulder-left'),
    ).toMatchObject({ kind: 'slot-not-reached', shortMm: 420, isSlotOnWrongSide: true })
    expect(
      problem({ straps: ['sub-centre'], face: 'cushion', centre: point(0, 0, 60) }, 'sub-centre'),
    ).toMatchObject({ kind: 'slot-not-reached', shortMm: 360, isSlotOnWrongSide: true })
  })
})

describe('a strap round a bar that runs fore and aft', () => {
  it('leaves it square to the bar, above or below', () => {
    // Bar of 40 mm along x at y = −400, z = −200. Seen along it the strap runs to the front contact of a flat-ended pelvis at y = −115; from above it
    // leaves the top half, from below the bottom half, by the same distance from the bar's middle.
    const fore = { ...bar(0, 0, 40), points: [point(-300, -400, -200), point(600, -400, -200)] }
    const contact = (over: 'over' | 'under') => {
      const given = scene({
        hipHalfBreadthMm: 115,
        tubes: [fore],
        anchors: [wrap('lap-left', point(250, -400, -200), over)],
      })
      const [at, next] = pathOf(solvePlace(given), 'lap-left').contacts
      if (at === undefined || next === undefined) throw new Error('no contacts')
      const out = { y: at.point.yMm + 400, z: at.point.zMm + 200 }
      // Square to the bar: the contact lies in the plane of the wrap, on its circle, and the strap seen along the bar is a tangent there.
      expect(at.point.xMm).toBeCloseTo(250, 9)
      expect(Math.hypot(out.y, out.z)).toBeCloseTo(20, 9)
      expect(out.y * (next.point.yMm - at.point.yMm) + out.z * (next.point.zMm - at.point.zMm)).toBeCloseTo(
        0,
        6,
      )
      return out.z
    }
    expect(contact('over')).toBeGreaterThan(0)
    expect(contact('under')).toBeLessThan(0)
  })
})

describe('the chest', () => {
  const round = (aheadMm: number): SceneChoice => ({
    shoulderHalfSpacingMm: 0,
    shoulderRadiusMm: 50,
    chest: { upMm: 300, aheadMm, acrossMm: 100, alongMm: 100 },
  })

  it('lengthens a strap by the way round it, as two circles and a point say', () => {
    // Shoulder arc of 50 about (0, 540), chest of 100 about (−80, 300), buckle at (−77.78, 77.78): 252.98 apart, the outer tangent is
    // √(252.98² − 50²) long; from the chest to the buckle √(222.23² − 100²). Angles of the radii at the three contacts from the middles' line.
    const solved = solvePlace(
      scene({ ...round(80), anchors: [...lapTabs, tab('shoulder-left', point(400, 0, 590))] }),
    )
    const k = 110 / Math.SQRT2
    const apart = Math.hypot(80, 240)
    const toBuckle = Math.hypot(k - 80, 300 - k)
    const line = Math.atan2(-240, -80)
    const leaves = line - Math.PI / 2 - Math.asin((100 - 50) / apart)
    const off = Math.atan2(k - 300, 80 - k) - Math.acos(100 / toBuckle)
    const turn = (from: number, to: number): number => (to - from + 4 * Math.PI) % (2 * Math.PI)
    const expected =
      400 +
      50 * turn(Math.PI / 2, leaves) +
      Math.sqrt(apart ** 2 - 50 ** 2) +
      100 * turn(leaves, off) +
      Math.sqrt(toBuckle ** 2 - 100 ** 2)
    expect(pathOf(solved, 'shoulder-left').lengthMm).toBeCloseTo(expected, 6)
    expect(pathOf(solved, 'shoulder-left').contacts.filter(({ on }) => on === 'body')).toHaveLength(4)
  })

  it('leaves alone the line that anti-submarine straps are measured against', () => {
    const chestLine = (choice: SceneChoice): number =>
      valueOf(
        solvePlace(
          scene({ ...choice, belt: belt(5), anchors: [...lapTabs, tab('sub-centre', point(-100, 0, -300))] }),
        ),
        'sub-to-chest',
        'sub-centre',
      )
    expect(chestLine(round(80))).toBe(chestLine({ shoulderHalfSpacingMm: 0, shoulderRadiusMm: 50 }))
  })
})

describe('tube-clearance', () => {
  it('is the strap’s distance from the nearest tube but its own, and below 0 it leaves nothing else to say', () => {
    expect(
      valueOf(solvePlace(level({ tubes: [bar(200, 650, 40)] })), 'tube-clearance', 'shoulder-left'),
    ).toBeCloseTo(40, 9)
    const own = [...lapTabs, tab('shoulder-left', point(400, -80, 590), { tubeId: 'bar' })]
    expect(
      hasValue(
        solvePlace(level({ tubes: [bar(400, 600, 40)], anchors: own })),
        'tube-clearance',
        'shoulder-left',
      ),
    ).toBe(false)
    const through = solvePlace(level({ tubes: [bar(200, 595, 40)] }))
    expect(problemOf(through, 'shoulder-left')).toMatchObject({ kind: 'through-tube', tubeId: 'bar' })
    expect(valueOf(through, 'tube-clearance', 'shoulder-left')).toBeCloseTo(-15, 9)
    expect(hasValue(through, 'shoulder-drop', 'shoulder-left')).toBe(false)
    expect(hasValue(through, 'shoulder-spacing', 'shoulder-pair')).toBe(false)
    expect(hasValue(through, 'lap-angle', 'lap-left')).toBe(true)
    expect(pathOf(through, 'shoulder-left').contacts.length).toBeGreaterThan(2)
  })

  it('speaks of a strap’s own tube only where the strap runs into it', () => {
    // The strap lies level at z 590; its tab is welded to a bar of radius 20 with its centre line at the height given.
    const onBar = (barXMm: number, barZMm: number): ReturnType<typeof solvePlace> =>
      solvePlace(
        level({
          tubes: [bar(barXMm, barZMm, 40)],
          anchors: [...lapTabs, tab('shoulder-left', point(400, -80, 590), { tubeId: 'bar' })],
        }),
      )
    expect(problemOf(onBar(370, 595), 'shoulder-left')).toMatchObject({
      kind: 'through-tube',
      tubeId: 'bar',
      insideMm: 15,
    })
    expect(hasValue(onBar(370, 595), 'shoulder-drop', 'shoulder-left')).toBe(false)
    // The bar behind the tab, straight below it, just below the strap, and round the hole: the strap leaves it.
    for (const [barXMm, barZMm] of [
      [430, 595],
      [400, 560],
      [370, 569.9],
      [400, 595],
    ] as const)
      expect(problemOf(onBar(barXMm, barZMm), 'shoulder-left')).toBeUndefined()
  })
})

describe('adjuster-clearance', () => {
  const clearance = (fromAnchorMm: number, choice: SceneChoice = {}): number =>
    valueOf(
      solvePlace(
        level({ belt: belt(4, { adjusters: { shoulder: { fromAnchorMm, lengthMm: 50 } } }), ...choice }),
      ),
      'adjuster-clearance',
      'shoulder-left',
    )

  it('is along the strap to the shoulder, a slot passed clean or the buckle, negative where it overlaps or is past the end', () => {
    // The rim, 110 behind the hip, is passed 290 along; the shoulder lies 400 along.
    expect(clearance(100)).toBeCloseTo(290 - 125, 9)
    expect(clearance(345)).toBeCloseTo(320 - 290, 9)
    expect(clearance(390)).toBeCloseTo(-25 + 10, 9) // half of it is 25, its middle 10 short of the shoulder
    const back = slot({ straps: ['shoulder-left'], face: 'back', centre: point(100, -80, 590) })
    expect(clearance(100, { seat: { slots: [back] } })).toBeCloseTo(300 - 125, 9)
    expect(clearance(5000)).toBeLessThan(-3000)
  })
})

describe('shank-angle', () => {
  it('is between the line of pull and the shank’s axis outward', () => {
    const eye = (planDeg: number, riseDeg: number): Anchor => ({
      id: 'eye',
      strap: 'shoulder-left',
      mount: {
        kind: 'eye',
        point: point(400, -80, 590),
        planDeg,
        riseDeg,
        threadDiameterMm: 11,
        eyeDiameterMm: 30,
        tubeId: null,
      },
    })
    const angle = (planDeg: number, riseDeg: number): number =>
      valueOf(
        solvePlace(level({ anchors: [...lapTabs, eye(planDeg, riseDeg)] })),
        'shank-angle',
        'shoulder-left',
      )
    expect(angle(180, 0)).toBeCloseTo(0, 5)
    expect(angle(0, 0)).toBeCloseTo(180, 5)
    expect(angle(180, 35)).toBeCloseTo(35, 9)
    expect(angle(140, 0)).toBeCloseTo(40, 9)
    // From an eye 60 further right the strap runs forward and left: 180° + atan(60/400) from rearward, turning by the right.
    const slant = eye((Math.atan2(-60, -400) * 180) / Math.PI, 0)
    const moved: Anchor = { ...slant, mount: { ...slant.mount, point: point(400, -20, 590) } }
    expect(
      valueOf(solvePlace(level({ anchors: [...lapTabs, moved] })), 'shank-angle', 'shoulder-left'),
    ).toBeCloseTo(0, 5)
  })
})

describe('the shell without a slot', () => {
  const outline = [
    [-300, -100],
    [200, -100],
    [200, 400],
    [220, 400],
    [220, -150],
    [-290, -150],
  ].map(([xMm = 0, zMm = 0]) => ({ xMm, zMm }))
  const seat = {
    sideOutline: outline,
    topOutline: [
      { xMm: 0, yMm: -200 },
      { xMm: 0, yMm: 200 },
    ],
  }
  const lap = (yMm: number, zMm = -300): ReturnType<typeof solvePlace> =>
    solvePlace(scene({ seat, hipHalfBreadthMm: 115, anchors: [tab('lap-left', point(150, yMm, zMm))] }))

  it('bends a strap from outside over the upper edge of its side where that is shortest', () => {
    const at = pathOf(lap(-260), 'lap-left').contacts[1]
    expect(at?.on).toBe('seat-side')
    // Along the edge z = −100 in the side y = −200: to the tab, and on to the front contact 110 beyond the hip point and 85 further in.
    const lengthMm = (x: number): number =>
      Math.hypot(150 - x, 60, 200) + Math.hypot(Math.hypot(x, 100) + 110, 85)
    let best = 0
    for (let x = 0; x < 150; x += 0.001) if (lengthMm(x) < lengthMm(best)) best = x
    expect(Math.abs((at?.point.xMm ?? 0) - best)).toBeLessThan(0.01)
    expect(at?.point.zMm).toBeCloseTo(-100, 9)
    expect(at?.point.yMm).toBe(-200)
  })

  it('is the same whichever way round its outline is drawn', () => {
    const reversed = { ...seat, sideOutline: outline.toReversed() }
    const given = { hipHalfBreadthMm: 115, anchors: [tab('lap-left', point(150, -260, -300))] }
    expect(pathOf(solvePlace(scene({ ...given, seat: reversed })), 'lap-left').contacts).toEqual(
      pathOf(lap(-260), 'lap-left').contacts,
    )
  })

  it('is a problem between its sides, and none where the strap stays above it', () => {
    expect(problemOf(lap(-150), 'lap-left')).toEqual({ kind: 'no-slot', strap: 'lap-left' })
    expect(problemOf(lap(-150, -60), 'lap-left')).toBeUndefined()
  })
})

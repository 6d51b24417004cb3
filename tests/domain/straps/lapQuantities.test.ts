import { describe, expect, it } from 'vitest'
import { solvePlace, type SolvedPlace } from '../../../src/domain/straps/solve'
import {
  bar,
  hasValue,
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

const lapOf = (xMm: number, zMm: number, choice: SceneChoice = {}): SolvedPlace =>
  solvePlace(
    scene({
      ...choice,
      anchors: [tab('lap-left', point(xMm, -250, zMm)), tab('lap-right', point(xMm, 250, zMm))],
    }),
  )

describe('lap-angle and lap-shifted-angle', () => {
  // 49 CFR 571.210 S4.3.1.1 (a) and (b), limits 30° to 75°: atan of below over behind, from the hip point and from the point
  // 64 mm ahead of and 10 mm above it. The first flips from pass to fail, the last from fail to pass.
  it.each([
    { behindMm: 300, belowMm: 180, lineDeg: 30.96, shiftedDeg: 27.56 },
    { behindMm: 200, belowMm: 200, lineDeg: 45.0, shiftedDeg: 38.5 },
    { behindMm: 100, belowMm: 380, lineDeg: 75.26, shiftedDeg: 67.19 },
  ])('of an anchor $behindMm mm behind and $belowMm mm below', (row) => {
    const solved = lapOf(row.behindMm, -row.belowMm)
    expect(valueOf(solved, 'lap-angle', 'lap-left')).toBeCloseTo(row.lineDeg, 2)
    expect(valueOf(solved, 'lap-shifted-angle', 'lap-left')).toBeCloseTo(row.shiftedDeg, 2)
    expect(valueOf(solved, 'lap-angle', 'lap-right')).toBe(valueOf(solved, 'lap-angle', 'lap-left'))
  })

  // S4.3.1.2: where the belt bears on the seat frame, the line from the contact on the frame counts, not the anchorage.
  it('are taken from the slot edge where the slot holds the strap', () => {
    const back = slot({ straps: ['lap-left'], face: 'back', centre: point(100, -180, -120), heightMm: 40 })
    const solved = lapOf(300, -180, { seat: { slots: [back] } })
    // The straight line passes x = 100 at z = −60, above the slot (−140 … −100): it bears on the upper edge at (100, −100).
    expect(valueOf(solved, 'lap-angle', 'lap-left')).toBeCloseTo(45, 9)
    expect(valueOf(solved, 'lap-shifted-angle', 'lap-left')).toBeCloseTo(33.851_01, 5) // atan(110/164)
    // Up to the edge the strap runs 80 up over 200: 21.801°.
    expect(valueOf(solved, 'slot-bend', 'lap-left')).toBeCloseTo(45 - 21.801_409, 5)
    expect(valueOf(solved, 'lap-angle', 'lap-right')).toBeCloseTo(30.963_757, 5)
    expect(hasValue(solved, 'slot-bend', 'lap-right')).toBe(false)
  })

  it('do not see a slot that the strap passes clean', () => {
    const back = slot({ straps: ['lap-left'], face: 'back', centre: point(100, -200, -60), lengthMm: 200 })
    const solved = lapOf(300, -180, { seat: { slots: [back] } })
    expect(valueOf(solved, 'lap-angle', 'lap-left')).toBeCloseTo(30.963_757, 5)
    expect(valueOf(solved, 'slot-bend', 'lap-left')).toBe(0)
    expect(pathOf(solved, 'lap-left').contacts.some(({ on }) => on === 'slot')).toBe(false)
  })

  it('see a side-wall slot as the rectangle in its wall that the strap crosses slantwise', () => {
    // A pelvis with flat ends at the hip bones: the straight strap runs to (−110 along its line, y = −115). From the tab at y = −250 it is
    // at the wall, y = −200, after 50/135 of 349.857 + 110: 179.54 short of the hip point, 153.95 behind and 92.37 below it, inside.
    const wall = slot({
      straps: ['lap-left'],
      face: 'side',
      centre: point(130, -200, -110),
      lengthMm: 60,
      heightMm: 40,
    })
    const clean = lapOf(300, -180, { hipHalfBreadthMm: 115, seat: { slots: [wall] } })
    expect(valueOf(clean, 'slot-bend', 'lap-left')).toBe(0)
    // 63.43° straight: at the wall 107.7 behind and 215.4 below. On the lower edge the pulls at (100, −130), −100/292.2 toward the tab and
    // 0.955·100/164 toward the hip, still draw it forward: it bears on that corner.
    const low = lapOf(200, -400, { hipHalfBreadthMm: 115, seat: { slots: [wall] } })
    expect(pathOf(low, 'lap-left').effectiveAnchor.yMm).toBe(-200)
    expect(valueOf(low, 'lap-angle', 'lap-left')).toBeCloseTo(52.431_408, 5)
  })
})

describe('lap-run-angle', () => {
  it('is the lap angle where the strap is free to point at the hip', () => {
    const solved = lapOf(200, -200)
    expect(valueOf(solved, 'lap-run-angle', 'lap-left')).toBeCloseTo(45, 9)
    const front = pathOf(solved, 'lap-left').contacts.at(-2)?.point
    // Front contact 110 mm from the hip point along the line of pull: 110·(−cos 45°, sin 45°).
    expect(front?.xMm).toBeCloseTo(-77.781_746, 5)
    expect(front?.zMm).toBeCloseTo(77.781_746, 5)
  })

  it('is steeper where the thigh holds the strap up, and the line to the hip is unchanged', () => {
    const solved = lapOf(200, -200, { lapLowestDeg: 60 })
    expect(valueOf(solved, 'lap-angle', 'lap-left')).toBeCloseTo(45, 9)
    // Front contact 110·(−cos 60°, sin 60°) = (−55, 95.26): 295.26 up over 255.
    expect(valueOf(solved, 'lap-run-angle', 'lap-left')).toBeCloseTo(49.184_881, 5)
  })

  it('changes evenly through the angle at which the thigh takes over', () => {
    const run = (lowestDeg: number): number =>
      valueOf(lapOf(200, -200, { lapLowestDeg: lowestDeg }), 'lap-run-angle', 'lap-left')
    expect(run(45)).toBeCloseTo(45, 9)
    expect(run(45 + 1e-7)).toBeCloseTo(45, 6)
    expect(run(45 - 1e-7)).toBeCloseTo(45, 9)
  })
})

describe('lap-over-asis', () => {
  it('is the height of the straight run over the bone', () => {
    // Bone 20 ahead and 80 above; the 45° line through the hip point is 20 above it there: 60 below the bone.
    expect(valueOf(lapOf(200, -200), 'lap-over-asis', 'lap-left')).toBeCloseTo(20 - 80, 9)
  })

  it('is positive for a strap on the belly', () => {
    const low = { aheadMm: 40, aboveMm: 50, halfMm: 115 }
    // A 70° line is 40·tan 70° = 109.90 above the hip point there (contact 37.6 ahead would be short of the bone: its height
    // 110·sin 70° = 103.37 counts).
    const solved = lapOf(100, -100 * Math.tan((70 * Math.PI) / 180), { bone: low })
    expect(valueOf(solved, 'lap-over-asis', 'lap-left')).toBeCloseTo(103.366_19 - 50, 4)
  })
})

describe('lap-spacing and lap-mirror', () => {
  it('compare the two anchors across, and along with height', () => {
    const solved = solvePlace(
      scene({
        anchors: [tab('lap-left', point(200, -250, -200)), tab('lap-right', point(203, 240, -196))],
      }),
    )
    expect(valueOf(solved, 'lap-spacing', 'lap-pair')).toBe(490)
    expect(valueOf(solved, 'lap-mirror', 'lap-pair')).toBe(5) // 3-4-5
  })

  it('are minus across when left and right are exchanged', () => {
    const solved = solvePlace(
      scene({
        anchors: [tab('lap-left', point(200, 240, -200)), tab('lap-right', point(203, -250, -196))],
      }),
    )
    expect(valueOf(solved, 'lap-spacing', 'lap-pair')).toBe(-490)
    expect(valueOf(solved, 'lap-mirror', 'lap-pair')).toBe(5)
  })
})

describe('a lap strap', () => {
  it('lies tangent on the rounded end of the pelvis and round it to the front', () => {
    const solved = lapOf(200, -200, { hipHalfBreadthMm: 190 })
    // In the plane of the 45° line and the lateral direction the end is half an ellipse about y = −115, half-axes 110 along and 75 across.
    // The tab lies 282.843 behind and 135 outside of its middle: stretched to a circle of 1 at (−2.571 30, 1.8), distance² 9.851 60. The
    // tangent, √8.851 60 = 2.975 16 long, touches at ((−2.571 30 + 1.8·2.975 16)/9.851 60, (1.8 + 2.571 30·2.975 16)/9.851 60) = (0.282 59, 0.959 24).
    const contacts = pathOf(solved, 'lap-left').contacts
    expect(contacts.map(({ on }) => on)).toEqual(['anchor', 'body', 'body', 'buckle'])
    expect(contacts[1]?.point.yMm).toBeCloseTo(-115 - 75 * 0.959_24, 3)
    expect(contacts[1]?.point.xMm).toBeCloseTo((-110 * 0.282_59) / Math.SQRT2, 2)
    expect(contacts[1]?.point.zMm).toBeCloseTo((110 * 0.282_59) / Math.SQRT2, 2)
    expect(contacts[2]?.point).toMatchObject({ yMm: -115 })
    // No broader than the hip bones: straight to the front.
    const narrow = lapOf(200, -200, { hipHalfBreadthMm: 115 })
    expect(pathOf(narrow, 'lap-left').contacts.map(({ on }) => on)).toEqual(['anchor', 'body', 'buckle'])
  })

  it('lies on the smaller section of the end where the thigh holds it off the hip point', () => {
    // Aimed at 110·(−cos 60°, sin 60°) the line passes the hip point at d: the section's half-axes are √(1 − d²/110²) of 110 and 55. The tangent by
    // angles: that of the tab from the middle, in stretched coordinates, less the arc cosine of 1/distance.
    const q = { x: -110 * Math.cos(Math.PI / 3), z: 110 * Math.sin(Math.PI / 3) }
    const length = Math.hypot(q.x - 200, q.z + 200)
    const along = (200 * (q.x - 200) - 200 * (q.z + 200)) / length
    const share = Math.sqrt(1 - (200 ** 2 + 200 ** 2 - along ** 2) / 110 ** 2)
    const [x, y] = [along / (110 * share), 135 / (55 * share)]
    const angle = Math.atan2(y, x) - Math.acos(1 / Math.hypot(x, y))
    const contact = pathOf(lapOf(200, -200, { lapLowestDeg: 60 }), 'lap-left').bodyContact
    expect(contact.yMm).toBeCloseTo(-115 - 55 * share * Math.sin(angle), 9)
    expect(share).toBeLessThan(0.99)
  })

  it('is as long as its straight pieces and the quarter of an ellipse between them', () => {
    // The end of the pelvis is half an ellipse of 110 along the 45° line and 55 across, its middle at y = −115. A tab 330 behind it and
    // 55 outside lies, stretched to a circle of 1, at (−3, 1): its tangent is 3 long and touches at (0, 1), straight beside the hip point. So
    // 330 straight, a quarter of the ellipse and 115 across. Quarter by Ramanujan's second formula for the whole (1914, from memory), whose
    // error is far below 0.01 mm here.
    const h = 1 / 9
    const quarterMm = (Math.PI * 165 * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)))) / 4
    const solved = solvePlace(
      scene({
        anchors: [
          tab('lap-left', point(330 / Math.SQRT2, -170, -330 / Math.SQRT2)),
          tab('lap-right', point(330 / Math.SQRT2, 170, -330 / Math.SQRT2)),
        ],
      }),
    )
    expect(Math.abs(pathOf(solved, 'lap-left').lengthMm - (330 + quarterMm + 115))).toBeLessThan(0.01)
  })

  it('puts the buckle midway between the two front contacts, in the middle of the seat', () => {
    const solved = solvePlace(
      scene({
        hip: point(0, 30, 0),
        anchors: [tab('lap-left', point(200, -220, -200)), tab('lap-right', point(100, 280, -380))],
      }),
    )
    const fronts = [45, 75.256_437].map((deg) => (deg * Math.PI) / 180)
    expect(solved.buckle?.yMm).toBe(30)
    expect(solved.buckle?.xMm).toBeCloseTo(
      (-110 * (Math.cos(fronts[0] ?? 0) + Math.cos(fronts[1] ?? 0))) / 2,
      4,
    )
    expect(solved.buckle?.zMm).toBeCloseTo(
      (110 * (Math.sin(fronts[0] ?? 0) + Math.sin(fronts[1] ?? 0))) / 2,
      4,
    )
  })

  it('touches a wrapped tube on the chosen side', () => {
    // Tube of 40 mm, 200 behind and 200 below: the tangent to the hip point is turned by asin(20/282.843) = 4.0548°.
    const turn = 4.054_807
    const wrapped = (over: 'over' | 'under'): number =>
      valueOf(
        solvePlace(
          scene({
            tubes: [bar(200, -200, 40)],
            anchors: [wrap('lap-left', point(200, -250, -200), over)],
          }),
        ),
        'lap-angle',
        'lap-left',
      )
    expect(wrapped('over')).toBeCloseTo(45 - turn, 5)
    expect(wrapped('under')).toBeCloseTo(45 + turn, 5)
  })

  it('has no number, but a reason, with its anchor level with or ahead of the hip point', () => {
    expect(problemOf(lapOf(0, 120), 'lap-left')).toEqual({
      kind: 'lap-anchor-not-behind',
      strap: 'lap-left',
      aheadMm: 0,
    })
    const ahead = lapOf(-30, -200)
    expect(problemOf(ahead, 'lap-left')).toMatchObject({ kind: 'lap-anchor-not-behind', aheadMm: 30 })
    expect(hasValue(ahead, 'lap-angle', 'lap-left')).toBe(false)
    expect(ahead.buckle).toBeNull()
    // Straight below is the last that counts: 90°.
    expect(valueOf(lapOf(0, -300), 'lap-angle', 'lap-left')).toBeCloseTo(90, 9)
  })

  it('has no number with its anchor inside the pelvis, but beside the hip it may be as near as it likes', () => {
    const inside = solvePlace(scene({ anchors: [tab('lap-left', point(60, -100, -60))] }))
    expect(problemOf(inside, 'lap-left')).toMatchObject({ kind: 'anchor-inside-body' })
    const beside = solvePlace(scene({ anchors: [tab('lap-left', point(60, -200, -60))] }))
    expect(valueOf(beside, 'lap-angle', 'lap-left')).toBeCloseTo(45, 9)
  })

  // A strap holds from its own side: seen from the side alone, exchanged anchors give the same angles through the body.
  it('has no path when the anchor lies on the other side of the seat, and one from the middle', () => {
    const solved = solvePlace(
      scene({ anchors: [tab('lap-left', point(200, 250, -200)), tab('lap-right', point(200, -250, -200))] }),
    )
    expect(solved.problems).toContainEqual({ kind: 'lap-anchor-across', strap: 'lap-left', acrossMm: 250 })
    expect(solved.problems).toContainEqual({ kind: 'lap-anchor-across', strap: 'lap-right', acrossMm: 250 })
    expect(solved.quantities.some(({ id }) => id === 'lap-angle')).toBe(false)
    const middle = solvePlace(
      scene({ anchors: [tab('lap-left', point(200, 0, -200)), tab('lap-right', point(200, 250, -200))] }),
    )
    expect(middle.quantities.filter(({ id }) => id === 'lap-angle')).toHaveLength(2)
  })
})

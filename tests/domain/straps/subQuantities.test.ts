import { describe, expect, it } from 'vitest'
import { solvePlace, type SolvedPlace } from '../../../src/domain/straps/solve'
import {
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
  type SceneChoice,
} from './scenes'

/** Lap tabs at 45° and an arc of 110 mm put the buckle at (−77.78, 77.78). */
const BUCKLE = 110 / Math.SQRT2

const subAt = (xMm: number, zMm: number, choice: SceneChoice = {}): SolvedPlace =>
  solvePlace(
    scene({ belt: belt(5), anchors: [...lapTabs, tab('sub-centre', point(xMm, 0, zMm))], ...choice }),
  )

describe('an anti-submarine strap', () => {
  it('runs straight to the buckle while it clears the groin', () => {
    const solved = subAt(-200, -300)
    expect(pathOf(solved, 'sub-centre').contacts.map(({ on }) => on)).toEqual(['anchor', 'buckle'])
    // From the buckle 122.22 ahead over 377.78 down.
    expect(valueOf(solved, 'sub-to-vertical', 'sub-centre')).toBeCloseTo(
      (-Math.atan2(200 - BUCKLE, 300 + BUCKLE) * 180) / Math.PI,
      9,
    )
  })

  it('goes down the front of the groin when the straight line would cut it', () => {
    const solved = subAt(0, -300)
    const path = pathOf(solved, 'sub-centre')
    expect(path.contacts.map(({ on }) => on)).toEqual(['anchor', 'body', 'body', 'buckle'])
    // Tangent from (0, −300) to a circle of 97 mm about the origin: asin(97/300) = 18.8646° from the vertical, touching in front.
    expect(valueOf(solved, 'sub-to-vertical', 'sub-centre')).toBeCloseTo(18.864_631, 5)
    expect(path.bodyContact.xMm).toBeCloseTo(-97 * Math.cos((18.864_631 * Math.PI) / 180), 2)
    for (const { xMm, zMm } of path.polyline)
      expect(Math.hypot(xMm, zMm)).toBeGreaterThan(97 * Math.cos((3 * Math.PI) / 180) - 1e-9)
    // Drawn up the front without turning back: ever higher from the anchor to the buckle.
    const heights = path.polyline.map(({ zMm }) => zMm)
    expect(heights).toEqual(heights.toSorted((a, b) => a - b))
    expect(path.polyline.length).toBeGreaterThan(6)
  })

  it('carries its lateral position evenly along the unrolled strap', () => {
    const solved = solvePlace(
      scene({
        belt: belt(6),
        anchors: [...lapTabs, tab('sub-left', point(0, -60, -300)), tab('sub-right', point(0, 60, -300))],
      }),
    )
    const right = pathOf(solved, 'sub-right')
    const slopes = right.contacts.slice(1).map(({ point: at }, index) => {
      const before = right.contacts[index]?.point ?? at
      const sideMm = Math.hypot(at.xMm - before.xMm, at.zMm - before.zMm)
      return { sideMm, dyMm: at.yMm - before.yMm }
    })
    const first = slopes[0]
    const last = slopes[2]
    expect((first?.dyMm ?? 0) / (first?.sideMm ?? 1)).toBeCloseTo((last?.dyMm ?? 1) / (last?.sideMm ?? 1), 9)
    expect(valueOf(solved, 'sub-spacing', 'sub-pair')).toBe(120)
    // Unrolled it is one straight line 60 mm across: the length in the side plane is that of the same strap in the middle.
    const middle = pathOf(subAt(0, -300), 'sub-centre').lengthMm
    expect(right.lengthMm).toBeCloseTo(Math.hypot(middle, 60), 9)
  })

  it('are minus apart when left and right are exchanged', () => {
    const exchanged = solvePlace(
      scene({
        belt: belt(6),
        anchors: [...lapTabs, tab('sub-left', point(0, 60, -300)), tab('sub-right', point(0, -60, -300))],
      }),
    )
    expect(valueOf(exchanged, 'sub-spacing', 'sub-pair')).toBe(-120)
  })

  // Common practice, no source: the strap pulls the pelvis down, so its anchor is below the groin. The groin's lowest point is
  // 97 mm below the hip point.
  it('has no path to an anchor up behind the seat, and no angle that a limit without an upper end would let through', () => {
    const solved = subAt(300, 50)
    expect(problemOf(solved, 'sub-centre')).toEqual({
      kind: 'sub-anchor-not-below',
      strap: 'sub-centre',
      aboveMm: 147,
    })
    expect(hasValue(solved, 'sub-to-vertical', 'sub-centre')).toBe(false)
    expect(hasValue(solved, 'sub-to-chest', 'sub-centre')).toBe(false)
  })

  it('has no path forward over the thighs to an anchor above the groin’s lowest point', () => {
    expect(problemOf(subAt(-400, -50), 'sub-centre')).toMatchObject({ aboveMm: 47 })
  })

  it('has a path from just below the groin’s lowest point and none from level with it', () => {
    expect(problemOf(subAt(200, -97), 'sub-centre')).toMatchObject({ kind: 'sub-anchor-not-below' })
    const below = subAt(200, -97.01)
    expect(problemOf(below, 'sub-centre')).toBeUndefined()
    expect(valueOf(below, 'sub-to-vertical', 'sub-centre')).toBeLessThan(90)
  })

  it('bears on the front edge of a cushion slot that lies behind its line', () => {
    const cushion = slot({
      straps: ['sub-centre'],
      face: 'cushion',
      centre: point(-100, 0, -110),
      lengthMm: 80,
      heightMm: 40,
    })
    // A slim groin arc, so that the piece from the slot to the buckle is straight.
    const bent = subAt(-250, -300, { groinRadiusMm: 60, seat: { slots: [cushion] } })
    const path = pathOf(bent, 'sub-centre')
    expect(path.contacts.map(({ on }) => on)).toEqual(['anchor', 'slot', 'buckle'])
    expect(path.effectiveAnchor).toEqual(point(-120, 0, -110))
    expect(valueOf(bent, 'sub-to-vertical', 'sub-centre')).toBeCloseTo(
      (-Math.atan2(120 - BUCKLE, 110 + BUCKLE) * 180) / Math.PI,
      9,
    )
    const turn = Math.atan2(130, 190) - Math.atan2(120 - BUCKLE, 110 + BUCKLE)
    expect(valueOf(bent, 'slot-bend', 'sub-centre')).toBeCloseTo((turn * 180) / Math.PI, 9)
    const clean = subAt(-130, -300, { seat: { slots: [cushion] } })
    expect(valueOf(clean, 'slot-bend', 'sub-centre')).toBe(0)
  })

  it('says so when the slot edge it would bear on is inside the body', () => {
    const cushion = slot({ straps: ['sub-centre'], face: 'cushion', centre: point(0, 0, -80), heightMm: 20 })
    expect(problemOf(subAt(0, -300, { seat: { slots: [cushion] } }), 'sub-centre')).toMatchObject({
      kind: 'slot-blocked',
      by: 'body',
    })
  })

  it('passes clean where it lies on the groin as it goes through the slot', () => {
    // The cushion's surface 10 mm into the arc: the front of the arc meets it at −√(97² − 87²) = −42.90.
    const onArc = (fromMm: number, toMm: number): SolvedPlace =>
      subAt(120, -150, {
        seat: {
          slots: [
            slot({
              straps: ['sub-centre'],
              face: 'cushion',
              centre: point((fromMm + toMm) / 2, 0, -87),
              heightMm: toMm - fromMm,
            }),
          ],
        },
      })
    expect(valueOf(onArc(-60, 20), 'slot-bend', 'sub-centre')).toBe(0)
    expect(valueOf(onArc(-42.91, 20), 'slot-bend', 'sub-centre')).toBe(0)
    expect(problemOf(onArc(-42.89, 20), 'sub-centre')).toMatchObject({ kind: 'slot-blocked', by: 'body' })
  })

  it('has no path without a buckle, and none from inside the body', () => {
    const alone = solvePlace(scene({ belt: belt(5), anchors: [tab('sub-centre', point(0, 0, -300))] }))
    expect(problemOf(alone, 'sub-centre')?.kind).toBe('buckle-unknown')
    expect(hasValue(alone, 'sub-to-vertical', 'sub-centre')).toBe(false)
    expect(problemOf(subAt(10, -60), 'sub-centre')).toMatchObject({ kind: 'anchor-inside-body' })
  })

  it('still has a path where a thin lap lets the buckle lie within the groin arc', () => {
    const solved = subAt(0, -300, { lapRadiusMm: 90 })
    expect(valueOf(solved, 'sub-to-vertical', 'sub-centre')).toBeCloseTo(
      (Math.asin(90 / 300) * 180) / Math.PI,
      6,
    )
  })
})

describe('sub-to-chest', () => {
  it('is 0 when the strap continues the line of the shoulder straps past the buckle', () => {
    // A shoulder without thickness at (0, 590): the line to the buckle, carried on 400 mm, clears a groin arc of 60 mm.
    const dx = -BUCKLE
    const dz = BUCKLE - 590
    const length = Math.hypot(dx, dz)
    const solved = subAt(-BUCKLE + (400 * dx) / length, BUCKLE + (400 * dz) / length, {
      shoulderRadiusMm: 0,
      groinRadiusMm: 60,
    })
    expect(valueOf(solved, 'sub-to-chest', 'sub-centre')).toBeCloseTo(0, 9)
  })

  it('grows as the anchor moves rearward', () => {
    const ahead = valueOf(subAt(-250, -300), 'sub-to-chest', 'sub-centre')
    const behind = valueOf(subAt(-150, -300), 'sub-to-chest', 'sub-centre')
    expect(behind).toBeGreaterThan(ahead)
  })

  it('takes the chest line where the shoulder straps leave the front of the shoulder', () => {
    // Arc of 100 mm about (0, 490), buckle at (−77.78, 77.78): the line to the centre leans atan(77.78/412.22) = 10.6855° forward
    // going down over 419.49 mm; the front tangent leans asin(100/419.49) = 13.7911° less, 3.106° rearward.
    const solved = subAt(-BUCKLE, -300, { groinRadiusMm: 60 })
    expect(valueOf(solved, 'sub-to-vertical', 'sub-centre')).toBeCloseTo(0, 9)
    expect(valueOf(solved, 'sub-to-chest', 'sub-centre')).toBeCloseTo(10.6855 - 13.7911, 3)
  })
})

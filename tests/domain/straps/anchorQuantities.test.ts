import { describe, expect, it } from 'vitest'
import { solvePlace } from '../../../src/domain/straps/solve'
import { tabNormal, tabTwistDeg } from '../../../src/domain/straps/tabPlane'
import { bar, belt, hasValue, lapTabs, pathOf, point, scene, slot, tab, valueOf, wrap } from './scenes'

describe('tab-twist', () => {
  it('is measured against a normal that points right, turns with the plan angle and rises with the lean', () => {
    expect(tabNormal({ planDeg: 0, leanDeg: 0 })).toEqual({ x: -0, y: 1, z: 0 })
    // Rearward edge (+x) turned to the right (+y) by 90°: the plane is across the car, its normal points forward.
    const across = tabNormal({ planDeg: 90, leanDeg: 0 })
    expect([across.x, across.y, across.z].map((part) => Math.round(part * 1e9) / 1e9 + 0)).toEqual([-1, 0, 0])
    expect(tabNormal({ planDeg: 30, leanDeg: 90 }).z).toBeCloseTo(1, 12)
  })

  // The plane's own fore-and-aft line, turned in plan, lies in it; so does the line square to that and the normal.
  it.each([
    { planDeg: 0, leanDeg: 0 },
    { planDeg: 25, leanDeg: 0 },
    { planDeg: -40, leanDeg: 35 },
    { planDeg: 70, leanDeg: -60 },
  ])('is 0 along the plane and 90 square to it (plan $planDeg°, lean $leanDeg°)', ({ planDeg, leanDeg }) => {
    const [plan, lean] = [(planDeg * Math.PI) / 180, (leanDeg * Math.PI) / 180]
    const edge = { x: Math.cos(plan), y: Math.sin(plan), z: 0 }
    const up = { x: Math.sin(plan) * Math.sin(lean), y: -Math.cos(plan) * Math.sin(lean), z: Math.cos(lean) }
    expect(tabTwistDeg({ planDeg, leanDeg }, edge)).toBeCloseTo(0, 9)
    expect(tabTwistDeg({ planDeg, leanDeg }, up)).toBeCloseTo(0, 9)
    const normal = tabNormal({ planDeg, leanDeg })
    expect(tabTwistDeg({ planDeg, leanDeg }, normal)).toBeCloseTo(90, 5)
    const between = (a: number): number => Math.SQRT1_2 * a
    expect(
      tabTwistDeg(
        { planDeg, leanDeg },
        {
          x: between(edge.x - normal.x),
          y: between(edge.y - normal.y),
          z: between(edge.z - normal.z),
        },
      ),
    ).toBeCloseTo(45, 9)
  })

  it('of a shoulder strap 20° in plan on a fore-and-aft tab is 20°, and 0 on one turned with it', () => {
    const twist = (planDeg: number): number =>
      valueOf(
        solvePlace(
          scene({
            shoulderRadiusMm: 0,
            shoulderHalfSpacingMm: 80,
            anchors: [
              ...lapTabs,
              tab('shoulder-left', point(300, -80 + 300 * Math.tan(Math.PI / 9), 590), { planDeg }),
            ],
          }),
        ),
        'tab-twist',
        'shoulder-left',
      )
    expect(twist(0)).toBeCloseTo(20, 9)
    // The strap converges to the rear: on the left side its rear end is further right, so the tab's rear edge turns right: +20.
    expect(twist(20)).toBeCloseTo(0, 6)
  })
})

describe('wrap-square', () => {
  it('is 90° minus the plan angle on a bar straight across', () => {
    const solved = solvePlace(
      scene({
        shoulderRadiusMm: 0,
        tubes: [bar(300, 610, 40)], // touched under its bottom at the shoulder's height: a level strap
        anchors: [
          ...lapTabs,
          wrap('shoulder-right', point(300, 80 - 300 * Math.tan(Math.PI / 18), 610), 'under'),
        ],
      }),
    )
    expect(valueOf(solved, 'shoulder-drop', 'shoulder-right')).toBeCloseTo(0, 9)
    expect(valueOf(solved, 'wrap-square', 'shoulder-right')).toBeCloseTo(80, 9)
    expect(hasValue(solved, 'tab-twist', 'shoulder-right')).toBe(false)
  })

  it('takes the direction of the piece of a bent bar that the strap lies on', () => {
    const bent = {
      ...bar(300, 610, 40),
      points: [point(300, -600, 610), point(300, 0, 610), point(500, 200, 610)],
    }
    const solved = solvePlace(
      scene({
        shoulderRadiusMm: 0,
        shoulderHalfSpacingMm: 100,
        tubes: [bent],
        anchors: [...lapTabs, wrap('shoulder-right', point(400, 100, 610), 'under')],
      }),
    )
    expect(valueOf(solved, 'wrap-square', 'shoulder-right')).toBeCloseTo(45, 9)
  })
})

describe('slot-bend', () => {
  const through = (lengthMm: number, anchorYMm: number): ReturnType<typeof solvePlace> =>
    solvePlace(
      scene({
        shoulderRadiusMm: 0,
        seat: {
          slots: [
            slot({
              straps: ['shoulder-right'],
              face: 'back',
              centre: point(100, 80, 590),
              lengthMm,
              heightMm: 40,
            }),
          ],
        },
        anchors: [...lapTabs, tab('shoulder-right', point(300, anchorYMm, 590))],
      }),
    )

  it('is the plan turn where an end of the slot holds the webbing', () => {
    // Slot 96 wide, webbing 76: its middle may lie 10 mm to either side of y = 80. Straight from 80 to 200 it would pass at 120.
    const solved = through(96, 200)
    const [, at] = pathOf(solved, 'shoulder-right').contacts
    expect(at?.on).toBe('slot')
    expect(at?.point.yMm).toBe(90)
    expect(at?.bendDeg).toBe(0)
    // 10 over 100 in, 110 over 200 out.
    expect(valueOf(solved, 'slot-bend', 'shoulder-right')).toBeCloseTo(28.810_794 - 5.710_593, 5)
  })

  it('holds webbing wider than the slot in its middle', () => {
    expect(pathOf(through(60, 200), 'shoulder-right').contacts[1]?.point.yMm).toBe(80)
  })

  it('is 0 up to the end of the slot', () => {
    expect(valueOf(through(96, 110), 'slot-bend', 'shoulder-right')).toBe(0) // passes at exactly 90
    expect(valueOf(through(96, 110.01), 'slot-bend', 'shoulder-right')).toBeGreaterThan(0)
  })
})

describe('strap-length', () => {
  it('is path, once round the tube, the part woven back and the tail', () => {
    const tabbed = solvePlace(scene({ belt: belt(4) }))
    const path = pathOf(tabbed, 'shoulder-left')
    expect(valueOf(tabbed, 'strap-length', 'shoulder-left')).toBeCloseTo(path.lengthMm + 150, 9)
    const wrapped = solvePlace(
      scene({
        tubes: [bar(400, 590, 38)],
        anchors: [...lapTabs, wrap('shoulder-left', point(400, -80, 590), 'over')],
      }),
    )
    expect(valueOf(wrapped, 'strap-length', 'shoulder-left')).toBeCloseTo(
      pathOf(wrapped, 'shoulder-left').lengthMm + Math.PI * 38 + 120 + 150,
      9,
    )
  })

  it('counts the arc over the shoulder in full', () => {
    // Level from (400, 590) to the top of the arc (centre (0, 490), radius 100), round it, and tangent down to the buckle.
    const solved = solvePlace(
      scene({ shoulderHalfSpacingMm: 0, anchors: [...lapTabs, tab('shoulder-left', point(400, 0, 590))] }),
    )
    const buckle = { x: -110 / Math.SQRT2, z: 110 / Math.SQRT2 - 490 }
    const away = Math.hypot(buckle.x, buckle.z)
    const tangent = Math.sqrt(away ** 2 - 100 ** 2)
    // Angle of the front touching point: from the centre toward the buckle, turned back by acos(100/away).
    const front = Math.atan2(buckle.z, buckle.x) + 2 * Math.PI - Math.acos(100 / away)
    const expected = 400 + 100 * (front - Math.PI / 2) + tangent
    expect(pathOf(solved, 'shoulder-left').lengthMm).toBeCloseTo(expected, 6)
  })
})

describe('helmet-clearance', () => {
  it('is from the helmet to the surface of the nearest tube, negative inside it, and missing without tubes', () => {
    // Helmet of radius 150 at (0, 0, 770).
    const gap = (...tubes: ReturnType<typeof bar>[]): number =>
      valueOf(solvePlace(scene({ tubes })), 'helmet-clearance', 'head')
    expect(gap(bar(300, 770, 40))).toBe(130)
    expect(gap(bar(300, 770, 40), bar(0, 1000, 50, 'roof'))).toBe(55)
    expect(gap(bar(0, 900, 40))).toBe(-40)
    expect(hasValue(solvePlace(scene()), 'helmet-clearance', 'head')).toBe(false)
  })
})

import { describe, expect, it } from 'vitest'
import type { Layout, Place } from '../../../../src/domain/layout/document/layout'
import {
  evaluateLayout,
  evaluatePlace,
  orderedFindings,
} from '../../../../src/domain/layout/evaluate/evaluateLayout'
import type { Finding } from '../../../../src/domain/rules/finding'
import { crossTube, flatLayout, flatPlace, tabAt, tabPair } from '../../../support/flatLayout'

const findingsOf = (layout: Layout): readonly Finding[] =>
  evaluateLayout(layout).places.flatMap(({ findings }) => findings)

const findingOf = (layout: Layout, ruleId: string, subject: string): Finding => {
  const found = findingsOf(layout).find((each) => each.ruleId === ruleId && each.subject === subject)
  if (found === undefined) throw new Error(`no finding of ${ruleId} on ${subject}`)
  return found
}

const lapTabs = (aftMm: number, belowMm: number) => tabPair('lap', { xMm: aftMm, yMm: 230, zMm: -belowMm })
const roadLayout = (place: Place): Layout => flatLayout([place], { ruleSetId: 'us-road-anchorages-571-210' })
const fixedSeat = (aftMm: number, belowMm: number): Layout =>
  roadLayout(flatPlace({ anchors: lapTabs(aftMm, belowMm) }))
/** A back that reclines makes the seat adjustable without moving the hip point. */
const adjustableSeat = (aftMm: number, belowMm: number): Layout => {
  const place = flatPlace({ anchors: lapTabs(aftMm, belowMm) })
  return roadLayout({ ...place, seat: { ...place.seat, reclineRange: { uprightDeg: 15, reclinedDeg: 20 } } })
}

describe('evaluateLayout under 49 CFR 571.210', () => {
  // Cases derived from S4.3.1.1(a) and (b), limits 30° and 75° (read): angle = atan(below / aft), and for an adjustable seat
  // atan((below + 10) / (aft + 64)).
  it.each([
    { aftMm: 300, belowMm: 180, fixedDeg: 30.96, fixed: 'kept', shiftedDeg: 27.56, adjustable: 'broken' },
    { aftMm: 200, belowMm: 200, fixedDeg: 45, fixed: 'kept', shiftedDeg: 38.5, adjustable: 'kept' },
    { aftMm: 100, belowMm: 380, fixedDeg: 75.26, fixed: 'broken', shiftedDeg: 67.19, adjustable: 'kept' },
  ])('an anchor $aftMm mm aft and $belowMm mm below: fixed $fixed, adjustable $adjustable', (row) => {
    const state = ({ verdict }: Finding) => (verdict === 'broken' ? 'broken' : 'kept')
    const fixed = findingOf(fixedSeat(row.aftMm, row.belowMm), 'us-210-lap-fixed-seat', 'lap-left')
    expect(fixed.value).toBeCloseTo(row.fixedDeg, 2)
    expect(state(fixed)).toBe(row.fixed)
    const adjustable = findingOf(
      adjustableSeat(row.aftMm, row.belowMm),
      'us-210-lap-adjustable-seat',
      'lap-left',
    )
    expect(adjustable.value).toBeCloseTo(row.shiftedDeg, 2)
    expect(state(adjustable)).toBe(row.adjustable)
  })

  it('asks a fixed seat only the fixed question and an adjustable one only the other', () => {
    const asked = (layout: Layout) => new Set(findingsOf(layout).map(({ ruleId }) => ruleId))
    expect(asked(fixedSeat(200, 200))).toContain('us-210-lap-fixed-seat')
    expect(asked(fixedSeat(200, 200))).not.toContain('us-210-lap-adjustable-seat')
    expect(asked(adjustableSeat(200, 200))).not.toContain('us-210-lap-fixed-seat')
    expect(asked(adjustableSeat(200, 200))).toContain('us-210-lap-adjustable-seat')
  })

  it('holds the anchor spacing against 165 mm, which itself passes', () => {
    const spaced = (halfMm: number) =>
      findingOf(
        roadLayout(flatPlace({ anchors: tabPair('lap', { xMm: 200, yMm: halfMm, zMm: -200 }) })),
        'us-210-lap-spacing',
        'lap-pair',
      )
    expect(spaced(82.5)).toMatchObject({ value: 165 })
    expect(spaced(82.5).verdict).not.toBe('broken')
    expect(spaced(82.45).verdict).toBe('broken')
  })
})

describe('evaluateLayout', () => {
  it('reports the worst sitting with its value, over every position of the seat', () => {
    const place = flatPlace({ anchors: lapTabs(200, 200) })
    const sliding = { ...place, seat: { ...place.seat, slide: { forwardMm: 60, rearwardMm: 40 } } }
    // Lap wedge 45…60° (common practice, no source). Forward 60: atan(200/260) = 37.569°, 7.431° too flat;
    // rearward 40: atan(200/160) = 51.340°, inside.
    const finding = findingOf(flatLayout([sliding]), 'workshop-lap-angle', 'lap-left')
    expect(finding).toMatchObject({ verdict: 'broken', worstSitting: 'driver/marla/-60/20' })
    expect(finding.value).toBeCloseTo(37.5686, 4)
  })

  it('takes the smallest margin when every sitting is inside', () => {
    const place = flatPlace({ anchors: lapTabs(180, 200) })
    const sliding = { ...place, seat: { ...place.seat, slide: { forwardMm: 10, rearwardMm: 10 } } }
    // atan(200/190) = 46.469° is 1.469° inside; atan(200/170) = 49.635°, 4.635° inside.
    const finding = findingOf(flatLayout([sliding]), 'workshop-lap-angle', 'lap-right')
    expect(finding.worstSitting).toBe('driver/marla/-10/20')
    expect(finding.value).toBeCloseTo(46.4688, 4)
  })

  it('holds a rule for reclined seats only against sittings that are reclined more than 30°', () => {
    const place = flatPlace({ anchors: lapTabs(100, 200) })
    const reclining = {
      ...place,
      seat: { ...place.seat, reclineDeg: 25, reclineRange: { uprightDeg: 25, reclinedDeg: 31 } },
    }
    const layout = flatLayout([reclining], { ruleSetId: 'student-cars-2026' })
    // atan(200/100) = 63.435°: inside 45–65 upright and 60–80 reclined (Formula SAE 2026 T.2.5, read).
    const upright = findingOf(layout, 'student-lap-angle-upright', 'lap-left')
    const reclined = findingOf(layout, 'student-lap-angle-reclined', 'lap-left')
    expect(upright.worstSitting).toBe('driver/marla/0/25')
    expect(reclined.worstSitting).toBe('driver/marla/0/31')
    // T.2.3: reclined needs six or seven points; this belt has four.
    expect(findingOf(layout, 'student-reclined-points', 'belt')).toMatchObject({
      verdict: 'broken',
      level: 'must',
      remedy: { kind: 'change-property', property: 'belt-points', to: '6' },
    })
    const uprightOnly = {
      ...place,
      seat: { ...place.seat, reclineDeg: 30, reclineRange: { uprightDeg: 30, reclinedDeg: 30 } },
    }
    const rules = findingsOf(flatLayout([uprightOnly], { ruleSetId: 'student-cars-2026' })).map(
      ({ ruleId }) => ruleId,
    )
    expect(rules).not.toContain('student-reclined-points')
    expect(rules).not.toContain('student-lap-angle-reclined')
  })

  it('leaves a strap without an anchor unchecked, never clear, and asks for the anchor', () => {
    const finding = findingOf(flatLayout([flatPlace()]), 'workshop-lap-angle', 'lap-left')
    expect(finding).toMatchObject({
      verdict: 'unchecked',
      value: null,
      roomMm: null,
      problem: { kind: 'anchor-missing', strap: 'lap-left' },
      remedy: { kind: 'add-anchor', strap: 'lap-left' },
    })
  })

  it('leaves unchecked what is kept in one sitting and has no number in another, but calls broken what is broken', () => {
    // Slid 400 mm rearward the hip point is far behind the tabs: the lap straps have no path there.
    const sliding = (aftMm: number, ruleSetId = 'workshop-practice'): Layout => {
      const place = flatPlace({ anchors: lapTabs(aftMm, 200) })
      return flatLayout([{ ...place, seat: { ...place.seat, slide: { forwardMm: 0, rearwardMm: 400 } } }], {
        ruleSetId,
      })
    }
    // As drawn: atan(200/180) = 48.0°, inside the 45…90° of the set, and on the way up to 90° (quoted second-hand).
    expect(findingOf(sliding(180, 'us-pro-rally-1998'), 'pro-rally-lap-angle', 'lap-left')).toMatchObject({
      verdict: 'unchecked',
      value: null,
      worstSitting: 'driver/marla/400/20',
      problem: { kind: 'lap-anchor-not-behind', strap: 'lap-left' },
      remedy: { kind: 'none' },
    })
    // The lap wedge ends at 60° (common practice, no source): on the way the strap passes it.
    expect(findingOf(sliding(180), 'workshop-lap-angle', 'lap-left').verdict).toBe('broken')
    // As drawn: atan(200/20) = 84.289°, outside it; 19 mm further back atan(200/1), and beyond that the strap has no path.
    const steep = findingOf(sliding(20), 'workshop-lap-angle', 'lap-left')
    expect(steep).toMatchObject({ verdict: 'broken', worstSitting: 'driver/marla/19/20' })
    expect(steep.value).toBeCloseTo(89.7135, 4)
  })

  it('speaks of tabs and wraps as they are mounted', () => {
    const bar = crossTube('bar', 330, 520)
    const wrapped: Place = flatPlace({
      anchors: [
        {
          id: 'left-wrap',
          strap: 'shoulder-left',
          mount: {
            kind: 'wrap',
            tubeId: 'bar',
            point: { xMm: 330, yMm: -90, zMm: 520 },
            over: 'over',
            guideHoops: false,
          },
        },
        tabAt('shoulder-right', { xMm: 330, yMm: 90, zMm: 520 }, 'bar'),
        ...lapTabs(180, 200),
      ],
      mirrored: { shoulder: false, lap: true, sub: true },
    })
    const layout = flatLayout([wrapped], { tubes: [bar] })
    expect(findingOf(layout, 'workshop-guide-hoops', 'shoulder-left')).toMatchObject({
      verdict: 'broken',
      value: 'no',
      remedy: { kind: 'change-property', property: 'wrap-guide-hoops', to: 'yes' },
    })
    const square = findingsOf(layout).filter(({ ruleId }) => ruleId === 'workshop-wrap-square')
    expect(square.map(({ subject }) => subject)).toEqual(['shoulder-left'])
    const twisted = findingsOf(layout).filter(({ ruleId }) => ruleId === 'workshop-tab-in-line')
    expect(twisted.map(({ subject }) => subject).toSorted()).toEqual([
      'lap-left',
      'lap-right',
      'shoulder-right',
    ])
  })

  it('gives every finding an id of its own, and finite numbers', () => {
    const layout = flatLayout([
      flatPlace({ anchors: lapTabs(200, 200) }),
      flatPlace({ id: 'second', name: 'Second', anchors: lapTabs(20, 300) }),
    ])
    for (const ruleSetId of ['workshop-practice', 'student-cars-2026', 'us-road-anchorages-571-210']) {
      const findings = findingsOf({ ...layout, ruleSetId })
      expect(new Set(findings.map(({ id }) => id)).size).toBe(findings.length)
      for (const { value, roomMm } of findings) {
        expect(typeof value === 'number' ? Number.isFinite(value) : true).toBe(true)
        expect(roomMm === null || Number.isFinite(roomMm)).toBe(true)
      }
    }
  })

  it('changes nothing it is given and answers the same again', () => {
    const layout = flatLayout([flatPlace({ anchors: lapTabs(200, 200) })])
    const before = JSON.stringify(layout)
    const first = evaluateLayout(layout)
    expect(evaluateLayout(layout)).toEqual(first)
    expect(JSON.stringify(layout)).toBe(before)
  })

  it('says which rule set it does not know', () => {
    expect(() => evaluateLayout(flatLayout([flatPlace()], { ruleSetId: 'made-up' }))).toThrow('made-up')
  })
})

describe('room, remedy and zones', () => {
  const lapFinding = (aftMm: number, belowMm: number): Finding =>
    findingOf(flatLayout([flatPlace({ anchors: lapTabs(aftMm, belowMm) })]), 'workshop-lap-angle', 'lap-left')

  // The lap wedge is 45…60° seen from the hip point (common practice, no source). Distance of an anchor to the 45° line
  // is (below − aft)/√2, to the 60° line aft·sin 60° − below·cos 60°.
  it.each([
    { aftMm: 200, belowMm: 250, roomMm: 35.355, verdict: 'clear' }, // min(50/√2, 173.21 − 125)
    { aftMm: 200, belowMm: 214, roomMm: 9.899, verdict: 'tight' }, // 14/√2
    { aftMm: 200, belowMm: 214.2, roomMm: 10.041, verdict: 'clear' }, // 14.2/√2
    { aftMm: 200, belowMm: 180, roomMm: -14.142, verdict: 'broken' }, // −20/√2
  ])('an anchor $aftMm aft and $belowMm below has $roomMm mm of room and is $verdict', (row) => {
    const finding = lapFinding(row.aftMm, row.belowMm)
    expect(finding.roomMm).toBeCloseTo(row.roomMm, 3)
    expect(finding.verdict).toBe(row.verdict)
  })

  it('proposes a move that clears the finding when it is made, and the least that does', () => {
    const { remedy } = lapFinding(200, 180)
    if (remedy?.kind !== 'move-anchors') throw new Error(`no move but ${remedy?.kind}`)
    // 20 mm down or 20 mm forward reach the 45° line, no other way is shorter.
    expect(remedy.byMm).toBe(20)
    expect(['down', 'forward']).toContain(remedy.direction)
    expect(remedy.anchorIds.toSorted()).toEqual(['lap-left-anchor', 'lap-right-anchor'])
    const moved = remedy.direction === 'down' ? lapFinding(200, 200) : lapFinding(180, 180)
    expect(moved.verdict).not.toBe('broken')
  })

  it('has no remedy for what is not broken', () => {
    expect(lapFinding(200, 250).remedy).toBeNull()
  })

  it('has a zone for every anchor of the belt and for no other', () => {
    const place = flatPlace({
      anchors: [...lapTabs(200, 250), tabAt('sub-centre', { xMm: 0, yMm: 0, zMm: -200 })],
    })
    const layout = flatLayout([place])
    const evaluation = evaluateLayout(layout)
    expect(evaluation.places[0]?.zones.map(({ anchorId }) => anchorId)).toEqual([
      'lap-left-anchor',
      'lap-right-anchor',
    ])
    expect(evaluatePlace(layout, place, evaluation.ruleSet)).toEqual(evaluation.places[0])
  })
})

describe('orderedFindings', () => {
  it('puts broken before unchecked before tight before clear, and a must first in each', () => {
    const finding = findingOf(flatLayout([flatPlace()]), 'workshop-five-points', 'belt')
    const shuffled = (
      [
        ['clear', 'must'],
        ['tight', 'advice'],
        ['broken', 'advice'],
        ['unchecked', 'should'],
        ['broken', 'must'],
        ['broken', 'should'],
        ['tight', 'must'],
      ] as const
    ).map(([verdict, level]) => ({ ...finding, verdict, level }))
    expect(orderedFindings(shuffled).map(({ verdict, level }) => `${verdict} ${level}`)).toEqual([
      'broken must',
      'broken should',
      'broken advice',
      'unchecked should',
      'tight must',
      'tight advice',
      'clear must',
    ])
  })
})

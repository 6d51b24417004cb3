import { describe, expect, it } from 'vitest'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { isSeatAdjustable, sittingsOf as sittingsIn } from '../../../../src/domain/layout/evaluate/sittings'
import { findingSentence } from '../../../../src/domain/layout/wording/findingSentence'
import { STUDENT_CARS_2026_RULES } from '../../../../src/domain/rules/sets/studentCars2026'
import { flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'

const place = flatPlace()
const sittingsOf = (of: typeof place) => sittingsIn(flatLayout([of]), of)
const second = { id: 'ove', name: 'Ove', sex: 'male', statureMm: 1900, massKg: 100, measured: {} } as const
const withSeat = (change: Partial<typeof place.seat>) => flatPlace({ seat: { ...place.seat, ...change } })

describe('sittingsOf', () => {
  it('has one sitting for one person in a fixed seat', () => {
    expect(sittingsOf(place)).toEqual([
      { id: 'driver/marla/0/20', placeId: 'driver', occupantId: 'marla', slideMm: 0, reclineDeg: 20 },
    ])
  })

  it('starts with the drawn position of the first person', () => {
    const adjustable = withSeat({
      slide: { forwardMm: 60, rearwardMm: 40 },
      reclineRange: { uprightDeg: 10, reclinedDeg: 35 },
    })
    const sittings = sittingsOf({ ...adjustable, occupants: [...adjustable.occupants, second] })
    expect(sittings[0]).toMatchObject({ occupantId: 'marla', slideMm: 0, reclineDeg: 20 })
    // 2 people × 3 slides × 4 reclines: as drawn, both ends, and 30°, where the student rules' posture limit lies between them.
    expect(sittings).toHaveLength(24)
    expect(new Set(sittings.map(({ id }) => id)).size).toBe(24)
    expect(sittings[12]).toMatchObject({ occupantId: 'ove', slideMm: 0, reclineDeg: 20 })
    expect(new Set(sittings.map(({ slideMm }) => slideMm))).toEqual(new Set([0, -60, 40]))
    expect(new Set(sittings.map(({ reclineDeg }) => reclineDeg))).toEqual(new Set([20, 10, 35, 30]))
  })

  it('does not count an end of travel twice when the seat is drawn there', () => {
    const atTheEnd = withSeat({
      slide: { forwardMm: 0, rearwardMm: 40 },
      reclineRange: { uprightDeg: 20, reclinedDeg: 35 },
    })
    // 2 slides × 3 reclines: 20°, 35° and the 30° between them.
    expect(sittingsOf(atTheEnd)).toHaveLength(6)
    expect(sittingsOf(atTheEnd).every(({ slideMm }) => !Object.is(slideMm, -0))).toBe(true)
  })
})

describe('a back that reclines past 30°, where the student rules change', () => {
  const reclining = withSeat({ reclineDeg: 20, reclineRange: { uprightDeg: 20, reclinedDeg: 40 } })
  const reclinesOf = (of: typeof place, layout = flatLayout([of])) =>
    sittingsIn(layout, of).map(({ reclineDeg }) => reclineDeg)

  it('is not looked at twice at an end, nor beyond its range', () => {
    const ranged = (uprightDeg: number, reclinedDeg: number) =>
      reclinesOf(withSeat({ reclineDeg: uprightDeg, reclineRange: { uprightDeg, reclinedDeg } }))
    expect(ranged(20, 30)).toEqual([20, 30])
    expect(ranged(30, 40)).toEqual([30, 40])
    expect(ranged(20, 29.9)).toEqual([20, 29.9])
    expect(ranged(30.1, 40)).toEqual([30.1, 40])
    expect(ranged(25, 40)).toEqual([25, 40, 30])
  })

  it('is looked at where a rule of an own set changes too', () => {
    const [first] = STUDENT_CARS_2026_RULES.rules
    if (first === undefined) throw new Error('no rule')
    const own = {
      ...STUDENT_CARS_2026_RULES,
      id: 'own',
      rules: [{ ...first, when: { reclineAboveDeg: 24 } }],
    }
    expect(reclinesOf(reclining, flatLayout([reclining], { ownRuleSets: [own] }))).toEqual([20, 40, 30, 24])
  })

  // Formula SAE 2026 T.2.5, T.2.1 d and e (read): 45–65° at 30° or less, 60–80° beyond. A person whose hip point is 60 mm up the
  // torso line from the seat's turns with the back: the line from the tab stands at 59.1° at 30° and at 60.05° at 40°.
  it('breaks the reclined rule just past 30° although the reclined end keeps it', () => {
    const [marla] = reclining.occupants
    if (marla === undefined) throw new Error('nobody')
    const tall = { ...marla, measured: { hipHeightMm: 157 } }
    const lap = tabPair('lap', { xMm: 170, yMm: 200, zMm: -182 })
    // A shell that ends above the hips, so that no lap strap needs a slot.
    const sideOutline = [
      { xMm: 120, zMm: 150 },
      { xMm: 120, zMm: 480 },
      { xMm: 100, zMm: 480 },
    ]
    const of = { ...reclining, seat: { ...reclining.seat, sideOutline }, occupants: [tall], anchors: lap }
    const layout = flatLayout([of], { ruleSetId: 'student-cars-2026' })
    const find = (id: string) =>
      evaluateLayout(layout, { extent: 'what-moves' }).places[0]?.findings.find(
        ({ ruleId, subject }) => ruleId === id && subject === 'lap-left',
      )
    const angleDeg = (reclineDeg: number) => {
      const turn = (reclineDeg * Math.PI) / 180
      return (Math.atan2(60 * Math.cos(turn) + 182, 170 - 60 * Math.sin(turn)) * 180) / Math.PI
    }
    expect(angleDeg(30)).toBeLessThan(60)
    expect(angleDeg(40)).toBeGreaterThan(60)
    const reclined = find('student-lap-angle-reclined')
    expect(reclined?.verdict).toBe('broken')
    expect(reclined?.value).toBeCloseTo(angleDeg(30), 9)
    expect(reclined?.worstSitting).toBe('driver/marla/0/30')
    if (reclined === undefined) throw new Error('no finding')
    expect(findingSentence(reclined, layout).what).toContain('(worst: Marla, back just past 30°)')
    const upright = find('student-lap-angle-upright')
    expect(upright?.verdict).not.toBe('broken')
    expect(upright?.worstSitting).toBe('driver/marla/0/30')
    if (upright === undefined) throw new Error('no finding')
    expect(findingSentence(upright, layout).what).toContain('(closest to the limit: Marla, back at 30°)')
  })
})

describe('isSeatAdjustable', () => {
  it('is so when the seat slides either way or its back reclines', () => {
    expect(isSeatAdjustable(place.seat)).toBe(false)
    expect(isSeatAdjustable({ ...place.seat, slide: { forwardMm: 1, rearwardMm: 0 } })).toBe(true)
    expect(isSeatAdjustable({ ...place.seat, slide: { forwardMm: 0, rearwardMm: 1 } })).toBe(true)
    expect(isSeatAdjustable({ ...place.seat, reclineRange: { uprightDeg: 19, reclinedDeg: 20 } })).toBe(true)
  })
})

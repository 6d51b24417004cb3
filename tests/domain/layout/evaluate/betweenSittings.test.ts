import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bodyOf } from '../../../../src/domain/body/body'
import { posedBody } from '../../../../src/domain/body/posed'
import type { Tube } from '../../../../src/domain/geometry/tube'
import type { PointMm } from '../../../../src/domain/geometry/point'
import type { Layout, Place } from '../../../../src/domain/layout/document/layout'
import { evaluateLayout, layoutNumbers } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { ruleSetMatrix } from '../../../../src/domain/layout/evaluate/ruleSetMatrix'
import { sittingsOf } from '../../../../src/domain/layout/evaluate/sittings'
import { sittingsUnder, solvedSittings } from '../../../../src/domain/layout/evaluate/solvedSittings'
import { findingSentence } from '../../../../src/domain/layout/wording/findingSentence'
import { isWithin, marginInside } from '../../../../src/domain/rules/check'
import type { QuantityRule, RuleSet } from '../../../../src/domain/rules/rule'
import { ruleSubjects } from '../../../../src/domain/rules/subjects'
import { RULE_SETS, ruleSetById } from '../../../../src/domain/rules/ruleSets'
import { seatPose } from '../../../../src/domain/straps/seatPose'
import { solvePlace } from '../../../../src/domain/straps/solve'
import { exampleLayout } from '../../../support/exampleLayouts'
import { crossTube, flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'
import { quantityRule } from '../../zones/zoneCases'

const WORKSHOP = ruleSetById('workshop-practice')
if (WORKSHOP === null) throw new Error('no workshop set')

const seated = (place: Place, change: Partial<Place['seat']>): Place => ({
  ...place,
  seat: { ...place.seat, ...change },
})

const ownSet = (...rules: readonly QuantityRule[]): RuleSet => ({ ...WORKSHOP, id: 'own-test', rules })

const bar = (id: string, at: PointMm, outsideDiameterMm: number): Tube => ({
  ...crossTube(id, at.xMm, at.zMm, 'cage'),
  outsideDiameterMm,
  wallMm: 1,
})

const findingIn = (layout: Layout, ruleId: string, subject: string) => {
  const found = evaluateLayout(layout, { extent: 'what-moves' }).places[0]?.findings.find(
    (each) => each.ruleId === ruleId && each.subject === subject,
  )
  if (found === undefined) throw new Error(`no finding ${ruleId} ${subject}`)
  return found
}

describe('a helmet that passes under a tube half way', () => {
  const still = flatPlace()
  const [marla] = still.occupants
  if (marla === undefined) throw new Error('nobody')
  const { helmet } = posedBody(bodyOf(marla), seatPose(still.seat, 0, 20), still.seat.hipHeightMm)
  /** 20 mm above the helmet when the seat has slid 75 mm rearward, half way. Source: Pythagoras. */
  const tube = bar(
    'roof',
    { xMm: helmet.centre.xMm + 75, yMm: 0, zMm: helmet.centre.zMm + helmet.radiusMm + 20 + 19 },
    38,
  )
  const clearMm = (slideMm: number): number =>
    Math.hypot(75 - slideMm, helmet.radiusMm + 39) - helmet.radiusMm - 19
  const place = seated(still, { slide: { forwardMm: 0, rearwardMm: 150 } })
  const layoutWith = (min: number): Layout =>
    flatLayout([place], {
      tubes: [tube],
      ruleSetId: 'own-test',
      ownRuleSets: [ownSet(quantityRule('helmet-clearance', min, null, { id: 'helmet' }))],
    })

  it('is found where it is nearest, and said in words', () => {
    expect(clearMm(0)).toBeGreaterThan(30)
    const layout = layoutWith(30)
    const finding = findingIn(layout, 'helmet', 'head')
    expect(finding).toMatchObject({ verdict: 'broken', worstSitting: 'driver/marla/75/20' })
    expect(finding.value).toBeCloseTo(20, 9)
    expect(findingSentence(finding, layout).what).toContain('(worst: Marla, seat 75 mm rearward)')
  })

  it('is told too where it comes near its limit and keeps it', () => {
    const layout = layoutWith(0.5)
    const finding = findingIn(layout, 'helmet', 'head')
    expect(finding.verdict).toBe('clear')
    expect(finding.value).toBeCloseTo(20, 9)
    expect(findingSentence(finding, layout).what).toContain(
      '(closest to the limit: Marla, seat 75 mm rearward)',
    )
  })

  it('is not told where it stays far from its limit', () => {
    const { places } = layoutNumbers(layoutWith(-60))
    expect(places[0]?.sittings.map(({ sitting }) => sitting.slideMm)).toEqual([0, 150])
  })

  it('passes on its limit', () => {
    expect(findingIn(layoutWith(20), 'helmet', 'head').verdict).toBe('clear')
    expect(findingIn(layoutWith(20.001), 'helmet', 'head').verdict).toBe('broken')
  })
})

describe('a strap that sweeps over a thin rod half way', () => {
  const tab = { xMm: 150, yMm: 200, zMm: -250 }
  const place = seated(flatPlace({ anchors: tabPair('lap', tab) }), {
    slide: { forwardMm: 0, rearwardMm: 60 },
  })
  /** Seen from the side a lap strap runs at the hip point: the rod lies on that line when the seat has slid 20 mm. */
  const rod = bar('rod', { xMm: (tab.xMm + 20) / 2, yMm: 0, zMm: tab.zMm / 2 }, 4)
  const layout = flatLayout([place], { tubes: [rod] })

  it('is found although it is clear at both ends and at the positions of the lattice', () => {
    const clearances = solvedSittings({ ...layout, ruleSetId: 'workshop-practice' }, place)
      .filter(({ sitting }) => [0, 60].includes(sitting.slideMm))
      .map(({ solved }) => solved.quantities.find(({ id }) => id === 'tube-clearance')?.value ?? 0)
    expect(Math.min(...clearances)).toBeGreaterThan(4)
    const finding = findingIn(layout, 'workshop-clear-of-tubes', 'lap-left')
    expect(finding).toMatchObject({ verdict: 'broken', worstSitting: 'driver/marla/20/20' })
    expect(finding.value).toBeCloseTo(-2, 9)
  })

  it('leaves the other numbers of the strap unchecked, also under a set that asks nothing of tubes', () => {
    const angle = quantityRule('lap-angle', 30, 80, { id: 'angle' })
    const under = (tubes: readonly Tube[]) =>
      findingIn(
        { ...layout, tubes, ruleSetId: 'own-test', ownRuleSets: [ownSet(angle)] },
        'angle',
        'lap-left',
      )
    expect(under([]).verdict).toBe('clear')
    expect(under([rod])).toMatchObject({
      verdict: 'unchecked',
      worstSitting: 'driver/marla/20/20',
      problem: { kind: 'through-tube', tubeId: 'rod' },
    })
  })

  it('comes after the sittings that a place always has', () => {
    const ids = layoutNumbers(layout).places[0]?.sittings.map(({ sitting }) => sitting.id) ?? []
    const always = sittingsOf(layout, place).map(({ id }) => id)
    expect(ids.slice(0, always.length)).toEqual(always)
    expect(ids.slice(always.length)).toContain('driver/marla/20/20')
  })
})

describe('a strap that the backrest is in the way of half way', () => {
  /** Ahead of the rim at the front end and behind it no more at the rear end; in between only the shell is between tab and shoulder. */
  const verdictAt = (xMm: number, rearwardMm: number) => {
    const anchors = [
      ...tabPair('shoulder', { xMm, yMm: 100, zMm: 350 }),
      ...tabPair('lap', { xMm: 150, yMm: 260, zMm: -190 }),
    ]
    const place = seated(flatPlace({ anchors }), { slide: { forwardMm: 0, rearwardMm } })
    const plan = quantityRule('shoulder-plan', -90, 90, { id: 'plan' })
    const layout = flatLayout([place], { ruleSetId: 'own-test', ownRuleSets: [ownSet(plan)] })
    const ends = solvedSittings(layout, place).slice(0, 2)
    const [still] = ends.map(({ solved }) => solved.problems.filter(({ strap }) => strap === 'shoulder-left'))
    expect(ends.map(({ sitting }) => sitting.slideMm)).toEqual([0, rearwardMm])
    expect(still).toEqual([])
    return findingIn(layout, 'plan', 'shoulder-left')
  }

  it('is unchecked there, at a position of the lattice', () => {
    // Looked at: 0, 40, 80 and 120 mm; without a path from about 76 to 95 mm.
    expect(verdictAt(360, 120)).toMatchObject({
      verdict: 'unchecked',
      worstSitting: 'driver/marla/80/20',
      problem: { kind: 'no-slot', strap: 'shoulder-left' },
    })
  })

  it('is unchecked there, between the positions of the lattice, where it starts and stops to pass the rim', () => {
    // Looked at: 0, 50 and 100 mm; without a path from about 60 to 79 mm.
    const finding = verdictAt(345, 100)
    expect(finding).toMatchObject({ verdict: 'unchecked', problem: { kind: 'no-slot' } })
    const slideMm = Number(finding.worstSitting?.split('/')[2])
    expect(slideMm).toBeGreaterThan(55)
    expect(slideMm).toBeLessThan(85)
  })
})

const sliding = (layout: Layout): Layout => ({
  ...layout,
  places: layout.places.map((place) =>
    seated(place, {
      slide: { forwardMm: 110, rearwardMm: 90 },
      reclineRange: { uprightDeg: place.seat.reclineDeg - 6, reclinedDeg: place.seat.reclineDeg + 13 },
    }),
  ),
})

describe('what decides in between', () => {
  it('is the same in the matrix as in the findings of each set', () => {
    let inBetween = 0
    const layout = sliding(exampleLayout('rock-buggy.layout.json'))
    const [place] = layout.places
    if (place === undefined) throw new Error('no place')
    const always = new Set(sittingsOf(layout, place).map(({ id }) => id))
    const matrix = ruleSetMatrix(layout, place)
    for (const { id } of RULE_SETS) {
      const findings = layoutNumbers({ ...layout, ruleSetId: id }).places[0]?.findings ?? []
      for (const { ruleId, subject, verdict, value, quantity, worstSitting } of findings) {
        const entry = matrix.rows
          .find((row) => row.measured === quantity && row.subject === subject)
          ?.entries.find(({ rule, setId }) => rule.id === ruleId && setId === id)
        expect(entry?.value).toBe(value)
        expect(entry?.verdict).toBe(verdict === 'kept' ? 'clear' : verdict)
        if (worstSitting !== null && !always.has(worstSitting)) inBetween += 1
      }
    }
    expect(inBetween).toBeGreaterThan(10)
  })

  it('is told once, whatever the set', () => {
    const layout = sliding(exampleLayout('trail-car-two-seat.layout.json'))
    let told = 0
    for (const place of layout.places) {
      const under = sittingsUnder(layout, place)
      const always = sittingsOf(layout, place).length
      for (const set of RULE_SETS) {
        const sittings = under(set)
        expect(new Set(sittings.map(({ sitting }) => sitting.id)).size).toBe(sittings.length)
        told += sittings.length - always
      }
    }
    expect(told).toBeGreaterThan(0)
  })
})

/** Every position to the mm given and the degree, one by one. */
const scanned = (layout: Layout, place: Place, stepMm: number) => {
  const { seat, belt, anchors, occupants } = place
  const [who] = occupants
  if (who === undefined) throw new Error('nobody')
  const body = bodyOf(who)
  const { slide, reclineRange } = seat
  const quantities = []
  for (let slideMm = -slide.forwardMm; slideMm <= slide.rearwardMm; slideMm += stepMm)
    for (let deg = reclineRange.uprightDeg; deg <= reclineRange.reclinedDeg; deg += 1) {
      const pose = seatPose(seat, slideMm, deg)
      const posed = posedBody(body, pose, seat.hipHeightMm)
      quantities.push(
        ...solvePlace({ seat, belt, anchors, tubes: layout.tubes, pose, body: posed }).quantities,
      )
    }
  return quantities
}

describe('a clearance', () => {
  const point = fc.record({
    xMm: fc.integer({ min: -500, max: 700 }),
    yMm: fc.constant(0),
    zMm: fc.integer({ min: -400, max: 900 }),
  })

  it('that any position breaks is never called kept, whatever tubes are about and however the seat moves', () => {
    let broken = 0
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 1, maxLength: 3 }),
        fc.constantFrom(4, 20, 40),
        fc.integer({ min: 0, max: 120 }),
        fc.integer({ min: 0, max: 120 }),
        fc.integer({ min: 0, max: 12 }),
        (points, outsideDiameterMm, forwardMm, rearwardMm, turnDeg) => {
          const place = seated(
            flatPlace({
              anchors: [
                ...tabPair('lap', { xMm: 200, yMm: 260, zMm: -230 }),
                ...tabPair('shoulder', { xMm: 420, yMm: 100, zMm: 470 }),
              ],
            }),
            {
              slide: { forwardMm, rearwardMm },
              reclineRange: { uprightDeg: 20, reclinedDeg: 20 + turnDeg },
            },
          )
          const layout = flatLayout([place], {
            tubes: points.map((at, index) => bar(`tube-${index}`, at, outsideDiameterMm)),
          })
          const rules = (['tube-clearance', 'helmet-clearance'] as const).map((quantity) =>
            quantityRule(quantity, 0, null),
          )
          const seen = sittingsUnder(
            layout,
            place,
          )(ownSet(...rules)).flatMap(({ solved }) => solved.quantities)
          const all = scanned(layout, place, 3)
          const { belt, anchors, seat } = place
          for (const rule of rules)
            for (const subject of ruleSubjects(rule, { belt, anchors, seat, tubes: layout.tubes })) {
              const least = (of: typeof all): number =>
                Math.min(
                  ...of
                    .filter(({ id, subject: whose }) => id === rule.quantity && whose === subject)
                    .map(({ value }) => marginInside(value, rule)),
                )
              if (isWithin(least(all), { min: 0, max: null })) continue
              broken += 1
              expect(least(seen)).toBeLessThan(0)
              expect(least(seen)).toBeLessThan(least(all) + 1)
            }
        },
      ),
      { numRuns: 60 },
    )
    expect(broken).toBeGreaterThan(20)
  })
})

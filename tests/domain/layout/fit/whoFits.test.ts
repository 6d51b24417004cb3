import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Sex } from '../../../../src/domain/body/occupant'
import { type SurveyedPerson, surveyedPeople } from '../../../../src/domain/body/survey/surveyed'
import type { Place } from '../../../../src/domain/layout/document/layout'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { solvedSittings } from '../../../../src/domain/layout/evaluate/solvedSittings'
import { fitCase } from '../../../../src/domain/layout/fit/fitRules'
import { personVerdicts } from '../../../../src/domain/layout/fit/personVerdicts'
import { type WhoFits, whoFits } from '../../../../src/domain/layout/fit/whoFits'
import type { QuantityRule, RuleSet } from '../../../../src/domain/rules/rule'
import { RULE_SETS, ruleSetById } from '../../../../src/domain/rules/ruleSets'
import { exampleIndex, exampleLayout } from '../../../support/exampleLayouts'
import { crossTube, flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'
import { quantityRule } from '../../zones/zoneCases'

const people = surveyedPeople()
/** Some of everybody, spread over both surveys and sexes. */
const some = people.filter((_, index) => index % 40 === 7)

const setOf = (...rules: readonly QuantityRule[]): RuleSet => {
  const [any] = RULE_SETS
  if (any === undefined) throw new Error('no rule set')
  return { ...any, id: 'test', rules }
}

const flat = (change: Partial<Place['seat']> = {}): Place => {
  const place = flatPlace()
  return {
    ...place,
    seat: { ...place.seat, ...change },
    anchors: [
      ...tabPair('shoulder', { xMm: 500, yMm: 100, zMm: 480 }),
      ...tabPair('lap', { xMm: 110, yMm: 220, zMm: -150 }),
    ],
  }
}

const passingOf = (result: WhoFits, ruleIndex = 0): number => {
  const tally = result.rules[ruleIndex]?.tally
  if (tally === undefined) throw new Error('no such rule')
  return tally.female.passing + tally.male.passing
}

describe('a position between the ends of the travel', () => {
  it('counts for a person, but is not told apart', () => {
    const [marla] = flatPlace().occupants
    if (marla === undefined) throw new Error('nobody')
    const place = flat({ slide: { forwardMm: 0, rearwardMm: 100 } })
    const layout = flatLayout([place])
    const { helmet } = solvedSittings(layout, place)[0]?.scene.body ?? {}
    if (helmet === undefined) throw new Error('nobody sits there')
    // A tube 10 mm above the helmet once the seat has slid 50 mm rearward, half way; further away at both ends.
    const roof = crossTube('roof', helmet.centre.xMm + 50, helmet.centre.zMm + helmet.radiusMm + 19 + 10)
    const set = setOf(quantityRule('helmet-clearance', 12, null))
    const fit = fitCase({ ...layout, tubes: [roof] }, place, set)
    const verdicts = personVerdicts(fit, marla)
    expect(fit.positions.map(({ slideMm }) => slideMm)).toEqual([0, 100])
    expect(verdicts.byPosition[0]?.slice(0, 2)).toEqual(['passing', 'passing'])
    expect(verdicts.overall).toEqual(['broken'])
  })
})

describe('one person', () => {
  it.each(exampleIndex.map(({ file }) => file))(
    'stands to every rule of %s as the findings of that person alone say',
    (file) => {
      const layout = exampleLayout(file)
      for (const person of people.filter((_, index) => index % 150 === 11)) {
        const { survey: _survey, ...occupant } = person
        const alone = {
          ...layout,
          places: layout.places.map((place) => ({ ...place, occupants: [occupant] })),
        }
        const { places, ruleSet } = evaluateLayout(alone, { extent: 'what-moves' })
        for (const [index, place] of alone.places.entries()) {
          const fit = fitCase(alone, place, ruleSet)
          const { overall } = personVerdicts(fit, person)
          const findings = places[index]?.findings ?? []
          for (const [ruleIndex, { rule }] of fit.rules.entries()) {
            const verdicts = findings.filter(({ ruleId }) => ruleId === rule.id).map(({ verdict }) => verdict)
            const expected = verdicts.includes('broken')
              ? 'broken'
              : verdicts.includes('unchecked')
                ? 'unchecked'
                : 'passing'
            expect(verdicts.length, `${rule.id} speaks`).toBeGreaterThan(0)
            expect(overall[ruleIndex], `${person.id} ${rule.id}`).toBe(expected)
          }
          // And no quantity rule with a finding was left out.
          const asked = new Set(fit.rules.map(({ rule }) => rule.id))
          const quantityRules = new Set(
            ruleSet.rules.flatMap((rule) => (rule.kind === 'quantity' ? [rule.id] : [])),
          )
          const unasked = findings.filter(({ ruleId }) => quantityRules.has(ruleId) && !asked.has(ruleId))
          expect(unasked).toEqual([])
        }
      }
    },
  )
})

/** Count of people by sex for whom a hand-written formula lies within limits. */
const countedBy = (
  valueOf: (person: SurveyedPerson) => number,
  min: number,
  max: number,
): Readonly<Record<Sex, number>> => {
  const count = (sex: Sex): number =>
    people.filter((person) => {
      const value = valueOf(person)
      return person.sex === sex && value >= min && value <= max
    }).length
  return { female: count('female'), male: count('male') }
}

const sin = (deg: number): number => Math.sin((deg * Math.PI) / 180)
const cos = (deg: number): number => Math.cos((deg * Math.PI) / 180)

/** Hip joint above the compressed seat: 97 + 6·(S − 1511)/358 held to 92…106 (body/README.md); the flat seat was drawn for 97. */
const hipRiseMm = ({ statureMm }: SurveyedPerson): number =>
  Math.min(106, Math.max(92, 97 + (6 * (statureMm - 1511)) / 358)) - 97

/** Trochanter height of the 1988 survey's least-squares lines, rounded as published with them. */
const trochanterMm = ({ sex, statureMm, massKg }: SurveyedPerson): number =>
  sex === 'female'
    ? 70.113 + 0.000476 * statureMm + 0.21427 * massKg
    : 53.864 + 0.024839 * statureMm - 0.14129 * massKg

describe('counts', () => {
  it('of a lap angle agree with plane trigonometry on every person', () => {
    // The strap runs straight from (110, −150) to the hip point, which lies `rise` up the torso line at 20° recline.
    const lapAngle = (person: SurveyedPerson): number => {
      const rise = hipRiseMm(person)
      return (Math.atan2(rise * cos(20) + 150, 110 - rise * sin(20)) * 180) / Math.PI
    }
    const place = flat()
    for (const [min, max] of [
      [54, 54.5],
      [54.2, 60],
      [30, 54.3],
    ] as const) {
      const result = whoFits(flatLayout([place]), place, setOf(quantityRule('lap-angle', min, max)), people)
      const expected = countedBy(lapAngle, min, max)
      expect(expected.female + expected.male).toBeGreaterThan(0)
      expect(expected.female + expected.male).toBeLessThan(1200)
      expect(result.rules[0]?.tally.female.passing).toBe(expected.female)
      expect(result.rules[0]?.tally.male.passing).toBe(expected.male)
    }
  })

  it('of a shoulder height agree with the hip-to-shoulder formula on every person, and name the shoulder as what limits', () => {
    // Shoulder point = hip point + 0.95·(mid-shoulder − trochanter) up the torso line; the tab's hole is 480 above the datum.
    const heightMm = (person: SurveyedPerson): number => {
      const trunk = 0.95 * ((person.measured.midShoulderHeightMm ?? Number.NaN) - trochanterMm(person))
      return (hipRiseMm(person) + trunk) * cos(20) - 480
    }
    const place = flat()
    const result = whoFits(
      flatLayout([place]),
      place,
      setOf(quantityRule('shoulder-height', -20, 20)),
      people,
    )
    const expected = countedBy(heightMm, -20, 20)
    expect(result.rules[0]?.tally.female.passing).toBe(expected.female)
    expect(result.rules[0]?.tally.male.passing).toBe(expected.male)
    expect(expected.female + expected.male).toBeGreaterThan(100)
    expect(result.rules[0]?.limiting?.measure).toBe('midShoulderHeightMm')
    expect(result.rules[0]?.limiting?.strength).toBeGreaterThan(0.8)
  })

  it('put everybody of both sexes into one of three, for every rule and overall', () => {
    const layout = exampleLayout('trail-car-two-seat.layout.json')
    const ruleSet = ruleSetById(layout.ruleSetId)
    const [place] = layout.places
    if (ruleSet === null || place === undefined) throw new Error('no place')
    const result = whoFits(layout, place, ruleSet, people)
    for (const { tally, outcomes } of [...result.rules, ...result.overall]) {
      for (const sex of ['female', 'male'] as const)
        expect(tally[sex].passing + tally[sex].broken + tally[sex].unchecked).toBe(600)
      expect(outcomes).toHaveLength(1200)
    }
    // Who passes every rule passes each of them.
    const all = result.overall.at(-1)
    for (const [index, outcome] of (all?.outcomes ?? []).entries()) {
      const each = result.rules.map(({ outcomes }) => outcomes[index])
      expect(outcome === 'passing').toBe(each.every((one) => one === 'passing'))
    }
  })

  it('never fall when a limit is widened', () => {
    const place = flat({ slide: { forwardMm: 30, rearwardMm: 30 } })
    const quantities = [
      'shoulder-drop',
      'shoulder-height',
      'lap-angle',
      'lap-over-asis',
      'spine-load-share',
    ] as const
    fc.assert(
      fc.property(
        fc.constantFrom(...quantities),
        fc.double({ min: -60, max: 90, noNaN: true }),
        fc.double({ min: 0, max: 60, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (quantity, min, width, below, above) => {
          const counted = (low: number, high: number): number =>
            passingOf(whoFits(flatLayout([place]), place, setOf(quantityRule(quantity, low, high)), some))
          const max = min + width
          const narrow = counted(min, max)
          expect(counted(min - below, max)).toBeGreaterThanOrEqual(narrow)
          expect(counted(min, max + above)).toBeGreaterThanOrEqual(narrow)
        },
      ),
      { numRuns: 60 },
    )
  })

  it('never rise when the seat is given another position, and say in which most do not pass', () => {
    const rules = setOf(quantityRule('lap-angle', 50, 60))
    const fixed = flat()
    const sliding = flat({ slide: { forwardMm: 60, rearwardMm: 0 } })
    const still = whoFits(flatLayout([fixed]), fixed, rules, people)
    const slid = whoFits(flatLayout([sliding]), sliding, rules, people)
    expect(still.positions).toEqual([{ slideMm: 0, reclineDeg: 20 }])
    expect(slid.positions).toEqual([
      { slideMm: 0, reclineDeg: 20 },
      { slideMm: -60, reclineDeg: 20 },
    ])
    // 60 mm further forward the lap angle is near atan(150/170) = 41°: nobody is left.
    expect(passingOf(still)).toBe(1200)
    expect(passingOf(slid)).toBe(0)
    expect(slid.rules[0]?.notPassingAt).toEqual([0, 1200])
  })

  it('do not take a missing number for a pass', () => {
    const place = { ...flat(), anchors: [] }
    const result = whoFits(flatLayout([place]), place, setOf(quantityRule('lap-angle', 0, 90)), some)
    expect(result.rules[0]?.outcomes.every((outcome) => outcome === 'unchecked')).toBe(true)
  })

  it('take musts alone, then musts and shoulds, then all; a level without any rule is left out', () => {
    const place = flat()
    const kept = quantityRule('lap-angle', 0, 90, { id: 'kept', level: 'should' })
    const broken = quantityRule('lap-angle', 80, 90, { id: 'broken', level: 'advice' })
    const result = whoFits(flatLayout([place]), place, setOf(kept, broken), some)
    expect(
      result.overall.map(({ level, ruleCount, tally }) => [
        level,
        ruleCount,
        tally.female.passing + tally.male.passing,
      ]),
    ).toEqual([
      ['should', 1, some.length],
      ['advice', 2, 0],
    ])
  })

  it('do not depend on who sits there, and leave hardware to a list of its own', () => {
    const layout = exampleLayout('everything-wrong.layout.json')
    const ruleSet = ruleSetById(layout.ruleSetId)
    const [place] = layout.places
    if (ruleSet === null || place === undefined) throw new Error('no place')
    const result = whoFits(layout, place, ruleSet, some)
    const [only] = place.occupants
    if (only === undefined) throw new Error('no occupant')
    const other = { ...place, occupants: [{ ...only, id: 'x', statureMm: 2000, massKg: 140 }] }
    expect(whoFits(layout, other, ruleSet, some)).toEqual(result)
    const broken =
      evaluateLayout(layout, { extent: 'what-moves' }).places[0]?.findings.filter(
        ({ verdict }) => verdict === 'broken',
      ) ?? []
    const properties = new Set(ruleSet.rules.flatMap((rule) => (rule.kind === 'property' ? [rule.id] : [])))
    expect(new Set(result.brokenHardware.map(({ ruleId }) => ruleId))).toEqual(
      new Set(broken.map(({ ruleId }) => ruleId).filter((id) => properties.has(id))),
    )
    expect(result.brokenHardware.length).toBeGreaterThan(0)
  })
})

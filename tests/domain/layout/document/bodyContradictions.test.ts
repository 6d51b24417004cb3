import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { BODY_MEASURES, type BodyMeasure, type Occupant } from '../../../../src/domain/body/occupant'
import { surveyedPeople } from '../../../../src/domain/body/survey/surveyed'
import { STUDENT_TEMPLATE_MEASURES } from '../../../../src/domain/body/template'
import { bodyContradictions } from '../../../../src/domain/layout/document/bodyContradictions'
import { LIMITS } from '../../../../src/domain/layout/document/limits'
import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import { rockBuggyWith } from '../../../support/exampleLayouts'

const marla: Occupant = {
  id: 'marla',
  name: 'Marla',
  sex: 'male',
  statureMm: 1755,
  massKg: 85,
  measured: {},
}
const of = (measured: Occupant['measured'], change: Partial<Occupant> = {}) =>
  bodyContradictions({ ...marla, ...change, measured }, ['occupants', 0])
const measuresOf = (measured: Occupant['measured'], change: Partial<Occupant> = {}) =>
  of(measured, change).map(({ path }) => path.at(-1))

describe('measured values of one person', () => {
  // Gordon et al. 1989 and 2014: as measured, nobody of them contradicts himself.
  it('are those of 1,200 people surveyed, all typed or any one of them', () => {
    const people = surveyedPeople()
    expect(people.length).toBe(1200)
    const refused = people.flatMap((person) => [
      ...bodyContradictions(person, [person.id]),
      ...(Object.keys(person.measured) as BodyMeasure[]).flatMap((measure) =>
        bodyContradictions({ ...person, measured: { [measure]: person.measured[measure] } }, [person.id]),
      ),
    ])
    expect(refused).toEqual([])
  })

  it('may be the student template’s on anybody of ordinary size', () => {
    // Formula SAE 2026 F.5.6, laid over the smallest and the largest of the two surveys' people as well.
    for (const person of surveyedPeople())
      expect(
        bodyContradictions({ ...person, measured: STUDENT_TEMPLATE_MEASURES }, ['occupants', 0]),
      ).toEqual([])
  })

  it('are never refused where nothing is typed', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('female' as const, 'male' as const),
        fc.double({ min: LIMITS.statureMm.min, max: LIMITS.statureMm.max, noNaN: true }),
        fc.double({ min: LIMITS.massKg.min, max: LIMITS.massKg.max, noNaN: true }),
        (sex, statureMm, massKg) => {
          expect(of({}, { sex, statureMm, massKg })).toEqual([])
        },
      ),
    )
  })

  it.each([
    {
      what: 'a head below the shoulders',
      measured: { headCentreAboveHipMm: 400 },
      at: 'headCentreAboveHipMm',
    },
    {
      what: 'shoulders at the head’s height',
      measured: { hipToShoulderMm: 700 },
      at: 'hipToShoulderMm',
    },
    {
      what: 'a crown below the shoulders',
      measured: { sittingHeightMm: 800, midShoulderHeightMm: 700 },
      at: 'sittingHeightMm',
    },
    {
      what: 'a trunk longer than seat to shoulder',
      measured: { midShoulderHeightMm: 560, hipToShoulderMm: 560, headCentreAboveHipMm: 750 },
      at: 'midShoulderHeightMm',
    },
    {
      what: 'a head’s middle at the crown',
      measured: { sittingHeightMm: 900, headCentreAboveHipMm: 850 },
      at: 'sittingHeightMm',
    },
    { what: 'hips narrower than their bones', measured: { hipBreadthMm: 230 }, at: 'hipBreadthMm' },
    {
      what: 'hip bones wider than the hips',
      measured: { frontHipBoneBreadthMm: 420 },
      at: 'frontHipBoneBreadthMm',
    },
    {
      what: 'straps wider apart than the shoulders',
      measured: { shoulderStrapSpacingMm: 490 },
      at: 'shoulderStrapSpacingMm',
    },
    {
      what: 'a knee no higher than the thigh is thick',
      measured: { thighClearanceMm: 390, kneeHeightMm: 420 },
      at: 'kneeHeightMm',
    },
    { what: 'a belly beyond the knees', measured: { abdominalDepthMm: 600 }, at: 'abdominalDepthMm' },
    { what: 'a hip joint above the thigh', measured: { hipHeightMm: 250 }, at: 'hipHeightMm' },
    {
      what: 'a shoulder that is all curve',
      measured: { shoulderArcRadiusMm: 200, hipToShoulderMm: 450 },
      at: 'shoulderArcRadiusMm',
    },
    { what: 'a lap strap far ahead of the belly', measured: { lapTissueMm: 290 }, at: 'lapTissueMm' },
    {
      what: 'a sitting height of another person',
      measured: { sittingHeightMm: 1200 },
      at: 'sittingHeightMm',
    },
    { what: 'a knee height of another person', measured: { kneeHeightMm: 790 }, at: 'kneeHeightMm' },
    { what: 'a thigh length of another person', measured: { buttockKneeMm: 880 }, at: 'buttockKneeMm' },
    {
      what: 'a shoulder height of another person',
      measured: { midShoulderHeightMm: 400 },
      at: 'midShoulderHeightMm',
    },
  ])('are refused for $what', ({ measured, at }) => {
    expect(measuresOf(measured)).toEqual([at])
  })

  // Each limit with its own numbers: on it, and 0.1 mm beyond.
  it.each([
    { larger: 'headCentreAboveHipMm', smaller: 'hipToShoulderMm', at: 480, byMm: 50 },
    { larger: 'sittingHeightMm', smaller: 'midShoulderHeightMm', at: 640, byMm: 120 },
    { larger: 'sittingHeightMm', smaller: 'headCentreAboveHipMm', at: 800, byMm: 80 },
    { larger: 'midShoulderHeightMm', smaller: 'hipToShoulderMm', at: 500, byMm: 20 },
    { larger: 'hipBreadthMm', smaller: 'frontHipBoneBreadthMm', at: 250, byMm: 20 },
    { larger: 'bideltoidBreadthMm', smaller: 'shoulderStrapSpacingMm', at: 300, byMm: 60 },
    { larger: 'kneeHeightMm', smaller: 'thighClearanceMm', at: 330, byMm: 150 },
    { larger: 'buttockKneeMm', smaller: 'abdominalDepthMm', at: 480, byMm: 100 },
    { larger: 'thighClearanceMm', smaller: 'hipHeightMm', at: 150, byMm: 5 },
  ] as const)('$larger is at least $byMm mm more than $smaller', ({ larger, smaller, at, byMm }) => {
    expect(measuresOf({ [larger]: at + byMm, [smaller]: at })).not.toContain(larger)
    expect(measuresOf({ [larger]: at + byMm - 0.1, [smaller]: at })).toContain(larger)
  })

  // Shares of a stature of 1 800 mm, on the limit and 0.1 mm beyond.
  it.each([
    { measure: 'sittingHeightMm', least: 756, most: 1116 },
    { measure: 'midShoulderHeightMm', least: 450, most: 810 },
    { measure: 'buttockKneeMm', least: 486, most: 864 },
    { measure: 'kneeHeightMm', least: 414, most: 720 },
  ] as const)('$measure of a stature of 1800 mm lies between $least and $most mm', (row) => {
    const says = (value: number) =>
      of({ [row.measure]: value }, { statureMm: 1800 }).filter((found) =>
        found.says.includes('with a stature of 1800 mm'),
      )
    expect([says(row.least), says(row.most)]).toEqual([[], []])
    expect([says(row.least - 0.1).length, says(row.most + 0.1).length]).toEqual([1, 1])
  })

  it('let the shoulder curve with two fifths of the trunk and the lap strap lie 150 mm ahead of the belly', () => {
    expect(measuresOf({ hipToShoulderMm: 450, shoulderArcRadiusMm: 180 })).toEqual([])
    expect(measuresOf({ hipToShoulderMm: 450, shoulderArcRadiusMm: 180.1 })).toEqual(['shoulderArcRadiusMm'])
    // The bone of hip bones 200 mm apart is 200·√(0.19² + 0.30²) = 71.02 mm from the hip joint, which is 148 mm ahead of the back:
    // 148 + 71.02 + 180.98 − 250 = 150.
    const lap = (lapTissueMm: number) =>
      measuresOf({ frontHipBoneBreadthMm: 200, abdominalDepthMm: 250, lapTissueMm })
    expect(lap(180.9)).toEqual([])
    expect(lap(181.1)).toEqual(['lapTissueMm'])
  })

  it('say what, where and how to mend it when a file is opened', () => {
    const parsed = parseLayout(
      rockBuggyWith(['places', 0, 'occupants', 0, 'measured'], {
        hipBreadthMm: 250,
        frontHipBoneBreadthMm: 260,
      }),
    )
    expect(parsed.ok ? [] : parsed.error).toEqual([
      {
        path: 'places[0].occupants[0].measured.hipBreadthMm',
        received: '250',
        message: expect.stringMatching(
          /hip breadth: 250 mm is too little beside a front hip bone breadth of 260 mm; it is at least 20 mm more in everybody\.$/,
        ) as string,
        remedy: 'Measure both again, or leave one of them empty to have it predicted.',
      },
    ])
    expect(of({ hipBreadthMm: 210 })[0]?.says).toMatch(
      /beside a front hip bone breadth of [\d.]+ mm \(predicted\)/,
    )
    expect(of({ lapTissueMm: 290 })[0]?.says).toMatch(/^290 mm would put the lap strap .* ahead of the belly/)
  })

  it('are each looked at somewhere, but for what stands alone', () => {
    // A tilt, a helmet and a chest contradict nothing here.
    const alone: readonly BodyMeasure[] = ['helmetRadiusMm', 'pelvisTiltDeg', 'chestDepthMm']
    const odd = (measure: BodyMeasure): number => (measure === 'frontHipBoneBreadthMm' ? 440 : 3000)
    for (const measure of BODY_MEASURES) {
      const found = [odd(measure), 1].flatMap((value) => measuresOf({ [measure]: value }))
      expect(found.length > 0).toBe(!alone.includes(measure))
    }
  })
})

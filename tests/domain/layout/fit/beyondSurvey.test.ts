import { describe, expect, it } from 'vitest'
import { surveyedPeople } from '../../../../src/domain/body/survey/surveyed'
import { bodyMassIndex } from '../../../../src/domain/body/lapFlesh'
import { beyondSurvey } from '../../../../src/domain/layout/fit/beyondSurvey'

const people = surveyedPeople()

const woman = (statureMm: number, massKg: number) => ({ sex: 'female' as const, statureMm, massKg })

const few = [
  woman(1500, 50),
  woman(1600, 60),
  woman(1800, 90),
  { sex: 'male' as const, statureMm: 1900, massKg: 120 },
]

describe('beyond the survey', () => {
  it('is nobody who was surveyed', () => {
    for (const person of people) expect(beyondSurvey(person, people)).toEqual([])
  })

  it('counts only people of the same sex, and those at the ends as inside', () => {
    expect(beyondSurvey(woman(1800, 90), few)).toEqual([])
    expect(beyondSurvey(woman(1801, 90), few)).toEqual(['taller'])
    expect(beyondSurvey(woman(1500, 50), few)).toEqual([])
    expect(beyondSurvey(woman(1499, 50), few)).toEqual(['shorter'])
  })

  it('sees someone stouter than anybody surveyed although stature and mass alone are not', () => {
    // 80 kg at 1550 mm is 33.3 kg/m²; the stoutest of the few has 90/1.8² = 27.8.
    expect(bodyMassIndex(woman(1550, 80))).toBeCloseTo(33.299, 3)
    expect(beyondSurvey(woman(1550, 80), few)).toEqual(['stouter'])
    // 55 kg at 1790 mm is 17.2; the leanest has 50/1.5² = 22.2.
    expect(beyondSurvey(woman(1790, 55), few)).toEqual(['leaner'])
  })

  it('says all that is beyond of a large customer', () => {
    expect(beyondSurvey({ sex: 'male', statureMm: 2100, massKg: 190 }, people)).toEqual([
      'taller',
      'heavier',
      'stouter',
    ])
  })
})

import { readFileSync } from 'node:fs'
import type { Sex } from '../../src/domain/body/occupant'

/** One real person of a survey extract in tests/data: every column as a number, and the sex. */
export interface SurveyPerson {
  readonly sex: Sex
  readonly values: Readonly<Record<string, number>>
}

/** The people of one extract; lines that start with # say where they come from. */
export const surveyPeople = (file: string): readonly SurveyPerson[] => {
  const lines = readFileSync(new URL(`../data/${file}`, import.meta.url), 'utf8')
    .trim()
    .split('\n')
    .filter((line) => !line.startsWith('#'))
  const names = lines[0]?.split(',') ?? []
  return lines.slice(1).map((line) => {
    const cells = line.split(',')
    return {
      sex: cells[0] === 'F' ? 'female' : 'male',
      values: Object.fromEntries(names.slice(1).map((name, index) => [name, Number(cells[index + 1])])),
    }
  })
}

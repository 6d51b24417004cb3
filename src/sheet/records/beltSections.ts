import { BELT_FACTS, type BeltRecord, factText } from '../../domain/care/beltRecord'
import { CLEANING } from '../../domain/care/cleaning'
import type { BeltCondition } from '../../domain/care/condition'
import type { BeltAge } from '../../domain/care/expiry'
import { labelProblems } from '../../domain/care/labelProblems'
import { nextInspection } from '../../domain/care/reminders'
import {
  AGE_CAVEAT,
  type AgeRow,
  ageRow,
  ageSentence,
  labelRow,
  silentSetText,
} from '../../domain/layout/wording/beltAgeText'
import { conditionText } from '../../domain/layout/wording/beltHistoryText'
import {
  factName,
  factValue,
  labelProblemText,
  manufacturedText,
} from '../../domain/layout/wording/careWords'
import { sourceText } from '../../domain/layout/wording/ruleSentence'
import { capitalised } from '../../domain/layout/wording/words'
import type { RuleSet } from '../../domain/rules/rule'
import type { FlowRow } from '../page/flow'
import { entryRows, keptTogether, sectionRows, textRows, type BareRow } from '../page/section'
import type { Typography } from '../page/typography'

/** A belt with everything that is worked out about it on the day of the print. */
export interface BeltOnPaper {
  readonly belt: BeltRecord
  readonly placeName: string
  readonly age: BeltAge
  readonly condition: BeltCondition
  readonly ruleSet: RuleSet
  readonly today: string
}

/** The label, the fitting and the next inspection, in full. */
export const labelSection = (
  { belt, placeName, today }: BeltOnPaper,
  widthMm: number,
  type: Typography,
): readonly FlowRow[] => {
  const section = 'Label and fitting'
  const facts = BELT_FACTS.map((fact) => {
    const value =
      fact === 'manufactured' ? manufacturedText(belt.manufactured) : factValue(fact, factText(belt, fact))
    return `${capitalised(factName(fact))}: ${value}`
  })
  const next = nextInspection(belt, today)
  const inspection =
    next === null
      ? 'Next inspection: no interval chosen'
      : `Next inspection: ${next.wasDue === null ? next.date : `overdue since ${next.wasDue}`}, every ${belt.inspectEveryMonths} months (the shop’s own choice)`
  const problems = labelProblems(belt, today).map(labelProblemText)
  return sectionRows(section, widthMm, type, [
    ...[...facts, `Place: ${placeName}`, inspection].flatMap((text) =>
      textRows(text, widthMm, type.body, section),
    ),
    ...problems.flatMap((text) => textRows(text, widthMm, type.strong, section)),
  ])
}

/** How old the belt may get: what counts, how it was counted and where it comes from; the other rules in short. */
export const ageSection = (
  { belt, age, condition, ruleSet, today }: BeltOnPaper,
  widthMm: number,
  type: Typography,
): readonly FlowRow[] => {
  const section = `Age and condition on ${today}`
  const text = (words: string, style = type.body) => textRows(words, widthMm, style, section)
  const label = labelRow(age, belt)
  const counting = [...age.chosen.map((reading) => ageRow(reading, belt)), ...(label === null ? [] : [label])]
  const silent = silentSetText(age, belt, ruleSet)
  const entry = (row: AgeRow): readonly BareRow[] =>
    entryRows(
      [
        ...text(`Last day ${row.lastDay}: ${row.says} (${row.level})`, type.strong),
        ...text(row.counting),
        ...text(row.source, type.small),
      ],
      widthMm,
      section,
    )
  const others = age.others.map((reading) => {
    const row = ageRow(reading, belt)
    return `${capitalised(row.lastDay)}: ${row.says} ${row.source}.`
  })
  return sectionRows(section, widthMm, type, [
    ...(condition.kind === 'retired' ? [] : text(ageSentence(age, belt, ruleSet), type.strong)),
    ...text(conditionText(condition), type.strong),
    ...(silent === null ? [] : text(silent)),
    ...counting.flatMap(entry),
    ...(others.length === 0 ? [] : text('Other rules, for orientation. Last day by each:', type.strong)).map(
      (row) => ({ ...row, keepWithNext: true }),
    ),
    ...others.flatMap((words) => keptTogether(text(words, type.small))),
    ...text(AGE_CAVEAT, type.body),
  ])
}

export const cleaningSection = (widthMm: number, type: Typography): readonly FlowRow[] => {
  const section = 'Cleaning and keeping'
  return sectionRows(
    section,
    widthMm,
    type,
    CLEANING.flatMap(({ says, source, caveat }) =>
      keptTogether([
        ...textRows(says, widthMm, type.body, section),
        ...textRows(
          [`${capitalised(sourceText(source))}.`, caveat ?? ''].join(' ').trim(),
          widthMm,
          type.small,
          section,
        ),
      ]),
    ),
  )
}

import type { Layout } from '../../../domain/layout/document/layout'
import type { CheckedEvaluation } from '../../../domain/layout/evaluate/evaluation'
import { limitText, roomText, valueText } from '../../../domain/layout/wording/amounts'
import { findingSentence } from '../../../domain/layout/wording/findingSentence'
import { placeName, subjectName } from '../../../domain/layout/wording/names'
import { propertyName } from '../../../domain/layout/wording/propertyNames'
import { quantityName } from '../../../domain/layout/wording/quantities'
import { capitalised, levelWord, statusWord, verdictWord } from '../../../domain/layout/wording/words'
import { type Finding, leastRoom, type Verdict } from '../../../domain/rules/finding'
import { PROPERTY_IDS, type Rule, type RuleLevel, type RuleSource } from '../../../domain/rules/rule'
import type { QuantityId } from '../../../domain/straps/quantity'
import type { FlowRow } from '../../page/flow'
import { entryRows, keptTogether, sectionRows, textRows } from '../../page/section'
import { toleranceLine } from './toleranceLine'
import type { Typography } from '../../page/typography'

const allFindings = (evaluation: CheckedEvaluation): readonly Finding[] =>
  evaluation.places.flatMap((place) => place.findings)

const count = (findings: readonly Finding[], verdict: Verdict): number =>
  findings.filter((finding) => finding.verdict === verdict).length

/** "Broken 3 (1 must) · unchecked 0 · tight 2 · clear 41" */
export const findingCounts = (evaluation: CheckedEvaluation): string => {
  const findings = allFindings(evaluation)
  const musts = findings.filter((finding) => finding.verdict === 'broken' && finding.level === 'must').length
  return [
    `Broken ${count(findings, 'broken')}${musts === 0 ? '' : ` (${musts} must)`}`,
    `unchecked ${count(findings, 'unchecked')}`,
    `tight ${count(findings, 'tight')}`,
    `clear ${count(findings, 'clear')}`,
  ].join(' · ')
}

export const hasBrokenFindings = (evaluation: CheckedEvaluation): boolean =>
  count(allFindings(evaluation), 'broken') > 0

const SECTION = 'Findings'

/** In this order on the sheet: what has to be settled, what nobody knows, what leaves little room for a welding error. */
const LISTED: readonly Verdict[] = ['broken', 'unchecked', 'tight']

/**
 * Every broken, unchecked and tight finding with its value, limit and source; the clear ones are counted in the sheet's head.
 * A document that findings share is named once, by a letter.
 */
export const findingSection = (
  layout: Layout,
  evaluation: CheckedEvaluation,
  widthMm: number,
  type: Typography,
): readonly FlowRow[] => {
  const all = allFindings(evaluation)
  const listed = LISTED.flatMap((verdict) => all.filter((finding) => finding.verdict === verdict))
  const documents = [...new Set(listed.map(({ source }) => documentText(source)))]
  const rows = alike(listed).flatMap((group) => {
    const text = findingText(group, layout, documents)
    return text === null ? [] : entryRows(textRows(text, widthMm, type.body, SECTION), widthMm, SECTION)
  })
  const tolerance = toleranceLine(layout, evaluation)
  const legend = documents.map((document, index) => `${letter(index)}: ${document}.`).join(' ')
  return sectionRows(SECTION, widthMm, type, [
    ...rows,
    ...(tolerance === null ? [] : textRows(tolerance, widthMm, type.body, SECTION)),
    ...(legend === '' ? [] : textRows(`Sources. ${legend}`, widthMm, type.small, SECTION)),
  ])
}

/** Document, edition and how its figures reached us. */
const documentText = ({ document, edition, status }: RuleSource): string =>
  status === 'common-practice' || status === 'judgement'
    ? capitalised(statusWord(status))
    : `${document}, ${edition} (${statusWord(status)})`

/** A, B … Z, then AA: rule sets name fewer documents than that. */
const letter = (index: number): string => 'ABCDEFGHIJKLMNOPQRSTUVWXYZ'[index] ?? `A${letter(index - 26)}`

/** Findings of one rule with the same result: the two straps of a mirrored pair say the same thing once. */
const alike = (findings: readonly Finding[]): readonly (readonly Finding[])[] => {
  const groups = new Map<string, Finding[]>()
  for (const finding of findings) {
    const { ruleId, placeId, verdict, value, problem, worstSitting } = finding
    const shown = typeof value === 'number' ? value.toFixed(3) : value
    const key = [ruleId, placeId, verdict, shown, problem?.kind, worstSitting].join('/')
    groups.set(key, [...(groups.get(key) ?? []), finding])
  }
  return [...groups.values()]
}

const findingText = (
  group: readonly Finding[],
  layout: Layout,
  documents: readonly string[],
): string | null => {
  const [finding, ...others] = group
  if (finding === undefined) return null
  const { source, verdict } = finding
  const mark = `${verdictWord(verdict).toUpperCase()}, ${levelWord(finding.level)}`
  const what = verdict === 'tight' ? tightText(finding, layout) : findingSentence(finding, layout).what
  const same = others.map((other) => subjectName(other.subject, layout)).join(', ')
  const also = same === '' ? '' : ` The same: ${same}.`
  return `${mark}: ${what}${also} [${letter(documents.indexOf(documentText(source)))}: ${source.section}]`
}

const amountName = (id: Finding['quantity']): string => {
  const property = PROPERTY_IDS.find((each) => each === id)
  return property === undefined ? quantityName(id as QuantityId) : propertyName(property)
}

/** Part, value, limit and room; a tight finding has all four. */
const tightText = (finding: Finding, layout: Layout): string => {
  const { quantity, value, limit } = finding
  const unit = layout.units.length
  const subject = subjectName(finding.subject, layout)
  const part =
    layout.places.length > 1 ? `${placeName(finding.placeId, layout)}, ${subject}` : capitalised(subject)
  const shown = value === null ? '' : ` ${valueText(quantity, value, unit)}`
  const least = leastRoom(finding)
  const where = least?.elevation ? ` in the ${least.elevation} elevation` : ''
  const room = least === null ? '' : `; room ${roomText(Math.max(0, least.mm), unit)}${where}`
  return `${part}: ${amountName(quantity)}${shown}, limit ${limitText(quantity, limit, unit)}${room}.`
}

/** What the rule set asks for and no geometry can answer, so that nobody takes silence for approval. */
export const statedSection = (
  evaluation: CheckedEvaluation,
  widthMm: number,
  type: Typography,
): readonly FlowRow[] => {
  const section = 'Not computed: see to it on the car'
  const stated = evaluation.ruleSet.rules.filter((rule) => rule.kind === 'stated')
  const text = LEVELS.flatMap((level) => statedText(level, stated)).join(' ')
  return sectionRows(
    section,
    widthMm,
    type,
    text === '' ? [] : keptTogether(textRows(text, widthMm, type.small, section)),
  )
}

const LEVELS: readonly RuleLevel[] = ['must', 'should', 'advice']

/** The level once, before everything it applies to. */
const statedText = (level: RuleLevel, stated: readonly Rule[]): readonly string[] => {
  const says = stated.filter((rule) => rule.level === level).map((rule) => rule.says)
  return says.length === 0 ? [] : [`${levelWord(level).toUpperCase()}: ${says.join(' ')}`]
}

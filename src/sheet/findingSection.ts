import type { Layout } from '../domain/layout/document/layout'
import type { Evaluation } from '../domain/layout/evaluate/evaluation'
import { findingSentence } from '../domain/layout/wording/findingSentence'
import { subjectName } from '../domain/layout/wording/names'
import { capitalised, levelWord, verdictWord } from '../domain/layout/wording/words'
import type { Finding, Verdict } from '../domain/rules/finding'
import type { Rule } from '../domain/rules/rule'
import type { FlowRow } from './flow'
import { entryRows, sectionRows, textRows, type BareRow } from './section'
import type { Typography } from './typography'

const allFindings = (evaluation: Evaluation): readonly Finding[] =>
  evaluation.places.flatMap((place) => place.findings)

const count = (findings: readonly Finding[], verdict: Verdict): number =>
  findings.filter((finding) => finding.verdict === verdict).length

/** "Broken 3 (1 must) · unchecked 0 · tight 2 · clear 41" */
export const findingCounts = (evaluation: Evaluation): string => {
  const findings = allFindings(evaluation)
  const musts = findings.filter((finding) => finding.verdict === 'broken' && finding.level === 'must').length
  return [
    `Broken ${count(findings, 'broken')}${musts === 0 ? '' : ` (${musts} must)`}`,
    `unchecked ${count(findings, 'unchecked')}`,
    `tight ${count(findings, 'tight')}`,
    `clear ${count(findings, 'clear')}`,
  ].join(' · ')
}

export const hasBrokenFindings = (evaluation: Evaluation): boolean =>
  count(allFindings(evaluation), 'broken') > 0

/** Broken, or spoken about by a rule but without a number: both stand on the sheet one by one. */
const isOpen = (finding: Finding): boolean => finding.verdict === 'broken' || finding.verdict === 'unchecked'

/** Every broken and every unchecked finding with its value, limit and source; the others are counted in the sheet's head. */
export const findingSection = (
  layout: Layout,
  evaluation: Evaluation,
  widthMm: number,
  type: Typography,
): readonly FlowRow[] => {
  const section = 'Findings'
  const open = allFindings(evaluation).filter(isOpen)
  const rows = alike(open).flatMap((group) => findingRows(group, layout, widthMm, type, section))
  return sectionRows(section, widthMm, type, rows)
}

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

const findingRows = (
  group: readonly Finding[],
  layout: Layout,
  widthMm: number,
  type: Typography,
  section: string,
): readonly BareRow[] => {
  const [finding, ...others] = group
  if (finding === undefined) return []
  const { what, source } = findingSentence(finding, layout)
  const mark = `${verdictWord(finding.verdict).toUpperCase()}, ${levelWord(finding.level)}`
  const same = others.map((other) => subjectName(other.subject, layout)).join(', ')
  const also = same === '' ? '' : ` The same: ${same}.`
  const lines = [
    ...textRows(`${mark}: ${what}${also}`, widthMm, type.body, section),
    ...textRows(capitalised(source), widthMm, type.small, section),
  ]
  return entryRows(lines, widthMm, section)
}

/** What the rule set asks for and no geometry can answer, so that nobody takes silence for approval. */
export const statedSection = (
  evaluation: Evaluation,
  widthMm: number,
  type: Typography,
): readonly FlowRow[] => {
  const section = 'Not computed: see to it on the car'
  const stated = evaluation.ruleSet.rules.filter((rule) => rule.kind === 'stated')
  return sectionRows(
    section,
    widthMm,
    type,
    stated.length === 0 ? [] : textRows(stated.map(statedText).join(' '), widthMm, type.small, section),
  )
}

const statedText = (rule: Rule): string => `${capitalised(levelWord(rule.level))}: ${rule.says}`

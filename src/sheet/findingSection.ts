import type { Layout } from '../domain/layout/document/layout'
import type { Evaluation } from '../domain/layout/evaluate/evaluation'
import { findingSentence } from '../domain/layout/wording/findingSentence'
import { levelWord, verdictWord } from '../domain/layout/wording/words'
import type { Finding, Verdict } from '../domain/rules/finding'
import type { FlowRow } from './flow'
import { cell, sectionRows, textRows, type BareRow } from './section'
import { tableRow } from './table'
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

/** Every broken and every unchecked finding with its value, limit and source; the others are counted. */
export const findingSection = (
  layout: Layout,
  evaluation: Evaluation,
  widthMm: number,
  type: Typography,
): readonly FlowRow[] => {
  const section = 'Findings'
  const open = allFindings(evaluation).filter(isOpen)
  const rows = open.flatMap((finding) => findingRows(finding, layout, widthMm, type, section))
  const none =
    open.length === 0
      ? textRows('Nothing broken, nothing left unchecked by this rule set.', widthMm, type.body, section)
      : []
  return sectionRows(section, widthMm, type, [
    ...textRows(`${findingCounts(evaluation)}.`, widthMm, type.strong, section),
    ...none,
    ...rows,
  ])
}

const findingRows = (
  finding: Finding,
  layout: Layout,
  widthMm: number,
  type: Typography,
  section: string,
): readonly BareRow[] => {
  const { what, source } = findingSentence(finding, layout)
  const mark = `${verdictWord(finding.verdict).toUpperCase()}, ${levelWord(finding.level)}`
  return [
    tableRow(
      [{ widthMm, align: 'left' }],
      [[cell(`${mark}: ${what}`, type.body, 8), cell(source, type.small, 4)]],
      { section, rule: 'thin' },
    ),
  ]
}

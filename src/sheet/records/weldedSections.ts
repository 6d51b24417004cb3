import {
  CHANGE_KINDS,
  type ChangeKind,
  type FindingChange,
} from '../../domain/layout/asWelded/findingChanges'
import type { AnchorDeviation } from '../../domain/layout/asWelded/deviation'
import type { Layout } from '../../domain/layout/document/layout'
import { findingSentence } from '../../domain/layout/wording/findingSentence'
import { readingLines } from '../../domain/layout/wording/readingLines'
import { statusWord } from '../../domain/layout/wording/words'
import {
  assumedText,
  cannotTellText,
  changeHeading,
  changesSummaryText,
  entryName,
  goneText,
  KNOWN_POINT_HINT,
  offBarText,
  otherRulesText,
  plannedOnlyText,
  plannedValueText,
  replannedText,
} from '../../domain/layout/wording/weldedWords'
import { otherVariantText } from '../../domain/layout/wording/variantWords'
import { levelWord } from '../../domain/layout/wording/words'
import type { RuleSet } from '../../domain/rules/rule'
import type { FlowRow } from '../page/flow'
import { entryRows, gapRow, sectionRows, textRows, type BareRow } from '../page/section'
import type { Typography } from '../page/typography'
import type { WeldedPaper } from './weldedPaper'

interface Setting {
  readonly layout: Layout
  readonly widthMm: number
  readonly type: Typography
}

const SECTION_GAP_MM = 1.5

/** Everything below the table, in the order it is read. */
export const weldedSections = (
  paper: WeldedPaper,
  deviations: readonly AnchorDeviation[],
  changes: readonly FindingChange[],
  ruleSet: RuleSet,
  setting: Setting,
): readonly FlowRow[] =>
  [
    noteSection(paper, deviations, setting),
    findingsSection(paper, changes, setting),
    readingSection(deviations, setting),
    sourceSection(changes, ruleSet, setting),
    ...(paper.record.notes.trim() === '' ? [] : [textSection('Notes', [paper.record.notes.trim()], setting)]),
  ]
    .filter((rows) => rows.length > 0)
    .flatMap((rows, index) =>
      index === 0 ? rows : [gapRow(SECTION_GAP_MM, rows[0]?.section ?? ''), ...rows],
    )

const textSection = (
  title: string,
  texts: readonly string[],
  { widthMm, type }: Setting,
): readonly FlowRow[] =>
  sectionRows(
    title,
    widthMm,
    type,
    texts.flatMap((text) => entryRows(textRows(text, widthMm, type.body, title), widthMm, title)),
  )

/** What nobody may overlook: anchors taken as planned, measurements that tell nothing, bars that are elsewhere. */
const noteSection = (
  { record, measured }: WeldedPaper,
  deviations: readonly AnchorDeviation[],
  setting: Setting,
): readonly FlowRow[] => {
  const { layout } = setting
  const texts = [
    plannedOnlyText(measured.anchors, layout),
    layout.job.revision === record.plannedRevision
      ? null
      : 'The plan has another revision now than the one that was welded from. Findings are of the people, the seat, the tubes and the rules of the plan as it is now.',
    otherRulesText(record, layout),
    otherVariantText(record, layout),
    ...deviations.map((deviation) => {
      const text = cannotTellText(deviation, layout.units.length)
      return text === null ? null : `${entryName(deviation.reading.entry, layout)}: ${text}`
    }),
    ...measured.anchors.flatMap((anchor) => [offBarText(anchor, layout), replannedText(anchor)]),
    ...measured.gone.map((entry) => goneText(entry, layout)),
  ].flatMap((text) => (text === null ? [] : [text]))
  return textSection('To be known', texts, setting)
}

/** What is broken or unchecked on the real car first, then what became tight, then what was cleared. */
const findingsSection = (
  { measured, findings }: WeldedPaper,
  changes: readonly FindingChange[],
  { layout, widthMm, type }: Setting,
): readonly FlowRow[] => {
  const title = 'Findings of the car as welded'
  const line = (text: string, style: Typography['body']): readonly BareRow[] =>
    textRows(text, widthMm, style, title)
  if (measured.anchors.every(({ standing }) => standing !== 'measured'))
    return sectionRows(
      title,
      widthMm,
      type,
      line('No anchor is measured, so there is nothing to say of the car.', type.body),
    )
  const groups = CHANGE_KINDS.flatMap((kind): readonly BareRow[] => {
    const own = changes.filter((change) => change.kind === kind)
    if (own.length === 0) return []
    const heading = line(`${changeHeading(kind)}: ${own.length}`, type.strong).map((row) => ({
      ...row,
      keepWithNext: true,
    }))
    return [
      ...heading,
      ...own.flatMap((change) => entryRows(changeRows(change, kind, layout, line, type), widthMm, title)),
    ]
  })
  return sectionRows(title, widthMm, type, [
    ...line(changesSummaryText(changes, findings, measured.anchors), type.strong),
    ...groups,
  ])
}

const changeRows = (
  change: FindingChange,
  kind: ChangeKind,
  layout: Layout,
  line: (text: string, style: Typography['body']) => readonly BareRow[],
  type: Typography,
): readonly BareRow[] => {
  const finding = change.welded ?? change.planned
  if (finding === null) return []
  const { what, source } = findingSentence(finding, layout)
  const planned = plannedValueText(change, layout)
  const isBad = kind !== 'cleared' && kind !== 'silent' && kind !== 'newly-tight'
  const assumed = assumedText(change.assumed)
  return [
    ...line(
      `${levelWord(finding.level).toUpperCase()}: ${what}${planned === null ? '' : ` ${planned}`}`,
      type.body,
    ),
    ...(assumed === null ? [] : line(assumed, type.small)),
    ...(isBad ? line(`Source: ${source}`, type.small) : []),
  ]
}

/** Every reading as it was taken, so that anybody can work the positions out again. */
const readingSection = (deviations: readonly AnchorDeviation[], setting: Setting): readonly FlowRow[] => {
  const { layout } = setting
  const texts = deviations.flatMap(({ reading }) => {
    const lines = readingLines(reading.entry, layout.units.length)
    return lines.length === 0 ? [] : [`${entryName(reading.entry, layout)}: ${lines.join('; ')}.`]
  })
  const isFromKnown = deviations.some(
    ({ reading }) => reading.entry.measurement !== null && reading.entry.measurement.kind !== 'coordinates',
  )
  return textSection('Readings as taken', [...texts, ...(isFromKnown ? [KNOWN_POINT_HINT] : [])], setting)
}

/** Which rules the car was held against, and how their figures reached us. */
const sourceSection = (
  changes: readonly FindingChange[],
  ruleSet: RuleSet,
  setting: Setting,
): readonly FlowRow[] => {
  const statuses = [...new Set(ruleSet.rules.map(({ source }) => source.status))].map((status) => {
    const count = ruleSet.rules.filter(({ source }) => source.status === status).length
    return `${count} ${statusWord(status)}`
  })
  const texts = [
    `Rule set: ${ruleSet.name}, ${ruleSet.edition}. Its ${ruleSet.rules.length} rules by how their figures reached us: ${statuses.join(', ')}.`,
    ...(changes.length === 0 ? [] : ['Findings that stayed kept are not listed.']),
  ]
  return textSection('Rules and sources', texts, setting)
}

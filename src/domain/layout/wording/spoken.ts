import type { ShownFinding } from '../../rules/finding'
import { lengthText, lengthWithUnit } from '../../units/length'
import type { Layout } from '../document/layout'
import type { Handle } from '../edit/handle'
import { findingSentence } from './findingSentence'
import { findingsOfPart, worstFinding } from './partFindings'
import { levelWord, verdictWord } from './words'

/** "Driver, left lap tab: x 1350, y 70, z 38 mm." */
export const spokenPlace = ({ name, point }: Handle, unit: Layout['units']['length']): string =>
  `${name}: x ${lengthText(point.xMm, unit)}, y ${lengthText(point.yMm, unit)}, z ${lengthWithUnit(point.zMm, unit)}.`

const worstWords = (layout: Layout, findings: readonly ShownFinding[]): string => {
  const worst = worstFinding(findings)
  if (worst === null) return 'No rule of this set speaks of it.'
  if (worst.verdict === 'clear' || worst.verdict === 'kept')
    return `${findings.length === 1 ? 'Its finding is' : `All ${findings.length} findings are`} within the limits.`
  return `Worst finding, ${verdictWord(worst.verdict)}, ${levelWord(worst.level)}: ${findingSentence(worst, layout).what}`
}

/** What is said of a part that is taken in hand: its name, where it is and the worst that is found of it. */
export const spokenPart = (layout: Layout, handle: Handle, findings: readonly ShownFinding[]): string =>
  `${spokenPlace(handle, layout.units.length)} ${worstWords(layout, findingsOfPart(layout, handle.ref, findings))}`

/** No more findings than this are said one by one after a change; whoever wants all goes to the list. Our judgement. */
const MOST_SAID = 3

const said = (
  what: string,
  findings: readonly ShownFinding[],
  layout: Layout,
  lead = `Now ${what}`,
): readonly string[] => {
  if (findings.length === 0) return []
  const sentences = findings.slice(0, MOST_SAID).map((finding) => findingSentence(finding, layout).what)
  const more = findings.length > MOST_SAID ? [`And ${findings.length - MOST_SAID} more ${what}.`] : []
  return [`${lead}: ${sentences.join(' ')}`, ...more]
}

const byId = (findings: readonly ShownFinding[]): ReadonlyMap<string, ShownFinding> =>
  new Map(findings.map((finding) => [finding.id, finding]))

/**
 * What is said of a change: which findings it broke, mended or left without a number, each with its number and limit. Whether one that
 * is kept is tight is not known yet at that moment; see `spokenTight`.
 */
export const spokenChanges = (
  layout: Layout,
  before: readonly ShownFinding[],
  after: readonly ShownFinding[],
): string => {
  const old = byId(before)
  const isNew = (verdict: ShownFinding['verdict']): readonly ShownFinding[] =>
    after.filter((finding) => finding.verdict === verdict && old.get(finding.id)?.verdict !== verdict)
  const mended = after.filter(
    ({ id, verdict }) => old.get(id)?.verdict === 'broken' && verdict !== 'broken' && verdict !== 'unchecked',
  )
  return [
    ...said('broken', isNew('broken'), layout),
    ...said('unchecked', isNew('unchecked'), layout),
    ...said('no longer broken', mended, layout, 'No longer broken'),
  ].join(' ')
}

/** What is said once rooms are known: which findings became tight since they were last known. */
export const spokenTight = (
  layout: Layout,
  before: readonly ShownFinding[],
  after: readonly ShownFinding[],
): string => {
  const old = byId(before)
  const tight = after.filter(
    ({ id, verdict }) => verdict === 'tight' && old.has(id) && old.get(id)?.verdict !== 'tight',
  )
  return said('tight', tight, layout).join(' ')
}

import { type ElevationRoom, leastRoom, type Limit, type ShownFinding } from '../../rules/finding'
import { PROPERTY_IDS, type PropertyId } from '../../rules/rule'
import type { QuantityId } from '../../straps/quantity'
import type { Layout, LengthUnit } from '../document/layout'
import { ruleOf } from '../document/ruleSetOf'
import { limitText, outsideText, roomText, valueText, wayText } from './amounts'
import { placeName, sittingNameUnder, subjectName } from './names'
import { problemClause } from './problemText'
import { propertyName } from './propertyNames'
import { quantityFault, quantityName } from './quantities'
import { remedyText } from './remedyText'
import { sourceText } from './ruleSentence'
import { toleranceSentence } from './toleranceText'
import { capitalised } from './words'

/** A finding for people; each part is plain text of its own. */
export interface FindingSentence {
  /** What is so, with value, limit and for whom. */
  readonly what: string
  /** Why it matters to the person in the seat. */
  readonly why: string
  /** How far the anchor is from the limit in both elevations; null where no position decides it, and while that is worked out. */
  readonly rooms: string | null
  /** What the typed weld and measuring error can make of it; null where none is typed. */
  readonly withinTolerance: string | null
  /** What would clear it; null when there is nothing to clear. */
  readonly remedy: string | null
  /** Where sources disagree or a tolerance is ours; null where neither. */
  readonly caveat: string | null
  /** Document, edition, section, and how the figure reached us. */
  readonly source: string
}

const isProperty = (id: QuantityId | PropertyId): id is PropertyId =>
  (PROPERTY_IDS as readonly string[]).includes(id)

/** What a rule speaks about, quantity or property, as a lower-case name. */
export const amountName = (id: QuantityId | PropertyId): string =>
  isProperty(id) ? propertyName(id) : quantityName(id)

/** The subject, with the place before it when the car has more than one. */
const subjectText = (finding: ShownFinding, layout: Layout): string => {
  const name = subjectName(finding.subject, layout)
  return layout.places.length > 1 ? `${placeName(finding.placeId, layout)}: ${name}` : capitalised(name)
}

const faultText = ({ quantity, value, limit }: ShownFinding): string => {
  if (isProperty(quantity) || typeof value !== 'number') return ''
  return ` ${quantityFault(quantity, isBelow(value, limit) ? 'low' : 'high')}`
}

const isBelow = (value: number, { min }: Limit): boolean => min !== null && value < min

const sittingText = ({ ruleId, worstSitting, verdict }: ShownFinding, layout: Layout): string => {
  if (worstSitting === null) return ''
  const word = verdict === 'broken' ? 'worst' : 'closest to the limit'
  return ` (${word}: ${sittingNameUnder(ruleId, worstSitting, layout)})`
}

const brokenText = (finding: ShownFinding, value: number | string, layout: Layout): string => {
  const { quantity, limit } = finding
  const unit = layout.units.length
  const shown = outsideText(quantity, value, limit, unit)
  const asked = limitText(quantity, limit, unit)
  return `${subjectText(finding, layout)}${faultText(finding)}: ${amountName(quantity)} ${shown}, where ${asked} is asked for${sittingText(finding, layout)}.`
}

const keptLimitText = ({ quantity, limit }: ShownFinding, layout: Layout): string => {
  const text = limitText(quantity, limit, layout.units.length)
  if (limit.wanted !== null) return 'as asked for'
  return limit.min !== null && limit.max !== null ? `within ${text}` : `and ${text} is asked for`
}

const roomClause = (finding: ShownFinding, unit: LengthUnit): string => {
  if (finding.roomMm === 'pending') return '; how much room is left is not worked out yet'
  const least = finding.verdict === 'tight' ? leastRoom(finding) : null
  if (least === null) return ''
  const where = least.elevation === null ? '' : ` in the ${least.elevation} elevation`
  return `, but only ${roomText(Math.max(0, least.mm), unit)} from the limit${where}`
}

const keptText = (finding: ShownFinding, value: number | string, layout: Layout): string => {
  const { quantity } = finding
  const unit = layout.units.length
  const room = roomClause(finding, unit)
  return `${subjectText(finding, layout)}: ${amountName(quantity)} ${valueText(quantity, value, unit)}, ${keptLimitText(finding, layout)}${room}${sittingText(finding, layout)}.`
}

const uncheckedText = (finding: ShownFinding, layout: Layout): string => {
  const { ruleId, problem, quantity, worstSitting } = finding
  const because = problem === null ? 'no number could be computed for it' : problemClause(problem, layout)
  const sitting = worstSitting === null ? '' : ` (${sittingNameUnder(ruleId, worstSitting, layout)})`
  return `${subjectText(finding, layout)}: ${amountName(quantity)} not checked, because ${because}${sitting}.`
}

const whatText = (finding: ShownFinding, layout: Layout): string => {
  if (finding.value === null) return uncheckedText(finding, layout)
  switch (finding.verdict) {
    case 'broken':
      return brokenText(finding, finding.value, layout)
    case 'tight':
    case 'kept':
    case 'clear':
      return keptText(finding, finding.value, layout)
    case 'unchecked':
      return uncheckedText(finding, layout)
  }
}

/** A way is found to this; what is no more than that over a step of the scale is that step. */
const FOUND_MM = 1e-3

/** How far the limit is in the elevation where the rule lives and in the other. */
const roomsText = ({ verdict, roomMm, otherRoom }: ShownFinding, unit: LengthUnit): string | null => {
  if (otherRoom === undefined || roomMm === 'pending') return null
  const home = otherRoom.elevation === 'side' ? 'top' : 'side'
  const inBoth: readonly ElevationRoom[] = [
    ...(roomMm === null ? [] : [{ elevation: home, mm: roomMm } as const]),
    otherRoom,
  ]
  // What is kept is rounded down, and a way that has to be gone up.
  const text = (mm: number): string =>
    verdict === 'broken' ? wayText(Math.max(0, -mm - FOUND_MM), unit) : roomText(Math.max(0, mm), unit)
  const listed = inBoth.map(({ elevation, mm }) => `${text(mm)} in the ${elevation} elevation`).join(', ')
  return verdict === 'broken' ? `Back within the limit: ${listed}.` : `Room to the limit: ${listed}.`
}

/** A finding in words, in the layout's length unit. Throws for a finding of a rule that no set has. */
export const findingSentence = (finding: ShownFinding, layout: Layout): FindingSentence => {
  const rule = ruleOf(layout, finding.ruleId)
  if (rule === null) throw new Error(`no rule "${finding.ruleId}"`)
  return {
    what: whatText(finding, layout),
    why: rule.why,
    rooms: roomsText(finding, layout.units.length),
    withinTolerance: toleranceSentence(finding, layout),
    remedy: finding.remedy === null ? null : remedyText(finding.remedy, layout),
    caveat: rule.caveat,
    source: sourceText(finding.source),
  }
}

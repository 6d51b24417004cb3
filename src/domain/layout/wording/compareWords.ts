import { leastRoom, type ShownFinding } from '../../rules/finding'
import type { AnchorForm } from '../../straps/anchor'
import { type FindingTally, type FindingTurn, turnSide } from '../compare/comparedFindings'
import { type ComparedNumber, type NumberOfVariant, standsFor } from '../compare/comparedNumbers'
import type { ComparedPart, PartDifference } from '../compare/comparedPart'
import type { Layout } from '../document/layout'
import type { WhoFits } from '../fit/whoFits'
import { formWord } from '../edit/handles'
import { limitText, outsideText, roomText, valueText } from './amounts'
import { amountName } from './findingSentence'
import { familyWord, placeName, strapName, subjectName } from './names'
import { quantityName } from './quantities'
import { judgedLength } from './weldedWords'
import { capitalised, levelWord, verdictWord } from './words'
import { strapSide } from '../../straps/strap'

type Unit = Layout['units']['length']

/** What stands above every comparison: nothing here chooses for anybody. */
export const COMPARE_CAUTION =
  'No variant is called the best: what is better for one finding may be worse for another, and what was not checked is neither. ' +
  'Compare them finding by finding.'

const inPlace = (name: string, placeId: string | null, layout: Layout): string =>
  placeId === null || layout.places.length < 2 ? capitalised(name) : `${placeName(placeId, layout)}: ${name}`

const isForm = (word: string): word is AnchorForm =>
  ['plate', 'clevis', 'insert', 'eye', 'wrap'].includes(word)

const partWords = ({ kind, parts, fields }: ComparedPart): string => {
  const part = parts.find((each) => each !== null)
  const name = part?.name.trim() ?? ''
  switch (kind) {
    case 'anchor': {
      if (part?.strap === null || part?.strap === undefined) return 'anchor'
      const form = fields.find(({ field }) => field === 'form')?.values
      const words = new Set(form?.flatMap((value) => (value?.kind === 'word' ? [value.word] : [])))
      const [only, other] = [...words]
      // By what it is while all variants fix it alike.
      const what = only !== undefined && other === undefined && isForm(only) ? formWord(only) : 'anchor'
      return `${strapSide(part.strap)} ${familyWord(part.strap)} ${what}`
    }
    case 'seat':
      return 'seat'
    case 'slot':
      return name === '' ? 'slot' : `slot of the ${slotStraps(name)}`
    case 'belt':
      return 'belt'
    case 'occupant':
      return name === '' ? `person ${part?.id ?? ''}` : name
    case 'place':
      return 'place'
    case 'tube':
      return name === '' ? `tube ${part?.id ?? ''}` : name
  }
}

const slotStraps = (name: string): string =>
  name
    .split(' ')
    .map((strap) => strapName(strap as Parameters<typeof strapName>[0]))
    .join(' and ')

/** A part that several variants have, by what it is: "Left lap tab"; with its place before it where the car has several. */
export const comparedPartName = (part: ComparedPart, layouts: readonly Layout[]): string => {
  const at = part.parts.findIndex((each) => each !== null)
  const layout = layouts[at]
  return layout === undefined
    ? capitalised(partWords(part))
    : inPlace(partWords(part), part.parts[at]?.placeId ?? null, layout)
}

/** How far a part as a whole lies elsewhere: "lies 22 mm elsewhere"; null where it does not, or where nobody can tell. */
export const partShiftText = ({ shiftMm, part }: PartDifference, unit: Unit): string | null => {
  if (shiftMm === null || shiftMm < SHOWN_MM) return null
  const length = judgedLength(shiftMm, unit)
  switch (part.kind) {
    case 'tube':
      return `lies up to ${length} elsewhere`
    case 'slot':
      return `lies ${length} elsewhere in the seat`
    case 'anchor':
    case 'seat':
    case 'belt':
    case 'occupant':
    case 'place':
      return `lies ${length} elsewhere`
  }
}

/** Half of what lengths are shown to. */
const SHOWN_MM = 0.05

/** What became of a finding, as words beside it; null where it is as in the other variant. `base`: the name of that one. */
export const turnText = (turn: FindingTurn, base: string): string | null => {
  switch (turn) {
    case 'newly-broken':
      return `worse: kept in ${base}`
    case 'mended':
      return `better: broken in ${base}`
    case 'further-out':
      return `worse: further beyond the limit than in ${base}`
    case 'less-far-out':
      return `better: less far beyond the limit than in ${base}`
    case 'less-room':
      return `less room than in ${base}`
    case 'more-room':
      return `more room than in ${base}`
    case 'unchanged':
      return null
    case 'other-word':
      return `another one than in ${base}`
    case 'newly-unchecked':
      return `not checked here: neither better nor worse than in ${base}`
    case 'now-checked':
      return `not checked in ${base}: neither better nor worse`
    case 'only-before':
      return `asked in ${base} only`
    case 'only-after':
      return `not asked in ${base}`
    case 'pending':
      return 'room is still being worked out'
  }
}

/** A sign beside those words, so that neither colour nor reading is needed to find them; empty where it is neither. */
export const turnMark = (turn: FindingTurn): string => {
  const side = turnSide(turn)
  return side === 'better' ? '▲' : side === 'worse' ? '▼' : ''
}

/** A finding of one variant in short. */
export interface FindingCell {
  readonly verdict: string
  /** Value, and what is asked for. */
  readonly value: string
  /** How far the limit is; null where no position decides it, or it is not worked out. */
  readonly room: string | null
}

/** A finding of one variant in short, for a column of its own. */
export const findingCell = (finding: ShownFinding, layout: Layout): FindingCell => {
  const { quantity, value, limit, verdict } = finding
  const unit = layout.units.length
  const asked = limitText(quantity, limit, unit)
  const shown =
    value === null
      ? 'no number'
      : verdict === 'broken'
        ? outsideText(quantity, value, limit, unit)
        : valueText(quantity, value, unit)
  const room = finding.roomMm === 'pending' || verdict === 'broken' ? null : leastRoom(finding)
  return {
    verdict: verdictWord(verdict),
    value: `${shown} (asked: ${asked})`,
    room: room === null ? null : `${roomText(Math.max(0, room.mm), unit)} to the limit`,
  }
}

/** What a compared finding is about: "Left lap strap: lap angle", with its place where the car has several. */
export const comparedFindingName = (finding: ShownFinding, layout: Layout): string =>
  `${inPlace(subjectName(finding.subject, layout), finding.placeId, layout)}: ${amountName(finding.quantity)}`

/** The same of a number. */
export const comparedNumberName = (
  { quantity, subject, placeIds }: ComparedNumber,
  layouts: readonly Layout[],
): string => {
  const at = placeIds.findIndex((id) => id !== null)
  const layout = layouts[at]
  if (layout === undefined) return quantityName(quantity)
  return `${inPlace(subjectName(subject, layout), placeIds[at] ?? null, layout)}: ${quantityName(quantity)}`
}

/** A number of one variant: the worst, with what it comes to over all sittings; or only that. */
export const numberText = (
  { quantity }: Pick<ComparedNumber, 'quantity'>,
  number: NumberOfVariant | null,
  unit: Unit,
): string => {
  if (number === null) return '—'
  const text = (value: number): string => valueText(quantity, value, unit)
  const [least, most] = [text(number.least), text(number.most)]
  const one = standsFor(number)
  if (one === null) return least === most ? least : `${least} to ${most}`
  return least === most ? text(one) : `${text(one)} (${least} to ${most})`
}

/** By how much a number differs, with its sign; null where that is less than is shown. */
export const numberByText = (
  { quantity }: Pick<ComparedNumber, 'quantity'>,
  by: number,
  unit: Unit,
): string | null => {
  const text = valueText(quantity, by, unit)
  if (text === valueText(quantity, 0, unit)) return null
  return by > 0 ? `+${text}` : text
}

const counted = (count: number, word: string): string => `${count} ${word}`

/** How the findings of one variant add up, in short clauses; the nearest limit last. `left-out`: nobody works out the rooms. */
export const tallyLines = (
  tally: FindingTally,
  layout: Layout,
  rooms: 'shown' | 'left-out' = 'shown',
): readonly string[] => {
  const broken = (['must', 'should', 'advice'] as const)
    .filter((level) => tally.broken[level] > 0)
    .map((level) => counted(tally.broken[level], `broken (${levelWord(level)})`))
  return [
    ...(broken.length === 0 ? ['nothing broken'] : broken),
    ...(tally.unchecked === 0 ? [] : [counted(tally.unchecked, 'not checked')]),
    ...(rooms === 'left-out' ? [counted(tally.tight + tally.kept, 'kept')] : roomLines(tally, layout)),
  ]
}

const roomLines = (tally: FindingTally, layout: Layout): readonly string[] => {
  const nearest = tally.nearest
  return [
    ...(tally.tight === 0 ? [] : [counted(tally.tight, 'tight')]),
    counted(tally.kept, tally.isPending ? 'kept' : 'clear'),
    ...(nearest === null
      ? []
      : [
          `nearest limit: ${roomText(Math.max(0, nearest.mm), layout.units.length)}, ${comparedFindingName(nearest.finding, layout)}`,
        ]),
    ...(tally.isPending ? ['room to the limits is still being worked out'] : []),
  ]
}

/** How many of those surveyed pass all rules of a level and above at a place: "512 of 600 women, 580 of 600 men". */
export const fitCountText = (
  { overall }: Pick<WhoFits, 'overall'>,
  level: 'must' | 'should' | 'advice',
): string => {
  const all = overall.find((each) => each.level === level)
  if (all === undefined) return 'no rule of these looks at the body of who sits here'
  const { female, male } = all.tally
  const of = ({ passing, broken, unchecked }: typeof female): string =>
    `${passing} of ${passing + broken + unchecked}`
  return `${of(female)} women, ${of(male)} men`
}

import type { PointMm } from '../domain/geometry/point'
import { LIMITS, type NumberLimits } from '../domain/layout/document/limits'
import type { Layout, Place } from '../domain/layout/document/layout'
import { proposedPositions } from '../domain/layout/propose/propose'
import {
  type ProposalSpace,
  type ProposalWish,
  STARTING_WISH,
  WISH_LIMITS,
} from '../domain/layout/propose/wish'
import {
  answerText,
  gainText,
  limitingRuleText,
  PROPOSAL_CAUTION,
  PROPOSAL_METHOD,
  stayingText,
  wishProblemText,
} from '../domain/layout/wording/proposalText'
import { err, ok, type Result } from '../domain/result'

/** What is asked of every place; null leaves a choice to the place itself. */
export interface ProposeWords {
  /** An anchor's id; null: all anchors of each place. */
  readonly anchorId: string | null
  /** `on`: the tubes that the anchors of the place are on now. */
  readonly space: 'on' | ProposalSpace
  readonly standOffMm: number
  readonly symmetric: boolean
  readonly apartMm: number
}

/** How the options are written, for the message that names them. */
export const PROPOSE_USAGE =
  '--propose [--anchor=ID] [--tubes=ID,ID | --anywhere | --box=X,Y,Z:X,Y,Z] [--stand-off=MM] [--apart=MM] [--sides-differ]'

const numberIn = (text: string, limits: NumberLimits): number | null => {
  const value = text.trim() === '' ? Number.NaN : Number(text)
  return Number.isFinite(value) && value >= limits.min && value <= limits.max ? value : null
}

const cornerOf = (text: string): PointMm | null => {
  const values = text.split(',').map((each) => numberIn(each, LIMITS.coordinateMm))
  const [xMm, yMm, zMm] = values
  if (values.length !== 3 || xMm == null || yMm == null || zMm == null) return null
  return { xMm, yMm, zMm }
}

const optionOf = (words: readonly string[], name: string): string | null =>
  words.find((word) => word.startsWith(`--${name}=`))?.slice(name.length + 3) ?? null

const spaceOf = (words: readonly string[], standOffMm: number): Result<ProposeWords['space'], string> => {
  const tubes = optionOf(words, 'tubes')
  const box = optionOf(words, 'box')
  if (tubes !== null) return ok({ kind: 'tubes', tubeIds: tubes.split(','), standOffMm })
  if (box !== null) {
    const [min, max, ...more] = box.split(':').map(cornerOf)
    return min == null || max == null || more.length > 0
      ? err(`--box=${box} is not two corners in mm. Write --box=X,Y,Z:X,Y,Z, the smaller numbers first.`)
      : ok({ kind: 'anywhere', box: { min, max } })
  }
  return ok(words.includes('--anywhere') ? { kind: 'anywhere', box: null } : 'on')
}

const lengthOf = (
  words: readonly string[],
  name: string,
  limits: NumberLimits,
  otherwise: number,
): Result<number, string> => {
  const text = optionOf(words, name)
  if (text === null) return ok(otherwise)
  const value = numberIn(text, limits)
  return value === null
    ? err(`--${name}=${text} is not a length from ${limits.min} to ${limits.max} mm.`)
    : ok(value)
}

/** Whether a word of the command line belongs to `--propose`. */
export const isProposeWord = (word: string): boolean =>
  ['--propose', '--anywhere', '--sides-differ'].includes(word) ||
  /^--(anchor|tubes|box|stand-off|apart)=/.test(word)

/** The options of `--propose`; the failure says what is wrong and how to write it. */
export const proposeWords = (words: readonly string[]): Result<ProposeWords, string> => {
  const standOff = lengthOf(words, 'stand-off', WISH_LIMITS.standOffMm, STARTING_WISH.standOffMm)
  if (!standOff.ok) return standOff
  const apart = lengthOf(words, 'apart', WISH_LIMITS.apartMm, STARTING_WISH.apartMm)
  if (!apart.ok) return apart
  const space = spaceOf(words, standOff.value)
  if (!space.ok) return space
  return ok({
    anchorId: optionOf(words, 'anchor'),
    space: space.value,
    standOffMm: standOff.value,
    symmetric: !words.includes('--sides-differ'),
    apartMm: apart.value,
  })
}

const wishFor = (words: ProposeWords, place: Place): ProposalWish => ({
  placeId: place.id,
  anchorId: words.anchorId,
  space:
    words.space === 'on'
      ? {
          kind: 'tubes',
          tubeIds: [...new Set(place.anchors.flatMap(({ mount }) => mount.tubeId ?? []))],
          standOffMm: words.standOffMm,
        }
      : words.space,
  symmetric: words.symmetric,
  apartMm: words.apartMm,
})

const placeReport = (layout: Layout, place: Place, words: ProposeWords) => {
  const wish = wishFor(words, place)
  const found = proposedPositions(layout, wish)
  if (!found.ok)
    return { place: place.id, wish, problem: found.error, says: wishProblemText(found.error, layout) }
  const { value } = found
  return {
    place: place.id,
    wish,
    says: answerText(value),
    present: value.present,
    proposals: value.proposals.map((proposal) => ({
      ...proposal,
      says: [
        gainText(proposal, value.present, layout),
        limitingRuleText(proposal, layout),
        ...proposal.staying.map((staying) => stayingText(staying, layout)),
      ],
    })),
  }
}

/** What `--propose` adds for each place (with `--anchor`, for the place that has it): the same positions as the page proposes. */
export const proposeReport = (layout: Layout, words: ProposeWords) => {
  const places = layout.places.filter(
    ({ anchors }) => words.anchorId === null || anchors.some(({ id }) => id === words.anchorId),
  )
  // An anchor that nobody has is answered for the first place, so that the answer says so.
  const asked = places.length === 0 ? layout.places.slice(0, 1) : places
  return {
    caution: PROPOSAL_CAUTION,
    method: PROPOSAL_METHOD,
    places: asked.map((place) => placeReport(layout, place, words)),
  }
}

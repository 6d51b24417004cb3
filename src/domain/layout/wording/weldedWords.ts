import { pointDistanceMm, type PointMm } from '../../geometry/point'
import type { AsWeldedRecord, MeasuredAnchor } from '../../measure/asWeldedRecord'
import type { Measurement } from '../../measure/measurement'
import type { MirrorPair } from '../../measure/measureProblem'
import type { Finding } from '../../rules/finding'
import type { Mount } from '../../straps/anchor'
import { angleText } from '../../units/angle'
import { lengthText, type LengthUnit, lengthWithUnit } from '../../units/length'
import type { AnchorDeviation, DeviationVerdict } from '../asWelded/deviation'
import { assumedAnchors, type ChangeKind, type FindingChange } from '../asWelded/findingChanges'
import type { OfferedPoint } from '../asWelded/knownPoints'
import type { Standing, WeldedAnchor } from '../asWelded/measuredLayout'
import type { Layout } from '../document/layout'
import { ruleSetsOf } from '../document/ruleSetOf'
import { isSharedAnchor } from '../edit/mirror'
import { valueText } from './amounts'
import { anchorName, placeName, tubeName } from './names'
import { tapePlaceName } from './tapeWords'
import { capitalised, verdictWord } from './words'

/** A way of measuring, as it is chosen and as it stands on the record. */
export const wayWords = (kind: Measurement['kind']): string => {
  switch (kind) {
    case 'coordinates':
      return 'from the datum along the axes'
    case 'tapes':
      return 'tapes from known points'
    case 'angle':
      return 'string with an angle finder and a tape'
  }
}

/** "Left lap tab", with the place before it where the car has several, or had. */
export const entryName = (
  { placeId, strap, planned }: Pick<MeasuredAnchor, 'placeId' | 'strap' | 'planned'>,
  layout: Layout,
): string => {
  const name = anchorName({ strap, mount: planned })
  const isOnlyPlace = layout.places.length === 1 && layout.places[0]?.id === placeId
  return isOnlyPlace ? capitalised(name) : `${placeName(placeId, layout)}: ${name}`
}

/** What a point is called on the tape, for whoever holds its other end. */
export const offeredName = (offered: OfferedPoint, layout: Layout): string =>
  offered.sort === 'measured'
    ? `${entryName(offered.entry, layout)}, as measured`
    : offered.place.source.kind === 'datum'
      ? 'Datum'
      : tapePlaceName(offered.place, layout)

/** A length in the shop's unit with the other one in brackets: a sixteenth of an inch is too coarse to judge a weld by. */
const lengthInBoth = (lengthMm: number, unit: LengthUnit): string =>
  `${lengthWithUnit(lengthMm, unit)} (${lengthWithUnit(lengthMm, unit === 'mm' ? 'in' : 'mm')})`

/** A length that is judged: in mm, with the inches before it where the shop works in them, unless a sixteenth cannot show it. */
export const judgedLength = (lengthMm: number, unit: LengthUnit): string => {
  const isTooSmall = lengthText(lengthMm, 'in') === '0' && lengthText(lengthMm, 'mm') !== '0'
  return unit === 'mm' || isTooSmall ? lengthWithUnit(lengthMm, 'mm') : lengthInBoth(lengthMm, 'in')
}

type Axis = MirrorPair['normalFaces']

const AXIS_WAYS: Readonly<Record<Axis, { readonly plus: string; readonly minus: string }>> = {
  x: { plus: 'rearward', minus: 'forward' },
  y: { plus: 'to the right', minus: 'to the left' },
  z: { plus: 'up', minus: 'down' },
}

/** Below this a deviation shows as none: half of what lengths are shown to. */
const NONE_MM = 0.05

/** A deviation along one axis as a welder says it: "2.5 mm rearward", "none". */
export const axisOffText = (axis: Axis, offMm: number, unit: LengthUnit): string =>
  Math.abs(offMm) < NONE_MM
    ? 'none'
    : `${judgedLength(Math.abs(offMm), unit)} ${AXIS_WAYS[axis][offMm > 0 ? 'plus' : 'minus']}`

/** A deviation of a tab's plane: "1.5° more", signed as in the plan. */
export const angleOffText = (offDeg: number): string =>
  Math.abs(offDeg) < NONE_MM ? 'none' : `${offDeg > 0 ? '+' : ''}${angleText(offDeg)}`

/** What can be said of a deviation, as a short phrase. */
export const deviationWords = (verdict: DeviationVerdict | 'not-measured'): string => {
  switch (verdict) {
    case 'within':
      return 'within tolerance'
    case 'outside':
      return 'outside tolerance'
    case 'cannot-be-told':
      return 'cannot be told: measure again'
    case 'no-tolerance':
      return 'no tolerance typed'
    case 'not-measured':
      return 'not measured'
  }
}

/** The same of a whole anchor: a tab that is where it should be may still be turned, so unmeasured angles are never passed over. */
export const anchorVerdictWords = ({
  verdict,
  areAnglesUnmeasured,
}: Pick<AnchorDeviation, 'verdict' | 'areAnglesUnmeasured'>): string =>
  verdict === 'within' && areAnglesUnmeasured
    ? `${deviationWords(verdict)} as far as it was measured: not all angles of the tab were`
    : deviationWords(verdict)

/** Why nothing can be told of an entry, and what to do; null where something can. */
export const cannotTellText = (
  { position, verdict, reading }: AnchorDeviation,
  unit: LengthUnit,
): string | null => {
  if (verdict !== 'cannot-be-told' || position === null || reading.position?.ok !== true) return null
  const axes = (['x', 'y', 'z'] as const).filter((axis) => position[axis].verdict === 'cannot-be-told')
  if (axes.length === 0)
    return 'The angle finder is not read closely enough to tell whether the tab’s angle is allowed. Read it again, several times, with a finer one.'
  const parts = axes.map((axis) => {
    const { off, uncertainty, allowed } = position[axis]
    const sure =
      uncertainty === null ? 'nobody knows how sure' : `by its readings ± ${judgedLength(uncertainty, unit)}`
    return `off in ${axis}: ${axisOffText(axis, off, unit)}, ${sure}, where ± ${judgedLength(allowed ?? 0, unit)} is allowed`
  })
  return `Too near the limit for how well it was measured. ${capitalised(parts.join('; '))}. Read it again, several times, or from points that lie more square to it.`
}

/** How an anchor stands in the measured layout, to follow its name; empty where it was measured. */
const standingWords = (standing: Standing): string => {
  switch (standing) {
    case 'measured':
      return ''
    case 'not-measured':
      return 'not measured'
    case 'bad-measurement':
      return 'its readings give no position'
    case 'not-in-record':
      return 'planned after the record was begun'
  }
}

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`

/** Which anchors, or their angles, a finding takes from the plan because nothing better is known; null where none. */
export const assumedText = (assumed: readonly WeldedAnchor[]): string | null => {
  if (assumed.length === 0) return null
  const names = assumed.map(({ anchor, standing }) =>
    standing === 'measured' ? `the angles of the ${anchorName(anchor)}` : anchorName(anchor),
  )
  return `Taken as planned, because not measured: ${listed(names)}.`
}

/** All anchors that stand as planned, for the head of the findings; null where every one was measured. */
export const plannedOnlyText = (anchors: readonly WeldedAnchor[], layout: Layout): string | null => {
  const assumed = anchors.filter(({ standing }) => standing !== 'measured')
  if (assumed.length === 0) return null
  const names = assumed.map(({ placeId, anchor, standing }) => {
    const name = layout.places.length > 1 ? `${placeName(placeId, layout)} ` : ''
    return `${name}${anchorName(anchor)} (${standingWords(standing)})`
  })
  return `${assumed.length} of ${anchors.length} anchors are taken as planned: ${listed(names)}. What depends on them says nothing of the car.`
}

/** What became of findings, as the heading over them. */
export const changeHeading = (kind: ChangeKind): string => {
  switch (kind) {
    case 'newly-broken':
      return 'Broken on the car, kept in the plan'
    case 'newly-unchecked':
      return 'Cannot be checked on the car any more'
    case 'still-broken':
      return 'Broken in the plan and on the car'
    case 'still-unchecked':
      return 'Unchecked in the plan and on the car'
    case 'newly-tight':
      return 'Tight on the car'
    case 'cleared':
      return 'Cleared by how it was welded'
    case 'silent':
      return 'Its rule does not speak of the car as welded'
  }
}

/** What the finding was in the plan, with its value; null where there it was the same sentence or none. */
export const plannedValueText = ({ planned, welded }: FindingChange, layout: Layout): string | null => {
  if (planned === null) return 'The plan has no such finding.'
  if (welded === null) return null
  if (planned.value === null) return 'In the plan it could not be checked.'
  const value = valueText(planned.quantity, planned.value, layout.units.length)
  return `In the plan: ${value}, ${verdictWord(planned.verdict)}.`
}

const countOf = (changes: readonly FindingChange[], kind: ChangeKind): number =>
  changes.filter((change) => change.kind === kind).length

/**
 * How many findings are broken or unchecked on the car, how many of those the plan kept, and how many of all findings rest on anchors
 * or angles that were not measured: those say nothing of the car. `welded`: all findings of the car.
 */
export const changesSummaryText = (
  changes: readonly FindingChange[],
  welded: readonly Finding[],
  anchors: readonly WeldedAnchor[],
): string => {
  const newlyBroken = countOf(changes, 'newly-broken')
  const broken = newlyBroken + countOf(changes, 'still-broken')
  const newlyUnchecked = countOf(changes, 'newly-unchecked')
  const unchecked = newlyUnchecked + countOf(changes, 'still-unchecked')
  const part = (count: number, word: string, kept: number): string =>
    count === 0
      ? `none ${word}`
      : `${count} ${word}, ${kept === 0 ? 'none' : kept} of them new beside the plan`
  const resting = welded.filter((finding) => assumedAnchors(finding, anchors).length > 0).length
  const where = resting === 0 ? 'On the car as welded' : 'On the car as far as it is measured'
  const rest =
    resting === 0
      ? ''
      : ` ${resting} of ${welded.length} findings rest on anchors or angles that are only planned, and say nothing of the car.`
  return `${where}: ${part(broken, 'broken', newlyBroken)}; ${part(unchecked, 'unchecked', newlyUnchecked)}.${rest}`
}

/** Further than this from the planned centre line of its bar a wrap tells that the bar is elsewhere. Our judgement: twice what a layout allows. */
const OFF_BAR_MM = 2

/** That a wrapped bar is not where it was planned, and what that means; null where it is. */
export const offBarText = ({ offBarMm, anchor }: WeldedAnchor, layout: Layout): string | null => {
  if (offBarMm === null || offBarMm <= OFF_BAR_MM || anchor.mount.tubeId === null) return null
  const bar = tubeName(anchor.mount.tubeId, layout)
  return `${capitalised(anchorName(anchor))}: measured ${judgedLength(offBarMm, layout.units.length)} from the planned centre line of ${bar}, so the bar itself is not where it was planned. The strap is worked out from where it was measured; room to the bar, and other straps on it that were not measured, are still those of the plan. Measure the bar’s ends and put them into the plan.`
}

/** That the plan of an anchor has changed since the record was begun; null where it has not. */
export const replannedText = ({ isReplanned, anchor }: WeldedAnchor): string | null =>
  isReplanned
    ? `${capitalised(anchorName(anchor))}: the plan has changed since this record was begun. Deviations are from the plan of then.`
    : null

/** That the car was held against other rules when the record was signed; null where it was not, or it is open. */
export const otherRulesText = ({ signed }: AsWeldedRecord, layout: Layout): string | null => {
  if (signed === undefined || signed.ruleSetId === layout.ruleSetId) return null
  const name = ruleSetsOf(layout).find(({ id }) => id === signed.ruleSetId)?.name ?? signed.ruleSetId
  return `When this record was signed the car was held against ${name}. The findings here are those of the rule set that is chosen now.`
}

/** That the two shoulder straps end on the anchor of an entry; null where they do not. */
export const sharedText = ({ placeId, strap }: MeasuredAnchor, layout: Layout): string | null => {
  const place = layout.places.find(({ id }) => id === placeId)
  return place !== undefined && isSharedAnchor(place, strap)
    ? 'The shoulder straps are joined: both end on this anchor.'
    : null
}

/** That an entry's anchor is in the plan no more. */
export const goneText = (entry: MeasuredAnchor, layout: Layout): string =>
  `${entryName(entry, layout)}: the layout has no such anchor any more. What was measured is kept; no finding looks at it.`

/** What the position of a known point rests on; beside whatever was measured from one. */
export const KNOWN_POINT_HINT =
  'Known points count where the plan had them when they were picked: if one is elsewhere on the car, everything measured from it is off by as much.'

/** Where on this mount the other end of the tape is held. */
export const measureToText = (mount: Mount, layout: Pick<Layout, 'tubes' | 'units'>): string => {
  const unit = layout.units.length
  switch (mount.kind) {
    case 'tab':
      return `Measure to the middle of the hole, at the middle of the plate: ${lengthInBoth(mount.thicknessMm / 2, unit)} in from either face. A pin through the hole helps.`
    case 'eye':
      return 'Measure to the middle of the eye.'
    case 'wrap':
      return 'Measure to the outside of the bar in the middle of the webbing: to its highest line, or to its foremost one where the bar stands near plumb.'
  }
}

const SIDES: Readonly<Record<Axis, { readonly normal: string; readonly opposite: string }>> = {
  x: { normal: 'Behind', opposite: 'Ahead of' },
  y: { normal: 'Right of', opposite: 'Left of' },
  z: { normal: 'Above', opposite: 'Below' },
}

/** One of the two places that fit the tapes, to be chosen by where the welder sees it. */
export interface MirrorChoice {
  readonly side: 'normal' | 'opposite'
  readonly point: PointMm
  /** Where it lies: "Above the plane through the known points of tapes 1, 2 and 3". */
  readonly where: string
  /** How far it is from the planned position. */
  readonly fromPlanMm: number
  readonly isNearerToPlan: boolean
}

/** The two places, the one on the side of the normal first; neither is chosen for anybody. */
export const mirrorChoices = (pair: MirrorPair, planned: PointMm): readonly MirrorChoice[] => {
  const awayMm = {
    normal: pointDistanceMm(pair.normal, planned),
    opposite: pointDistanceMm(pair.opposite, planned),
  }
  return (['normal', 'opposite'] as const).map((side) => ({
    side,
    point: pair[side],
    where: `${SIDES[pair.normalFaces][side]} the plane through the known points of tapes ${listed(pair.through.map(({ index }) => String(index + 1)))}`,
    fromPlanMm: awayMm[side],
    isNearerToPlan: awayMm[side] < awayMm[side === 'normal' ? 'opposite' : 'normal'],
  }))
}

import type { PointMm } from '../../geometry/point'
import type { LengthUnit } from '../../units/length'
import { partPrints } from '../agreement/fingerprint'
import type { Layout, Place } from '../document/layout'
import { moveText } from './amounts'
import type { PlainFinding } from './plainFinding'
import { listed, plainPartName, plainParts } from './plainNames'
import { grouped } from './plainWords'
import { capitalised } from './words'

/** Below this nobody can tell two positions apart on a car. Our judgement. */
const SAME_MM = 0.5

const way = (byMm: number, plus: string, minus: string, unit: LengthUnit): readonly string[] =>
  Math.abs(byMm) < SAME_MM ? [] : [`${moveText(Math.abs(byMm), unit)} ${byMm > 0 ? plus : minus}`]

/**
 * How one position lies off another: "30 mm further back and 12 mm higher"; empty where they are one. What belongs to one side of a seat
 * is further out or in from that seat's middle, at `middleYMm`; everything else, for null, further right or left.
 */
const offWords = (from: PointMm, to: PointMm, unit: LengthUnit, middleYMm: number | null): string => {
  const sideMm = middleYMm === null ? 0 : from.yMm - middleYMm
  const across =
    Math.abs(sideMm) < SAME_MM
      ? way(to.yMm - from.yMm, 'further right', 'further left', unit)
      : way((to.yMm - from.yMm) * Math.sign(sideMm), 'further out', 'further in', unit)
  return listed([
    ...way(to.xMm - from.xMm, 'further back', 'further forward', unit),
    ...way(to.zMm - from.zMm, 'higher', 'lower', unit),
    ...across,
  ])
}

/** The handle id of a part that can be pointed at, for a part of the fingerprint; those of seats and belts have none. */
const pointedId = (printId: string): string => printId.replace(/^people:/, 'hip:')

interface Difference {
  readonly name: string
  readonly says: string
}

const seatSays = (before: Place | undefined, after: Place | undefined, unit: LengthUnit): string => {
  if (before === undefined || after === undefined) return 'different'
  const moved = offWords(before.seat.hipPoint, after.seat.hipPoint, unit, null)
  const turnDeg = after.seat.reclineDeg - before.seat.reclineDeg
  const leaned = Math.abs(turnDeg) < 0.05 ? '' : `leans ${turnDeg > 0 ? 'further back' : 'less far back'}`
  const both = listed([moved, leaned].filter((text) => text !== ''))
  return both === '' ? 'shaped differently' : both
}

const saysOf = (printId: string, from: Layout, to: Layout): string => {
  const unit = to.units.length
  const pointed = (layout: Layout) =>
    plainParts(layout).find(({ partId }) => partId === pointedId(printId))?.point
  const [kind, placeId] = printId.split(':')
  const placeOf = (layout: Layout) => layout.places.find(({ id }) => id === placeId)
  if (kind === 'seat') return seatSays(placeOf(from), placeOf(to), unit)
  if (kind === 'people') return 'other people, or others of their measurements'
  if (kind === 'belt') return 'other belts'
  const before = pointed(from)
  const after = pointed(to)
  const middleYMm = kind === 'anchor' ? (placeOf(from)?.seat.hipPoint.yMm ?? null) : null
  const off = before === undefined || after === undefined ? '' : offWords(before, after, unit, middleYMm)
  if (off !== '') return off
  return kind === 'tube' ? 'another size or another way' : 'fixed in another way'
}

const differenceList = (from: Layout, to: Layout): readonly Difference[] => {
  const before = new Map(partPrints(from).map(({ partId, fingerprint }) => [partId, fingerprint]))
  const after = new Map(partPrints(to).map(({ partId, fingerprint }) => [partId, fingerprint]))
  return [
    ...[...after].flatMap(([partId, fingerprint]) => {
      const was = before.get(partId)
      if (was === fingerprint) return []
      const name = plainPartName(partId, to)
      return [{ name, says: was === undefined ? 'only here' : saysOf(partId, from, to) }]
    }),
    ...[...before.keys()]
      .filter((partId) => !after.has(partId))
      .map((partId) => ({ name: plainPartName(partId, from), says: 'not here' })),
  ]
}

/** What is built otherwise in `to` than in `from`, one sentence each; parts that differ alike are named together. */
export const plainDifferences = (from: Layout, to: Layout): readonly string[] =>
  grouped(differenceList(from, to), ({ says }) => says).map((same) => {
    const says = same[0]?.says ?? ''
    return `${capitalised(listed(same.map(({ name }) => name)))}: ${says}.`
  })

/** What a finding is about, the same in every variant. */
const keyOf = ({ topic, cases, ruleId }: PlainFinding): string =>
  [ruleId, topic, cases[0]?.finding.placeId ?? ''].join('/')

/** What is outside its limit in one variant and not in another, by topic. */
export interface PlainTurns {
  /** Outside in `from` and within in `to`. */
  readonly mended: readonly string[]
  /** Within in `from` and outside in `to`. */
  readonly broken: readonly string[]
}

const topicsOnlyIn = (own: readonly PlainFinding[], others: readonly PlainFinding[]): readonly string[] => {
  const isOutside = ({ group }: PlainFinding): boolean => group === 'outside'
  const outside = new Set(others.filter(isOutside).map(keyOf))
  // What was not checked there is not better there.
  const unchecked = new Set(others.filter(({ group }) => group === 'unchecked').map(keyOf))
  const spoken = new Set(others.map(keyOf))
  return [
    ...new Set(
      own
        .filter(isOutside)
        .filter((finding) => {
          const key = keyOf(finding)
          return spoken.has(key) && !outside.has(key) && !unchecked.has(key)
        })
        .map(({ topic }) => topic),
    ),
  ]
}

export const plainTurns = (from: readonly PlainFinding[], to: readonly PlainFinding[]): PlainTurns => ({
  mended: topicsOnlyIn(from, to),
  broken: topicsOnlyIn(to, from),
})

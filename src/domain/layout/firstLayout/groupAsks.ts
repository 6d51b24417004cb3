import type { PointMm } from '../../geometry/point'
import { strapSide, type StrapFamily, strapsOf } from '../../straps/strap'
import type { Layout, Place } from '../document/layout'
import type { NumberLimits } from '../document/limits'
import {
  anchorsOf,
  apartMm,
  groupPoint,
  hungOn,
  sideStraps,
  type StrapGroup,
  withApart,
  withGroupAt,
} from './anchorTape'
import { askedPlace } from './askedPlace'
import { type Ask, FROM_DATUM, keptAsk, numberAsk, whole } from './question'

export type Straps = (place: Place) => StrapGroup

export interface GroupAsks {
  readonly id: string
  readonly straps: Straps
  readonly apart: NumberLimits | null
  /** Where the group starts: its hole on the left, or the one in the middle. */
  readonly start: (layout: Layout) => PointMm
  /** On the drawing: rearward and up. */
  readonly letters: readonly [string, string]
  /** A wrap lies where its tube is; only its place along it is asked. */
  readonly isOnTube: boolean
}

export const hasGroup = (place: Place, straps: StrapGroup): boolean =>
  straps.length > 0 && anchorsOf(place, straps).length === straps.length

const axisAsk = (
  { id, straps, start }: GroupAsks,
  axis: 'xMm' | 'zMm',
  ask: { readonly field: string; readonly words: string; readonly hint: string; readonly letter: string },
): Ask =>
  numberAsk({
    id: `${id}.${ask.field}`,
    kind: 'length',
    words: ask.words,
    hint: ask.hint,
    letter: ask.letter,
    limits: FROM_DATUM,
    read: (layout) => groupPoint(askedPlace(layout), straps(askedPlace(layout)))[axis],
    write: (layout, mm) => withGroupAt(layout, straps(askedPlace(layout)), axis, mm),
    derived: (layout) => whole(start(layout)[axis]),
    hangsOn: (layout) => hungOn(layout, straps(askedPlace(layout)), axis),
  })

const middleAsk = ({ id, straps }: GroupAsks): Ask =>
  keptAsk({
    id: `${id}.middle`,
    read: (layout) => groupPoint(askedPlace(layout), straps(askedPlace(layout))).yMm,
    write: (layout, mm) => withGroupAt(layout, straps(askedPlace(layout)), 'yMm', Number(mm)),
    derived: (layout) => askedPlace(layout).seat.hipPoint.yMm,
    hangsOn: (layout) => hungOn(layout, straps(askedPlace(layout)), 'yMm'),
  })

const apartAsk = (group: GroupAsks, limits: NumberLimits, isPair: boolean): Ask =>
  numberAsk({
    id: `${group.id}.apart`,
    kind: 'length',
    words: isPair ? 'Between the two' : 'Outward from the seat’s middle',
    hint: isPair ? 'Across the car, middle to middle.' : 'Across the car.',
    letter: 'C',
    limits: isPair ? limits : { ...limits, min: 0, max: limits.max / 2 },
    read: (layout) => apartMm(askedPlace(layout), group.straps(askedPlace(layout))),
    write: (layout, mm) => withApart(layout, group.straps(askedPlace(layout)), mm),
    derived: (layout) => {
      const sideMm = whole(Math.abs(group.start(layout).yMm - askedPlace(layout).seat.hipPoint.yMm))
      return isPair ? 2 * sideMm : sideMm
    },
  })

export const groupAsks = (layout: Layout, group: GroupAsks): readonly Ask[] => {
  const place = askedPlace(layout)
  const straps = group.straps(place)
  if (!hasGroup(place, straps)) return []
  const isPair = straps.length > 1
  return [
    ...(isPair || group.apart === null ? [middleAsk(group)] : []),
    ...(group.isOnTube
      ? []
      : [
          axisAsk(group, 'xMm', {
            field: 'back',
            words: 'Rearward to the hole',
            hint: 'Level, from the datum to its middle.',
            letter: group.letters[0],
          }),
          axisAsk(group, 'zMm', {
            field: 'up',
            words: 'Up to the hole',
            hint: 'Plumb, from the height of the datum to its middle.',
            letter: group.letters[1],
          }),
        ]),
    ...(group.apart === null ? [] : [apartAsk(group, group.apart, isPair)]),
  ]
}

/** The straps of a family that have sides. */
export const family =
  (name: StrapFamily): Straps =>
  (place) =>
    sideStraps(place, name)

/** The strap in the middle. */
export const centre: Straps = (place) => strapsOf(place.belt).filter((strap) => strapSide(strap) === 'centre')

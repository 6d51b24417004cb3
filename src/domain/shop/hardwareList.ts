import type { Tube } from '../geometry/tube'
import { type Anchor, type TabForm, tabForm } from '../straps/anchor'
import {
  areShoulderStrapsJoined,
  type Belt,
  STRAP_FAMILIES,
  type StrapBolt,
  strapFamily,
  type StrapFamily,
  type StrapId,
  strapsOf,
} from '../straps/strap'

/** One line of what has to be ordered or made for one place; sentences are made where it is shown. */
export type HardwareItem =
  | { readonly kind: 'belt'; readonly belt: Belt }
  | {
      readonly kind: 'webbing'
      readonly strap: StrapId
      readonly widthMm: number
      /** The longest order length over all sittings, for a joined strap without the tail; null while the strap has no path. */
      readonly orderLengthMm: number | null
    }
  /** The one tail of joined shoulder straps, with the loop and the part woven back where it is wrapped. */
  | { readonly kind: 'shoulder-tail'; readonly widthMm: number; readonly orderLengthMm: number }
  /** Adjusters of one family whose place is known. */
  | {
      readonly kind: 'adjuster'
      readonly family: StrapFamily
      readonly count: number
      readonly fromAnchorMm: number
      readonly lengthMm: number
    }
  /** Tabs, clevises or inserts that are made alike. */
  | {
      readonly kind: 'tab'
      readonly form: TabForm
      readonly count: number
      /** Of each plate; of an insert its length. */
      readonly thicknessMm: number
      readonly holeDiameterMm: number
      readonly shear: 'single' | 'double'
    }
  /** One through-bolt for each tab; its size and grade are the belt maker's to say. */
  | { readonly kind: 'tab-bolt'; readonly count: number }
  /** What the builder has typed of the bolts of one family's tabs and eyes; null where nothing was typed. */
  | {
      readonly kind: 'bolts'
      readonly family: StrapFamily
      readonly count: number
      readonly bolt: StrapBolt | null
    }
  /** Eye bolts that are bought alike. */
  | {
      readonly kind: 'eye-bolt'
      readonly count: number
      readonly threadDiameterMm: number
      readonly eyeDiameterMm: number
    }
  /** One for each wrapped strap. */
  | { readonly kind: 'three-bar-slide'; readonly count: number }
  /** Wraps that are held sideways by welded hoops. */
  | { readonly kind: 'guide-hoops'; readonly wraps: number }

type Item<Kind extends HardwareItem['kind']> = HardwareItem & { readonly kind: Kind }

export interface HardwareInput {
  readonly belt: Belt
  readonly anchors: readonly Anchor[]
  readonly tubes: readonly Tube[]
  readonly orderLengthMm: ReadonlyMap<StrapId, number>
}

/** Belt, webbing and fittings of one place, in the order they are put together. Lines with nothing to count are left out. */
export const hardwareList = (input: HardwareInput): readonly HardwareItem[] => {
  const { belt } = input
  const anchors = countedAnchors(input)
  const tabs = tabItems(anchors)
  const tabCount = tabs.reduce((sum, item) => sum + item.count, 0)
  const wraps = anchors.flatMap(({ mount }) => (mount.kind === 'wrap' ? [mount] : []))
  const hooped = wraps.filter((mount) => mount.guideHoops).length
  return [
    { kind: 'belt', belt },
    ...webbingItems(input),
    ...adjusterItems(belt),
    ...tabs,
    ...(tabCount === 0 ? [] : [{ kind: 'tab-bolt' as const, count: tabCount }]),
    ...eyeItems(anchors),
    ...boltItems(belt, anchors),
    ...(wraps.length === 0 ? [] : [{ kind: 'three-bar-slide' as const, count: wraps.length }]),
    ...(hooped === 0 ? [] : [{ kind: 'guide-hoops' as const, wraps: hooped }]),
  ]
}

/** The anchors to be made: those of joined shoulder straps are one thing. */
const countedAnchors = ({ belt, anchors }: HardwareInput): readonly Anchor[] =>
  areShoulderStrapsJoined(belt) && anchors.some(({ strap }) => strap === 'shoulder-left')
    ? anchors.filter(({ strap }) => strap !== 'shoulder-right')
    : anchors

/**
 * Webbing strap by strap. Joined shoulder straps are ordered as a tail and two straps from the junction on: what belongs to the
 * tail, its length and the loop and return of a wrap, is taken off each. Source: common practice, no source.
 */
const webbingItems = (input: HardwareInput): readonly (Item<'webbing'> | Item<'shoulder-tail'>)[] => {
  const { belt, orderLengthMm } = input
  const tailMm = tailLengthMm(input)
  const straps = strapsOf(belt).map((strap): Item<'webbing'> => {
    const family = strapFamily(strap)
    const wholeMm = orderLengthMm.get(strap) ?? null
    const ofTailMm = family === 'shoulder' ? (tailMm ?? 0) : 0
    return {
      kind: 'webbing',
      strap,
      widthMm: belt.webbingMm[family],
      orderLengthMm: wholeMm === null ? null : wholeMm - ofTailMm,
    }
  })
  if (tailMm === null) return straps
  return [{ kind: 'shoulder-tail', widthMm: belt.webbingMm.shoulder, orderLengthMm: tailMm }, ...straps]
}

/** Order length of the tail of joined shoulder straps, mm; null for separate straps. */
const tailLengthMm = ({ belt, anchors, tubes }: HardwareInput): number | null => {
  const { shoulderTailMm } = belt
  if (shoulderTailMm === undefined || !areShoulderStrapsJoined(belt)) return null
  const mount = anchors.find(({ strap }) => strap === 'shoulder-left')?.mount
  if (mount?.kind !== 'wrap') return shoulderTailMm
  const diameterMm = tubes.find(({ id }) => id === mount.tubeId)?.outsideDiameterMm ?? 0
  return shoulderTailMm + Math.PI * diameterMm + belt.wrapReturnMm
}

const adjusterItems = (belt: Belt): readonly Item<'adjuster'>[] =>
  STRAP_FAMILIES.flatMap((family) => {
    const adjuster = belt.adjusters?.[family]
    const count = strapsOf(belt).filter((strap) => strapFamily(strap) === family).length
    return adjuster === undefined || count === 0
      ? []
      : [{ kind: 'adjuster' as const, family, count, ...adjuster }]
  })

const tabItems = (anchors: readonly Anchor[]): readonly Item<'tab'>[] =>
  counted(
    anchors.flatMap(({ mount }) => {
      if (mount.kind !== 'tab') return []
      const { thicknessMm, holeDiameterMm, shear } = mount
      return [{ kind: 'tab' as const, form: tabForm(mount), thicknessMm, holeDiameterMm, shear }]
    }),
  )

/** One line for each family that is bolted to something; a family that is only wrapped has no bolts. */
const boltItems = (belt: Belt, anchors: readonly Anchor[]): readonly Item<'bolts'>[] =>
  STRAP_FAMILIES.flatMap((family) => {
    const count = anchors.filter(
      ({ strap, mount }) => strapFamily(strap) === family && mount.kind !== 'wrap',
    ).length
    return count === 0
      ? []
      : [{ kind: 'bolts' as const, family, count, bolt: belt.hardware?.[family] ?? null }]
  })

const eyeItems = (anchors: readonly Anchor[]): readonly Item<'eye-bolt'>[] =>
  counted(
    anchors.flatMap(({ mount }) => {
      if (mount.kind !== 'eye') return []
      const { threadDiameterMm, eyeDiameterMm } = mount
      return [{ kind: 'eye-bolt' as const, threadDiameterMm, eyeDiameterMm }]
    }),
  )

/** Things that are alike in everything as one line with their number, in the order they first come. */
const counted = <Thing extends object>(things: readonly Thing[]): (Thing & { readonly count: number })[] => {
  const alike = new Map<string, Thing & { readonly count: number }>()
  for (const thing of things) {
    const key = JSON.stringify(thing)
    alike.set(key, { ...thing, count: (alike.get(key)?.count ?? 0) + 1 })
  }
  return [...alike.values()]
}

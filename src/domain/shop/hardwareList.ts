import type { Anchor } from '../straps/anchor'
import { strapsOf, type Belt, type StrapFamily, type StrapId, strapFamily } from '../straps/strap'

/** One line of what has to be ordered or made for one place; sentences are made where it is shown. */
export type HardwareItem =
  | { readonly kind: 'belt'; readonly belt: Belt }
  | {
      readonly kind: 'webbing'
      readonly strap: StrapId
      readonly widthMm: number
      /** The longest order length over all sittings; null while the strap has no path. */
      readonly orderLengthMm: number | null
    }
  /** Tabs that are cut alike. */
  | {
      readonly kind: 'tab'
      readonly count: number
      readonly thicknessMm: number
      readonly holeDiameterMm: number
      readonly shear: 'single' | 'double'
    }
  /** One through-bolt for each tab; its size and grade are the belt maker's to say. */
  | { readonly kind: 'tab-bolt'; readonly count: number }
  /** One for each wrapped strap. */
  | { readonly kind: 'three-bar-slide'; readonly count: number }
  /** Wraps that are held sideways by welded hoops. */
  | { readonly kind: 'guide-hoops'; readonly wraps: number }

export interface HardwareInput {
  readonly belt: Belt
  readonly anchors: readonly Anchor[]
  readonly orderLengthMm: ReadonlyMap<StrapId, number>
}

/** Belt, webbing and fittings of one place, in the order they are put together. Lines with nothing to count are left out. */
export const hardwareList = ({ belt, anchors, orderLengthMm }: HardwareInput): readonly HardwareItem[] => {
  const tabs = tabItems(anchors)
  const tabCount = tabs.reduce((sum, item) => sum + item.count, 0)
  const wraps = anchors.flatMap(({ mount }) => (mount.kind === 'wrap' ? [mount] : []))
  const hooped = wraps.filter((mount) => mount.guideHoops).length
  return [
    { kind: 'belt', belt },
    ...strapsOf(belt).map((strap) => ({
      kind: 'webbing' as const,
      strap,
      widthMm: webbingWidthMm(belt, strapFamily(strap)),
      orderLengthMm: orderLengthMm.get(strap) ?? null,
    })),
    ...tabs,
    ...(tabCount === 0 ? [] : [{ kind: 'tab-bolt' as const, count: tabCount }]),
    ...(wraps.length === 0 ? [] : [{ kind: 'three-bar-slide' as const, count: wraps.length }]),
    ...(hooped === 0 ? [] : [{ kind: 'guide-hoops' as const, wraps: hooped }]),
  ]
}

const webbingWidthMm = (belt: Belt, family: StrapFamily): number => belt.webbingMm[family]

const tabItems = (anchors: readonly Anchor[]): readonly (HardwareItem & { readonly kind: 'tab' })[] => {
  const alike = new Map<string, HardwareItem & { readonly kind: 'tab' }>()
  for (const { mount } of anchors) {
    if (mount.kind !== 'tab') continue
    const { thicknessMm, holeDiameterMm, shear } = mount
    const key = `${thicknessMm}/${holeDiameterMm}/${shear}`
    const count = (alike.get(key)?.count ?? 0) + 1
    alike.set(key, { kind: 'tab', count, thicknessMm, holeDiameterMm, shear })
  }
  return [...alike.values()]
}

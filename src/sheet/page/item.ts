import { printable, textWidthMm, type TextWeight } from './textWidth'

/** A place on a page: mm from its upper left corner, x to the right, y down. */
export interface PagePoint {
  readonly xMm: number
  readonly yMm: number
}

export interface Box {
  readonly leftMm: number
  readonly topMm: number
  readonly rightMm: number
  readonly bottomMm: number
}

/** Ink and greys that stay apart in a greyscale print. */
export type Ink = 'black' | 'dark' | 'mid' | 'light' | 'white' | 'none'

/** Everything a page is made of. Screen, print and files draw these and nothing else. */
export type SheetItem =
  | {
      readonly kind: 'line'
      readonly points: readonly PagePoint[]
      readonly closed: boolean
      readonly widthMm: number
      readonly ink: Ink
      readonly fill: Ink
      /** Lengths of dash and gap, mm; empty for an unbroken line. */
      readonly dashMm: readonly number[]
    }
  | {
      readonly kind: 'circle'
      readonly centre: PagePoint
      readonly radiusMm: number
      readonly widthMm: number
      readonly ink: Ink
      readonly fill: Ink
      readonly dashMm: readonly number[]
    }
  | SheetText

export interface SheetText {
  readonly kind: 'text'
  /** On the base line, at the end that `align` names. */
  readonly at: PagePoint
  readonly text: string
  readonly sizeMm: number
  readonly weight: TextWeight
  readonly align: 'left' | 'centre' | 'right'
  readonly ink: Ink
  /** Reading upward instead of to the right. */
  readonly upward: boolean
  /** A patch of white behind the letters, so that lines under them do not spoil a number. */
  readonly halo: boolean
}

export interface TextOptions {
  readonly weight?: TextWeight
  readonly align?: SheetText['align']
  readonly ink?: Ink
  readonly upward?: boolean
  readonly halo?: boolean
}

export const textItem = (
  at: PagePoint,
  text: string,
  sizeMm: number,
  options: TextOptions = {},
): SheetText => ({
  kind: 'text',
  at,
  text: printable(text).replaceAll('\n', ' '),
  sizeMm,
  weight: options.weight ?? 'regular',
  align: options.align ?? 'left',
  ink: options.ink ?? 'black',
  upward: options.upward ?? false,
  halo: options.halo ?? false,
})

export interface LineOptions {
  readonly widthMm?: number
  readonly ink?: Ink
  readonly fill?: Ink
  readonly closed?: boolean
  readonly dashMm?: readonly number[]
}

export const lineItem = (points: readonly PagePoint[], options: LineOptions = {}): SheetItem => ({
  kind: 'line',
  points,
  closed: options.closed ?? false,
  widthMm: options.widthMm ?? 0.18,
  ink: options.ink ?? 'black',
  fill: options.fill ?? 'none',
  dashMm: options.dashMm ?? [],
})

export const straightItem = (
  from: PagePoint,
  to: PagePoint,
  options: Omit<LineOptions, 'closed' | 'fill'> = {},
): SheetItem => lineItem([from, to], options)

export const boxItem = (box: Box, options: Omit<LineOptions, 'closed'> = {}): SheetItem =>
  lineItem(
    [
      { xMm: box.leftMm, yMm: box.topMm },
      { xMm: box.rightMm, yMm: box.topMm },
      { xMm: box.rightMm, yMm: box.bottomMm },
      { xMm: box.leftMm, yMm: box.bottomMm },
    ],
    { ...options, closed: true },
  )

/** Height of capitals and depth of descenders as shares of the size. Source: the bundled IBM Plex Sans Condensed (cap height 698, descender 205 of 1000), rounded up. */
const ASCENT_SHARE = 0.74
const DESCENT_SHARE = 0.22

/** The rectangle that an item inks, line widths included. */
export const itemBox = (item: SheetItem): Box => {
  switch (item.kind) {
    case 'line': {
      const half = item.ink === 'none' ? 0 : item.widthMm / 2
      const xs = item.points.map((point) => point.xMm)
      const ys = item.points.map((point) => point.yMm)
      return {
        leftMm: Math.min(...xs) - half,
        topMm: Math.min(...ys) - half,
        rightMm: Math.max(...xs) + half,
        bottomMm: Math.max(...ys) + half,
      }
    }
    case 'circle': {
      const reach = item.radiusMm + item.widthMm / 2
      const { xMm, yMm } = item.centre
      return { leftMm: xMm - reach, topMm: yMm - reach, rightMm: xMm + reach, bottomMm: yMm + reach }
    }
    case 'text':
      return textBox(item)
  }
}

const textBox = (item: SheetText): Box => {
  const widthMm = textWidthMm(item.text, item.sizeMm, item.weight)
  const before = item.align === 'left' ? 0 : item.align === 'right' ? widthMm : widthMm / 2
  const { xMm, yMm } = item.at
  const up = item.sizeMm * ASCENT_SHARE
  const down = item.sizeMm * DESCENT_SHARE
  return item.upward
    ? { leftMm: xMm - up, rightMm: xMm + down, topMm: yMm + before - widthMm, bottomMm: yMm + before }
    : { leftMm: xMm - before, rightMm: xMm - before + widthMm, topMm: yMm - up, bottomMm: yMm + down }
}

/** Whether two rectangles share any area; touching edges do not count. */
export const areOverlapping = (a: Box, b: Box): boolean =>
  a.leftMm < b.rightMm && b.leftMm < a.rightMm && a.topMm < b.bottomMm && b.topMm < a.bottomMm

export const isInside = (inner: Box, outer: Box): boolean =>
  inner.leftMm >= outer.leftMm &&
  inner.rightMm <= outer.rightMm &&
  inner.topMm >= outer.topMm &&
  inner.bottomMm <= outer.bottomMm

import { type Ink, itemBox, type SheetItem, type SheetText } from './item'
import { textWidthMm } from './textWidth'

/** A drawing element without a renderer: the screen makes React elements of it, a file makes text of it. */
export interface SvgNode {
  readonly tag: 'svg' | 'g' | 'path' | 'circle' | 'text' | 'rect' | 'title' | 'style'
  /** Names as in SVG; numbers are in mm. */
  readonly attributes: Readonly<Record<string, string | number>>
  readonly children: readonly (SvgNode | string)[]
}

/** Families tried in turn; the first is bundled, the others are narrow faces that many machines have. */
const SHEET_FONT_FAMILY =
  "'IBM Plex Sans Condensed', 'Liberation Sans Narrow', 'Arial Narrow', 'DejaVu Sans Condensed', sans-serif"

/** Inks that stay apart on a greyscale print; `mid` is for scenery, never for words. */
const INKS: Readonly<Record<Ink, string>> = {
  black: '#000000',
  dark: '#3d3d3d',
  mid: '#7d7d7d',
  light: '#e4e4e4',
  white: '#ffffff',
  none: 'none',
}

const WEIGHTS = { regular: 400, bold: 600 } as const
const ANCHORS = { left: 'start', centre: 'middle', right: 'end' } as const

/** Micrometres are finer than any printer; longer numbers only make files large. */
const places = (lengthMm: number): number => {
  const rounded = Math.round(lengthMm * 1000) / 1000
  return rounded === 0 ? 0 : rounded
}

/** One thing on the page as an element. */
export const itemNode = (item: SheetItem): SvgNode => {
  switch (item.kind) {
    case 'line': {
      const path = item.points.map(({ xMm, yMm }) => `${places(xMm)} ${places(yMm)}`).join('L')
      return {
        tag: 'path',
        attributes: {
          d: `M${path}${item.closed ? 'Z' : ''}`,
          fill: INKS[item.fill],
          ...strokeAttributes(item.ink, item.widthMm, item.dashMm),
        },
        children: [],
      }
    }
    case 'circle':
      return {
        tag: 'circle',
        attributes: {
          cx: places(item.centre.xMm),
          cy: places(item.centre.yMm),
          r: places(item.radiusMm),
          fill: INKS[item.fill],
          ...strokeAttributes(item.ink, item.widthMm, item.dashMm),
        },
        children: [],
      }
    case 'text':
      return textNode(item)
  }
}

const strokeAttributes = (
  ink: Ink,
  widthMm: number,
  dashMm: readonly number[],
): Readonly<Record<string, string | number>> =>
  ink === 'none'
    ? {}
    : {
        stroke: INKS[ink],
        'stroke-width': places(widthMm),
        ...(dashMm.length === 0 ? {} : { 'stroke-dasharray': dashMm.map(places).join(' ') }),
      }

const textNode = (item: SheetText): SvgNode => {
  const xMm = places(item.at.xMm)
  const yMm = places(item.at.yMm)
  const text: SvgNode = {
    tag: 'text',
    attributes: {
      x: xMm,
      y: yMm,
      'font-size': places(item.sizeMm),
      'font-weight': WEIGHTS[item.weight],
      'text-anchor': ANCHORS[item.align],
      fill: INKS[item.ink],
      // Another machine's font is squeezed into the width that the page was laid out with.
      textLength: places(textWidthMm(item.text, item.sizeMm, item.weight)),
      lengthAdjust: 'spacingAndGlyphs',
      ...(item.upward ? { transform: `rotate(-90 ${xMm} ${yMm})` } : {}),
    },
    children: [item.text],
  }
  return item.halo ? { tag: 'g', attributes: {}, children: [paperBehind(item), text] } : text
}

/** A white outline round the letters would put every word into a printed file twice; a patch of paper does not. */
const paperBehind = (item: SheetText): SvgNode => {
  const box = itemBox(item)
  return {
    tag: 'rect',
    attributes: {
      x: places(box.leftMm - PATCH_MM),
      y: places(box.topMm),
      width: places(box.rightMm - box.leftMm + 2 * PATCH_MM),
      height: places(box.bottomMm - box.topMm),
      fill: INKS.white,
    },
    children: [],
  }
}

const PATCH_MM = 0.2

export interface SvgPage {
  readonly widthMm: number
  readonly heightMm: number
  readonly title: string
  readonly items: readonly SheetItem[]
}

/** A whole page, in its true size: one unit is one millimetre. */
export const pageNode = (page: SvgPage): SvgNode => {
  const widthMm = places(page.widthMm)
  const heightMm = places(page.heightMm)
  return {
    tag: 'svg',
    attributes: {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${widthMm}mm`,
      height: `${heightMm}mm`,
      viewBox: `0 0 ${widthMm} ${heightMm}`,
      'font-family': SHEET_FONT_FAMILY,
      'stroke-linecap': 'butt',
      'stroke-linejoin': 'round',
    },
    children: [
      { tag: 'title', attributes: {}, children: [page.title] },
      {
        tag: 'rect',
        attributes: { width: widthMm, height: heightMm, fill: '#ffffff' },
        children: [],
      },
      ...page.items.filter((item) => item.kind !== 'text' || item.text !== '').map(itemNode),
    ],
  }
}

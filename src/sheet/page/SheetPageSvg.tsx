import { createElement, useMemo, type ReactElement, type ReactNode } from 'react'
import { pageNode, type SvgNode } from './svgTree'
import type { SheetPage } from './sheetPage'

/** The attributes that React spells differently from SVG. */
const REACT_NAMES: Readonly<Record<string, string>> = {
  'font-family': 'fontFamily',
  'font-size': 'fontSize',
  'font-weight': 'fontWeight',
  'stroke-dasharray': 'strokeDasharray',
  'stroke-linecap': 'strokeLinecap',
  'stroke-linejoin': 'strokeLinejoin',
  'stroke-width': 'strokeWidth',
  'text-anchor': 'textAnchor',
}

const element = (node: SvgNode, key: number): ReactElement => {
  const properties = Object.fromEntries(
    Object.entries(node.attributes).map(([name, value]) => [REACT_NAMES[name] ?? name, value]),
  )
  const children = node.children.map((child, index): ReactNode =>
    typeof child === 'string' ? child : element(child, index),
  )
  return createElement(node.tag, { ...properties, key }, ...children)
}

/** One page of the sheet on screen and in print: the same elements as in the saved files. */
export const SheetPageSvg = ({ page }: { readonly page: SheetPage }): ReactElement =>
  useMemo(() => element(pageNode(page), page.number), [page])

import type { Layout } from './layout'

/** The text of a layout file: the same layout always gives the same text, whatever order its fields were made in. */
export const layoutText = (layout: Layout): string => orderedText(layout)

/** Any of our files as text: two spaces for each depth, fields in a fixed order, a line end. */
export const orderedText = (value: unknown): string => `${JSON.stringify(value, inFixedOrder, 2)}\n`

/** Fields that open a group, in this order; the rest follow by name. */
const FIRST = ['version', 'id', 'kind', 'name', 'strap', 'xMm', 'yMm', 'zMm']

const rank = (name: string): number => {
  const index = FIRST.indexOf(name)
  return index === -1 ? FIRST.length : index
}

const inFixedOrder = (_name: string, value: unknown): unknown => {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value
  const entries = Object.entries(value).sort(([a], [b]) => rank(a) - rank(b) || (a < b ? -1 : a > b ? 1 : 0))
  return Object.fromEntries(entries)
}

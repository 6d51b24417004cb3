import type { SvgNode } from './svgTree'
import { printable } from './textWidth'

/** Text that is safe inside elements and inside double-quoted attributes of SVG and HTML. */
export const escaped = (text: string): string =>
  printable(text)
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;')

/** An element and everything in it as text; names and numbers from the layout cannot break out of it. */
export const svgText = (node: SvgNode): string => {
  const attributes = Object.entries(node.attributes)
    .map(([name, value]) => ` ${name}="${escaped(String(value))}"`)
    .join('')
  const children = node.children.map((child) => (typeof child === 'string' ? escaped(child) : svgText(child)))
  return children.length === 0
    ? `<${node.tag}${attributes}/>`
    : `<${node.tag}${attributes}>${children.join('')}</${node.tag}>`
}

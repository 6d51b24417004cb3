import type { Layout } from '../../domain/layout/document/layout'
import { drawnVariantName } from '../../domain/layout/edit/changeVariants'
import { escaped, svgText } from '../page/svgText'
import { pageNode, type SvgNode } from '../page/svgTree'
import type { SheetPage } from '../page/sheetPage'

/** The sheet's font as it travels inside a saved file; empty where it could not be read, then a narrow face of the machine is used. */
export interface EmbeddedFont {
  readonly weight: number
  /** A `data:` address of the font file. */
  readonly dataUrl: string
}

const fontFaces = (fonts: readonly EmbeddedFont[]): string =>
  fonts
    .map(
      ({ weight, dataUrl }) =>
        `@font-face{font-family:'IBM Plex Sans Condensed';font-weight:${weight};src:url(${dataUrl}) format('woff2')}`,
    )
    .join('')

/** One page as a file of its own: opens in a browser or a drawing program, in true size, with its text as text. */
export const svgFile = (page: SheetPage, fonts: readonly EmbeddedFont[]): string => {
  const node = pageNode(page)
  const style: SvgNode = { tag: 'style', attributes: {}, children: [fontFaces(fonts)] }
  const svg = svgText({ ...node, children: fonts.length === 0 ? node.children : [style, ...node.children] })
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svg}\n`
}

/** All pages in one file that prints each on a sheet of its own, in true size. */
export const htmlFile = (
  pages: readonly SheetPage[],
  title: string,
  fonts: readonly EmbeddedFont[],
): string => {
  const [first] = pages
  const size = first === undefined ? 'auto' : `${first.widthMm}mm ${first.heightMm}mm`
  return [
    '<!doctype html>',
    '<html lang="en"><head><meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(title)}</title>`,
    `<style>${fontFaces(fonts)}`,
    `@page{size:${size};margin:0}`,
    'body{margin:0;background:#ddd}svg{display:block;margin:4mm auto;background:#fff}',
    '@media print{body{background:none}svg{margin:0;break-after:page;break-inside:avoid}svg:last-of-type{break-after:auto}}',
    '</style></head><body>',
    ...pages.map((page) => svgText(pageNode(page))),
    '</body></html>',
    '',
  ].join('\n')
}

/** Longest part of a name: four of them, a folder and an ending stay below the 255 that common systems take (from memory). */
const LONGEST_PART = 40

/**
 * Words as part of a file name that every system takes: lower-case letters, digits and single hyphens, none at the ends. What cannot be
 * written so is dropped; nothing in it can name another folder, a device or a hidden file.
 */
export const namePart = (word: string): string =>
  word
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/\p{M}/gu, '')
    .replaceAll(/[^a-z0-9]+/g, '-')
    .slice(0, LONGEST_PART)
    .replaceAll(/^-+|-+$/g, '')

/** The kind of paper, the car's name, the drawn variant and the revision as the beginning of a file name. `stem` is ours and plain. */
export const paperStem = (stem: string, { job, variants }: Pick<Layout, 'job' | 'variants'>): string =>
  [stem, job.car, drawnVariantName({ variants }), job.revision]
    .map(namePart)
    .filter((word) => word !== '')
    .join('-')

export const paperFileName = (
  stem: string,
  layout: Pick<Layout, 'job' | 'variants'>,
  ending: string,
): string => `${paperStem(stem, layout)}.${ending}`

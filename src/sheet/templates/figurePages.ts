import type { Box, PagePoint, SheetItem } from '../page/item'
import { textRows, type BareRow } from '../page/section'
import { heightOf, stacked } from '../page/strips'
import type { Typography } from '../page/typography'
import type { FlatWindow } from './clip'
import { inkedWindow } from './figureItems'
import type { Template } from './template'
import { type Tile, type TileGrid, tileGrid, tileItems, tileName } from './tiles'

/** One page of figures, and which templates are on it. */
export interface FigurePage {
  readonly templates: readonly Template[]
  readonly items: readonly SheetItem[]
  /** Name of the part, where the page holds one part of a large figure; null otherwise. */
  readonly part: string | null
}

/** Least width of the words under a figure, and room between figures, mm. Our judgement. */
const LEAST_CAPTION_MM = 63
const GAP_MM = 4
const BELOW_FIGURE_MM = 1.5

/** A figure with its words below it. */
interface Block {
  readonly template: Template
  readonly window: FlatWindow
  readonly caption: readonly BareRow[]
  readonly widthMm: number
  readonly heightMm: number
}

/** All templates on few pages: each on the first page that still has room for it, the parts of the large ones on pages of their own at the end. */
export const figurePages = (
  templates: readonly Template[],
  room: Box,
  type: Typography,
): readonly FigurePage[] => {
  const shelves: Shelf[] = []
  const large: Template[] = []
  for (const template of templates) {
    const block = blockOf(template, type)
    if (!isFitting(block, room)) {
      large.push(template)
      continue
    }
    const placed = shelves.map((shelf) => placedOn(shelf, block, room))
    const found = placed.findIndex((shelf) => shelf !== null)
    const shelf = placed[found] ?? placedOn(emptyShelf(), block, room)
    if (shelf !== null) shelves[found === -1 ? shelves.length : found] = shelf
  }
  return [
    ...shelves.map((shelf) => shelfPage(shelf, room)),
    ...large.flatMap((template) => partPages(template, room, type)),
  ]
}

const blockOf = (template: Template, type: Typography): Block => {
  const window = inkedWindow(template.figure.shapes)
  const widthMm = Math.max(LEAST_CAPTION_MM, window.max.xMm - window.min.xMm)
  const caption = captionRows(template, null, widthMm, type)
  return {
    template,
    window,
    caption,
    widthMm,
    heightMm: window.max.yMm - window.min.yMm + BELOW_FIGURE_MM + heightOf(caption),
  }
}

const captionRows = (
  { figure, words }: Template,
  part: string | null,
  widthMm: number,
  type: Typography,
): readonly BareRow[] => [
  ...textRows(part === null ? figure.title : `${figure.title}, ${part}`, widthMm, type.strong, figure.id),
  ...words.flatMap((each) => textRows(each, widthMm, type.small, figure.id)),
]

const isFitting = ({ widthMm, heightMm }: Block, room: Box): boolean =>
  widthMm <= room.rightMm - room.leftMm && heightMm <= room.bottomMm - room.topMm

/** Blocks in rows from the top left, and where the next one goes. */
interface Shelf {
  readonly blocks: readonly { readonly block: Block; readonly xMm: number; readonly yMm: number }[]
  /** From the room's upper left corner. */
  readonly next: PagePoint
  readonly rowHeightMm: number
}

const emptyShelf = (): Shelf => ({ blocks: [], next: { xMm: 0, yMm: 0 }, rowHeightMm: 0 })

/** The shelf with one more block; null when the page is full. */
const placedOn = (shelf: Shelf, block: Block, room: Box): Shelf | null => {
  const isRowFull = shelf.next.xMm > 0 && shelf.next.xMm + block.widthMm > room.rightMm - room.leftMm
  const place = isRowFull ? { xMm: 0, yMm: shelf.next.yMm + shelf.rowHeightMm + GAP_MM } : shelf.next
  if (place.yMm + block.heightMm > room.bottomMm - room.topMm) return null
  return {
    blocks: [...shelf.blocks, { block, ...place }],
    next: { xMm: place.xMm + block.widthMm + GAP_MM, yMm: place.yMm },
    rowHeightMm: Math.max(isRowFull ? 0 : shelf.rowHeightMm, block.heightMm),
  }
}

const shelfPage = (shelf: Shelf, room: Box): FigurePage => ({
  templates: shelf.blocks.map(({ block }) => block.template),
  part: null,
  items: shelf.blocks.flatMap(({ block, xMm, yMm }) => {
    const corner = { xMm: room.leftMm + xMm, yMm: room.topMm + yMm }
    const { window, template, caption } = block
    const grid = wholeGrid(window)
    const [whole] = grid.tiles
    const belowMm = corner.yMm + window.max.yMm - window.min.yMm + BELOW_FIGURE_MM
    return [
      ...(whole === undefined ? [] : tileItems(template.figure.shapes, grid, whole, corner)),
      ...stacked(caption, { xMm: corner.xMm, yMm: belowMm }),
    ]
  }),
})

const wholeGrid = (window: FlatWindow): TileGrid => ({
  rows: 1,
  columns: 1,
  tiles: [{ row: 0, column: 0, window }],
})

/** A figure larger than the room left by its words, in parts on pages of their own, the words above each. */
const partPages = (template: Template, room: Box, type: Typography): readonly FigurePage[] => {
  const { figure } = template
  const widthMm = room.rightMm - room.leftMm
  const captionOf = (part: string | null): readonly BareRow[] => captionRows(template, part, widthMm, type)
  const topMm = room.topMm + heightOf(captionOf('part 99Z of 99 × 99')) + BELOW_FIGURE_MM
  const grid = tileGrid(inkedWindow(figure.shapes), { widthMm, heightMm: room.bottomMm - topMm })
  return grid.tiles.map((tile) => {
    const part = partWords(grid, tile)
    return {
      templates: [template],
      part,
      items: [
        ...stacked(captionOf(part), { xMm: room.leftMm, yMm: room.topMm }),
        ...tileItems(figure.shapes, grid, tile, { xMm: room.leftMm, yMm: topMm }),
      ],
    }
  })
}

const partWords = ({ rows, columns, tiles }: TileGrid, { row, column }: Tile): string | null =>
  tiles.length === 1
    ? null
    : `part ${tileName(row, column)} of ${tiles.length} (${rows} × ${columns}: rows 1 down, columns A to the right)`

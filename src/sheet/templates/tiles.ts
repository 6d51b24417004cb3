import type { FlatPoint, FlatShape } from '../../domain/shop/flat/flatFigure'
import {
  type Box,
  itemBox,
  lineItem,
  type PagePoint,
  type SheetItem,
  straightItem,
  textItem,
} from '../page/item'
import { LEAST_TEXT_MM } from '../page/typography'
import type { FlatWindow } from './clip'
import { lineItems, textOnPage } from './figureItems'

/** How far neighbouring pages show the same part of a figure, mm: enough to glue and to line up crosses. Our judgement. */
export const OVERLAP_MM = 10

/** One page's part of a figure that is larger than the paper. Rows count from the top, columns from the left. */
export interface Tile {
  readonly row: number
  readonly column: number
  readonly window: FlatWindow
}

export interface TileGrid {
  readonly rows: number
  readonly columns: number
  readonly tiles: readonly Tile[]
}

/** Row as a number from 1, column as a letter from A: "2B". Beyond Z the letters go on as AA. */
export const tileName = (row: number, column: number): string => `${row + 1}${letters(column)}`

const letters = (index: number): string =>
  (index < 26 ? '' : letters(Math.floor(index / 26) - 1)) + String.fromCodePoint(65 + (index % 26))

/** Windows of one size that cover a figure, each overlapping its neighbours; one window where the figure fits. */
export const tileGrid = (
  figure: FlatWindow,
  room: { readonly widthMm: number; readonly heightMm: number },
): TileGrid => {
  const columns = countOf(figure.max.xMm - figure.min.xMm, room.widthMm)
  const rows = countOf(figure.max.yMm - figure.min.yMm, room.heightMm)
  const tiles = Array.from({ length: rows * columns }, (_, index): Tile => {
    const [row, column] = [Math.floor(index / columns), index % columns]
    const leftMm = figure.min.xMm + column * (room.widthMm - OVERLAP_MM)
    const topMm = figure.max.yMm - row * (room.heightMm - OVERLAP_MM)
    return {
      row,
      column,
      window: {
        min: { xMm: leftMm, yMm: Math.max(topMm - room.heightMm, figure.min.yMm) },
        max: { xMm: Math.min(leftMm + room.widthMm, figure.max.xMm), yMm: topMm },
      },
    }
  })
  return { rows, columns, tiles }
}

/** Rounding in sums of lengths. */
const ROUNDING_MM = 1e-6

const countOf = (lengthMm: number, roomMm: number): number =>
  lengthMm <= roomMm + ROUNDING_MM
    ? 1
    : Math.ceil((lengthMm - OVERLAP_MM - ROUNDING_MM) / (roomMm - OVERLAP_MM))

/** A figure's lines and lettering in one tile, with the marks to join it by; `corner` is the window's upper left corner on the page. */
export const tileItems = (
  shapes: readonly FlatShape[],
  grid: TileGrid,
  tile: Tile,
  corner: PagePoint,
): readonly SheetItem[] => {
  const origin = {
    xMm: corner.xMm - tile.window.min.xMm,
    yMm: corner.yMm + tile.window.max.yMm,
  }
  const texts = shapes.flatMap((shape) =>
    shape.kind === 'text' && showsIn(grid, shape) === tile
      ? [fitted(textOnPage(shape, origin), tile, corner)]
      : [],
  )
  return [...lineItems(shapes, tile.window, origin), ...texts, ...joinItems(grid, tile, corner)]
}

type FlatText = Extract<FlatShape, { kind: 'text' }>

/** The one tile that shows a text: the first that holds it whole, else the last that holds its beginning. */
const showsIn = (grid: TileGrid, shape: FlatText): Tile | undefined => {
  const box = itemBox(textOnPage(shape, { xMm: 0, yMm: 0 }))
  const holds = ({ window: { min, max } }: Tile): boolean =>
    box.leftMm >= min.xMm && box.rightMm <= max.xMm && -box.bottomMm >= min.yMm && -box.topMm <= max.yMm
  return grid.tiles.find(holds) ?? grid.tiles.findLast(({ window }) => isInside(shape.at, window))
}

const isInside = ({ xMm, yMm }: FlatPoint, { min, max }: FlatWindow): boolean =>
  xMm >= min.xMm && xMm <= max.xMm && yMm >= min.yMm && yMm <= max.yMm

/** A text pushed back into its tile where it would stick out. */
const fitted = (item: SheetItem, { window }: Tile, corner: PagePoint): SheetItem => {
  if (item.kind !== 'text') return item
  const box = itemBox(item)
  const rightMm = corner.xMm + window.max.xMm - window.min.xMm
  const bottomMm = corner.yMm + window.max.yMm - window.min.yMm
  const dxMm = Math.max(0, corner.xMm - box.leftMm) - Math.max(0, box.rightMm - rightMm)
  const dyMm = Math.max(0, corner.yMm - box.topMm) - Math.max(0, box.bottomMm - bottomMm)
  return { ...item, at: { xMm: item.at.xMm + dxMm, yMm: item.at.yMm + dyMm } }
}

/** Where a tile goes on: a dashed line along the far side of the overlap, crosses on its ends and the neighbour's name. */
const joinItems = (
  grid: TileGrid,
  { row, column, window }: Tile,
  corner: PagePoint,
): readonly SheetItem[] => {
  const box: Box = {
    leftMm: corner.xMm,
    topMm: corner.yMm,
    rightMm: corner.xMm + window.max.xMm - window.min.xMm,
    bottomMm: corner.yMm + window.max.yMm - window.min.yMm,
  }
  const sides = [
    ...(column > 0 ? [joinUpright(box, box.leftMm + OVERLAP_MM, tileName(row, column - 1))] : []),
    ...(column < grid.columns - 1
      ? [joinUpright(box, box.rightMm - OVERLAP_MM, tileName(row, column + 1))]
      : []),
    ...(row > 0 ? [joinLevel(box, box.topMm + OVERLAP_MM, tileName(row - 1, column))] : []),
    ...(row < grid.rows - 1 ? [joinLevel(box, box.bottomMm - OVERLAP_MM, tileName(row + 1, column))] : []),
  ]
  return sides.flat()
}

const JOIN = { widthMm: 0.13, ink: 'dark', dashMm: [3, 2] } as const

/** The overlap's own middle line is drawn on both pages: laid on each other, the figure is whole. */
const joinUpright = (box: Box, farMm: number, name: string): readonly SheetItem[] => {
  const isLeft = farMm < (box.leftMm + box.rightMm) / 2
  const middleMm = isLeft ? farMm - OVERLAP_MM / 2 : farMm + OVERLAP_MM / 2
  return [
    straightItem({ xMm: middleMm, yMm: box.topMm }, { xMm: middleMm, yMm: box.bottomMm }, JOIN),
    ...crossItems({ xMm: middleMm, yMm: box.topMm + CROSS_MM }),
    ...crossItems({ xMm: middleMm, yMm: box.bottomMm - CROSS_MM }),
    textItem(
      { xMm: isLeft ? middleMm - 1 : middleMm + 2.6, yMm: (box.topMm + box.bottomMm) / 2 },
      `join to ${name}: lay line on line`,
      LEAST_TEXT_MM,
      { upward: true, align: 'centre', halo: true },
    ),
  ]
}

const joinLevel = (box: Box, farMm: number, name: string): readonly SheetItem[] => {
  const isTop = farMm < (box.topMm + box.bottomMm) / 2
  const middleMm = isTop ? farMm - OVERLAP_MM / 2 : farMm + OVERLAP_MM / 2
  return [
    straightItem({ xMm: box.leftMm, yMm: middleMm }, { xMm: box.rightMm, yMm: middleMm }, JOIN),
    ...crossItems({ xMm: box.leftMm + CROSS_MM, yMm: middleMm }),
    ...crossItems({ xMm: box.rightMm - CROSS_MM, yMm: middleMm }),
    textItem(
      { xMm: (box.leftMm + box.rightMm) / 2, yMm: isTop ? middleMm - 1 : middleMm + 2.6 },
      `join to ${name}: lay line on line`,
      LEAST_TEXT_MM,
      { align: 'centre', halo: true },
    ),
  ]
}

/** Half the size of a crop cross. */
const CROSS_MM = 4

const crossItems = ({ xMm, yMm }: PagePoint): readonly SheetItem[] => [
  lineItem([
    { xMm: xMm - CROSS_MM, yMm },
    { xMm: xMm + CROSS_MM, yMm },
  ]),
  lineItem([
    { xMm, yMm: yMm - CROSS_MM },
    { xMm, yMm: yMm + CROSS_MM },
  ]),
]

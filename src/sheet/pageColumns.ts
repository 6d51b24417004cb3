import type { Frame } from './flow'
import type { Box } from './item'

export const COLUMN_GAP_MM = 4

/** As many columns of one width as fit side by side into a box, from the left. At least one. */
export const columnsOf = (box: Box, widthMm: number): readonly Box[] => {
  const count = Math.max(
    1,
    Math.floor((box.rightMm - box.leftMm + COLUMN_GAP_MM + 1e-6) / (widthMm + COLUMN_GAP_MM)),
  )
  return Array.from({ length: count }, (_, index) => {
    const leftMm = box.leftMm + index * (widthMm + COLUMN_GAP_MM)
    return { ...box, leftMm, rightMm: leftMm + widthMm }
  })
}

/** Columns on the page where they begin, then on as many full pages as are asked for. */
export const columnFrames =
  (first: { readonly pageIndex: number; readonly box: Box }, fullPage: Box, widthMm: number) =>
  (index: number): Frame => {
    const begun = columnsOf(first.box, widthMm)
    const box = begun[index]
    if (box !== undefined) return { pageIndex: first.pageIndex, box }
    const full = columnsOf(fullPage, widthMm)
    const beyond = index - begun.length
    const fullBox = full[beyond % full.length] ?? fullPage
    return { pageIndex: first.pageIndex + 1 + Math.floor(beyond / full.length), box: fullBox }
  }

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

/** The frames of the page where the columns begin, then full pages of columns after `lastPage`, as many as are asked for. */
export const columnFrames =
  (begun: readonly Frame[], fullPage: Box, widthMm: number, lastPage = begun.at(-1)?.pageIndex ?? -1) =>
  (index: number): Frame => {
    const frame = begun[index]
    if (frame !== undefined) return frame
    const full = columnsOf(fullPage, widthMm)
    const beyond = index - begun.length
    return {
      pageIndex: lastPage + 1 + Math.floor(beyond / full.length),
      box: full[beyond % full.length] ?? fullPage,
    }
  }

import type { FlowRow, Frame, PlacedRow } from './flow'

export interface FittedWhole {
  readonly placed: readonly PlacedRow[]
  /** Indices of the lists that found no room, in order. */
  readonly left: readonly number[]
}

/** Rounding in sums of strip heights. */
const ROUNDING_MM = 1e-6

/**
 * Lists of strips put whole into the first frame that still has room for them, one below the other with a gap; a list that fits
 * none is left over, so that none of them is ever parted.
 */
export const fittedWhole = (
  lists: readonly (readonly FlowRow[])[],
  frames: readonly Frame[],
  gapMm: number,
): FittedWhole => {
  const endsMm = frames.map(({ box }) => box.topMm)
  const placed: PlacedRow[] = []
  const left: number[] = []
  for (const [index, rows] of lists.entries()) {
    const heightMm = rows.reduce((sumMm, row) => sumMm + row.heightMm, 0)
    const found = frames.findIndex(
      ({ box }, at) => (endsMm[at] ?? 0) + heightMm <= box.bottomMm + ROUNDING_MM,
    )
    const frame = frames[found]
    if (frame === undefined) {
      left.push(index)
      continue
    }
    let yMm = endsMm[found] ?? 0
    for (const row of rows) {
      placed.push({ row, pageIndex: frame.pageIndex, at: { xMm: frame.box.leftMm, yMm } })
      yMm += row.heightMm
    }
    endsMm[found] = yMm + gapMm
  }
  return { placed, left }
}

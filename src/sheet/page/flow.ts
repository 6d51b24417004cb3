import type { Box, PagePoint, SheetItem } from './item'

/** One horizontal strip of a page; it is never cut. */
export interface FlowRow {
  readonly heightMm: number
  readonly draw: (at: PagePoint) => readonly SheetItem[]
  /** Never the last strip of a frame: a title stays with what it is the title of. */
  readonly keepWithNext: boolean
  /** Name of what it belongs to, for the note that says what goes on overleaf. */
  readonly section: string
  /** Strips repeated above it when it is the first of a frame: the heading, marked as continued. */
  readonly continuation: readonly FlowRow[]
}

/** Where strips may go, from the top down. */
export interface Frame {
  readonly pageIndex: number
  readonly box: Box
}

export interface PlacedRow {
  readonly row: FlowRow
  readonly pageIndex: number
  readonly at: PagePoint
}

export interface Flowed {
  readonly placed: readonly PlacedRow[]
  /** How many frames were started, and where the last one is filled to. */
  readonly framesUsed: number
  readonly endMm: number
}

/**
 * Strips placed one below the other into frames, in order. `frameAt` gives as many frames as are asked for; those after the
 * first few must be high enough for any strip with its heading (throws otherwise: strips are built to be low).
 */
export const flowed = (rows: readonly FlowRow[], frameAt: (index: number) => Frame): Flowed => {
  const placed: PlacedRow[] = []
  let frameIndex = 0
  let frame = frameAt(0)
  let yMm = frame.box.topMm
  let isFresh = true
  const place = (row: FlowRow): void => {
    placed.push({ row, pageIndex: frame.pageIndex, at: { xMm: frame.box.leftMm, yMm } })
    yMm += row.heightMm
  }
  for (const [index, row] of rows.entries()) {
    for (let tries = 0; !fits(needMm(rows, index, isFresh && index > 0), yMm, frame); tries += 1) {
      if (tries > MOST_SKIPPED_FRAMES)
        throw new RangeError(`a strip of ${row.heightMm} mm of "${row.section}" fits no frame`)
      frameIndex += 1
      frame = frameAt(frameIndex)
      yMm = frame.box.topMm
      isFresh = true
    }
    if (isFresh && index > 0) for (const heading of row.continuation) place(heading)
    place(row)
    isFresh = false
  }
  return { placed, framesUsed: frameIndex + 1, endMm: yMm }
}

/** More frames than a page can have: beyond that something is too high for any of them. */
const MOST_SKIPPED_FRAMES = 12

/** Rounding in sums of strip heights. */
const ROUNDING_MM = 1e-6

const fits = (heightMm: number, yMm: number, frame: Frame): boolean =>
  yMm + heightMm <= frame.box.bottomMm + ROUNDING_MM

/** The row with what must stay on the same frame: its continued heading above, and the next rows while it is a title. */
const needMm = (rows: readonly FlowRow[], index: number, withHeading: boolean): number => {
  let sumMm = 0
  for (const row of rows.slice(index)) {
    sumMm += row.heightMm
    if (!row.keepWithNext) break
  }
  const headings = withHeading ? (rows[index]?.continuation ?? []) : []
  return sumMm + headings.reduce((heightMm, row) => heightMm + row.heightMm, 0)
}

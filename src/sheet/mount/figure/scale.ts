/**
 * Drawing scales, 1 to n, largest drawing first.
 * Source: 1:5, 1:10, 1:20, 1:50 and 1:100 are recommended reductions of ISO 5455 (from memory); the steps between are ours,
 * chosen so that a drawing fills the paper and a scale rule or a calculator still reads it easily.
 */
const SCALES = [5, 8, 10, 12.5, 15, 20, 25, 30, 40, 50, 75, 100] as const

export interface Extent {
  readonly widthMm: number
  readonly heightMm: number
}

/** The largest preferred scale (as n of 1:n) at which `real` fits into `room`; beyond 1:100 whole hundreds. `room` is positive. */
export const fittingScale = (real: Extent, room: Extent): number => {
  const needed = Math.max(real.widthMm / room.widthMm, real.heightMm / room.heightMm)
  return SCALES.find((scale) => scale >= needed) ?? Math.ceil(needed / 100) * 100
}

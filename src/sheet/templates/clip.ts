import type { FlatPoint } from '../../domain/shop/flat/flatFigure'

/** A window onto a figure: its edges belong to it. */
export interface FlatWindow {
  readonly min: FlatPoint
  readonly max: FlatPoint
}

/** The part of a straight piece inside a window, or null. Source: Liang and Barsky 1984, a line against an upright rectangle (from memory). */
const clippedPiece = (
  from: FlatPoint,
  to: FlatPoint,
  { min, max }: FlatWindow,
): readonly [FlatPoint, FlatPoint] | null => {
  const [dx, dy] = [to.xMm - from.xMm, to.yMm - from.yMm]
  let [enter, leave] = [0, 1]
  for (const [step, room] of [
    [-dx, from.xMm - min.xMm],
    [dx, max.xMm - from.xMm],
    [-dy, from.yMm - min.yMm],
    [dy, max.yMm - from.yMm],
  ] as const) {
    if (step === 0) {
      if (room < 0) return null
      continue
    }
    const share = room / step
    if (step < 0) enter = Math.max(enter, share)
    else leave = Math.min(leave, share)
  }
  if (enter > leave) return null
  const place = (share: number): FlatPoint =>
    share === 0 ? from : share === 1 ? to : { xMm: from.xMm + dx * share, yMm: from.yMm + dy * share }
  return [place(enter), place(leave)]
}

/** The parts of a line of straight pieces inside a window, each as long as it stays inside. */
export const clippedLine = (
  points: readonly FlatPoint[],
  window: FlatWindow,
): readonly (readonly FlatPoint[])[] => {
  const parts: FlatPoint[][] = []
  let end: FlatPoint | null = null
  for (const [index, to] of points.entries()) {
    const from = points[index - 1]
    if (from === undefined) continue
    const piece = clippedPiece(from, to, window)
    if (piece === null) {
      end = null
      continue
    }
    const goesOn = end !== null && end.xMm === piece[0].xMm && end.yMm === piece[0].yMm
    if (goesOn) parts.at(-1)?.push(piece[1])
    else parts.push([...piece])
    end = piece[1]
  }
  return parts
}

import type { PlanePointMm } from '../geometry/plane'
import { type Cell, type Cells, polygonEdges, REACH_MM } from './cells'

/** A closed piece of a line, mm along it; `Infinity` for a piece without an end. */
export interface Span {
  readonly fromMm: number
  readonly toMm: number
}

/** Lines that sweep a part of the plane without crossing there, and which pieces of each are allowed. */
export interface RuledFamily {
  readonly pointAt: (parameter: number, alongMm: number) => PlanePointMm
  /** In rising order, apart from each other. */
  readonly spansAt: (parameter: number) => readonly Span[]
}

/** Farthest that a curved limit may lie from the corners' chord. Our judgement: a tenth of what a tape can show. */
const CHORD_MM = 0.02

/** Beyond the corners of the reach box from anywhere inside it. */
const BEYOND_REACH_MM = 3 * REACH_MM

/** Halvings of the first steps after which a place where pieces begin or end is left as it is. */
const DEEPEST = 14

interface Line {
  readonly parameter: number
  readonly spans: readonly Span[]
}

const lineAt = (family: RuledFamily, parameter: number): Line => ({
  parameter,
  spans: family.spansAt(parameter),
})

const chordMissMm = (family: RuledFamily, lines: readonly [Line, Line, Line], ends: Ends): number => {
  const [first, middle, last] = lines
  const a = family.pointAt(first.parameter, ends[0])
  const b = family.pointAt(middle.parameter, ends[1])
  const c = family.pointAt(last.parameter, ends[2])
  const lengthMm = Math.hypot(c.uMm - a.uMm, c.vMm - a.vMm)
  if (lengthMm === 0) return Math.hypot(b.uMm - a.uMm, b.vMm - a.vMm)
  return Math.abs((c.uMm - a.uMm) * (b.vMm - a.vMm) - (c.vMm - a.vMm) * (b.uMm - a.uMm)) / lengthMm
}

type Ends = readonly [number, number, number]

/** Whether straight chords between the outer two lines stay near the middle one's ends. */
const isStraight = (family: RuledFamily, lines: readonly [Line, Line, Line]): boolean => {
  const [first, middle, last] = lines
  if (first.spans.length !== middle.spans.length || last.spans.length !== middle.spans.length) return false
  return middle.spans.every((span, index) => {
    const before = first.spans[index] ?? span
    const after = last.spans[index] ?? span
    const froms: Ends = [before.fromMm, span.fromMm, after.fromMm]
    const tos: Ends = [before.toMm, span.toMm, after.toMm]
    return [froms, tos].every((ends) =>
      ends.some((end) => !Number.isFinite(end))
        ? ends.every((end) => !Number.isFinite(end))
        : chordMissMm(family, lines, ends) <= CHORD_MM,
    )
  })
}

/** The four-cornered cells between two lines; corners anticlockwise whichever way the lines follow each other. */
const cellsBetween = (family: RuledFamily, first: Line, last: Line): Cells =>
  first.spans.flatMap((span, index): Cells => {
    const other = last.spans[index]
    if (other === undefined) return []
    const at = (line: Line, alongMm: number): PlanePointMm =>
      family.pointAt(line.parameter, Math.min(BEYOND_REACH_MM, Math.max(-BEYOND_REACH_MM, alongMm)))
    const corners: Corners = [
      at(first, span.fromMm),
      at(first, span.toMm),
      at(last, other.toMm),
      at(last, other.fromMm),
    ]
    const cell = fourCorners(corners)
    return cell.length < 3 ? [] : [cell]
  })

type Corners = readonly [PlanePointMm, PlanePointMm, PlanePointMm, PlanePointMm]

/** Twice the area of the triangle a, b, c, + anticlockwise. */
const turnMm2 = (a: PlanePointMm, b: PlanePointMm, c: PlanePointMm): number =>
  (b.uMm - a.uMm) * (c.vMm - a.vMm) - (c.uMm - a.uMm) * (b.vMm - a.vMm)

/**
 * The cell between two lines from corners near, far, far, near. Where lines that leave a small circle cross right at their
 * starts the four corners are not convex; the crossing itself then ends the cell, nearer than the circle's radius to the start.
 */
const fourCorners = ([a, b, c, d]: Corners): Cell => {
  const isAnticlockwise = turnMm2(a, b, c) + turnMm2(a, c, d) > 0
  const [near, far, nextFar, nextNear] = isAnticlockwise ? [a, b, c, d] : [d, c, b, a]
  const isConvex = turnMm2(nextNear, near, far) >= 0 && turnMm2(nextFar, nextNear, near) >= 0
  const edges = polygonEdges([near, far, nextFar, nextNear])
  return (isConvex ? edges : edges.slice(0, 3)).flatMap((edge) => edge ?? [])
}

/**
 * The allowed pieces of a family of lines as cells, from one parameter to a larger one in at least `steps` steps. Corners lie on
 * the true limit; between them the chord is at most CHORD_MM off, because a step is halved until it is.
 */
export const ruledCells = (family: RuledFamily, from: number, to: number, steps: number): Cells => {
  const between = (first: Line, last: Line, depth: number): Cells => {
    const middle = lineAt(family, (first.parameter + last.parameter) / 2)
    if (isStraight(family, [first, middle, last])) return cellsBetween(family, first, last)
    if (depth >= DEEPEST)
      return first.spans.length === last.spans.length ? cellsBetween(family, first, last) : []
    return [...between(first, middle, depth + 1), ...between(middle, last, depth + 1)]
  }
  if (!(to > from)) return []
  const lines = Array.from({ length: steps + 1 }, (_, index) =>
    lineAt(family, from + ((to - from) * index) / steps),
  )
  return lines.slice(1).flatMap((line, index) => between(lines[index] ?? line, line, 0))
}

import { type PlanePointMm, planePoint } from '../../geometry/plane'
import { angleTextAt, dimensionLine, textWidthMm } from './figureText'
import type { Drawing, Primitive } from './primitive'

/** An upright rectangle on the drawing, mm of the car. */
export interface Box {
  readonly min: PlanePointMm
  readonly max: PlanePointMm
}

export const boxAbout = (middle: PlanePointMm, widthMm: number, heightMm: number): Box => ({
  min: planePoint(middle.uMm - widthMm / 2, middle.vMm - heightMm / 2),
  max: planePoint(middle.uMm + widthMm / 2, middle.vMm + heightMm / 2),
})

/** Touching edges do not overlap. */
export const boxesOverlap = (a: Box, b: Box): boolean =>
  a.min.uMm < b.max.uMm && b.min.uMm < a.max.uMm && a.min.vMm < b.max.vMm && b.min.vMm < a.max.vMm

/** As `boxesOverlap`, but touching edges count: for lines, whose rectangles may be as thin as a line. */
export const boxesMeet = (a: Box, b: Box): boolean =>
  a.min.uMm <= b.max.uMm && b.min.uMm <= a.max.uMm && a.min.vMm <= b.max.vMm && b.min.vMm <= a.max.vMm

/** Whether `inner` lies wholly inside `outer`; common edges count as inside. */
export const boxContains = (outer: Box, inner: Box): boolean =>
  outer.min.uMm <= inner.min.uMm &&
  outer.min.vMm <= inner.min.vMm &&
  outer.max.uMm >= inner.max.uMm &&
  outer.max.vMm >= inner.max.vMm

/** Whether the segment from `from` to `to` has a point inside the box (Liang–Barsky clipping; a graze along an edge counts). */
export const segmentMeetsBox = (from: PlanePointMm, to: PlanePointMm, box: Box): boolean => {
  const du = to.uMm - from.uMm
  const dv = to.vMm - from.vMm
  let enter = 0
  let leave = 1
  const sides = [
    [-du, from.uMm - box.min.uMm],
    [du, box.max.uMm - from.uMm],
    [-dv, from.vMm - box.min.vMm],
    [dv, box.max.vMm - from.vMm],
  ] as const
  for (const [slope, room] of sides) {
    if (slope === 0) {
      if (room < 0) return false
    } else if (slope < 0) enter = Math.max(enter, room / slope)
    else leave = Math.min(leave, room / slope)
  }
  return enter <= leave
}

/** The rectangle that a label fills. */
export const labelBox = (
  label: Pick<Extract<Primitive, { kind: 'label' }>, 'at' | 'text' | 'align'>,
  textHeightMm: number,
): Box => {
  const widthMm = textWidthMm(label.text, textHeightMm)
  const shiftMm = label.align === 'left' ? widthMm / 2 : label.align === 'right' ? -widthMm / 2 : 0
  return boxAbout(planePoint(label.at.uMm + shiftMm, label.at.vMm), widthMm, textHeightMm)
}

/** The rectangle that a text turned by `turnDeg` fills, taken square for any turn but level and upright. */
const turnedBox = (middle: PlanePointMm, text: string, turnDeg: number, textHeightMm: number): Box => {
  const widthMm = textWidthMm(text, textHeightMm)
  if (Math.abs(turnDeg) < 1) return boxAbout(middle, widthMm, textHeightMm)
  if (Math.abs(Math.abs(turnDeg) - 90) < 1) return boxAbout(middle, textHeightMm, widthMm)
  return boxAbout(middle, widthMm, widthMm)
}

/** The rectangle of a primitive's text, or null when it has none. */
export const textBox = (primitive: Primitive, textHeightMm: number): Box | null => {
  switch (primitive.kind) {
    case 'label':
      return labelBox(primitive, textHeightMm)
    case 'angle':
      return turnedBox(angleTextAt(primitive, textHeightMm), primitive.text, 0, textHeightMm)
    case 'dimension': {
      const line = dimensionLine(primitive, textHeightMm)
      return turnedBox(line.textAt, primitive.text, line.textTurnDeg, textHeightMm)
    }
    case 'polyline':
    case 'circle':
    case 'zone':
    case 'mark':
      return null
  }
}

const cornersOf = (primitive: Primitive, textHeightMm: number): readonly PlanePointMm[] => {
  const text = textBox(primitive, textHeightMm)
  const corners = text === null ? [] : [text.min, text.max]
  switch (primitive.kind) {
    case 'polyline':
      return primitive.points
    case 'circle': {
      const box = boxAbout(primitive.centre, 2 * primitive.radiusMm, 2 * primitive.radiusMm)
      return [box.min, box.max]
    }
    case 'mark':
      return [primitive.at]
    case 'angle':
      return [primitive.apex, ...corners]
    case 'dimension': {
      const line = dimensionLine(primitive, textHeightMm)
      return [line.from, line.to, ...corners]
    }
    case 'label':
      return corners
    case 'zone':
      return []
  }
}

/** An empty drawing still needs somewhere to stand: a metre square about the datum. Our judgement. */
const EMPTY_BOUNDS: Drawing['bounds'] = { min: planePoint(-500, -500), max: planePoint(500, 500) }

/** Corners of everything drawn but the zones. */
export const drawingBounds = (primitives: readonly Primitive[], textHeightMm: number): Drawing['bounds'] => {
  const corners = primitives.flatMap((primitive) => cornersOf(primitive, textHeightMm))
  if (corners.length === 0) return EMPTY_BOUNDS
  const first = corners[0] ?? EMPTY_BOUNDS.min
  return corners.reduce(
    (box, corner) => ({
      min: planePoint(Math.min(box.min.uMm, corner.uMm), Math.min(box.min.vMm, corner.vMm)),
      max: planePoint(Math.max(box.max.uMm, corner.uMm), Math.max(box.max.vMm, corner.vMm)),
    }),
    { min: first, max: first },
  )
}

import { type Elevation, type PlanePointMm, planePoint, projected } from '../../geometry/plane'
import type { QuantityId, Subject } from '../../straps/quantity'
import { strapFamily } from '../../straps/strap'
import { angleText, cosDeg, sinDeg } from '../../units/angle'
import type { SittingEvaluation } from '../evaluate/evaluation'
import { type DrawnAngle, drawnAngle } from './drawnAngle'
import type { DrawnPlace } from './drawnPlace'
import type { LineStyle, PartId, Primitive } from './primitive'

/** The value of one quantity in one sitting, or null where it could not be computed. */
const quantityOf = (sitting: SittingEvaluation, id: QuantityId, subject: Subject): number | null =>
  sitting.quantities.find((candidate) => candidate.id === id && candidate.subject === subject)?.value ?? null

export interface AngleFigure {
  readonly key: string
  readonly part: PartId
  readonly angle: DrawnAngle
  readonly valueDeg: number
  readonly text: string
  readonly radiusMm: number
}

/** A ray from an apex, long enough to carry the arc. */
export const ray = (
  key: string,
  part: PartId,
  apex: PlanePointMm,
  directionDeg: number,
  lengthMm: number,
  style: LineStyle,
): Primitive => ({
  kind: 'polyline',
  key,
  part,
  points: [
    apex,
    planePoint(apex.uMm + lengthMm * cosDeg(directionDeg), apex.vMm + lengthMm * sinDeg(directionDeg)),
  ],
  closed: false,
  style,
})

/** The arc with its value, and the line it is counted from. */
export const angleFigure = (figure: AngleFigure): Primitive[] => {
  const { angle, key, part, radiusMm } = figure
  const valueAtDeg = angle.zeroDeg + angle.turn * figure.valueDeg
  const [fromDeg, toDeg] =
    angle.turn * figure.valueDeg >= 0 ? [angle.zeroDeg, valueAtDeg] : [valueAtDeg, angle.zeroDeg]
  return [
    ray(`${key}/zero`, part, angle.apex, angle.zeroDeg, radiusMm * 1.25, 'dimension'),
    { kind: 'angle', key, part, apex: angle.apex, radiusMm, fromDeg, toDeg, text: figure.text },
  ]
}

/** The quantity that is drawn for each family without being asked. */
const MAIN_ANGLES = {
  side: { shoulder: 'shoulder-drop', lap: 'lap-angle', sub: 'sub-to-vertical' },
  top: { shoulder: 'shoulder-plan', lap: null, sub: null },
} as const satisfies Record<Elevation, Record<string, QuantityId | null>>

/** Angles closer than this read the same at the 0.1° shown, so a pair's second arc is left out. */
const SAME_ANGLE_DEG = 0.05

/**
 * The main angle of every strap and, in side elevation, the recline. Arcs are sized by the lettering so that they stay readable.
 * `focused` is the quantity that a finding already draws larger.
 */
export const anglePrimitives = (
  drawnPlace: DrawnPlace,
  elevation: Elevation,
  textHeightMm: number,
  focused: string | null,
): Primitive[] => {
  const sitting = drawnPlace.shown
  const placeId = drawnPlace.place.id
  const drawn: { angle: DrawnAngle; valueDeg: number }[] = []
  const straps = sitting.paths.flatMap((path) => {
    const id = MAIN_ANGLES[elevation][strapFamily(path.strap)]
    if (id === null || id === focused) return []
    const angle = drawnAngle(id, { path, sitting, seat: drawnPlace.place.seat }, elevation)
    const valueDeg = quantityOf(sitting, id, path.strap)
    if (angle === null || valueDeg === null) return []
    const isRepeated = drawn.some(
      (other) =>
        Math.abs(other.valueDeg - valueDeg) < SAME_ANGLE_DEG &&
        Math.hypot(other.angle.apex.uMm - angle.apex.uMm, other.angle.apex.vMm - angle.apex.vMm) < 1,
    )
    if (isRepeated) return []
    drawn.push({ angle, valueDeg })
    const key = `${placeId}/angle/${id}/${path.strap}`
    const part = `${placeId}/${path.strap}`
    return angleFigure({
      key,
      part,
      angle,
      valueDeg,
      text: angleText(valueDeg),
      radiusMm: 5 * textHeightMm,
    })
  })
  if (elevation === 'top') return straps
  const reclineDeg = sitting.body.reclineDeg
  return [
    ...straps,
    ...angleFigure({
      key: `${placeId}/angle/recline`,
      part: null,
      angle: { apex: projected(sitting.body.hip, 'side'), zeroDeg: 90, turn: -1 },
      valueDeg: reclineDeg,
      text: angleText(reclineDeg),
      radiusMm: 12 * textHeightMm,
    }),
  ]
}

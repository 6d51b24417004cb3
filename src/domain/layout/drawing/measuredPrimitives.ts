import { type Elevation, planePoint, projected } from '../../geometry/plane'
import type { PointMm } from '../../geometry/point'
import type { LabelWish } from './labelPlacement'
import type { Primitive } from './primitive'

/** Where an anchor was measured on the car, for the drawing. */
export interface MeasuredMark {
  readonly placeId: string
  readonly anchorId: string
  /** Where it is planned, from the datum. */
  readonly from: PointMm
  /** Where it was measured. */
  readonly to: PointMm
  /** How far off it is, as text beside the cross. */
  readonly text: string
  readonly isOutside: boolean
  /** It is being measured just now: drawn strongly. */
  readonly isPicked: boolean
}

/** A cross is this many lines of text across. A drawing convention of ours. */
const CROSS_LINES = 0.9

/** Upright crosses where anchors were measured, with the way from where they are planned. */
export const measuredPrimitives = (
  measured: readonly MeasuredMark[],
  elevation: Elevation,
  textHeightMm: number,
): Primitive[] =>
  measured.flatMap(({ placeId, anchorId, from, to, isOutside, isPicked }): Primitive[] => {
    const key = `measured/${placeId}/${anchorId}`
    const at = projected(to, elevation)
    const arm = (CROSS_LINES * textHeightMm) / 2
    const style = isOutside ? 'broken' : isPicked ? 'focus' : 'outline'
    const line = (name: string, du: number, dv: number): Primitive => ({
      kind: 'polyline',
      key: `${key}/${name}`,
      part: null,
      points: [planePoint(at.uMm - du, at.vMm - dv), planePoint(at.uMm + du, at.vMm + dv)],
      closed: false,
      style,
    })
    return [
      {
        kind: 'polyline',
        key: `${key}/way`,
        part: null,
        points: [projected(from, elevation), at],
        closed: false,
        style: 'hidden',
      },
      line('level', arm, 0),
      line('upright', 0, arm),
    ]
  })

/** How far off each of them is, beside its cross. */
export const measuredLabels = (measured: readonly MeasuredMark[], elevation: Elevation): LabelWish[] =>
  measured.map(({ placeId, anchorId, to, text, isOutside, isPicked }) => ({
    key: `measured/${placeId}/${anchorId}/off`,
    part: null,
    at: projected(to, elevation),
    text,
    weight: isPicked || isOutside ? 'strong' : 'plain',
    need: isPicked || isOutside ? 'must' : 'may',
  }))

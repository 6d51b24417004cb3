import { type Elevation, planePoint, projected } from '../../geometry/plane'
import type { PointMm } from '../../geometry/point'
import type { Primitive } from './primitive'

/** A proposed position of some anchors, for the drawing. */
export interface ProposedMarks {
  /** What it is called on the drawing, for example "1". */
  readonly name: string
  /** Picked out among several: drawn strongly, with a line from where each anchor is now. */
  readonly isShown: boolean
  readonly anchors: readonly { readonly anchorId: string; readonly from: PointMm; readonly to: PointMm }[]
}

/** A ring is this many lines of text across. A drawing convention of ours. */
const RING_LINES = 0.9

/** Rings where proposals put anchors; the one picked out lies on top, with its way and its name. */
export const proposedPrimitives = (
  proposed: readonly ProposedMarks[],
  elevation: Elevation,
  textHeightMm: number,
): Primitive[] =>
  proposed
    .toSorted((a, b) => Number(a.isShown) - Number(b.isShown))
    .flatMap(({ name, isShown, anchors }) =>
      anchors.flatMap(({ anchorId, from, to }): Primitive[] => {
        const key = `proposed/${name}/${anchorId}`
        const centre = projected(to, elevation)
        const radiusMm = (RING_LINES * textHeightMm) / 2
        const ring: Primitive = {
          kind: 'circle',
          key,
          part: null,
          centre,
          radiusMm,
          style: isShown ? 'focus' : 'ghost',
        }
        if (!isShown) return [ring]
        const way = [projected(from, elevation), centre]
        return [
          { kind: 'polyline', key: `${key}/way`, part: null, points: way, closed: false, style: 'hidden' },
          ring,
          {
            kind: 'label',
            key: `${key}/name`,
            part: null,
            at: planePoint(centre.uMm + 1.2 * radiusMm, centre.vMm + 1.2 * radiusMm),
            text: name,
            align: 'left',
            weight: 'strong',
          },
        ]
      }),
    )

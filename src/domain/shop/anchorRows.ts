import { directionLength, pointDifference, type PointMm } from '../geometry/point'
import { nearestOnPolyline } from '../geometry/segment'
import type { Tube } from '../geometry/tube'
import type { Anchor } from '../straps/anchor'
import { lineOfPull } from '../straps/lineOfPull'
import type { StrapPath } from '../straps/path'
import { STRAP_IDS } from '../straps/strap'
import { wrappedDeg } from '../units/angle'
import { forwardTurnDeg, lineOfPullAngles, type LineOfPullAngles } from './lineOfPullAngles'

/** What the weld shop needs to know about one anchor. */
export interface AnchorRow {
  /** The number in the balloon on the drawing, counted over the whole sheet from 1. */
  readonly itemNumber: number
  readonly anchor: Anchor
  /** Item number of the row that is the very same anchor, shared by joined shoulder straps; null for an anchor of its own. */
  readonly sameAsItem: number | null
  /** The tube it is welded to or wrapped round; null for one that stands on the floor or another structure. */
  readonly tube: Tube | null
  /** Along that tube's centre line from its first point to the place nearest to the anchor, mm ≥ 0; null without a tube. */
  readonly alongTubeMm: number | null
  /** Its strap in the drawn sitting; null when it has no path there. */
  readonly path: StrapPath | null
  /** Line of pull in the drawn sitting; null when the strap has no path there. */
  readonly pull: LineOfPullAngles | null
  /** The two ends of the swing in side view over all sittings, as `forwardTurnDeg`; null when no sitting has a path. */
  readonly pullRange: { readonly leastDeg: number; readonly mostDeg: number } | null
}

export interface AnchorRowsInput {
  readonly anchors: readonly Anchor[]
  readonly tubes: readonly Tube[]
  /** The paths of every sitting of the place, the drawn sitting first. */
  readonly pathsBySitting: readonly (readonly StrapPath[])[]
  /** The two shoulder straps are joined and end on one anchor. */
  readonly areShoulderStrapsJoined: boolean
  /** Item number of the first row. */
  readonly firstItemNumber: number
}

/** One row for each anchor, in the order the straps are listed everywhere: shoulder, lap, anti-submarine, left before right. */
export const anchorRows = (input: AnchorRowsInput): readonly AnchorRow[] =>
  input.anchors
    .toSorted((a, b) => STRAP_IDS.indexOf(a.strap) - STRAP_IDS.indexOf(b.strap))
    .map((anchor, index, sorted) => {
      const isSecond = anchor.strap === 'shoulder-right' && sorted[index - 1]?.strap === 'shoulder-left'
      const itemNumber = input.firstItemNumber + index
      const sameAsItem = input.areShoulderStrapsJoined && isSecond ? itemNumber - 1 : null
      return anchorRow(anchor, input, itemNumber, sameAsItem)
    })

const anchorRow = (
  anchor: Anchor,
  input: AnchorRowsInput,
  itemNumber: number,
  sameAsItem: number | null,
): AnchorRow => {
  const tube = input.tubes.find((each) => each.id === anchor.mount.tubeId) ?? null
  const paths = input.pathsBySitting.map((each) => each.find(({ strap }) => strap === anchor.strap) ?? null)
  const pulls = paths.map((path) => path && lineOfPull(path))
  const drawn = pulls[0] ?? null
  const turns = pulls.flatMap((pull) => (pull === null ? [] : [forwardTurnDeg(pull)]))
  // Told from the first, so that a swing through level rearward does not jump by a whole turn.
  const sideAngles = turns.map((turnDeg) => (turns[0] ?? 0) + wrappedDeg(turnDeg - (turns[0] ?? 0)))
  return {
    itemNumber,
    anchor,
    sameAsItem,
    tube,
    alongTubeMm: tube === null ? null : alongTubeMm(tube.points, anchor.mount.point),
    path: paths[0] ?? null,
    pull: drawn && lineOfPullAngles(drawn),
    pullRange:
      sideAngles.length === 0
        ? null
        : { leastDeg: Math.min(...sideAngles), mostDeg: Math.max(...sideAngles) },
  }
}

/** Length along a polyline from its first point to the place on it nearest to `point`, mm. */
export const alongTubeMm = (points: readonly PointMm[], point: PointMm): number => {
  const nearest = nearestOnPolyline(points, point)
  return tubeLengthMm([...points.slice(0, nearest.segmentIndex + 1), nearest.point])
}

/** Length of a tube's centre line, mm: the sum of its straight pieces. */
export const tubeLengthMm = (points: readonly PointMm[]): number =>
  points
    .slice(1)
    .reduce(
      (sumMm, point, index) => sumMm + directionLength(pointDifference(point, points[index] ?? point)),
      0,
    )

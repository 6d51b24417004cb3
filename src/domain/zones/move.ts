import type { PointMm } from '../geometry/point'
import type { Tube } from '../geometry/tube'
import type { MoveDirection } from '../rules/finding'
import type { Anchor } from '../straps/anchor'
import type { StrapScene } from '../straps/scene'

/** A trial shift of some anchors, or of a whole tube with everything on it. */
export interface Move {
  readonly anchorIds: readonly string[]
  readonly tubeId: string | null
  readonly direction: MoveDirection
  readonly byMm: number
}

/** The tube an anchor hangs on; null for a tab on another structure. */
const tubeIdOf = (anchor: Anchor): string | null => anchor.mount.tubeId

/** Whether a point counts as on the occupant's right: +1, else −1. On the centre line itself outward is taken as to the right. */
const outwardSign = (point: PointMm, centreYMm: number): 1 | -1 => (point.yMm >= centreYMm ? 1 : -1)

/** A point moved in a welder's direction; inward and outward are seen from the seat's centre line at `centreYMm`. */
export const shiftedPoint = (
  point: PointMm,
  { direction, byMm }: Pick<Move, 'direction' | 'byMm'>,
  centreYMm: number,
): PointMm => {
  switch (direction) {
    case 'up':
      return { ...point, zMm: point.zMm + byMm }
    case 'down':
      return { ...point, zMm: point.zMm - byMm }
    case 'forward':
      return { ...point, xMm: point.xMm - byMm }
    case 'rearward':
      return { ...point, xMm: point.xMm + byMm }
    case 'outward':
      return { ...point, yMm: point.yMm + outwardSign(point, centreYMm) * byMm }
    case 'inward':
      return { ...point, yMm: point.yMm - outwardSign(point, centreYMm) * byMm }
  }
}

/** The other anchor's place when a mirrored pair moves: mirrored about the seat's centre line. */
export const mirroredPoint = (point: PointMm, centreYMm: number): PointMm => ({
  ...point,
  yMm: 2 * centreYMm - point.yMm,
})

export const anchorAt = (anchor: Anchor, point: PointMm): Anchor => ({
  ...anchor,
  mount: { ...anchor.mount, point },
})

/** The scene after a move. Moving a tube takes along every anchor of this place that hangs on it. */
export const movedScene = (scene: StrapScene, move: Move): StrapScene => {
  const centreYMm = scene.body.hip.yMm
  const isMoved = (anchor: Anchor): boolean =>
    move.tubeId === null ? move.anchorIds.includes(anchor.id) : tubeIdOf(anchor) === move.tubeId
  const anchors = scene.anchors.map((anchor) =>
    isMoved(anchor) ? anchorAt(anchor, shiftedPoint(anchor.mount.point, move, centreYMm)) : anchor,
  )
  const tubes = scene.tubes.map((tube): Tube =>
    tube.id === move.tubeId
      ? { ...tube, points: tube.points.map((point) => shiftedPoint(point, move, centreYMm)) }
      : tube,
  )
  return { ...scene, anchors, tubes }
}

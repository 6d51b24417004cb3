import { type PlanePointMm, planeDistanceMm, planePoint, projected } from '../../../geometry/plane'
import { type Direction, directionBetween, pointDistanceMm, type PointMm } from '../../../geometry/point'
import { nearestOnPolyline } from '../../../geometry/segment'
import { segmentsNearest } from '../../../geometry/segmentDistance'
import type { Tube } from '../../../geometry/tube'
import { type BodyGap, bodyTubeGap } from '../../../straps/bodyClearance'
import type { StrapPath } from '../../../straps/path'
import { placeStraps } from '../../../straps/placeStraps'
import { strapTubeGap, tubePieces } from '../../../straps/tubePieces'
import { tubeName } from '../../wording/names'
import type { Primitive } from '../primitive'
import { type DrawnPlane, onPlane, planeThrough, SIDE_PLANE, TOP_PLANE } from './drawnPlane'
import type { Explanation, ExplainFigure, ExplainScene, NamedPoint } from './explanation'
import { figureOf, line } from './figure'
import { labelled, named } from './names'
import { elevationScenery, strapScenery } from './scenery'
import { solvedStrapOf } from './solvedStrap'

const circle = (key: string, centre: PlanePointMm, radiusMm: number, style: 'body' | 'tube'): Primitive => ({
  kind: 'circle',
  key: `explain/${key}`,
  part: null,
  centre,
  radiusMm,
  style,
})

/** What is near a tube: its own nearest point, how far it reaches beyond that, and the nearest point of the tube's centre line. */
interface NearTube {
  readonly from: NamedPoint
  readonly reachMm: number
  readonly to: NamedPoint
  readonly axis: Direction
  readonly tubeRadiusMm: number
}

/**
 * The plane through both nearest points that is square to the tube where it can be, so that the tube is a true circle and the
 * distance has its true size, running to the right.
 */
const planeAlongTube = ({ from, to, axis }: NearTube): DrawnPlane => {
  const along = directionBetween(from.point, to.point) ?? SIDE_PLANE.u
  return planeThrough(along, {
    x: axis.y * along.z - axis.z * along.y,
    y: axis.z * along.x - axis.x * along.z,
    z: axis.x * along.y - axis.y * along.x,
  })
}

/** The gap at its true size. */
const gapFigure = (
  scene: ExplainScene,
  near: NearTube,
  { lines, scenery }: { readonly lines: readonly Primitive[]; readonly scenery: readonly Primitive[] },
): ExplainFigure => {
  const plane = planeAlongTube(near)
  const middle = onPlane(plane, near.from.point)
  const apartMm = pointDistanceMm(near.from.point, near.to.point)
  const tubeMiddle = planePoint(middle.uMm + apartMm, middle.vMm)
  return figureOf(
    {
      view: 'true',
      measure: {
        kind: 'length',
        from: planePoint(middle.uMm + near.reachMm, middle.vMm),
        to: planePoint(tubeMiddle.uMm - near.tubeRadiusMm, middle.vMm),
      },
      points: labelled([near.from, near.to], plane),
      lines: [...lines, circle('tube', tubeMiddle, near.tubeRadiusMm, 'tube')],
      scenery,
    },
    scene,
  )
}

/** The elevation in which two points are further apart. */
const widerElevation = (from: PointMm, to: PointMm): 'side' | 'top' => {
  const apartMm = (elevation: 'side' | 'top'): number =>
    planeDistanceMm(projected(from, elevation), projected(to, elevation))
  return apartMm('top') > apartMm('side') ? 'top' : 'side'
}

/** Where the gap is, in the elevation that shows it best, with some straps beside it. */
const whereFigure = (
  scene: ExplainScene,
  { from, to }: NearTube,
  paths: readonly StrapPath[],
): ExplainFigure => {
  const view = widerElevation(from.point, to.point)
  const plane = view === 'side' ? SIDE_PLANE : TOP_PLANE
  return figureOf(
    {
      view,
      measure: null,
      points: labelled([from, to], plane),
      lines: [line('apart', [onPlane(plane, from.point), onPlane(plane, to.point)], 'focus')],
      scenery: [...elevationScenery(scene, view), ...strapScenery(paths, plane)],
    },
    scene,
  )
}

/** Where the strap passes nearest to a tube other than its own, in the elevation that shows it best, and the gap at its true size. */
export const explainTubeClearance = (scene: ExplainScene, path: StrapPath): Explanation | null => {
  const solved = solvedStrapOf(scene, path.strap)
  const gap = solved && strapTubeGap(tubePieces(scene.tubes), solved)
  if (gap === null) return null
  const { strapFrom, strapTo, piece } = gap
  const { onFirst, onSecond } = segmentsNearest(strapFrom, strapTo, piece.from, piece.to)
  const near: NearTube = {
    from: named('P', 'strap', onFirst),
    reachMm: 0,
    to: named('N', tubeName(gap.tubeId, scene), onSecond),
    axis: directionBetween(piece.from, piece.to) ?? TOP_PLANE.v,
    tubeRadiusMm: piece.radiusMm,
  }
  const where = whereFigure(scene, near, [path])
  const scenery = strapScenery([path], planeAlongTube(near))
  return { figures: [where, gapFigure(scene, near, { lines: [], scenery })], points: [near.from, near.to] }
}

interface NearestTube {
  readonly at: PointMm
  readonly axis: Direction
  readonly radiusMm: number
  readonly gapMm: number
}

const nearestTube = (tubes: readonly Tube[], centre: PointMm): NearestTube | null => {
  const found = tubes
    .filter((tube) => tube.points.length > 1)
    .map((tube): NearestTube => {
      const { point, axis, distanceMm } = nearestOnPolyline(tube.points, centre)
      const radiusMm = tube.outsideDiameterMm / 2
      return { at: point, axis, radiusMm, gapMm: distanceMm - radiusMm }
    })
  return found.toSorted((a, b) => a.gapMm - b.gapMm)[0] ?? null
}

const PART_NAMES: Readonly<Record<BodyGap['part'], string>> = {
  pelvis: 'middle of the pelvis',
  belly: 'middle of the belly',
  chest: 'middle of the chest',
  shoulders: 'middle of the shoulders',
  thigh: 'middle of the thigh',
  strap: 'strap on the body',
}

/** Where a tube comes nearest to the person, in the elevation that shows it best, and the gap at its true size. */
export const explainBodyClearance = (scene: ExplainScene): Explanation | null => {
  const { pose, body } = scene.sitting
  const { seat, belt, anchors } = scene.place
  const { straps } = placeStraps({ seat, belt, anchors, tubes: scene.tubes, pose, body })
  const gap = bodyTubeGap(tubePieces(scene.tubes), body, straps)
  if (gap === null) return null
  const { onFirst, onSecond } = segmentsNearest(gap.from, gap.to, gap.piece.from, gap.piece.to)
  const near: NearTube = {
    from: named('M', PART_NAMES[gap.part], onFirst),
    reachMm: gap.radiusMm,
    to: named('N', tubeName(gap.piece.tubeId, scene), onSecond),
    axis: directionBetween(gap.piece.from, gap.piece.to) ?? TOP_PLANE.v,
    tubeRadiusMm: gap.piece.radiusMm,
  }
  const where = whereFigure(scene, near, [])
  const lines =
    gap.radiusMm === 0 ? [] : [circle('body', onPlane(planeAlongTube(near), onFirst), gap.radiusMm, 'body')]
  return { figures: [where, gapFigure(scene, near, { lines, scenery: [] })], points: [near.from, near.to] }
}

/** The gap between helmet and nearest tube, seen along that tube, so that both are true circles. */
export const explainHelmet = (scene: ExplainScene): Explanation | null => {
  const { centre, radiusMm } = scene.sitting.body.helmet
  const tube = nearestTube(scene.tubes, centre)
  if (tube === null) return null
  const near: NearTube = {
    from: named('M', 'middle of the helmet', centre),
    reachMm: radiusMm,
    to: named('N', 'nearest tube', tube.at),
    axis: tube.axis,
    tubeRadiusMm: tube.radiusMm,
  }
  const points = [near.from, near.to]
  const where = figureOf(
    {
      view: 'side',
      measure: null,
      points: labelled(points, SIDE_PLANE),
      lines: [],
      scenery: elevationScenery(scene, 'side'),
    },
    scene,
  )
  const lines = [circle('helmet', onPlane(planeAlongTube(near), centre), radiusMm, 'body')]
  return { figures: [where, gapFigure(scene, near, { lines, scenery: [] })], points }
}

import { type PlanePointMm, planePoint, projected } from '../../../geometry/plane'
import { anchorOf } from '../../../straps/mount'
import type { StrapPath } from '../../../straps/path'
import { behindFkMm, FK_DEG, pointB, pointZ, X_SIDEWAYS_MM } from '../../../straps/referenceQuantities'
import { strapSide, type StrapId } from '../../../straps/strap'
import { cosDeg, sinDeg } from '../../../units/angle'
import type { Primitive } from '../primitive'
import { SIDE_PLANE, TOP_PLANE } from './drawnPlane'
import type { Explanation, ExplainScene, Measure, NamedPoint } from './explanation'
import { figureOf, line } from './figure'
import { effectiveAnchorNamed, labelled, named } from './names'
import { elevationScenery, strapScenery } from './scenery'
import { pathOf } from './solvedStrap'

interface Reference {
  readonly elevation: 'side' | 'top'
  readonly points: readonly NamedPoint[]
  readonly measure: Measure
  readonly lines: readonly Primitive[]
  readonly paths: readonly StrapPath[]
}

const explained = (scene: ExplainScene, reference: Reference): Explanation => {
  const { elevation, points, measure, lines, paths } = reference
  const plane = elevation === 'side' ? SIDE_PLANE : TOP_PLANE
  const scenery = [...elevationScenery(scene, elevation), ...strapScenery(paths, plane)]
  return {
    figures: [figureOf({ view: elevation, measure, points: labelled(points, plane), lines, scenery }, scene)],
    points,
  }
}

/** Height of the effective anchor over the hip point, or its distance behind it, in side view. */
export const explainFromHip = (scene: ExplainScene, path: StrapPath): Explanation => {
  const hip = named('H', 'hip point', scene.sitting.body.hip)
  const end = effectiveAnchorNamed(scene, path)
  const from = projected(hip.point, 'side')
  const at = projected(end.point, 'side')
  const isHeight = scene.id === 'shoulder-above-hip'
  const measure: Measure = isHeight
    ? { kind: 'length', from: planePoint(at.uMm, from.vMm), to: at }
    : { kind: 'length', from, to: planePoint(at.uMm, from.vMm) }
  const corner = planePoint(at.uMm, from.vMm)
  return explained(scene, {
    elevation: 'side',
    points: [hip, end],
    measure,
    lines: [line('extension', isHeight ? [from, corner] : [at, corner], 'dimension')],
    paths: [path],
  })
}

/** Half the length of the plane FK that is drawn. Our judgement. */
const FK_PIECE_MM = 150

/** Distance of the effective anchor from the plane FK through B on the torso line. */
export const explainBehindFk = (scene: ExplainScene, path: StrapPath): Explanation => {
  const { hip, reclineDeg } = scene.sitting.body
  const end = effectiveAnchorNamed(scene, path)
  const hipAt = projected(hip, 'side')
  const b = pointB(hipAt, reclineDeg, Math.abs(end.point.yMm - hip.yMm))
  const at = projected(end.point, 'side')
  const normalDeg = reclineDeg + FK_DEG - 90
  const distanceMm = behindFkMm(hip, reclineDeg, end.point)
  const foot = planePoint(at.uMm - distanceMm * sinDeg(normalDeg), at.vMm - distanceMm * cosDeg(normalDeg))
  const alongFk = (lengthMm: number): PlanePointMm =>
    planePoint(b.uMm + lengthMm * cosDeg(normalDeg), b.vMm - lengthMm * sinDeg(normalDeg))
  return explained(scene, {
    elevation: 'side',
    points: [
      named('H', 'hip point', hip),
      named('B', 'on the torso line', { xMm: b.uMm, yMm: hip.yMm, zMm: b.vMm }),
      end,
    ],
    measure: { kind: 'length', from: foot, to: at },
    lines: [
      line('torso', [hipAt, b], 'centre'),
      line('fk', [alongFk(-FK_PIECE_MM), alongFk(FK_PIECE_MM)], 'hidden'),
      line('extension', [b, foot], 'dimension'),
    ],
    paths: [path],
  })
}

/** Seen from above, from the reference shoulder to the effective anchor; inward counts plus. */
export const explainReferencePlan = (scene: ExplainScene, path: StrapPath): Explanation => {
  const { hip, reclineDeg } = scene.sitting.body
  const end = effectiveAnchorNamed(scene, path)
  const z = pointZ(projected(hip, 'side'), reclineDeg)
  const isRight = strapSide(path.strap) === 'right'
  const yMm = hip.yMm + (isRight ? X_SIDEWAYS_MM : -X_SIDEWAYS_MM)
  const reference = named('X', 'reference shoulder', { xMm: z.uMm, yMm, zMm: z.vMm })
  return explained(scene, {
    elevation: 'top',
    points: [reference, end],
    measure: {
      kind: 'angle',
      apex: projected(reference.point, 'top'),
      zeroDeg: 0,
      turn: isRight ? -1 : 1,
      to: projected(end.point, 'top'),
    },
    lines: [],
    paths: [path],
  })
}

/** Distance of a lap mount from the seat's middle plane, seen from above, whether or not the strap has a path. */
export const explainOffCentre = (scene: ExplainScene, strap: StrapId): Explanation | null => {
  const mount = anchorOf(scene.place.anchors, strap)?.mount
  if (mount === undefined) return null
  const { hip } = scene.sitting.body
  const anchor = named('A', 'anchor', mount.point)
  const to = projected(mount.point, 'top')
  const from = planePoint(to.uMm, hip.yMm)
  const path = pathOf(scene, strap)
  return explained(scene, {
    elevation: 'top',
    points: [named('H', 'hip point', hip), anchor],
    measure: { kind: 'length', from, to },
    lines: [line('middle', [projected(hip, 'top'), from], 'centre')],
    paths: path === null ? [] : [path],
  })
}

import { type PlanePointMm, planePoint, projected } from '../../../geometry/plane'
import type { PointMm } from '../../../geometry/point'
import { tangentPoint } from '../../../geometry/tangent'
import { shiftedHip } from '../../../straps/lapQuantities'
import type { StrapPath } from '../../../straps/path'
import { strapSide } from '../../../straps/strap'
import { atan2Deg, cosDeg, sinDeg } from '../../../units/angle'
import type { Primitive } from '../primitive'
import { onPlane, SIDE_PLANE, TOP_PLANE } from './drawnPlane'
import type { Explanation, ExplainScene, Measure, NamedPoint } from './explanation'
import { figureOf, line } from './figure'
import { anchorNamed, bodyNamed, effectiveAnchorNamed, labelled, named } from './names'
import { elevationScenery, strapScenery } from './scenery'
import { solvedStrapOf } from './solvedStrap'

interface SideAngle {
  readonly points: readonly NamedPoint[]
  readonly measure: Measure
  readonly lines?: readonly Primitive[]
}

const sideExplanation = (
  scene: ExplainScene,
  path: StrapPath,
  { points, measure, lines = [] }: SideAngle,
): Explanation => ({
  figures: [
    figureOf(
      {
        view: 'side',
        measure,
        points: labelled(points, SIDE_PLANE),
        lines,
        scenery: [...elevationScenery(scene, 'side'), ...strapScenery([path], SIDE_PLANE)],
      },
      scene,
    ),
  ],
  points,
})

const side = (point: PointMm): PlanePointMm => projected(point, 'side')

/** The fall of the free run behind the shoulder, from level: clockwise from rearward. */
export const explainShoulderDrop = (scene: ExplainScene, path: StrapPath): Explanation =>
  sideExplanation(scene, path, {
    points: [bodyNamed(path, 'shoulder'), effectiveAnchorNamed(scene, path)],
    measure: {
      kind: 'angle',
      apex: side(path.bodyContact),
      zeroDeg: 0,
      turn: -1,
      to: side(path.effectiveAnchor),
    },
  })

/** A piece of the torso line, drawn through a point so that square to it can be seen. */
const torsoLine = (reclineDeg: number, at: PlanePointMm, lengthMm: number): Primitive =>
  line(
    'torso',
    [
      planePoint(at.uMm - lengthMm * sinDeg(reclineDeg), at.vMm - lengthMm * cosDeg(reclineDeg)),
      planePoint(at.uMm + lengthMm * sinDeg(reclineDeg), at.vMm + lengthMm * cosDeg(reclineDeg)),
    ],
    'centre',
  )

/** Half the length of torso line that is drawn through the shoulder. Our judgement. */
const TORSO_PIECE_MM = 90

/** The same run from square to the torso line, which falls rearward by the recline. */
export const explainShoulderToSpine = (scene: ExplainScene, path: StrapPath): Explanation => {
  const { reclineDeg } = scene.sitting.body
  const apex = side(path.bodyContact)
  return sideExplanation(scene, path, {
    points: [bodyNamed(path, 'shoulder'), effectiveAnchorNamed(scene, path)],
    measure: { kind: 'angle', apex, zeroDeg: -reclineDeg, turn: -1, to: side(path.effectiveAnchor) },
    lines: [torsoLine(reclineDeg, apex, TORSO_PIECE_MM)],
  })
}

/** From the rim itself, or from where the strap passes its slot, to the anchor contact. */
export const explainRimDrop = (scene: ExplainScene, path: StrapPath): Explanation | null => {
  const solved = solvedStrapOf(scene, path.strap)
  if (solved === null || solved.pass === null) return null
  const { pass } = solved
  const from =
    pass.gate.on === 'rim'
      ? named('R', 'rim', { ...pass.gate.centre, yMm: pass.point.yMm })
      : named('G', 'slot', pass.point)
  const to = anchorNamed(scene, path)
  return sideExplanation(scene, path, {
    points: [from, to],
    measure: { kind: 'angle', apex: side(from.point), zeroDeg: 0, turn: -1, to: side(to.point) },
  })
}

/** Seen from above, from straight rearward; converging counts plus: up the drawing for the left strap, down for the right. */
export const explainShoulderPlan = (scene: ExplainScene, path: StrapPath): Explanation => {
  const points = [bodyNamed(path, 'shoulder'), effectiveAnchorNamed(scene, path)]
  return {
    figures: [
      figureOf(
        {
          view: 'top',
          measure: {
            kind: 'angle',
            apex: onPlane(TOP_PLANE, path.bodyContact),
            zeroDeg: 0,
            turn: strapSide(path.strap) === 'right' ? -1 : 1,
            to: onPlane(TOP_PLANE, path.effectiveAnchor),
          },
          points: labelled(points, TOP_PLANE),
          lines: [],
          scenery: [...elevationScenery(scene, 'top'), ...strapScenery([path], TOP_PLANE)],
        },
        scene,
      ),
    ],
    points,
  }
}

/** From the effective anchor forward to the hip point, the shifted point or the front contact: clockwise from forward. */
export const explainLapAngle = (scene: ExplainScene, path: StrapPath): Explanation => {
  const { hip } = scene.sitting.body
  const end = effectiveAnchorNamed(scene, path)
  const target = lapTarget(scene, path)
  const hipNamed = named('H', 'hip point', hip)
  return sideExplanation(scene, path, {
    points: [end, target, ...(target.letter === 'H' ? [] : [hipNamed])],
    measure: { kind: 'angle', apex: side(end.point), zeroDeg: 180, turn: -1, to: side(target.point) },
  })
}

const lapTarget = ({ id, sitting }: ExplainScene, path: StrapPath): NamedPoint => {
  const { hip } = sitting.body
  if (id === 'lap-angle') return named('H', 'hip point', hip)
  if (id === 'lap-shifted-angle') {
    const { uMm, vMm } = shiftedHip(side(hip))
    return named('P', 'shifted point', { xMm: uMm, yMm: hip.yMm, zMm: vMm })
  }
  return named('Q', 'front contact', path.contacts.at(-2)?.point ?? path.bodyContact)
}

const subContact = (path: StrapPath): NamedPoint =>
  bodyNamed(path, path.contacts.at(-1)?.point === path.bodyContact ? 'buckle' : 'groin')

/** From straight down, rearward counts plus: anticlockwise. */
export const explainSubToVertical = (scene: ExplainScene, path: StrapPath): Explanation => {
  const body = subContact(path)
  const end = effectiveAnchorNamed(scene, path)
  return sideExplanation(scene, path, {
    points: [body, end],
    measure: { kind: 'angle', apex: side(body.point), zeroDeg: -90, turn: 1, to: side(end.point) },
  })
}

/** From the chest line carried on downward past the strap's contact with the body. */
export const explainSubToChest = (scene: ExplainScene, path: StrapPath): Explanation | null => {
  const { buckle, body } = scene.sitting
  const chest = buckle && tangentPoint(body.shoulderArc, side(buckle), 'right')
  if (buckle === null || chest === null) return null
  const from = subContact(path)
  const end = effectiveAnchorNamed(scene, path)
  const chestPoint = { xMm: chest.uMm, yMm: body.hip.yMm, zMm: chest.vMm }
  const buckleAt = side(buckle)
  const points = [
    from,
    end,
    named('C', 'chest', chestPoint),
    ...(from.words === 'buckle' ? [] : [named('K', 'buckle', buckle)]),
  ]
  return sideExplanation(scene, path, {
    points,
    measure: {
      kind: 'angle',
      apex: side(from.point),
      zeroDeg: atan2Deg(buckleAt.vMm - chest.vMm, buckleAt.uMm - chest.uMm),
      turn: 1,
      to: side(end.point),
    },
    lines: [line('chest', [chest, buckleAt], 'centre')],
  })
}

import { type PlanePointMm, planePoint, projected } from '../../../geometry/plane'
import { type Direction, directionBetween, pointBetween } from '../../../geometry/point'
import type { StrapPath } from '../../../straps/path'
import { cosDeg, sinDeg } from '../../../units/angle'
import { SIDE_PLANE } from './drawnPlane'
import type { Explanation, ExplainScene } from './explanation'
import { figureOf, line } from './figure'
import { labelled, named } from './names'
import { elevationScenery, strapScenery } from './scenery'
import { pathOf } from './solvedStrap'

/** Length that stands for the tension of one strap. Our judgement: about the size of the trunk beside it. */
const TENSION_MM = 250

interface Legs {
  readonly rear: Direction
  readonly front: Direction
}

/** The directions in which the two legs of a shoulder strap leave the shoulder; null without a buckle. */
const legsOf = (path: StrapPath): Legs | null => {
  const buckle = path.contacts.at(-1)
  const front = path.contacts.at(-2)
  if (buckle?.on !== 'buckle' || front === undefined) return null
  const rearLeg = directionBetween(path.bodyContact, path.effectiveAnchor)
  const frontLeg = directionBetween(front.point, buckle.point)
  return rearLeg && frontLeg && { rear: rearLeg, front: frontLeg }
}

/** The mean pull of a leg over both straps, as a vector of the side plane with the tension at its drawn length. */
const pulledFrom = (from: PlanePointMm, legs: readonly Direction[]): PlanePointMm => {
  const mean = (of: (leg: Direction) => number): number =>
    (TENSION_MM * legs.reduce((total, leg) => total + of(leg), 0)) / legs.length
  return planePoint(from.uMm + mean(({ x }) => x), from.vMm + mean(({ z }) => z))
}

/**
 * The forces of both legs on the shoulder set one after the other, and their sum let fall on the torso line: the share of the
 * tension is the drawn length along that line over the length that stands for the tension.
 */
export const explainSpineLoad = (scene: ExplainScene): Explanation | null => {
  const left = pathOf(scene, 'shoulder-left')
  const right = pathOf(scene, 'shoulder-right')
  const first = left && legsOf(left)
  const second = right && legsOf(right)
  if (left === null || right === null || first === null || second === null) return null
  const { shoulderPoint, reclineDeg } = scene.sitting.body
  const shoulder = named('S', 'shoulder', pointBetween(shoulderPoint.left, shoulderPoint.right, 0.5))
  const start = projected(shoulder.point, 'side')
  const rear = pulledFrom(start, [first.rear, second.rear])
  const end = pulledFrom(rear, [first.front, second.front])
  const down = { u: -sinDeg(reclineDeg), v: -cosDeg(reclineDeg) }
  const alongMm = (end.uMm - start.uMm) * down.u + (end.vMm - start.vMm) * down.v
  const foot = planePoint(start.uMm + alongMm * down.u, start.vMm + alongMm * down.v)
  const scaleEnd = planePoint(start.uMm - TENSION_MM, start.vMm + 0.3 * TENSION_MM)
  const scaleStart = planePoint(start.uMm, scaleEnd.vMm)
  return {
    figures: [
      figureOf(
        {
          view: 'forces',
          measure: { kind: 'length', from: start, to: foot },
          points: [
            ...labelled([shoulder], SIDE_PLANE),
            { text: 'rear leg', at: rear },
            { text: 'sum of both legs', at: end },
            { text: 'tension of one strap', at: scaleEnd },
          ],
          lines: [
            line('torso', [planePoint(start.uMm + 60 * -down.u, start.vMm + 60 * -down.v), foot], 'centre'),
            line('leg/rear', [start, rear], 'focus'),
            line('leg/front', [rear, end], 'focus'),
            line('sum', [start, end], 'hidden'),
            line('foot', [end, foot], 'dimension'),
            line('scale', [scaleStart, scaleEnd], 'outline'),
          ],
          scenery: [...elevationScenery(scene, 'side'), ...strapScenery([left, right], SIDE_PLANE)],
        },
        scene,
      ),
    ],
    points: [shoulder],
  }
}

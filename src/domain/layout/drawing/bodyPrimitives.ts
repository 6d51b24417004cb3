import type { PosedBody } from '../../body/posedBody'
import { type Elevation, type PlanePointMm, projected } from '../../geometry/plane'
import { type PointMm, pointMm } from '../../geometry/point'
import { cosDeg, sinDeg } from '../../units/angle'
import type { Layout } from '../document/layout'
import { handleId } from '../edit/handles'
import { sittingName } from '../wording/names'
import type { DrawnPlace } from './drawnPlace'
import { ghostPart } from './ghostAt'
import type { LabelWish } from './labelPlacement'
import type { LineStyle, MarkKind, Primitive } from './primitive'

/** The body's outlines with the helmet as a true circle. */
export const figurePrimitives = (
  body: PosedBody,
  elevation: Elevation,
  style: LineStyle,
  key: string,
): Primitive[] => [
  ...body.outlines[elevation]
    .filter((outline) => outline.part !== 'helmet')
    .map((outline, index): Primitive => ({
      kind: 'polyline',
      key: `${key}/${outline.part}/${index}`,
      part: null,
      points: outline.points,
      closed: true,
      style,
    })),
  {
    kind: 'circle',
    key: `${key}/helmet`,
    part: null,
    centre: projected(body.helmet.centre, elevation),
    radiusMm: body.helmet.radiusMm,
    style,
  },
]

/** Where the torso line leaves the drawn figure: at the helmet's crown, so that it reads as a line and not as a strap. */
const torsoLineEnd = (body: PosedBody): PointMm => {
  const lengthMm =
    Math.hypot(body.helmet.centre.xMm - body.hip.xMm, body.helmet.centre.zMm - body.hip.zMm) +
    body.helmet.radiusMm
  return pointMm(
    body.hip.xMm + lengthMm * sinDeg(body.reclineDeg),
    body.hip.yMm,
    body.hip.zMm + lengthMm * cosDeg(body.reclineDeg),
  )
}

const torsoLine = (drawn: DrawnPlace, elevation: Elevation): readonly PlanePointMm[] => [
  projected(drawn.shown.body.hip, elevation),
  projected(torsoLineEnd(drawn.shown.body), elevation),
]

/** The occupant of the shown sitting: figure, torso line, hip point, shoulder points and front hip-bone points. */
export const bodyPrimitives = (drawn: DrawnPlace, elevation: Elevation): Primitive[] => {
  const { place, shown } = drawn
  const placeId = place.id
  const key = `${placeId}/body`
  const mark = (name: string, at: PointMm, kind: MarkKind, part: string | null): Primitive => ({
    kind: 'mark',
    key: `${key}/${name}`,
    part,
    at: projected(at, elevation),
    mark: kind,
    verdict: 'none',
  })
  const shoulderPart = handleId({ kind: 'shoulder-point', placeId })
  return [
    ...figurePrimitives(shown.body, elevation, 'body', key),
    {
      kind: 'polyline',
      key: `${key}/torso-line`,
      part: handleId({ kind: 'recline', placeId }),
      points: torsoLine(drawn, elevation),
      closed: false,
      style: 'centre',
    },
    mark('hip', shown.body.hip, 'hip', handleId({ kind: 'hip', placeId })),
    mark('shoulder-left', shown.body.shoulderPoint.left, 'shoulder', shoulderPart),
    mark('shoulder-right', shown.body.shoulderPoint.right, 'shoulder', shoulderPart),
    mark('hip-bone-left', shown.body.frontHipBone.left, 'hip-bone', null),
    mark('hip-bone-right', shown.body.frontHipBone.right, 'hip-bone', null),
  ]
}

/**
 * Every other sitting as thin outlines, with its strap paths, so that the spread can be seen at a glance. The one that is pointed at
 * comes last and dashed, so that it is told from the others.
 */
export const ghostPrimitives = (
  drawn: DrawnPlace,
  elevation: Elevation,
  pointedSittingId: string | null,
): Primitive[] =>
  drawn.ghosts
    .toSorted((a, b) => Number(a.sitting.id === pointedSittingId) - Number(b.sitting.id === pointedSittingId))
    .flatMap((ghost): Primitive[] => {
      const key = `${drawn.place.id}/ghost/${ghost.sitting.id}`
      const part = ghostPart(ghost.sitting.id)
      const style: LineStyle = ghost.sitting.id === pointedSittingId ? 'hidden' : 'ghost'
      return [
        ...figurePrimitives(ghost.body, elevation, style, key).map((primitive) => ({ ...primitive, part })),
        ...ghost.paths.map((path): Primitive => ({
          kind: 'polyline',
          key: `${key}/${path.strap}`,
          part,
          points: path.polyline.map((point) => projected(point, elevation)),
          closed: false,
          style,
        })),
      ]
    })

/** The name of the sitting that is pointed at, beside its helmet; nothing when no ghost is it. */
export const ghostLabels = (
  drawn: DrawnPlace,
  layout: Layout,
  elevation: Elevation,
  pointedSittingId: string | null,
): readonly LabelWish[] =>
  drawn.ghosts
    .filter((ghost) => ghost.sitting.id === pointedSittingId)
    .map((ghost) => ({
      key: `${drawn.place.id}/ghost/${ghost.sitting.id}/name`,
      part: ghostPart(ghost.sitting.id),
      at: projected(ghost.body.helmet.centre, elevation),
      text: sittingName(ghost.sitting, layout),
      weight: 'strong',
      need: 'must',
    }))

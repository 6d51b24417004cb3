import type { Elevation } from '../../../geometry/plane'
import type { StrapPath } from '../../../straps/path'
import { figurePrimitives } from '../bodyPrimitives'
import type { Primitive } from '../primitive'
import { seatShellPrimitives } from '../seatPrimitives'
import { tubePrimitives } from '../tubePrimitives'
import { type DrawnPlane, onPlane } from './drawnPlane'
import type { ExplainScene } from './explanation'
import { line } from './figure'

/** The straps as a plane shows them. */
export const strapScenery = (paths: readonly StrapPath[], plane: DrawnPlane): readonly Primitive[] =>
  paths.map((path) =>
    line(
      `strap/${path.strap}`,
      path.polyline.map((point) => onPlane(plane, point)),
      'strap',
    ),
  )

/** Seat, tubes and body of the sitting as an elevation shows them. */
export const elevationScenery = (scene: ExplainScene, elevation: Elevation): readonly Primitive[] => [
  ...seatShellPrimitives(scene.place, scene.sitting.pose, elevation, 'ghost'),
  ...tubePrimitives(scene.tubes, elevation).filter(
    (primitive) => !(primitive.kind === 'polyline' && primitive.style === 'centre'),
  ),
  ...figurePrimitives(scene.sitting.body, elevation, 'body', 'explain/body'),
]

import { type PlanePointMm, planePoint } from '../../../geometry/plane'
import type { PointMm } from '../../../geometry/point'
import { adjusterRoom, type AdjusterRoom } from '../../../straps/adjusterClearance'
import type { StrapPath } from '../../../straps/path'
import { polylinePart } from '../alongStrap'
import { onPlane, SIDE_PLANE } from './drawnPlane'
import type { Explanation, ExplainFigure, ExplainScene } from './explanation'
import { figureOf, line } from './figure'
import { anchorNamed, labelled, named } from './names'
import { elevationScenery, strapScenery } from './scenery'
import { solvedStrapOf, strapScene } from './solvedStrap'

const NEAREST_WORDS = {
  anchor: 'anchor',
  junction: 'junction',
  slot: 'slot',
  rim: 'rim',
  'seat-side': 'shell edge',
  body: 'body',
  buckle: 'buckle',
} as const satisfies Record<AdjusterRoom['nearest']['on'], string>

/** The ends of the measured distance along the strap: from the adjuster's end to that of what is nearest. */
interface Ends {
  readonly adjusterMm: number
  readonly nearestMm: number
  readonly nearest: PointMm
}

/** The adjuster lies nearer to the anchor than the place, or beyond it: whichever gives the room that was computed. */
const endsOf = ({ fromMm, toMm, nearest, clearanceMm }: AdjusterRoom): Ends =>
  nearest.fromMm - toMm === clearanceMm
    ? { adjusterMm: toMm, nearestMm: nearest.fromMm, nearest: nearest.from }
    : { adjusterMm: fromMm, nearestMm: nearest.toMm, nearest: nearest.to }

/** Half the width at which the adjuster is drawn. A drawing convention of ours: the layout holds its length alone. */
const HALF_WIDTH_MM = 25

/** Strap drawn beyond the adjuster and the place it is nearest to. Our judgement. */
const BEYOND_MM = 40

/** The strap laid out straight by its distance from the anchor contact, about the adjuster and the place it is nearest to. */
const stripFigure = (scene: ExplainScene, room: AdjusterRoom): ExplainFigure => {
  const { fromMm, toMm, nearest } = room
  const { adjusterMm, nearestMm } = endsOf(room)
  const at = (alongMm: number, vMm = 0): PlanePointMm => planePoint(alongMm, vMm)
  const startMm = Math.min(fromMm, nearest.fromMm) - BEYOND_MM
  const endMm = Math.max(toMm, nearest.toMm) + BEYOND_MM
  const below = -HALF_WIDTH_MM
  // A dimension stands to the left of its direction: outside the adjuster either way.
  const measuredMm = nearestMm < adjusterMm ? below : -below
  return figureOf(
    {
      view: 'strip',
      measure: { kind: 'length', from: at(adjusterMm, measuredMm), to: at(nearestMm, measuredMm) },
      points: [
        { text: 'adjuster', at: at((fromMm + toMm) / 2) },
        { text: `N ${NEAREST_WORDS[nearest.on]}`, at: at(nearestMm) },
      ],
      lines: [
        line('strap', [at(startMm), at(endMm)], 'strap'),
        line(
          'adjuster',
          [at(fromMm, below), at(toMm, below), at(toMm, -below), at(fromMm, -below)],
          'outline',
          true,
        ),
        line('nearest', [at(nearest.fromMm), at(nearest.toMm)], 'focus'),
        line('nearest-end', [at(nearestMm, below), at(nearestMm, -below)], 'dimension'),
      ],
      scenery: [],
    },
    scene,
  )
}

/** The adjuster's body on its strap, and the least distance along the strap to slot, edge, body or buckle. */
export const explainAdjuster = (scene: ExplainScene, path: StrapPath): Explanation | null => {
  const solved = solvedStrapOf(scene, path.strap)
  const room = solved && adjusterRoom(strapScene(scene), solved)
  if (room === null) return null
  const { fromMm, toMm, nearest } = room
  const near = named('N', NEAREST_WORDS[nearest.on], endsOf(room).nearest)
  const points = [anchorNamed(scene, path), near]
  const body = polylinePart(path.polyline, fromMm, toMm).map((point) => onPlane(SIDE_PLANE, point))
  const middle = body[Math.floor(body.length / 2)]
  const where = figureOf(
    {
      view: 'side',
      measure: null,
      points: [
        ...labelled(points, SIDE_PLANE),
        ...(middle === undefined ? [] : [{ text: 'adjuster', at: middle }]),
      ],
      lines: body.length < 2 ? [] : [line('adjuster-on-strap', body, 'focus')],
      scenery: [...elevationScenery(scene, 'side'), ...strapScenery([path], SIDE_PLANE)],
    },
    scene,
  )
  return { figures: [where, stripFigure(scene, room)], points }
}

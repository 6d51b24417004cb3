import type { PointMm } from '../../../geometry/point'
import type { StrapPath } from '../../../straps/path'
import { placeStraps } from '../../../straps/placeStraps'
import type { StrapScene } from '../../../straps/scene'
import type { StrapId } from '../../../straps/strap'
import type { SolvedStrap } from '../../../straps/strapPath'
import type { ExplainScene } from './explanation'

/** What the straps of the sitting depend on, put together again from the layout and the evaluation. */
export const strapScene = ({ place, sitting, tubes }: ExplainScene): StrapScene => ({
  seat: place.seat,
  pose: sitting.pose,
  body: sitting.body,
  belt: place.belt,
  anchors: place.anchors,
  tubes,
})

export const pathOf = ({ sitting }: ExplainScene, strap: StrapId): StrapPath | null =>
  sitting.paths.find((path) => path.strap === strap) ?? null

/** Where the strap meets its mount. */
export const anchorContact = (path: StrapPath): PointMm => path.contacts[0]?.point ?? path.effectiveAnchor

/** The strap as the solver has it, with its pass through slot or rim and its arcs; null when it has no path. */
export const solvedStrapOf = (scene: ExplainScene, strap: StrapId): SolvedStrap | null =>
  placeStraps(strapScene(scene)).straps.find(({ path }) => path.strap === strap) ?? null

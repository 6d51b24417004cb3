import type { PointMm } from '../../../geometry/point'
import { lapHalf, lapPath } from '../../../straps/lapPath'
import { anchorOf } from '../../../straps/mount'
import type { StrapPath } from '../../../straps/path'
import type { StrapScene } from '../../../straps/scene'
import { shoulderPath } from '../../../straps/shoulderPath'
import { strapFamily, type StrapId } from '../../../straps/strap'
import type { SolvedStrap } from '../../../straps/strapPath'
import { subPath } from '../../../straps/subPath'
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

/** The strap solved again, for where it passes its slot or rim; null when it has no path. */
export const solvedStrapOf = (explained: ExplainScene, strap: StrapId): SolvedStrap | null => {
  const scene = strapScene(explained)
  const { buckle } = explained.sitting
  const anchor = anchorOf(scene.anchors, strap)
  if (anchor === null) return null
  switch (strapFamily(strap)) {
    case 'shoulder': {
      const solved = shoulderPath(scene, anchor, buckle)
      return solved.ok ? solved.value : null
    }
    case 'lap': {
      const half = lapHalf(scene, anchor)
      return half.ok && buckle !== null ? lapPath(scene, half.value, buckle) : null
    }
    case 'sub': {
      const solved = buckle === null ? null : subPath(scene, anchor, buckle)
      return solved?.ok === true ? solved.value : null
    }
  }
}

import type { PointMm } from '../geometry/point'
import type { Result } from '../result'
import { anchorQuantities } from './anchorQuantities'
import { helmetClearance } from './helmetClearance'
import { lapHalf, lapPath, type LapHalf } from './lapPath'
import { lapPairQuantities, lapQuantities } from './lapQuantities'
import { anchorOf } from './mount'
import type { PathProblem, StrapPath } from './path'
import type { QuantityValue } from './quantity'
import { lapOffCentre, shoulderReferenceQuantities } from './referenceQuantities'
import type { StrapScene } from './scene'
import { shoulderPath } from './shoulderPath'
import { shoulderPairQuantities, shoulderQuantities } from './shoulderQuantities'
import { strapFamily, strapsOf, type StrapFamily, type StrapId } from './strap'
import type { SolvedStrap } from './strapPath'
import { subPath } from './subPath'
import { subPairQuantities, subQuantities } from './subQuantities'

/** All straps of one place in one sitting. */
export interface SolvedPlace {
  /** Where the straps meet; null while no lap strap has a path. */
  readonly buckle: PointMm | null
  /** In the order of `strapsOf`; a strap without a path is missing here and has a problem instead. */
  readonly paths: readonly StrapPath[]
  readonly problems: readonly PathProblem[]
  /** Every value is finite; what could not be computed is missing. */
  readonly quantities: readonly QuantityValue[]
}

/** The buckle lies midway between the front contacts of the lap straps, in the middle of the seat. */
const buckleOf = (scene: StrapScene, halves: readonly LapHalf[]): PointMm | null => {
  if (halves.length === 0) return null
  const mean = (of: (point: PointMm) => number): number =>
    halves.reduce((sum, half) => sum + of(half.front), 0) / halves.length
  return { xMm: mean((point) => point.xMm), yMm: scene.body.hip.yMm, zMm: mean((point) => point.zMm) }
}

const valuesOf = <Value>(results: readonly Result<Value, PathProblem>[]): readonly Value[] =>
  results.flatMap((result) => (result.ok ? [result.value] : []))

const problemsOf = (results: readonly Result<unknown, PathProblem>[]): readonly PathProblem[] =>
  results.flatMap((result) => (result.ok ? [] : [result.error]))

/** Solves one strap of a family whose anchor is there. */
const solvedStrap = (
  scene: StrapScene,
  strap: StrapId,
  buckle: PointMm | null,
): Result<SolvedStrap, PathProblem> | null => {
  const anchor = anchorOf(scene.anchors, strap)
  if (anchor === null) return null
  if (strapFamily(strap) === 'shoulder') return shoulderPath(scene, anchor, buckle)
  if (buckle === null) return { ok: false, error: { kind: 'buckle-unknown', strap } }
  return subPath(scene, anchor, buckle)
}

/** The paths of all straps of the arrangement, and the buckle they meet at. */
const solvedStraps = (
  scene: StrapScene,
): {
  readonly buckle: PointMm | null
  readonly straps: readonly SolvedStrap[]
  readonly problems: readonly PathProblem[]
} => {
  const wanted = strapsOf(scene.belt)
  const ofFamily = (family: StrapFamily): readonly StrapId[] =>
    wanted.filter((strap) => strapFamily(strap) === family)
  const halves = ofFamily('lap').flatMap((strap) => {
    const anchor = anchorOf(scene.anchors, strap)
    return anchor === null ? [] : [lapHalf(scene, anchor)]
  })
  const lapHalves = valuesOf(halves)
  const buckle = buckleOf(scene, lapHalves)
  const others = [...ofFamily('shoulder'), ...ofFamily('sub')].flatMap(
    (strap) => solvedStrap(scene, strap, buckle) ?? [],
  )
  const laps = buckle === null ? [] : lapHalves.map((half) => lapPath(scene, half, buckle))
  const straps = [...valuesOf(others), ...laps].sort(
    (a, b) => wanted.indexOf(a.anchor.strap) - wanted.indexOf(b.anchor.strap),
  )
  const missing = wanted
    .filter((strap) => anchorOf(scene.anchors, strap) === null)
    .map((strap) => ({ kind: 'anchor-missing', strap }) as const)
  const frontless = buckle === null ? straps.map(({ anchor }) => anchor.strap) : []
  return {
    buckle,
    straps,
    problems: [
      ...missing,
      ...problemsOf(halves),
      ...problemsOf(others),
      ...frontless.map((strap) => ({ kind: 'buckle-unknown', strap }) as const),
    ],
  }
}

/**
 * Taut paths and quantities of one place in one sitting. Straps of the arrangement only; an anchor of a strap that the belt does
 * not have is left out. Definitions and formulas: straps/README.md.
 */
export const solvePlace = (scene: StrapScene): SolvedPlace => {
  const { buckle, straps, problems } = solvedStraps(scene)
  const ofFamily = (family: StrapFamily): readonly SolvedStrap[] =>
    straps.filter(({ anchor }) => strapFamily(anchor.strap) === family)
  return {
    buckle,
    paths: straps.map(({ path }) => path),
    problems,
    quantities: [
      ...ofFamily('shoulder').flatMap((strap) => shoulderQuantities(scene, strap)),
      ...ofFamily('shoulder').flatMap((strap) => shoulderReferenceQuantities(scene, strap)),
      ...shoulderPairQuantities(scene, ofFamily('shoulder')),
      ...ofFamily('lap').flatMap((strap) => lapQuantities(scene, strap)),
      ...lapPairQuantities(scene),
      ...lapOffCentre(scene),
      ...(buckle === null ? [] : ofFamily('sub').flatMap((strap) => subQuantities(scene, strap, buckle))),
      ...subPairQuantities(scene),
      ...straps.flatMap((strap) => anchorQuantities(scene, strap)),
      ...helmetClearance(scene),
    ],
  }
}

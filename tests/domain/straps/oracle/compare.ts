import type { StrapPath } from '../../../../src/domain/straps/path'
import { quantityUnit, type QuantityId } from '../../../../src/domain/straps/quantity'
import type { StrapScene } from '../../../../src/domain/straps/scene'
import { solvePlace, type SolvedPlace } from '../../../../src/domain/straps/solve'
import { strapFamily, type StrapId } from '../../../../src/domain/straps/strap'
import { behindSeatNumbers } from './behindSeat'
import { oraclePlace, type OraclePlace, type OracleStrap } from './place'
import { isUndecidedWrap } from './openings'
import { slotBendDeg } from './slotBend'
import { bendDeg } from './taut'
import { apart, minus, towards, turnDeg, vectorOf, type Vector } from './vector'

/** How far the two solvers may be apart: lengths and contacts, angles. */
const AGREE_MM = 0.05
const AGREE_DEG = 0.02

export interface Difference {
  readonly strap: StrapId
  readonly what: string
  readonly by: number
  readonly unit: 'mm' | 'deg'
}

const DEG = 180 / Math.PI
const atan2Deg = (up: number, along: number): number => Math.atan2(up, along) * DEG

/** The angles of one strap's free run as the README of the straps defines them, from the slow solver's contacts. */
const runAngles = (scene: StrapScene, strap: OracleStrap): readonly (readonly [QuantityId, number])[] => {
  const run = minus(strap.effective, strap.arrival.touch)
  const inward = strap.strap.endsWith('left') ? run[1] : -run[1]
  const toHip = minus(strap.effective, vectorOf(scene.body.hip))
  switch (strap.strap) {
    case 'shoulder-left':
    case 'shoulder-right':
      return [
        ['shoulder-drop', atan2Deg(-run[2], run[0])],
        ['shoulder-plan', atan2Deg(inward, run[0])],
      ]
    case 'lap-left':
    case 'lap-right': {
      const front = strap.arrival.later[0] ?? strap.arrival.touch
      const toFront = minus(strap.effective, front)
      return [
        ['lap-angle', atan2Deg(-toHip[2], toHip[0])],
        ['lap-run-angle', atan2Deg(-toFront[2], toFront[0])],
      ]
    }
    case 'sub-left':
    case 'sub-right':
    case 'sub-centre':
      return [['sub-to-vertical', atan2Deg(run[0], -run[2])]]
  }
}

const pointDifferences = (strap: OracleStrap, path: StrapPath): readonly (readonly [string, number])[] => [
  ['anchor contact', apart(strap.contact, vectorOf(path.contacts[0]?.point ?? path.effectiveAnchor))],
  ['body contact', apart(strap.arrival.touch, vectorOf(path.bodyContact))],
  ['effective anchor', apart(strap.effective, vectorOf(path.effectiveAnchor))],
  ['length', Math.abs(strap.totalMm - path.lengthMm)],
]

const directionDifferences = (
  strap: OracleStrap,
  path: StrapPath,
): readonly (readonly [string, number])[] => {
  const at = (index: number): Vector => vectorOf(path.contacts[index]?.point ?? path.bodyContact)
  return [
    ['line of pull', turnDeg(towards(strap.contact, strap.second), towards(at(0), at(1)))],
    [
      'free run',
      turnDeg(
        towards(strap.effective, strap.arrival.touch),
        towards(vectorOf(path.effectiveAnchor), vectorOf(path.bodyContact)),
      ),
    ],
  ]
}

const quantityDifferences = (
  scene: StrapScene,
  strap: OracleStrap,
  solved: SolvedPlace,
): readonly (readonly [string, number])[] => {
  const slotBend = slotBendDeg(scene, strap)
  const expected = [
    ...runAngles(scene, strap),
    ...(slotBend === null ? [] : [['slot-bend', slotBend] as const]),
  ]
  return expected.flatMap(([id, value]) => {
    const found = solved.quantities.find((one) => one.id === id && one.subject === strap.strap)
    // Withheld where the strap would pass through a tube.
    return found === undefined ? [] : [[id, Math.abs(found.value - value)] as const]
  })
}

/** A number that only one of the two has is infinitely far off; none is missed of a strap that a tube is in the way of. */
const behindSeatDifferences = (
  scene: StrapScene,
  strap: OracleStrap,
  { quantities }: SolvedPlace,
): readonly (readonly [QuantityId, number])[] => {
  const valueOf = (id: QuantityId): number | null =>
    quantities.find((one) => one.id === id && one.subject === strap.strap)?.value ?? null
  if (strapFamily(strap.strap) !== 'shoulder' || valueOf('shoulder-drop') === null) return []
  return behindSeatNumbers(scene, strap).flatMap(([id, expected]) => {
    const found = valueOf(id)
    if (expected === null && found === null) return []
    return [[id, Math.abs((found ?? Infinity) - (expected ?? -Infinity))] as const]
  })
}

/** A turn that a solver may as well call none: its contact there is badly conditioned. */
const BARELY_BENT_DEG = 1e-3

const strapDifferences = (
  scene: StrapScene,
  strap: OracleStrap,
  path: StrapPath,
  solved: SolvedPlace,
): readonly Difference[] => {
  const bend = bendDeg(strap)
  const isBarelyBent = bend > 0 && bend < BARELY_BENT_DEG
  const mm = pointDifferences(strap, path).filter(([what]) => !(isBarelyBent && what === 'effective anchor'))
  const behind = behindSeatDifferences(scene, strap, solved)
  const isLength = ([id]: readonly [QuantityId, number]): boolean => quantityUnit(id) === 'mm'
  const deg = [
    ...directionDifferences(strap, path),
    ...quantityDifferences(scene, strap, solved),
    ...behind.filter((each) => !isLength(each)),
  ]
  return [
    ...[...mm, ...behind.filter(isLength)].flatMap(([what, by]) =>
      by <= AGREE_MM ? [] : [{ strap: strap.strap, what, by, unit: 'mm' as const }],
    ),
    ...deg.flatMap(([what, by]) =>
      by <= AGREE_DEG ? [] : [{ strap: strap.strap, what, by, unit: 'deg' as const }],
    ),
  ]
}

export interface Comparison {
  readonly compared: readonly OracleStrap[]
  readonly differences: readonly Difference[]
  /** Straps with a path in one solver only. */
  readonly onlyOracle: readonly StrapId[]
  readonly onlySolver: readonly StrapId[]
  readonly solved: SolvedPlace
  readonly oracle: OraclePlace
}

const isLap = (strap: StrapId): boolean => strapFamily(strap) === 'lap'

/** What the model leaves open, left out of the comparison. */
const isAtBorder = (
  scene: StrapScene,
  strap: StrapId,
  { buckle }: OraclePlace,
  { problems }: SolvedPlace,
): boolean => {
  const problem = problems.find((one) => one.strap === strap)?.kind
  switch (strapFamily(strap)) {
    case 'shoulder':
      return problem === 'buckle-unknown' || isUndecidedWrap(scene, strap)
    case 'lap':
      return isUndecidedWrap(scene, strap)
    case 'sub': {
      // Lap straps at very different angles can put the buckle inside the groin's circle.
      const { centre, radiusMm } = scene.body.groinArc
      const isBuckleInside =
        buckle !== null && Math.hypot(buckle[0] - centre.uMm, buckle[2] - centre.vMm) < radiusMm
      return problem === 'buckle-unknown' || isBuckleInside || isUndecidedWrap(scene, strap)
    }
  }
}

/** Both solvers on one scene. */
export const compared = (scene: StrapScene): Comparison => {
  const oracle = oraclePlace(scene)
  const solved = solvePlace(scene)
  const pairs = oracle.straps.flatMap((strap) => {
    const path = solved.paths.find((one) => one.strap === strap.strap)
    return path ? [{ strap, path }] : []
  })
  const both = new Set(pairs.map(({ strap }) => strap.strap))
  const onlyOracle = oracle.straps.flatMap(({ strap }) => (both.has(strap) ? [] : [strap]))
  const onlySolver = solved.paths.flatMap(({ strap }) => (both.has(strap) ? [] : [strap]))
  // The buckle is where the lap straps meet: without the same ones the others end elsewhere.
  const areLapsAlike = ![...onlyOracle, ...onlySolver].some(isLap)
  const counted = (strap: StrapId): boolean =>
    (isLap(strap) || (areLapsAlike && oracle.buckle !== null)) && !isAtBorder(scene, strap, oracle, solved)
  const usable = areLapsAlike ? pairs.filter(({ strap }) => counted(strap.strap)) : []
  return {
    compared: usable.map(({ strap }) => strap),
    differences: usable.flatMap(({ strap, path }) => strapDifferences(scene, strap, path, solved)),
    onlyOracle: onlyOracle.filter(counted),
    onlySolver: onlySolver.filter(counted),
    solved,
    oracle,
  }
}

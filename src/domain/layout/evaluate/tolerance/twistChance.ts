import { type AxisError, errorNodes } from '../../../geometry/axisError'
import type { Direction } from '../../../geometry/point'
import { isWithin } from '../../../rules/check'
import type { QuantityRule } from '../../../rules/rule'
import type { ErrorSpread } from '../../../rules/tolerance'
import type { Anchor } from '../../../straps/anchor'
import { lineOfPull } from '../../../straps/lineOfPull'
import { tabTwistDeg } from '../../../straps/tabPlane'
import type { ErrorVariable } from './errorVariables'
import { offSolved, type Shares, type UncertainSitting } from './offSitting'

export interface TwistQuestion {
  readonly rule: QuantityRule
  readonly anchor: Anchor
  readonly sittings: readonly UncertainSitting[]
  readonly straps: readonly string[]
  readonly variables: readonly ErrorVariable[]
  readonly spread: Exclude<ErrorSpread, 'worst-case'>
}

interface Weighted<Value> {
  readonly value: Value
  readonly weight: number
}

/** Places looked at along each error that turns the line of pull: it turns nearly in proportion, so two nodes follow it. */
const PULL_NODES = 2

/** Angles of the tab looked at along each of its two: the chance is right to about one in a hundred. */
const TAB_NODES = 32

const ONE: AxisError = { spread: 'even', halfWidth: 1 }

/** All combinations of nodes along each error, with the products of their weights. */
const products = (count: number, spread: TwistQuestion['spread']): readonly Weighted<Shares>[] => {
  const along = errorNodes({ ...ONE, spread }, PULL_NODES)
  return Array.from({ length: count }).reduce<readonly Weighted<Shares>[]>(
    (all) =>
      all.flatMap(({ value, weight }) =>
        along.map((node) => ({ value: [...value, node.error], weight: weight * node.weight })),
      ),
    [{ value: [], weight: 1 }],
  )
}

/** Evenly spaced angles with weights for the spread; their own angle alone where nothing is off. */
const tabAngles = (
  angleDeg: number,
  variable: ErrorVariable | undefined,
  spread: TwistQuestion['spread'],
): readonly Weighted<number>[] =>
  variable === undefined
    ? [{ value: angleDeg, weight: 1 }]
    : errorNodes({ spread, halfWidth: variable.size }, TAB_NODES).map(({ error, weight }) => ({
        value: angleDeg + error,
        weight,
      }))

/**
 * Chance that the line of pull leaves a tab's plane by more than the rule allows in some sitting: over the tab's two angles, its own
 * place and the recline. The lap straps' errors, which reach a thigh strap through the buckle, are left out. Null for a wrap and
 * where a strap is left without a path.
 */
export const twistChance = (question: TwistQuestion): number | null => {
  const { rule, anchor, sittings, straps, variables, spread } = question
  const { mount } = anchor
  if (mount.kind !== 'tab') return null
  const turning = variables.filter(
    (variable) =>
      variable.kind === 'recline' || (variable.kind === 'anchor' && variable.anchorId === anchor.id),
  )
  const tabError = (angle: 'planDeg' | 'leanDeg'): ErrorVariable | undefined =>
    variables.find((variable) => variable.kind === 'tab' && variable.angle === angle)
  const plans = tabAngles(mount.planDeg, tabError('planDeg'), spread)
  const leans = tabAngles(mount.leanDeg, tabError('leanDeg'), spread)
  let broken = 0
  for (const { value: shares, weight } of products(turning.length, spread)) {
    const pulls = sittings.map((sitting): Direction | null => {
      const path = offSolved(sitting, straps, turning, shares).paths.find(
        ({ strap }) => strap === anchor.strap,
      )
      return path === undefined ? null : lineOfPull(path)
    })
    for (const plan of plans)
      for (const lean of leans) {
        const turned = { planDeg: plan.value, leanDeg: lean.value }
        let isKept = true
        for (const pull of pulls) {
          if (pull === null) return null
          isKept &&= isWithin(tabTwistDeg(turned, pull), rule)
        }
        if (!isKept) broken += weight * plan.weight * lean.weight
      }
  }
  return Math.min(1, Math.max(0, broken))
}

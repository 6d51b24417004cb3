import type { Direction } from '../geometry/point'
import { isWithin } from '../rules/check'
import type { Remedy } from '../rules/finding'
import type { QuantityRule } from '../rules/rule'
import { tabNormal, tabTwistDeg } from '../straps/tabPlane'
import { lineOfPull } from '../straps/lineOfPull'
import { asinDeg, atan2Deg } from '../units/angle'
import { scenesOfRule } from './subject'
import type { ZoneCase } from './zone'

const cross = (a: Direction, b: Direction): Direction => ({
  x: a.y * b.z - a.z * b.y,
  y: a.z * b.x - a.x * b.z,
  z: a.x * b.y - a.y * b.x,
})

const dot = (a: Direction, b: Direction): number => a.x * b.x + a.y * b.y + a.z * b.z

const unit = (a: Direction): Direction | null => {
  const length = Math.hypot(a.x, a.y, a.z)
  return length < 1e-6 ? null : { x: a.x / length, y: a.y / length, z: a.z / length }
}

/** The normal square to a line of pull that is nearest to the present one: its part across the line. */
const nearestAcross = (normal: Direction, pull: Direction): Direction | null => {
  const along = dot(normal, pull)
  return unit({
    x: normal.x - along * pull.x,
    y: normal.y - along * pull.y,
    z: normal.z - along * pull.z,
  })
}

/** The normal square to the two lines of pull that are farthest apart: the plane in which the strap swings between sittings. */
const swingNormal = (pulls: readonly Direction[]): Direction | null => {
  let widest: { readonly normal: Direction; readonly size: number } | null = null
  for (const [index, a] of pulls.entries())
    for (const b of pulls.slice(index + 1)) {
      const normal = cross(a, b)
      const size = Math.hypot(normal.x, normal.y, normal.z)
      if (widest === null || size > widest.size) widest = { normal, size }
    }
  return widest && unit(widest.normal)
}

/** Finest that an angle finder is set to, degrees; a turn is given in these steps. Our judgement. */
const SETTING_DEG = 0.1

const setting = (angleDeg: number): number => Math.round(angleDeg / SETTING_DEG) / Math.round(1 / SETTING_DEG)

/**
 * Plan and lean of the plane with a normal; the normal is turned to the occupant's right, as tabs are described. For a tab
 * lying flat the plan angle is the present one. Inverse of n = Rz(plan)·Rx(lean)·ŷ.
 */
const orientation = (normal: Direction, presentPlanDeg: number) => {
  const sign = normal.y < 0 || (normal.y === 0 && normal.z < 0) ? -1 : 1
  const { x, y, z } = { x: sign * normal.x, y: sign * normal.y, z: sign * normal.z }
  const isFlat = Math.hypot(x, y) < 1e-9
  return {
    planDeg: setting(isFlat ? presentPlanDeg : atan2Deg(-x, y)),
    leanDeg: setting(asinDeg(z)),
  }
}

/**
 * The turn of a tab that brings the lines of pull of all sittings into its plane as well as one plane can: the nearest to the
 * present orientation if that does, else the plane in which the strap swings. `none` when neither keeps the rule.
 */
export const turnedTab = (rule: QuantityRule, zoneCase: ZoneCase): Remedy => {
  const { anchor } = zoneCase
  const { mount } = anchor
  if (mount.kind !== 'tab') return { kind: 'none', reason: 'A wrapped strap has no tab to turn.' }
  const scenes = scenesOfRule(rule, zoneCase)
  const pulls = scenes.flatMap(({ solved }) =>
    solved.paths.filter(({ strap }) => strap === anchor.strap).map(lineOfPull),
  )
  if (pulls.length < scenes.length)
    return {
      kind: 'none',
      reason: 'First mend what keeps the strap from having a path for everybody who sits here.',
    }
  const sum = unit(pulls.reduce((a, b) => ({ x: a.x + b.x, y: a.y + b.y, z: a.z + b.z }), NO_PULL))
  const normals = [sum && nearestAcross(tabNormal(mount), sum), swingNormal(pulls)]
  for (const normal of normals) {
    const turned = normal && orientation(normal, mount.planDeg)
    if (turned && pulls.every((pull) => isWithin(tabTwistDeg(turned, pull), rule)))
      return { kind: 'turn-tab', anchorId: anchor.id, ...turned }
  }
  return {
    kind: 'none',
    reason: 'The strap swings too far between the people who sit here for one plane to hold it.',
  }
}

const NO_PULL: Direction = { x: 0, y: 0, z: 0 }

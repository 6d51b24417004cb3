import { vehiclePoint } from '../body/pose'
import { planeDistanceMm, projected, type Elevation, type PlanePointMm } from '../geometry/plane'
import type { QuantityRule } from '../rules/rule'
import { slotOf } from '../straps/slotGate'
import { strapFamily } from '../straps/strap'
import { REACH_MM } from './cells'
import { type Asked, askedOf } from './asked'
import { type Focus, type Lattice, latticeAbout } from './lattice'
import { creasesOf } from './creases'
import { type Limit, limitsOf } from './limit'
import { fieldOf } from './sittingField'

import { ruleSubject } from './subject'
import type { ZoneCase, ZoneScene } from './zone'

/** One drawn plane of a case: its lattice and how the sittings are asked. Everything asked once is kept there. */
export interface CasePlane {
  readonly lattice: Lattice
  readonly foci: readonly Focus[]
  readonly asked: ReadonlyMap<ZoneScene, Asked>
  readonly limitsOf: (rule: QuantityRule) => readonly Limit[]
}

/** How finely the body's surroundings are looked at: what is smaller than this, and further away than that share, may be missed. */
const BODY_FOCUS = { leastMm: 140, share: 1.2 }

/** The same about the anchor as drawn. */
const ANCHOR_FOCUS = { leastMm: 40, share: 0.7 }

/** The same about a slot or the rim. */
const GATE_FOCUS = { leastMm: 90, share: 1.2 }

/** The part of the body that the strap runs from. */
const bodyPoint = ({ scene }: ZoneScene, { anchor }: ZoneCase, elevation: Elevation): PlanePointMm => {
  const hip = projected(scene.body.hip, elevation)
  if (strapFamily(anchor.strap) !== 'shoulder') return hip
  const { centre } = scene.body.shoulderArc
  return elevation === 'side' ? centre : { uMm: centre.uMm, vMm: anchor.mount.point.yMm }
}

/** The slot that the strap goes through, or the rim that it goes over. */
const gateFocus = ({ scene }: ZoneScene, { anchor }: ZoneCase, elevation: Elevation): readonly Focus[] => {
  const slot = slotOf(scene.seat, anchor.strap)
  if (slot === null && strapFamily(anchor.strap) !== 'shoulder') return []
  const at = slot?.centre ?? { ...scene.seat.backrestRim, yMm: 0 }
  return [{ at: projected(vehiclePoint(scene.pose, at), elevation), ...GATE_FOCUS }]
}

const planeOf = (zoneCase: ZoneCase, elevation: Elevation): CasePlane => {
  const { scenes, anchor } = zoneCase
  const about = projected(anchor.mount.point, elevation)
  const [first] = scenes
  const hip = first === undefined ? about : projected(first.scene.body.hip, elevation)
  const foci = [
    { at: about, ...ANCHOR_FOCUS },
    ...scenes
      .slice(0, 1)
      .map((zoneScene) => ({ at: bodyPoint(zoneScene, zoneCase, elevation), ...BODY_FOCUS })),
    ...scenes.slice(0, 1).flatMap((zoneScene) => gateFocus(zoneScene, zoneCase, elevation)),
  ]
  const known = new Map<QuantityRule, readonly Limit[]>()
  return {
    lattice: latticeAbout(about, REACH_MM + planeDistanceMm(hip, about)),
    foci,
    asked: new Map(scenes.map((zoneScene) => [zoneScene, askedOf(fieldOf(zoneScene, zoneCase, elevation))])),
    limitsOf: (rule) => {
      const limits =
        known.get(rule) ?? limitsOf(rule, partOf(rule, zoneCase), creasesOf(rule, zoneCase, elevation))
      known.set(rule, limits)
      return limits
    },
  }
}

const partOf = (rule: QuantityRule, zoneCase: ZoneCase): 'strap' | 'pair' =>
  ruleSubject(rule, zoneCase)?.endsWith('-pair') ? 'pair' : 'strap'

/**
 * What was worked out for a case: zones, rooms and remedies of one frame ask for the same. The case is the key and is never
 * changed, so this remembers and does not decide anything.
 */
const KNOWN = new WeakMap<ZoneCase, Partial<Record<Elevation, CasePlane>>>()

export const casePlane = (zoneCase: ZoneCase, elevation: Elevation): CasePlane => {
  const known = KNOWN.get(zoneCase) ?? {}
  const plane = known[elevation] ?? planeOf(zoneCase, elevation)
  KNOWN.set(zoneCase, { ...known, [elevation]: plane })
  return plane
}

import { projected, type PlanePointMm } from '../geometry/plane'
import type { Anchor } from '../straps/anchor'
import { CONTACT_MM } from '../straps/aroundArc'
import { lapAim, lapFrontAt } from '../straps/lapPath'
import { mountCircle } from '../straps/mount'
import type { Gate, StrapScene } from '../straps/scene'
import { atan2Deg } from '../units/angle'
import { bandCell } from './cells'
import type { Bend, Lane, LaneGate } from './lane'
import { beyondGate, rayThroughDeg } from './laneGate'
import { contactShiftMm } from './shoulderLanes'

/** The strap bent over one end of its slot; null when that end is not behind the hip point. */
const lapBend = (scene: StrapScene, at: PlanePointMm): Bend | null => {
  const hip = projected(scene.body.hip, 'side')
  const behindMm = at.uMm - hip.uMm
  const isStraightBelow = Math.abs(behindMm) < CONTACT_MM && at.vMm < hip.vMm - CONTACT_MM
  if (behindMm < CONTACT_MM && !isStraightBelow) return null
  const { target, lineDeg } = lapAim(scene.body, at)
  const runDeg = atan2Deg(at.vMm - target.vMm, at.uMm - target.uMm)
  return { at, runDeg, from: lineDeg >= scene.body.lapLowestDeg ? 'hip' : 'thigh' }
}

/** The gate seen from the point a strap is aimed at; undefined where no straight-line description holds. */
const laneGate = (scene: StrapScene, gate: Gate, target: PlanePointMm): LaneGate | null | undefined => {
  if (gate.upper === null) return undefined
  const beyond = beyondGate(gate, target)
  if (beyond === null) return undefined
  const lowDeg = rayThroughDeg({ centre: target, offsetMm: 0 }, gate.lower, 0)
  const highDeg = rayThroughDeg({ centre: target, offsetMm: 0 }, gate.upper, 0)
  if (lowDeg === null || highDeg === null || highDeg < lowDeg || highDeg - lowDeg > 170) return undefined
  return {
    beyond,
    lowDeg,
    highDeg,
    lower: lapBend(scene, gate.lower),
    upper: lapBend(scene, gate.upper),
    far: null,
  }
}

/**
 * The two lanes of a lap strap: steep enough, it is aimed at the hip point; flatter than the thigh lets it lie, at the front
 * contact held up by the thigh. Null when the slot lets no straight-line description hold.
 */
export const lapLanes = (scene: StrapScene, anchor: Anchor, gate: Gate | null): readonly Lane[] | null => {
  const { body } = scene
  const circle = mountCircle(anchor.mount, scene.tubes)
  if (circle === null) return []
  const hip = projected(body.hip, 'side')
  const held = lapFrontAt(body, body.lapLowestDeg)
  const hipGate = gate && laneGate(scene, gate, hip)
  const thighGate = gate && laneGate(scene, gate, held)
  if (hipGate === undefined || thighGate === undefined) return null
  const shiftMm = contactShiftMm(anchor, circle.radiusMm)
  const isWrap = anchor.mount.kind === 'wrap'
  const common = {
    contactShiftMm: shiftMm,
    closedByWhere: false,
    where: isWrap ? bandCell('u', hip.uMm, null) : [],
  }
  return [
    {
      ...common,
      on: 'hip',
      fan: { centre: hip, offsetMm: -shiftMm },
      fromDeg: -90,
      toDeg: -body.lapLowestDeg,
      openBelow: true,
      openAbove: false,
      whereUnbent: [],
      gate: hipGate,
    },
    {
      ...common,
      on: 'thigh',
      fan: { centre: held, offsetMm: -shiftMm },
      fromDeg: -body.lapLowestDeg,
      toDeg: 90,
      openBelow: false,
      openAbove: true,
      // The contact of a wrap lies at most its radius further forward than the tube's centre.
      whereUnbent: bandCell('u', hip.uMm + circle.radiusMm, null),
      gate: thighGate,
    },
  ]
}

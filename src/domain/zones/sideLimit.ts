import { projected, type PlanePointMm } from '../geometry/plane'
import { isWithin } from '../rules/check'
import type { QuantityRule } from '../rules/rule'
import { forwardAngleDeg, lapAim, lapFrontAt } from '../straps/lapPath'
import { overHipBoneMm, shiftedHip } from '../straps/lapQuantities'
import type { StrapScene } from '../straps/scene'
import { asinDeg, atan2Deg, wrappedDeg } from '../units/angle'
import { bandCell, type Cell } from './cells'
import { type Fan, turnedBeyond, turnedShortOf } from './fan'
import type { Bend, BentLimit, Lane, LanePart, SideLimit } from './lane'

type Limits = Pick<QuantityRule, 'min' | 'max'>

/** A bent strap that keeps a limit wherever its anchor lies. */
const ANYWHERE: BentLimit = { cell: [], holdsClean: true }

/** A limit of the strap's own run, as an interval of ray angles on the whole circle of directions. */
const runLimit = (fromDeg: number, toDeg: number, isKept: (runDeg: number) => boolean): SideLimit => ({
  unbent: (lane) =>
    // The interval may lie a whole turn away from the lane's own angles.
    [-360, 0, 360]
      .map((turnDeg): LanePart => ({
        fromDeg: Math.max(lane.fromDeg, fromDeg + turnDeg),
        toDeg: Math.min(lane.toDeg, toDeg + turnDeg),
        cell: [],
      }))
      .filter((part) => part.toDeg > part.fromDeg),
  bent: ({ runDeg }) => (isKept(runDeg) ? ANYWHERE : null),
})

/** Side angle of a shoulder strap's run below the horizontal, from a line that itself falls by `zeroDeg`. */
export const fallLimit = (limits: Limits, zeroDeg: number): SideLimit =>
  runLimit(
    -(limits.max === null ? 90 : limits.max + zeroDeg),
    -(limits.min === null ? -90 : limits.min + zeroDeg),
    (runDeg) => isWithin(-runDeg - zeroDeg, limits),
  )

/** Side angle of an anti-submarine strap's run, rearward from a line that itself lies `zeroDeg` rearward of straight down. */
export const rearwardLimit = (limits: Limits, zeroDeg: number): SideLimit =>
  runLimit((limits.min ?? -180) + zeroDeg - 90, (limits.max ?? 180) + zeroDeg - 90, (runDeg) =>
    isWithin(wrappedDeg(runDeg + 90 - zeroDeg), limits),
  )

/** The rays of a fan between two rises of the line toward its centre: 0° level, 90° the anchor straight below. */
const riseCell = (fan: Fan, limits: Limits): Cell => [
  ...(limits.max === null ? [] : [turnedBeyond(fan, -limits.max)]),
  ...(limits.min === null ? [] : [turnedShortOf(fan, -limits.min)]),
]

const wholeLane = ({ fromDeg, toDeg }: Lane, cell: Cell = []): readonly LanePart[] => [
  { fromDeg, toDeg, cell },
]

/** Angle of the line from the effective anchor forward to a fixed point. Holds for tabs, whose effective anchor is the hole. */
const lineLimit = (limits: Limits, to: PlanePointMm): SideLimit => ({
  unbent: (lane) => wholeLane(lane, riseCell({ centre: to, offsetMm: 0 }, limits)),
  bent: ({ at }) => (isWithin(forwardAngleDeg(at, to), limits) ? ANYWHERE : null),
})

/** Where the effective anchor lies from the hip point along one axis. Holds for tabs, whose effective anchor is the hole. */
export const fromHipLimit = (scene: StrapScene, limits: Limits, along: 'u' | 'v'): SideLimit => {
  const hip = projected(scene.body.hip, 'side')
  const zeroMm = along === 'u' ? hip.uMm : hip.vMm
  const at = (limit: number | null): number | null => (limit === null ? null : zeroMm + limit)
  return {
    unbent: (lane) => wholeLane(lane, bandCell(along, at(limits.min), at(limits.max))),
    bent: (bend) =>
      isWithin((along === 'u' ? bend.at.uMm : bend.at.vMm) - zeroMm, limits) ? ANYWHERE : null,
  }
}

/** `lap-angle`: the rays of the hip lane are the lines themselves; elsewhere the line from the hole to the hip point. */
export const lapAngleLimit = (scene: StrapScene, limits: Limits): SideLimit => {
  const hip = projected(scene.body.hip, 'side')
  const line = lineLimit(limits, hip)
  const run = runLimit(-(limits.max ?? 90), -(limits.min ?? -90), () => true)
  return { ...line, unbent: (lane) => (lane.on === 'hip' ? run.unbent(lane) : line.unbent(lane)) }
}

export const lapShiftedLimit = (scene: StrapScene, limits: Limits): SideLimit =>
  lineLimit(limits, shiftedHip(projected(scene.body.hip, 'side')))

/** `lap-run-angle`: the rays of both lanes. */
export const lapRunLimit = (scene: StrapScene, limits: Limits): SideLimit => ({
  unbent: runLimit(-(limits.max ?? 90), -(limits.min ?? -90), () => true).unbent,
  bent: ({ at }) => (isWithin(forwardAngleDeg(at, lapAim(scene.body, at).front), limits) ? ANYWHERE : null),
})

/**
 * The steepest rise of a line through the hip point that is no higher than `heightMm` over the hip bone, which lies `aheadMm`
 * ahead of the hip point: the height is the lesser of the line's at the bone and of the front contact's, min(a·tan λ, r·sin λ).
 */
const steepestRiseDeg = (heightMm: number, aheadMm: number, radiusMm: number): number =>
  Math.max(
    atan2Deg(heightMm, aheadMm),
    heightMm >= radiusMm ? 90 : heightMm <= -radiusMm ? -90 : asinDeg(heightMm / radiusMm),
  )

/** `lap-over-asis` of a lap strap past a front hip bone; null where the bone is not ahead of the hip point. */
export const overHipBoneLimit = (scene: StrapScene, limits: Limits, bone: PlanePointMm): SideLimit | null => {
  const { body } = scene
  const hip = projected(body.hip, 'side')
  const aheadMm = hip.uMm - bone.uMm
  const { radiusMm } = body.lapArc
  if (aheadMm <= 0 || radiusMm <= 0) return null
  const riseDeg = (limitMm: number): number =>
    steepestRiseDeg(bone.vMm + limitMm - hip.vMm, aheadMm, radiusMm)
  const held = lapFrontAt(body, body.lapLowestDeg)
  const rayAtBoneDeg = (limitMm: number): number =>
    atan2Deg(bone.vMm + limitMm - held.vMm, bone.uMm - held.uMm)
  const onThigh = (lane: Lane): readonly LanePart[] => {
    if (bone.uMm <= held.uMm) return isWithin(held.vMm - bone.vMm, limits) ? wholeLane(lane) : []
    return [
      {
        fromDeg: Math.max(lane.fromDeg, limits.min === null ? -90 : rayAtBoneDeg(limits.min)),
        toDeg: Math.min(lane.toDeg, limits.max === null ? 90 : rayAtBoneDeg(limits.max)),
        cell: [],
      },
    ].filter((part) => part.toDeg > part.fromDeg)
  }
  const onHip = (lane: Lane): readonly LanePart[] =>
    [
      {
        fromDeg: Math.max(lane.fromDeg, limits.max === null ? -90 : -riseDeg(limits.max)),
        toDeg: Math.min(lane.toDeg, limits.min === null ? 90 : -riseDeg(limits.min)),
        cell: [],
      },
    ].filter((part) => part.toDeg > part.fromDeg)
  return {
    unbent: (lane) => (lane.on === 'hip' ? onHip(lane) : onThigh(lane)),
    bent: ({ at }) => (isWithin(overHipBoneMm(at, lapAim(body, at).front, bone), limits) ? ANYWHERE : null),
  }
}

/** Two angles this close are of the same line. Our judgement: rounding of double precision. */
const SAME_DEG = 1e-7

/**
 * `slot-bend` in side view, at most `maxDeg`: the mount lies within that angle of the run carried on past the gate's end. A taut
 * strap turns over the lower end only downward and over the upper only upward, so one line bounds it; where the run past the end
 * is not the lane's own ray there (the strap shifts on the thigh), both do.
 */
export const bendLimit = (maxDeg: number): SideLimit => ({
  unbent: (lane) => wholeLane(lane),
  bent: (bend, lane) => bentCell(bend, lane, maxDeg),
})

const bentCell = (bend: Bend, { contactShiftMm, gate }: Lane, maxDeg: number): BentLimit => {
  const { at, runDeg } = bend
  const fan: Fan = { centre: at, offsetMm: -contactShiftMm }
  const down = turnedBeyond(fan, runDeg - maxDeg)
  const up = turnedShortOf(fan, runDeg + maxDeg)
  const isLower = bend === gate?.lower
  const laneDeg = (isLower ? gate?.lowDeg : gate?.highDeg) ?? Infinity
  if (Math.abs(laneDeg - runDeg) > SAME_DEG) return { cell: [down, up], holdsClean: false }
  return { cell: [isLower ? down : up], holdsClean: true }
}

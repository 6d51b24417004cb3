import { outsideMm } from '../geometry/halfPlane'
import { planeDistanceMm, projected, type PlanePointMm } from '../geometry/plane'
import { tangentPoint } from '../geometry/tangent'
import { arcLengthMm, sweepDeg } from '../straps/strapPath'
import { groinOf } from '../straps/subPath'
import { cosDeg, sinDeg } from '../units/angle'
import { type Cell, type Cells, cellsContain, levelCut, NOTHING, REACH_MM } from './cells'
import { angleNearDeg, type Fan, fanAngleDeg, fanPoint, turnedBeyond, turnedShortOf } from './fan'
import { type AcrossRun, acrossWays, lengthSpans, ySpans } from './heldAcross'
import {
  type Bend,
  beyondCell,
  bodyCell,
  crossingRays,
  bodySideCells,
  farParts,
  insideLane,
  type Lane,
  laneCells,
  type LaneGate,
  nearSegments,
  partCells,
} from './lane'
import { ruledCells, type Span } from './ruled'
import { bendLimit } from './sideLimit'
import type { StrapModel } from './strapModel'

/** The fan of the strap itself, where a wrap's `lane.fan` is that of the tube's centre. */
const strapFan = ({ fan, contactShiftMm }: Lane): Fan => ({
  centre: fan.centre,
  offsetMm: fan.offsetMm + contactShiftMm,
})

/** How far along a ray the gate's line is, mm; Infinity when the ray never reaches it. */
const toGateMm = (fan: Fan, angleDeg: number, { beyond }: LaneGate): number => {
  const start = fanPoint(fan, angleDeg, 0)
  const towardMm = beyond.nu * cosDeg(angleDeg) + beyond.nv * sinDeg(angleDeg)
  const restMm = beyond.offsetMm - beyond.nu * start.uMm - beyond.nv * start.vMm
  return towardMm > 0 ? restMm / towardMm : Infinity
}

/** Strap on the body beyond the first contact, to where its y is the buckle's: round the groin and up, mm. */
const beyondContactMm = ({ scene, buckle }: StrapModel, contact: PlanePointMm): number => {
  if (buckle === null) return 0
  const end = projected(buckle, 'side')
  const groin = groinOf(scene, end)
  const high = tangentPoint(groin, end, 'left') ?? end
  const arc = { circle: groin, sweepDeg: sweepDeg(groin, high, contact) }
  return arcLengthMm(arc) + planeDistanceMm(high, end)
}

/** The run of a strap through its slot at `at`: from the body along `bodyDeg`, on to the mount along `outDeg`. */
const acrossRun = (
  model: StrapModel,
  at: PlanePointMm,
  body: { readonly on: Lane['on']; readonly contact: PlanePointMm; readonly bodyDeg: number },
  outDeg: number,
): AcrossRun => {
  const { scene, anchor, buckle, gate } = model
  const along = gate?.face === 'cushion' ? sinDeg : cosDeg
  const nextMm = planeDistanceMm(at, body.contact)
  const bodyMm = body.on === 'groin' ? nextMm + beyondContactMm(model, body.contact) : nextMm
  const { left, right } = scene.body.shoulderPoint
  const shoulderYMm = anchor.strap === 'shoulder-left' ? left.yMm : right.yMm
  const away = along(body.bodyDeg)
  return {
    yMinMm: gate?.yMinMm ?? -Infinity,
    yMaxMm: gate?.yMaxMm ?? Infinity,
    bodyYMm: body.on === 'shoulder' ? shoulderYMm : (buckle?.yMm ?? scene.body.hip.yMm),
    bodyMm,
    nextShare: bodyMm === 0 ? 1 : nextMm / bodyMm,
    nextAlongMm: nextMm * Math.abs(away),
    alongPerMm: along(outDeg) * Math.sign(away),
  }
}

const cleanRun = (model: StrapModel, lane: Lane, gate: LaneGate, angleDeg: number): AcrossRun => {
  const fan = strapFan(lane)
  const at = fanPoint(fan, angleDeg, toGateMm(fan, angleDeg, gate))
  const contact = fanPoint(fan, angleDeg, 0)
  return acrossRun(model, at, { on: lane.on, contact, bodyDeg: angleDeg }, angleDeg)
}

/** The fan of the part of the body that a bent strap runs from. */
const bendFan = (model: StrapModel, bend: Bend): Fan => {
  const lane = model.lanes?.find(({ on }) => on === bend.from)
  return lane === undefined ? { centre: bend.at, offsetMm: 0 } : strapFan(lane)
}

const bentRun = (model: StrapModel, bend: Bend, outDeg: number): AcrossRun => {
  const contact = fanPoint(bendFan(model, bend), bend.runDeg, 0)
  return acrossRun(model, bend.at, { on: bend.from, contact, bodyDeg: bend.runDeg }, outDeg)
}

/** Steps that a family of rays is first looked at in, degrees. */
const STEP_DEG = 10

const stepsFor = (fromDeg: number, toDeg: number): number =>
  Math.max(1, Math.ceil((toDeg - fromDeg) / STEP_DEG))

interface Asked {
  readonly model: StrapModel
  readonly maxDeg: number
  /** y of the mount, as drawn. */
  readonly yMm: number
}

/** Positions where the strap passes clean in side view and its slot's ends turn it little. */
const cleanCells = (
  { model, maxDeg, yMm }: Asked,
  lane: Lane,
  gate: LaneGate,
  segment: { readonly fromDeg: number; readonly toDeg: number },
): Cells => {
  const fromDeg = Math.max(segment.fromDeg, gate.lowDeg)
  const toDeg = Math.min(segment.toDeg, gate.highDeg)
  if (toDeg <= fromDeg) return NOTHING
  const fan = strapFan(lane)
  return ruledCells(
    {
      pointAt: (angleDeg, alongMm) => fanPoint(lane.fan, angleDeg, toGateMm(fan, angleDeg, gate) + alongMm),
      spansAt: (angleDeg) => lengthSpans(acrossWays(cleanRun(model, lane, gate, angleDeg), maxDeg), yMm),
    },
    fromDeg,
    toDeg,
    stepsFor(fromDeg, toDeg),
  )
}

/** Positions where the strap bends a little over an end of its slot in side view, and little across. */
const bentCells = ({ model, maxDeg, yMm }: Asked, lane: Lane, gate: LaneGate, bend: Bend): Cells => {
  const fan: Fan = { centre: bend.at, offsetMm: -lane.contactShiftMm }
  // Turned further than along the gate's line the strap would come back to the body's side.
  const crossing = crossingRays(lane, gate)
  const isLower = bend === gate.lower
  const fromDeg = Math.max(crossing.fromDeg, isLower ? bend.runDeg - maxDeg : bend.runDeg)
  const toDeg = Math.min(crossing.toDeg, isLower ? bend.runDeg : bend.runDeg + maxDeg)
  if (toDeg <= fromDeg) return NOTHING
  return ruledCells(
    {
      pointAt: (angleDeg, alongMm) => fanPoint(fan, angleDeg, alongMm),
      spansAt: (angleDeg) => lengthSpans(acrossWays(bentRun(model, bend, angleDeg), maxDeg), yMm),
    },
    fromDeg,
    toDeg,
    stepsFor(fromDeg, toDeg),
  )
}

/**
 * The lines that close a run of rays beyond a gate. A bent strap has its own fan, but which lane it belongs to is asked of the
 * ray its anchor lies on. Open ends, and rays that never reach the gate's line, close nothing.
 */
const segmentCell = (
  lane: Lane,
  gate: LaneGate,
  segment: { readonly fromDeg: number; readonly toDeg: number },
): Cell => {
  const rays = crossingRays(lane, gate)
  const normalDeg = (rays.fromDeg + rays.toDeg) / 2
  const reaches = (angleDeg: number): boolean => Math.abs(angleDeg - normalDeg) < 90
  const { closedByWhere, openAbove, openBelow } = lane
  const isClosedBelow = !((openBelow || closedByWhere) && segment.fromDeg === lane.fromDeg)
  const isClosedAbove = !((openAbove || closedByWhere) && segment.toDeg === lane.toDeg)
  return [
    ...(isClosedBelow && reaches(segment.fromDeg) ? [turnedBeyond(lane.fan, segment.fromDeg)] : []),
    ...(isClosedAbove && reaches(segment.toDeg) ? [turnedShortOf(lane.fan, segment.toDeg)] : []),
  ]
}

/** `slot-bend` in the side elevation where the slot's ends can hold the strap across the seat. */
const sideCells = (asked: Asked): Cells => {
  const limit = bendLimit(asked.maxDeg)
  return (asked.model.lanes ?? []).flatMap((lane) => {
    const { gate } = lane
    if (gate === null) return laneCells([lane], limit)
    const near = nearSegments(lane, gate).flatMap((segment) => {
      const bends = [
        segment.fromDeg < gate.lowDeg ? gate.lower : null,
        segment.toDeg > gate.highDeg ? gate.upper : null,
      ]
      const bent = bends.flatMap((bend) => (bend === null ? [] : bentCells(asked, lane, gate, bend)))
      const bounds = segmentCell(lane, gate, segment)
      return [...cleanCells(asked, lane, gate, segment), ...bent.map((cell) => [...cell, ...bounds])]
    })
    // Beyond a gate's line that the groin itself reaches through, nothing is promised: the zone leaves it out.
    const far = lane.on === 'shoulder' ? farParts(lane, gate, limit) : []
    const farCells = far.flatMap((part) =>
      partCells(lane, { ...part, cell: [...part.cell, ...beyondCell(gate, 0)] }),
    )
    // The contact of a wrap lies within its radius of the tube's centre: further back it is surely before the line.
    const before = bodyCell(gate, Math.abs(lane.contactShiftMm))
    const bodySide = bodySideCells(lane, gate, limit).map((cell) => [...cell, ...before])
    return insideLane(lane, [...bodySide, ...near, ...farCells])
  })
}

const EVERYWHERE: readonly Span[] = [{ fromMm: -Infinity, toMm: Infinity }]

/** Rounding of an angle where two parts meet. */
const MEETING_DEG = 1e-7

/** The mount's allowed y with its place in the side plane given. */
const acrossSpansAt = ({ model, maxDeg }: Omit<Asked, 'yMm'>, at: PlanePointMm): readonly Span[] => {
  for (const lane of model.lanes ?? []) {
    const rawDeg = fanAngleDeg(lane.fan, at)
    if (rawDeg === null) continue
    const angleDeg = angleNearDeg(rawDeg, (lane.fromDeg + lane.toDeg) / 2)
    const isOn = angleDeg >= lane.fromDeg - MEETING_DEG && angleDeg <= lane.toDeg + MEETING_DEG
    if (!isOn || !cellsContain([lane.where], at, MEETING_DEG)) continue
    return lane.gate === null ? EVERYWHERE : gatedSpans(model, lane, lane.gate, maxDeg, { at, angleDeg })
  }
  return []
}

const gatedSpans = (
  model: StrapModel,
  lane: Lane,
  gate: LaneGate,
  maxDeg: number,
  { at, angleDeg }: { readonly at: PlanePointMm; readonly angleDeg: number },
): readonly Span[] => {
  const contact = fanPoint({ centre: at, offsetMm: lane.contactShiftMm }, angleDeg, 0)
  const lineMm = outsideMm(gate.beyond, contact)
  if (lineMm <= 0) return EVERYWHERE
  if (gate.far && angleDeg > gate.far.fromDeg && angleDeg < gate.far.toDeg)
    return lane.on === 'shoulder' ? EVERYWHERE : []
  const bend = angleDeg < gate.lowDeg ? gate.lower : angleDeg > gate.highDeg ? gate.upper : undefined
  if (bend === null) return []
  if (bend === undefined) {
    const run = cleanRun(model, lane, gate, angleDeg)
    const start = fanPoint(strapFan(lane), angleDeg, toGateMm(strapFan(lane), angleDeg, gate))
    return ySpans(acrossWays(run, maxDeg), planeDistanceMm(start, contact))
  }
  const fan: Fan = { centre: bend.at, offsetMm: -lane.contactShiftMm }
  const outDeg = fanAngleDeg(fan, at)
  if (outDeg === null) return []
  const nearDeg = angleNearDeg(outDeg, bend.runDeg)
  if (Math.abs(nearDeg - bend.runDeg) > maxDeg + MEETING_DEG) return []
  const end = fanPoint({ centre: at, offsetMm: lane.contactShiftMm }, nearDeg, 0)
  return ySpans(acrossWays(bentRun(model, bend, nearDeg), maxDeg), planeDistanceMm(bend.at, end))
}

/** Steps that a band of the top elevation is first looked at in. */
const BAND_STEPS = 4

/** `slot-bend` in the top elevation: strip by strip of x, the y that the slot's ends allow. */
const topCells = ({ model, maxDeg }: Omit<Asked, 'yMm'>, zMm: number): Cells => {
  const hipMm = model.scene.body.hip.xMm
  const side = laneCells(model.lanes ?? [], bendLimit(maxDeg))
  return levelCut(side, zMm).flatMap((band) => {
    let fromMm = hipMm - REACH_MM
    let toMm = hipMm + REACH_MM
    for (const { nu, offsetMm } of band) {
      if (nu > 0) toMm = Math.min(toMm, offsetMm)
      else fromMm = Math.max(fromMm, -offsetMm)
    }
    return ruledCells(
      {
        pointAt: (uMm, vMm) => ({ uMm, vMm }),
        spansAt: (uMm) => acrossSpansAt({ model, maxDeg }, { uMm, vMm: zMm }),
      },
      fromMm,
      toMm,
      BAND_STEPS,
    )
  })
}

/** Whether the strap, straight across from body to mount, stays clear of its slot's ends wherever the mount is fore and aft. */
const isNeverHeld = (model: StrapModel, yMm: number): boolean => {
  const { gate, scene, anchor, buckle } = model
  if (gate === null || gate.yMinMm === null || gate.yMaxMm === null) return true
  const { left, right } = scene.body.shoulderPoint
  const bodyYMm =
    anchor.strap === 'shoulder-left'
      ? left.yMm
      : anchor.strap === 'shoulder-right'
        ? right.yMm
        : (buckle?.yMm ?? scene.body.hip.yMm)
  return Math.min(yMm, bodyYMm) >= gate.yMinMm && Math.max(yMm, bodyYMm) <= gate.yMaxMm
}

/** `slot-bend` at most `maxDeg` where the slot may hold the strap across the seat; shoulder and anti-submarine straps. */
export const heldSlotBendCells = (model: StrapModel, maxDeg: number, elevation: 'side' | 'top'): Cells => {
  const { yMm, zMm } = model.anchor.mount.point
  if (elevation === 'top') return topCells({ model, maxDeg }, zMm)
  return isNeverHeld(model, yMm)
    ? laneCells(model.lanes ?? [], bendLimit(maxDeg))
    : sideCells({ model, maxDeg, yMm })
}

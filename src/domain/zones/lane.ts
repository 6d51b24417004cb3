import type { PlanePointMm } from '../geometry/plane'
import { atan2Deg, cosDeg, sinDeg } from '../units/angle'
import { type Cell, type Cells, NOTHING } from './cells'
import { angleNearDeg, type Fan, fanCells, turnedBeyond, turnedShortOf } from './fan'

/** The strap bent over one end of its gate: from there to the body it is the same wherever the anchor lies. */
export interface Bend {
  readonly at: PlanePointMm
  /** Direction of the run from the body to that end, as a ray angle of the fans. */
  readonly runDeg: number
  /** The part of the body it runs from. */
  readonly from: Lane['on']
}

/** A gate as it acts on one lane. Angles are of the lane's fan. */
export interface LaneGate {
  /** Unit normal of the gate's line, pointing away from the body, and its offset. */
  readonly beyond: { readonly nu: number; readonly nv: number; readonly offsetMm: number }
  /** Rays through the lower and the upper end: between them the strap passes clean. `±Infinity` where that end lies off the lane. */
  readonly lowDeg: number
  readonly highDeg: number
  /** Null where a strap bent over that end has no path. */
  readonly lower: Bend | null
  readonly upper: Bend | null
  /**
   * The rays that leave the body only beyond the gate's line: there the gate acts on the arc, always in the same way.
   * Null when there are none.
   */
  readonly far: { readonly fromDeg: number; readonly toDeg: number; readonly bend: Bend | null } | null
}

/**
 * One way in which the strap can lie on the body, and the anchor positions for it: those on the rays of a fan from `fromDeg` to
 * `toDeg`, inside `where`.
 */
export interface Lane {
  readonly on: 'shoulder' | 'hip' | 'thigh' | 'groin' | 'buckle'
  /** For a wrap the fan of the tube's centre: its contact lies `contactShiftMm` along the left normal from there. */
  readonly fan: Fan
  readonly contactShiftMm: number
  readonly fromDeg: number
  readonly toDeg: number
  /** Whether a strap that is bent over its gate may also have its straight line beyond that end of the angles. */
  readonly openBelow: boolean
  readonly openAbove: boolean
  readonly where: Cell
  /** `where` alone bounds the lane: its outer rays need no lines of their own. */
  readonly closedByWhere: boolean
  /** Bounds only a strap that is not bent over its gate. */
  readonly whereUnbent: Cell
  readonly gate: LaneGate | null
}

/** Part of a lane: rays between two angles, and further half-planes. */
export interface LanePart {
  readonly fromDeg: number
  readonly toDeg: number
  readonly cell: Cell
}

/** What is asked of the anchor while the strap is bent over one end of its gate. */
export interface BentLimit {
  readonly cell: Cell
  /** Every clean position keeps to these half-planes too, so that bent and clean positions can make one cell. */
  readonly holdsClean: boolean
}

/** What one rule asks of a strap in the side plane. */
export interface SideLimit {
  /** The parts of a lane where a strap that runs straight from the body to its mount keeps the rule. */
  readonly unbent: (lane: Lane) => readonly LanePart[]
  /** The half-planes that the anchor has to keep to while the strap is bent over this end; null: broken wherever it is. */
  readonly bent: (bend: Bend, lane: Lane) => BentLimit | null
}

/** How the contact of a wrap shifts across the gate's line, mm: least and most over some ray angles. */
const shiftAcross = (lane: Lane, gate: LaneGate): { readonly leastMm: number; readonly mostMm: number } => {
  if (lane.contactShiftMm === 0) return { leastMm: 0, mostMm: 0 }
  const acrossMm = (angleDeg: number): number =>
    lane.contactShiftMm * (-sinDeg(angleDeg) * gate.beyond.nu + cosDeg(angleDeg) * gate.beyond.nv)
  const angles = SHIFT_STEPS.flatMap((stepDeg) => [
    ...(Number.isFinite(gate.lowDeg) ? [gate.lowDeg - stepDeg] : []),
    ...(Number.isFinite(gate.highDeg) ? [gate.highDeg + stepDeg] : []),
  ])
  const shifts = (angles.length === 0 ? SHIFT_STEPS.map((stepDeg) => -stepDeg) : angles).map(acrossMm)
  return { leastMm: Math.min(...shifts), mostMm: Math.max(...shifts) }
}

/** Angles away from a gate's end at which the shift is looked at; between them it differs by less than 1 % of the radius. */
const SHIFT_STEPS = Array.from({ length: 13 }, (_, index) => index * 7.5)

/** What lies beyond the gate's line, moved by a shift across it. */
export const beyondCell = ({ beyond }: LaneGate, shiftMm: number): Cell => [
  { nu: -beyond.nu, nv: -beyond.nv, offsetMm: shiftMm - beyond.offsetMm },
]

/** What lies before the gate's line, moved by a shift across it. */
export const bodyCell = ({ beyond }: LaneGate, shiftMm: number): Cell => [
  { nu: beyond.nu, nv: beyond.nv, offsetMm: beyond.offsetMm - shiftMm },
]

/** The cells of a part; an infinite end has no half-plane of its own: the part's other half-planes close it. */
export const partCells = (lane: Lane, { fromDeg, toDeg, cell }: LanePart): Cells => {
  const { fan } = lane
  if (toDeg <= fromDeg) return NOTHING
  if (lane.closedByWhere && fromDeg <= lane.fromDeg && toDeg >= lane.toDeg) return [cell]
  if (Number.isFinite(fromDeg) && Number.isFinite(toDeg))
    return fanCells(fan, fromDeg, toDeg).map((wedge) => [...wedge, ...cell])
  return [
    [
      ...(Number.isFinite(fromDeg) ? [turnedBeyond(fan, fromDeg)] : []),
      ...(Number.isFinite(toDeg) ? [turnedShortOf(fan, toDeg)] : []),
      ...cell,
    ],
  ]
}

const within = (part: LanePart, fromDeg: number, toDeg: number): LanePart => ({
  ...part,
  fromDeg: Math.max(part.fromDeg, fromDeg),
  toDeg: Math.min(part.toDeg, toDeg),
})

/** What a limit leaves of the straight runs of a lane. */
const unbentParts = (lane: Lane, limit: SideLimit): readonly LanePart[] =>
  lane.whereUnbent.length === 0
    ? limit.unbent(lane)
    : limit.unbent(lane).map((part) => ({ ...part, cell: [...part.cell, ...lane.whereUnbent] }))

const isSome = ({ fromDeg, toDeg }: LanePart): boolean => toDeg > fromDeg

/** The rays that can reach the gate's line at all: those less than a right angle from its normal. */
export const crossingRays = (
  lane: Lane,
  { beyond, lowDeg, highDeg, lower, upper }: LaneGate,
): { readonly fromDeg: number; readonly toDeg: number } => {
  // Of the turns by 360° the one that the gate's own rays are on.
  const known = [lowDeg, highDeg, lower?.runDeg ?? Infinity, upper?.runDeg ?? Infinity]
  const nearDeg = known.find(Number.isFinite) ?? (lane.fromDeg + lane.toDeg) / 2
  const normalDeg = angleNearDeg(atan2Deg(beyond.nv, beyond.nu), nearDeg)
  return { fromDeg: normalDeg - 90, toDeg: normalDeg + 90 }
}

/**
 * The parts of one run of rays beyond the gate: clean between its ends, bent outside them. A bent part joins the clean one where
 * their half-planes allow it, because fewer cells overlap faster.
 */
const partsBeyond = (
  lane: Lane,
  gate: LaneGate,
  limit: SideLimit,
  segment: { readonly fromDeg: number; readonly toDeg: number },
): readonly LanePart[] => {
  const fromDeg = Math.max(segment.fromDeg, gate.lowDeg)
  const toDeg = Math.min(segment.toDeg, gate.highDeg)
  const clean = unbentParts(lane, limit)
    .map((part) => within(part, fromDeg, toDeg))
    .filter(isSome)
  const low = segment.fromDeg < gate.lowDeg && gate.lower ? limit.bent(gate.lower, lane) : null
  const high = segment.toDeg > gate.highDeg && gate.upper ? limit.bent(gate.upper, lane) : null
  const crossing = crossingRays(lane, gate)
  const opensBelow = lane.openBelow && segment.fromDeg === lane.fromDeg
  const opensAbove = lane.openAbove && segment.toDeg === lane.toDeg
  // An open segment goes on to wherever the gate's line ends it.
  const startDeg = opensBelow ? -Infinity : segment.fromDeg
  const lowTo = Math.min(gate.lowDeg, segment.toDeg)
  const highFrom = Math.max(gate.highDeg, segment.fromDeg)
  const endDeg = opensAbove ? crossing.toDeg : Math.min(segment.toDeg, crossing.toDeg)
  const [only] = clean
  const reachesLow = clean.length === 1 && only?.cell.length === 0 && only.fromDeg === gate.lowDeg
  const reachesHigh = clean.length === 1 && only?.cell.length === 0 && only.toDeg === gate.highDeg
  const joinsLow = reachesLow && low?.holdsClean === true
  // Without a lower line of its own a part may also end in the open above.
  const joinsHigh = joinsLow && reachesHigh && high?.holdsClean === true
  const joined = clean.map((part) => ({
    fromDeg: joinsLow ? startDeg : part.fromDeg,
    toDeg: joinsHigh ? (opensAbove ? Infinity : segment.toDeg) : part.toDeg,
    cell: [...part.cell, ...(joinsLow ? low.cell : []), ...(joinsHigh ? high.cell : [])],
  }))
  return [
    ...(low === null || joinsLow || lowTo <= crossing.fromDeg
      ? []
      : [{ fromDeg: startDeg, toDeg: lowTo, cell: low.cell }]),
    ...joined,
    ...(high === null || joinsHigh ? [] : [{ fromDeg: highFrom, toDeg: endDeg, cell: high.cell }]),
  ]
}

/** The runs of rays of a lane that leave the body before the gate's line. */
export const nearSegments = (
  lane: Lane,
  gate: LaneGate,
): readonly { readonly fromDeg: number; readonly toDeg: number }[] => {
  const { far } = gate
  const whole = { fromDeg: lane.fromDeg, toDeg: lane.toDeg }
  if (far === null || far.toDeg <= lane.fromDeg || far.fromDeg >= lane.toDeg) return [whole]
  return [
    { fromDeg: lane.fromDeg, toDeg: far.fromDeg },
    { fromDeg: far.toDeg, toDeg: lane.toDeg },
  ].filter(({ fromDeg, toDeg }) => toDeg > fromDeg)
}

/** Where a strap ends before its gate, which then does not act. */
export const bodySideCells = (lane: Lane, gate: LaneGate, limit: SideLimit): Cells => {
  const { leastMm, mostMm } = shiftAcross(lane, gate)
  // Where the contact of a wrap may lie on either side of the line and the two answers could differ, neither is taken: a strip
  // of at most the tube's width.
  const pieces =
    lane.contactShiftMm === 0
      ? [{ fromDeg: -Infinity, toDeg: Infinity, cell: bodyCell(gate, 0) }]
      : [
          { fromDeg: -Infinity, toDeg: gate.lowDeg, cell: bodyCell(gate, mostMm) },
          { fromDeg: gate.lowDeg, toDeg: gate.highDeg, cell: bodyCell(gate, leastMm) },
          { fromDeg: gate.highDeg, toDeg: Infinity, cell: bodyCell(gate, mostMm) },
        ]
  return unbentParts(lane, limit).flatMap((part) =>
    pieces.flatMap((piece) => {
      const cut = within(within(part, piece.fromDeg, piece.toDeg), lane.fromDeg, lane.toDeg)
      return partCells(lane, { ...cut, cell: [...part.cell, ...piece.cell] })
    }),
  )
}

/** Where a strap goes on past its gate. */
const beyondCells = (lane: Lane, gate: LaneGate, limit: SideLimit): Cells => {
  const { leastMm } = shiftAcross(lane, gate)
  const near = nearSegments(lane, gate).flatMap((segment) => partsBeyond(lane, gate, limit, segment))
  return [...near, ...farParts(lane, gate, limit)].flatMap((part) =>
    partCells(lane, { ...part, cell: [...part.cell, ...beyondCell(gate, leastMm)] }),
  )
}

/** The rays that leave the body beyond the gate's line. */
export const farParts = (lane: Lane, gate: LaneGate, limit: SideLimit): readonly LanePart[] => {
  const { far } = gate
  if (far === null) return []
  const fromDeg = Math.max(lane.fromDeg, far.fromDeg)
  const toDeg = Math.min(lane.toDeg, far.toDeg)
  if (far.bend === null) return unbentParts(lane, limit).map((part) => within(part, fromDeg, toDeg))
  const bent = limit.bent(far.bend, lane)
  return bent === null ? [] : [{ fromDeg, toDeg, cell: bent.cell }]
}

/** Cells cut to where the lane holds. */
export const insideLane = ({ where }: Lane, cells: Cells): Cells =>
  where.length === 0 ? cells : cells.map((cell) => [...cell, ...where])

/** Where in the side plane the anchor keeps a limit, over all lanes of its strap. */
export const laneCells = (lanes: readonly Lane[], limit: SideLimit): Cells =>
  lanes.flatMap((lane) => {
    const cells =
      lane.gate === null
        ? unbentParts(lane, limit).flatMap((part) => partCells(lane, within(part, lane.fromDeg, lane.toDeg)))
        : [...bodySideCells(lane, lane.gate, limit), ...beyondCells(lane, lane.gate, limit)]
    return insideLane(lane, cells)
  })

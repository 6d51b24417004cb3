import { bodyOf } from '../../body/body'
import { posedBody } from '../../body/posed'
import type { PosedBody } from '../../body/posedBody'
import { vehiclePoint } from '../../body/pose'
import { pointDifference, type PointMm } from '../../geometry/point'
import type { Anchor, EyeMount, TabMount } from '../../straps/anchor'
import { lineOfPull } from '../../straps/lineOfPull'
import { anchorOf } from '../../straps/mount'
import { solvePlace } from '../../straps/solve'
import { strapFamily, type StrapId, strapSide, thighStraps } from '../../straps/strap'
import { atan2Deg, cosDeg, sinDeg, tanDeg } from '../../units/angle'
import { startingOccupant } from '../document/empty'
import type { Layout, Place } from '../document/layout'
import { drawnPose } from './handles'
import { limitedPoint } from './tubeMove'

/*
 * Where a new tab starts, so that there is something to take hold of near the right place. Starting values, not advice: what is
 * right is said by the rules and zones, for the people who really sit there.
 */

/** 3/16 in plate, drilled for the 7/16 in bolts that are usual for belts. Starting values; common practice, no source. */
const STARTING_PLATE = { thicknessMm: 4.8, holeDiameterMm: 11.5, shear: 'double', tubeId: null } as const

/** 7/16 in thread. Source: Formula SAE Rules 2026 V1, T.2.4, "7/16-20 or larger". The eye is our judgement: room for a clip. */
const STARTING_EYE = { threadDiameterMm: 11.1, eyeDiameterMm: 25 } as const

/** Middle of the 45–60° wedge. Source: common practice, no source. */
const LAP_ANGLE_DEG = 52.5

/** Fall of the shoulder straps under a head-and-neck restraint. Source: common practice, no source. */
const RESTRAINT_FALL_DEG = 10

/** How far beside the lap anchor a strap under the thighs starts, toward the seat's middle: room for two tabs. Our judgement. */
const BESIDE_LAP_MM = 40

/** Distances to start from; our judgement: clear of the seat, short of the far tubes. */
const LAP_DISTANCE_MM = 230
const BEHIND_RIM_MM = 150
const BELOW_CUSHION_MM = 80
const BESIDE_HIP_MM = 10
const OUTSIDE_SHELL_MM = 5

/** Half of the about 100 mm between the two thigh straps of a six-point harness. Source: Formula SAE Rules 2026 V1 asks for about 100 mm. */
const HALF_SUB_SPACING_MM = 50

/** Thigh straps lean a little rearward. Starting value, middle of 0–20° in Formula SAE Rules 2026 V1. */
const SUB_LEAN_DEG = 10

/** A tab for one strap at its starting point, its plane upright and turned along the strap. */
export const startingMount = (place: Place, strap: StrapId): TabMount => {
  const occupant = place.occupants[0] ?? startingOccupant('occupant-1', 'Occupant 1')
  const posed = posedBody(bodyOf(occupant), drawnPose(place), place.seat.hipHeightMm)
  const start = startingLine(place, posed, strap)
  const pull = pointDifference(start.toward, start.point)
  return {
    kind: 'tab',
    point: limitedPoint(start.point),
    planDeg: uprightTurnDeg(pull.x, pull.y),
    leanDeg: 0,
    ...STARTING_PLATE,
  }
}

/**
 * An eye bolt where a strap now ends, its shank along the line in which the strap really pulls with the first occupant as drawn;
 * toward the body while the strap has no path.
 */
export const startingEye = (layout: Layout, place: Place, anchor: Anchor): EyeMount => {
  const { body, paths } = solvedAsDrawn(layout, place)
  const path = paths.find((candidate) => candidate.strap === anchor.strap)
  const { point, tubeId } = anchor.mount
  const pull =
    path === undefined
      ? pointDifference(startingLine(place, body, anchor.strap).toward, point)
      : lineOfPull(path)
  return {
    kind: 'eye',
    point,
    planDeg: atan2Deg(pull.y, pull.x),
    riseDeg: atan2Deg(pull.z, Math.hypot(pull.x, pull.y)),
    ...STARTING_EYE,
    tubeId,
  }
}

/** Body and taut straps of the first occupant, or of one to start with, in the seat as drawn. */
export const solvedAsDrawn = (layout: Layout, place: Place) => {
  const pose = drawnPose(place)
  const occupant = place.occupants[0] ?? startingOccupant('occupant-1', 'Occupant 1')
  const { seat, belt, anchors } = place
  const body = posedBody(bodyOf(occupant), pose, seat.hipHeightMm)
  return { body, paths: solvePlace({ seat, pose, body, belt, anchors, tubes: layout.tubes }).paths }
}

/**
 * The place with the named tabs turned upright along the line in which their straps really pull with the first occupant as drawn.
 * A tab whose strap has no path yet (a thigh strap before there is a buckle) keeps its turn.
 */
export const turnedAlongPull = (layout: Layout, place: Place, straps: readonly StrapId[]): Place => {
  const { paths } = solvedAsDrawn(layout, place)
  const turned = (anchor: Anchor): Anchor => {
    const path = paths.find((candidate) => candidate.strap === anchor.strap)
    if (path === undefined || anchor.mount.kind !== 'tab' || !straps.includes(anchor.strap)) return anchor
    const pull = lineOfPull(path)
    return { ...anchor, mount: { ...anchor.mount, planDeg: uprightTurnDeg(pull.x, pull.y), leanDeg: 0 } }
  }
  return { ...place, anchors: place.anchors.map(turned) }
}

/** Turn of an upright plane that holds a line with this plan direction, range (-90°, 90°]; 0 for a plumb line. */
const uprightTurnDeg = (x: number, y: number): number => {
  const turnDeg = x < 0 || (x === 0 && y < 0) ? atan2Deg(0 - y, 0 - x) : atan2Deg(y, x)
  return turnDeg === -90 ? 90 : turnDeg
}

interface StartingLine {
  readonly point: PointMm
  /** A point the strap runs toward from there. */
  readonly toward: PointMm
}

const startingLine = (place: Place, posed: PosedBody, strap: StrapId): StartingLine => {
  switch (strapFamily(strap)) {
    case 'shoulder':
      return shoulderLine(place, posed, strap)
    case 'lap':
      return lapLine(place, posed, strap)
    case 'sub':
      return thighStraps(place.belt) === 'under-thighs' && strapSide(strap) !== 'centre'
        ? underThighLine(place, posed, strap)
        : subLine(place, posed, strap)
  }
}

const sideSign = (strap: StrapId): number => ({ left: -1, centre: 0, right: 1 })[strapSide(strap)]

/** Behind the backrest rim, on the line that leaves the shoulder square to the spine, a little lower under a restraint. */
const shoulderLine = (place: Place, posed: PosedBody, strap: StrapId): StartingLine => {
  const shoulder = strapSide(strap) === 'left' ? posed.shoulderPoint.left : posed.shoulderPoint.right
  const rim = vehiclePoint(drawnPose(place), { ...place.seat.backrestRim, yMm: 0 })
  const xMm = Math.max(rim.xMm, shoulder.xMm) + BEHIND_RIM_MM
  const fallDeg = place.seat.reclineDeg + (place.belt.headAndNeckRestraint ? RESTRAINT_FALL_DEG : 0)
  // A much reclined line would run into the floor; 60° is as steep as a starting point needs. Our judgement.
  const zMm = shoulder.zMm - (xMm - shoulder.xMm) * tanDeg(Math.min(60, fallDeg))
  return { point: { xMm, yMm: shoulder.yMm, zMm }, toward: shoulder }
}

/**
 * So far outside that the strap crosses the side of the shell half way to the hip, where it is above a shell with low sides and needs
 * no slot; beside the hips where the shell is narrower.
 */
const lapLine = (place: Place, posed: PosedBody, strap: StrapId): StartingLine => {
  const { hip } = posed
  const shellHalfMm = Math.max(0, ...place.seat.topOutline.map(({ yMm }) => Math.abs(yMm)))
  const { hipHalfBreadthMm } = posed
  const besideMm = Math.max(
    hipHalfBreadthMm + BESIDE_HIP_MM,
    2 * shellHalfMm - hipHalfBreadthMm + OUTSIDE_SHELL_MM,
  )
  const beside = { ...hip, yMm: hip.yMm + sideSign(strap) * besideMm }
  const point = {
    xMm: hip.xMm + LAP_DISTANCE_MM * cosDeg(LAP_ANGLE_DEG),
    yMm: beside.yMm,
    zMm: hip.zMm - LAP_DISTANCE_MM * sinDeg(LAP_ANGLE_DEG),
  }
  return { point, toward: beside }
}

/** Beside the lap anchor of its side, or where that would start, pulling forward under the wearer. */
const underThighLine = (place: Place, posed: PosedBody, strap: StrapId): StartingLine => {
  const lap = strapSide(strap) === 'left' ? 'lap-left' : 'lap-right'
  const beside = anchorOf(place.anchors, lap)?.mount.point ?? lapLine(place, posed, lap).point
  const point = { ...beside, yMm: beside.yMm - sideSign(strap) * BESIDE_LAP_MM }
  return { point, toward: { ...posed.hip, yMm: point.yMm, zMm: point.zMm } }
}

/** Below the cushion: the thigh straps a little rearward of the groin, the centre strap down the line of the chest. */
const subLine = (place: Place, posed: PosedBody, strap: StrapId): StartingLine => {
  const { hip, groinArc } = posed
  const side = sideSign(strap)
  const downMm = place.seat.hipHeightMm + BELOW_CUSHION_MM
  const leanDeg = side === 0 ? 0 - Math.min(60, place.seat.reclineDeg) : SUB_LEAN_DEG
  const toward = {
    xMm: hip.xMm - groinArc.radiusMm,
    yMm: hip.yMm + side * HALF_SUB_SPACING_MM,
    zMm: hip.zMm,
  }
  const point = { ...toward, xMm: toward.xMm + downMm * tanDeg(leanDeg), zMm: hip.zMm - downMm }
  return { point, toward }
}

import { pointBetween, pointSum, type Direction, type PointMm } from '../geometry/point'
import { cosDeg, sinDeg } from '../units/angle'
import { legOf, THIGH_RISE_DEG } from './leg'
import type { Body } from './occupant'
import type { BodyCore, PosedBody } from './posedBody'

/** How far out from the middle the core of the chest reaches, as a share of the hips. Source: our judgement: no wider than any rib cage. */
const CHEST_SHARE = 0.8

/** Radius of the core between pelvis and chest as a share of half the thinner of chest and belly. Source: our judgement. */
const BELLY_SHARE = 0.8

/** A thigh's middle from the middle of the body, as a share of the hips' half breadth. Source: our judgement. */
const THIGH_SHARE = 0.5

/** Two points to both sides of the middle. */
const across = (middle: PointMm, halfMm: number): readonly [PointMm, PointMm] => [
  { ...middle, yMm: middle.yMm - halfMm },
  { ...middle, yMm: middle.yMm + halfMm },
]

type Rounded = Pick<
  PosedBody,
  'hip' | 'shoulderArc' | 'chest' | 'lapArc' | 'hipHalfBreadthMm' | 'shoulderPoint'
>

const thighs = (body: Body, { hip, hipHalfBreadthMm }: Rounded): readonly BodyCore[] => {
  const { knee } = legOf(body, hip)
  // Down from the thigh's top line by the radius at the knee: within the thigh all along.
  const topMm = body.thighClearanceMm - body.hipHeightMm
  const square: Direction = { x: sinDeg(THIGH_RISE_DEG), y: 0, z: cosDeg(THIGH_RISE_DEG) }
  const root = pointSum(hip, square, topMm - knee.radiusMm)
  return [-1, 1].map((side) => {
    const yMm = hip.yMm + side * THIGH_SHARE * hipHalfBreadthMm
    return {
      part: 'thigh',
      from: { ...root, yMm },
      to: { xMm: knee.centre.uMm, yMm, zMm: knee.centre.vMm },
      radiusMm: knee.radiusMm,
    }
  })
}

/**
 * What of a person in the seat is surely body, as pieces that are round about a straight line: the pelvis, the chest and the tops of
 * the shoulders as the straps lie on them, the belly and the thighs somewhat thinner than they are. Arms, shanks and head are left out.
 */
export const bodyCore = (body: Body, rounded: Rounded): readonly BodyCore[] => {
  const { hip, lapArc, hipHalfBreadthMm, chest, shoulderArc, shoulderPoint } = rounded
  const middleAt = ({ uMm, vMm }: { readonly uMm: number; readonly vMm: number }): PointMm => ({
    xMm: uMm,
    yMm: hip.yMm,
    zMm: vMm,
  })
  const pelvisMm = Math.min(lapArc.radiusMm, hipHalfBreadthMm)
  const chestMm = Math.min(chest.acrossMm, chest.alongMm)
  const [left, right] = across(hip, hipHalfBreadthMm - pelvisMm)
  const [chestLeft, chestRight] = across(
    middleAt(chest.centre),
    Math.max(0, CHEST_SHARE * hipHalfBreadthMm - chestMm),
  )
  const shoulders = middleAt(shoulderArc.centre)
  const halfMm = (shoulderPoint.right.yMm - shoulderPoint.left.yMm) / 2
  const [shoulderLeft, shoulderRight] = across(shoulders, halfMm)
  const bellyMm = (BELLY_SHARE * Math.min(body.chestDepthMm, body.abdominalDepthMm)) / 2
  return [
    { part: 'pelvis', from: left, to: right, radiusMm: pelvisMm },
    { part: 'chest', from: chestLeft, to: chestRight, radiusMm: chestMm },
    {
      part: 'belly',
      from: hip,
      to: pointBetween(chestLeft, chestRight, 0.5),
      radiusMm: Math.min(bellyMm, pelvisMm),
    },
    { part: 'shoulders', from: shoulderLeft, to: shoulderRight, radiusMm: shoulderArc.radiusMm },
    ...thighs(body, rounded),
  ]
}

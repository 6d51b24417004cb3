import type { BodyCore, PosedBody } from '../body/posedBody'
import { pointBetween, pointDistanceMm, type PointMm } from '../geometry/point'
import { segmentDistanceMm } from '../geometry/segmentDistance'
import type { SolvedStrap, Touch } from './strapPath'
import { isFarther, type TubePiece } from './tubePieces'

/** Where a tube is nearest to a person, or to a strap that lies on the person. */
export interface BodyGap {
  /** What of the person it is, or the strap between the body and the buckle. */
  readonly part: BodyCore['part'] | 'strap'
  readonly from: PointMm
  readonly to: PointMm
  /** How far that reaches beyond the straight line between the two points, mm ≥ 0. */
  readonly radiusMm: number
  readonly piece: TubePiece
  /** Between the surfaces, mm; negative where they overlap. */
  readonly gapMm: number
}

type Round = Pick<BodyGap, 'part' | 'from' | 'to' | 'radiusMm'>

/** Adds the straight pieces of a strap from where it first meets the body to the buckle: how it lies there no anchor decides. */
const addPiecesOnBody = (rounds: Round[], { touches }: SolvedStrap): void => {
  let before: Touch | null = null
  for (const touch of touches) {
    if (before !== null && before.arcToNext === null)
      rounds.push({ part: 'strap', from: before.point, to: touch.point, radiusMm: 0 })
    if (before !== null || touch.on === 'body') before = touch
  }
}

/**
 * How near the tubes come to a person at rest: to the body's core (`bodyCore`) and to the straps on it. Null without tubes or without
 * anything to measure. Formula: shortest distance of two straight lines less both radii; source: derived here.
 */
export const bodyTubeGap = (
  pieces: readonly TubePiece[],
  { core }: Pick<PosedBody, 'core'>,
  straps: readonly SolvedStrap[],
): BodyGap | null => {
  const rounds: Round[] = [...core]
  for (const strap of straps) addPiecesOnBody(rounds, strap)
  let nearest: BodyGap | null = null
  let gapMm = Infinity
  for (const { part, from, to, radiusMm } of rounds) {
    const middle = pointBetween(from, to, 0.5)
    const halfMm = pointDistanceMm(middle, to) + radiusMm
    for (const piece of pieces) {
      if (isFarther(middle, halfMm, piece, gapMm)) continue
      const pieceMm = segmentDistanceMm(from, to, piece.from, piece.to) - piece.radiusMm - radiusMm
      if (pieceMm >= gapMm) continue
      gapMm = pieceMm
      nearest = { part, from, to, radiusMm, piece, gapMm }
    }
  }
  return nearest
}

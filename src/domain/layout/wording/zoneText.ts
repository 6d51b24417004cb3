import type { Elevation, PlanePointMm } from '../../geometry/plane'
import type { Region } from '../../geometry/polygon'
import { REACH_MM } from '../../zones/cells'
import { zoneWays } from '../../zones/zoneWays'
import type { LengthUnit } from '../document/layout'
import { roomText } from './amounts'

const ACROSS: Readonly<Record<Elevation, { readonly low: string; readonly high: string }>> = {
  side: { low: 'down', high: 'up' },
  top: { low: 'to the left', high: 'to the right' },
}

/** Rounding of the square's edge, mm. */
const EDGE_MM = 0.5

/** `wayMm` toward an edge `leftMm` away that is no limit but the end of what is looked at. */
const wayWords = (wayMm: number, leftMm: number, direction: string, unit: LengthUnit): string =>
  wayMm >= leftMm - EDGE_MM
    ? `${roomText(wayMm, unit)} or more ${direction}`
    : `${roomText(wayMm, unit)} ${direction}`

/**
 * A zone in words: how far the anchor at `at` may go each way in one elevation before it leaves it. `hip` is the hip point about
 * which zones are looked for. Distances are rounded down.
 */
export const zoneText = (
  zone: Region | 'pending',
  at: PlanePointMm,
  hip: PlanePointMm,
  elevation: Elevation,
  unit: LengthUnit,
): string => {
  if (zone === 'pending') return 'being worked out'
  if (zone.length === 0) return 'no permitted zone'
  const ways = zoneWays(zone, at)
  if (ways === null) return 'outside its permitted zone'
  const { low, high } = ACROSS[elevation]
  return [
    wayWords(ways.forwardMm, REACH_MM + at.uMm - hip.uMm, 'forward', unit),
    wayWords(ways.rearwardMm, REACH_MM - at.uMm + hip.uMm, 'rearward', unit),
    wayWords(ways.highMm, REACH_MM - at.vMm + hip.vMm, high, unit),
    wayWords(ways.lowMm, REACH_MM + at.vMm - hip.vMm, low, unit),
  ].join(', ')
}

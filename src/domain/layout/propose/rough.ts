import { marginInside } from '../../rules/check'
import { strapsOfPair } from '../../rules/subjects'
import { quantityUnit } from '../../straps/quantity'
import { pointDistanceMm } from '../../geometry/point'
import { sinDeg } from '../../units/angle'
import { quantityIn, type SolvedSitting } from '../evaluate/solvedSittings'
import type { Asked, Ground } from './ground'
import type { Candidate } from './score'

/** The straight distance from a strap's anchor contact to the body, mm: the lever by which a move turns it. Null without a path. */
const leverMm = ({ solved }: SolvedSitting, { subject }: Asked): number | null => {
  const straps: readonly string[] = [subject, ...strapsOfPair(subject)]
  const levers = solved.paths.flatMap(({ strap, contacts, bodyContact }) => {
    const [anchor] = contacts
    return anchor !== undefined && straps.includes(strap) ? [pointDistanceMm(anchor.point, bodyContact)] : []
  })
  return levers.length === 0 ? null : Math.min(...levers)
}

/** What is left to the nearer limit as a length: degrees by the lever, mm as they are; null for shares, which have none. */
const roughMm = (solved: SolvedSitting, asked: Asked): number | null => {
  const value = quantityIn(solved, asked.rule.quantity, asked.subject)
  const lever = leverMm(solved, asked)
  if (value === null || lever === null) return null
  const margin = marginInside(value, asked.rule)
  switch (quantityUnit(asked.rule.quantity)) {
    case 'deg':
      return 2 * sinDeg(margin / 2) * lever
    case 'mm':
      return margin
    case 'ratio':
      return null
  }
}

/** A rough reckoning, mm: of the rules that are kept, and of those that are broken (≤ 0). */
export interface RoughRoom {
  readonly keptMm: number
  readonly violationMm: number
}

/**
 * About how much room a trial has, from its numbers alone; only for choosing where to measure, never given to anybody. Rules
 * without a room are left out. Formula: chord = 2·lever·sin(angle/2); derived here, right to first order where the body contact stays.
 */
export const roughRoom = (
  ground: Ground,
  { trial, screen }: Candidate,
  hasRoom: (asked: Asked) => boolean,
): RoughRoom => {
  let keptMm = Number.POSITIVE_INFINITY
  let violationMm = 0
  for (const asked of ground.asked) {
    if (!asked.isOwn || !hasRoom(asked)) continue
    const isBroken = screen.broken.has(asked)
    for (const solved of trial.sittings) {
      const mm = asked.sittingIds.has(solved.sitting.id) ? roughMm(solved, asked) : null
      if (mm === null) continue
      if (isBroken) violationMm = Math.min(violationMm, mm)
      else keptMm = Math.min(keptMm, mm)
    }
  }
  return { keptMm, violationMm }
}

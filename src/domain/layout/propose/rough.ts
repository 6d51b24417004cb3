import { byLeverMm } from './lever'
import { isNotOfPosition } from '../../zones/rulePlane'
import type { Ground } from './ground'
import type { Candidate } from './score'

/** A rough reckoning, mm: of the rules that are kept, and of those that are broken (≤ 0). */
export interface RoughRoom {
  readonly keptMm: number
  readonly violationMm: number
}

/** About how much room a trial has, from its numbers alone; only for choosing where to measure, never given to anybody. Rules without a room are left out. */
export const roughRoom = (ground: Ground, { trial, screen }: Candidate): RoughRoom => {
  let keptMm = Number.POSITIVE_INFINITY
  let violationMm = 0
  for (const asked of ground.asked) {
    if (!asked.isOwn || isNotOfPosition(asked.rule.quantity)) continue
    const isBroken = screen.broken.has(asked)
    for (const solved of trial.sittings) {
      const mm = asked.sittingIds.has(solved.sitting.id) ? byLeverMm(solved, asked.rule, asked.subject) : null
      if (mm === null) continue
      if (isBroken) violationMm = Math.min(violationMm, mm)
      else keptMm = Math.min(keptMm, mm)
    }
  }
  return { keptMm, violationMm }
}

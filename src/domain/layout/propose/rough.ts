import { marginInside } from '../../rules/check'
import { strapsOfPair } from '../../rules/subjects'
import { quantityUnit } from '../../straps/quantity'
import { pointDistanceMm } from '../../geometry/point'
import { sinDeg } from '../../units/angle'
import { quantityIn, type SolvedSitting } from '../evaluate/solvedSittings'
import type { Asked, Ground, Trial } from './ground'

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

/**
 * About how much room a trial has, mm, from its numbers alone; only for choosing where to measure, never given to anybody. Rules
 * without a room are left out. Formula: chord = 2·lever·sin(angle/2); derived here, right to first order where the body contact stays.
 */
export const roughRoomMm = (ground: Ground, trial: Trial, hasRoom: (asked: Asked) => boolean): number =>
  ground.asked.reduce((least, asked) => {
    if (!asked.isOwn || !hasRoom(asked)) return least
    return trial.sittings.reduce((mm, solved) => {
      if (!asked.sittingIds.has(solved.sitting.id)) return mm
      return Math.min(mm, roughMm(solved, asked) ?? mm)
    }, least)
  }, Number.POSITIVE_INFINITY)

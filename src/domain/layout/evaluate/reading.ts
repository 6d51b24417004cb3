import { marginInside } from '../../rules/check'
import type { QuantityRule } from '../../rules/rule'
import { isLapFleshUnknown } from '../../body/lapFlesh'
import type { Occupant } from '../../body/occupant'
import type { QuantityId, Subject } from '../../straps/quantity'
import type { Place } from '../document/layout'
import { valuesOf } from './placeNumbers'
import type { PlaceCase } from './quantityFindings'
import type { SolvedSitting } from './solvedSittings'
import { speaksIn } from './speaking'

/** A sitting and its value. */
interface Worst {
  readonly sittingId: string
  readonly value: number
}

/** What the sittings in which a rule speaks come to. */
export interface Reading {
  /** The sitting with the largest violation, or with the smallest margin where none is violated; null without any number. */
  readonly worst: Worst | null
  /** The first sitting without a number, or with one that says too little of this person; null when all have one. */
  readonly missing: SolvedSitting | null
}

/** Whether a number says too little of a person: how high a lap strap lies over bones that nobody has felt for under much flesh. */
const isUnsure = (quantity: QuantityId, occupant: Occupant): boolean =>
  quantity === 'lap-over-asis' && isLapFleshUnknown(occupant)

/** The people of a place of whom a number says too little. */
const unsureOf = ({ occupants }: Place, quantity: QuantityId): ReadonlySet<string> =>
  new Set(occupants.filter((occupant) => isUnsure(quantity, occupant)).map(({ id }) => id))

/** What one rule reads of one subject over the sittings; null when it speaks about it in none. */
export const readingOf = (
  { layout, place, sittings }: Pick<PlaceCase, 'layout' | 'place' | 'sittings'>,
  rule: QuantityRule,
  subject: Subject,
): Reading | null => {
  const values = valuesOf(sittings, rule.quantity, subject)
  const speaks = speaksIn(layout, place, rule, subject)
  const unsure = unsureOf(place, rule.quantity)
  let worst: (Worst & { readonly margin: number }) | null = null
  let missing: SolvedSitting | null = null
  for (const [index, solved] of sittings.entries()) {
    if (!speaks(solved.sitting)) continue
    const value = values[index] ?? null
    if (value === null || unsure.has(solved.sitting.occupantId)) missing ??= solved
    if (value === null) continue
    const margin = marginInside(value, rule)
    if (worst === null || margin < worst.margin) worst = { sittingId: solved.sitting.id, value, margin }
  }
  if (worst === null && missing === null) return null
  return { worst: worst && { sittingId: worst.sittingId, value: worst.value }, missing }
}

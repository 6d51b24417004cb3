import { marginInside } from '../../rules/check'
import type { QuantityRule } from '../../rules/rule'
import type { Subject } from '../../straps/quantity'
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
  /** The first sitting without a number; null when all have one. */
  readonly missing: SolvedSitting | null
}

/** What one rule reads of one subject over the sittings; null when it speaks about it in none. */
export const readingOf = (
  { layout, place, sittings }: Pick<PlaceCase, 'layout' | 'place' | 'sittings'>,
  rule: QuantityRule,
  subject: Subject,
): Reading | null => {
  const values = valuesOf(sittings, rule.quantity, subject)
  const speaks = speaksIn(layout, place, rule, subject)
  let worst: (Worst & { readonly margin: number }) | null = null
  let missing: SolvedSitting | null = null
  for (const [index, solved] of sittings.entries()) {
    if (!speaks(solved.sitting)) continue
    const value = values[index] ?? null
    if (value === null) {
      missing ??= solved
      continue
    }
    const margin = marginInside(value, rule)
    if (worst === null || margin < worst.margin) worst = { sittingId: solved.sitting.id, value, margin }
  }
  if (worst === null && missing === null) return null
  return { worst: worst && { sittingId: worst.sittingId, value: worst.value }, missing }
}

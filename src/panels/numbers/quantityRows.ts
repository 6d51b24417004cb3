import type { ShownPlace, SittingEvaluation } from '../../domain/layout/evaluate/evaluation'
import type { ShownFinding } from '../../domain/rules/finding'
import type { QuantityId, QuantityValue, Subject } from '../../domain/straps/quantity'
import type { QuantityGroup } from './QuantityTable'

export interface QuantityRow {
  readonly id: QuantityId
  readonly subject: Subject
  /** In the shown sitting; null when it has no such number there. */
  readonly value: number | null
  readonly lowest: number
  readonly highest: number
  /** The finding with the worst verdict about this quantity of this subject, or null where no rule speaks. */
  readonly worst: ShownFinding | null
}

const sameRow = (row: { id: string; subject: string }, value: QuantityValue): boolean =>
  row.id === value.id && row.subject === value.subject

/** One row for each quantity of each subject that any sitting has, in the order the solver gives them. */
const quantityRows = (place: ShownPlace, shown: SittingEvaluation): readonly QuantityRow[] => {
  const rows = new Map<string, { first: QuantityValue; lowest: number; highest: number }>()
  for (const sitting of [shown, ...place.sittings]) {
    for (const quantity of sitting.quantities) {
      const key = `${quantity.id}/${quantity.subject}`
      const row = rows.get(key)
      rows.set(key, {
        first: row?.first ?? quantity,
        lowest: Math.min(row?.lowest ?? quantity.value, quantity.value),
        highest: Math.max(row?.highest ?? quantity.value, quantity.value),
      })
    }
  }
  return [...rows.values()].map(({ first, lowest, highest }) => ({
    id: first.id,
    subject: first.subject,
    value: shown.quantities.find((quantity) => sameRow(quantity, first))?.value ?? null,
    lowest,
    highest,
    // Findings come worst first.
    worst:
      place.findings.find((finding) => finding.quantity === first.id && finding.subject === first.subject) ??
      null,
  }))
}

/** The rows of a place by their quantity, in the order the solver gives them. */
export const quantityGroups = (
  place: ShownPlace,
  shown: SittingEvaluation,
): readonly QuantityGroup<QuantityRow>[] => {
  const groups = new Map<QuantityId, QuantityRow[]>()
  for (const row of quantityRows(place, shown)) {
    const known = groups.get(row.id)
    if (known === undefined) groups.set(row.id, [row])
    else known.push(row)
  }
  return [...groups].map(([id, rows]) => ({ id, rows }))
}

import type { ShownPlace, Sitting } from '../../domain/layout/evaluate/evaluation'
import type { ShownFinding, ShownVerdict } from '../../domain/rules/finding'
import type { QuantityId, Subject } from '../../domain/straps/quantity'
import { VERDICT_ORDER } from '../verdicts'
import type { QuantityGroup } from './QuantityTable'

/** One sitting of the place, with how many rules are at their worst in it. */
export interface SittingColumn {
  readonly sitting: Sitting
  readonly counts: Readonly<Record<ShownVerdict, number>>
}

/** A number in one sitting, and the findings that are at their worst there, what needs a person first. */
export interface SittingCell {
  /** Null when it has no such number there. */
  readonly value: number | null
  readonly worstOf: readonly ShownFinding[]
}

export interface SittingRow {
  readonly id: QuantityId
  readonly subject: Subject
  /** The worst verdict of any rule about it; null where no rule speaks. */
  readonly verdict: ShownVerdict | null
  /** In the order of the columns. */
  readonly cells: readonly SittingCell[]
}

/** Columns where most is at its worst first, or in the order of the sittings. */
export type SittingOrder = 'worst' | 'drawn'

export interface SittingTable {
  readonly columns: readonly SittingColumn[]
  readonly groups: readonly QuantityGroup<SittingRow>[]
}

const rank = (verdict: ShownVerdict | null): number =>
  verdict === null ? VERDICT_ORDER.length : VERDICT_ORDER.indexOf(verdict)

const rowKey = (quantity: string, subject: string): string => `${quantity}/${subject}`
const cellKey = (row: string, sittingId: string): string => `${row} ${sittingId}`

/** Findings by row, and by row and the sitting they are worst in. */
const findingIndex = (
  findings: readonly ShownFinding[],
): {
  readonly verdicts: ReadonlyMap<string, ShownVerdict>
  readonly worst: ReadonlyMap<string, readonly ShownFinding[]>
} => {
  const verdicts = new Map<string, ShownVerdict>()
  const worst = new Map<string, ShownFinding[]>()
  for (const finding of findings) {
    const row = rowKey(finding.quantity, finding.subject)
    // Findings come worst first.
    if (!verdicts.has(row)) verdicts.set(row, finding.verdict)
    if (finding.worstSitting === null) continue
    const key = cellKey(row, finding.worstSitting)
    worst.set(key, [...(worst.get(key) ?? []), finding])
  }
  return { verdicts, worst }
}

const columnOf = (sitting: Sitting, findings: readonly ShownFinding[]): SittingColumn => {
  const counts = { broken: 0, unchecked: 0, tight: 0, kept: 0, clear: 0 }
  for (const { worstSitting, verdict } of findings) if (worstSitting === sitting.id) counts[verdict] += 1
  return { sitting, counts }
}

/** Where most is at its worst comes first; sittings alike keep their order. */
const byWorst = (a: SittingColumn, b: SittingColumn): number =>
  b.counts.broken - a.counts.broken ||
  b.counts.unchecked - a.counts.unchecked ||
  b.counts.tight - a.counts.tight

/** Every number in every sitting of a place. Columns in the order of the sittings or of the worst; rows of the worst verdict first. */
export const sittingTable = (place: ShownPlace, order: SittingOrder): SittingTable => {
  const { verdicts, worst } = findingIndex(place.findings)
  const inOrder = place.sittings.map(({ sitting }) => columnOf(sitting, place.findings))
  const columns = order === 'worst' ? inOrder.toSorted(byWorst) : inOrder
  const values = new Map<string, number>()
  const subjects = new Map<QuantityId, Subject[]>()
  for (const { sitting, quantities } of place.sittings) {
    for (const { id, subject, value } of quantities) {
      values.set(cellKey(rowKey(id, subject), sitting.id), value)
      const known = subjects.get(id)
      if (known === undefined) subjects.set(id, [subject])
      else if (!known.includes(subject)) known.push(subject)
    }
  }
  const rowOf = (id: QuantityId, subject: Subject): SittingRow => {
    const row = rowKey(id, subject)
    const cells = columns.map(({ sitting }) => ({
      value: values.get(cellKey(row, sitting.id)) ?? null,
      worstOf: worst.get(cellKey(row, sitting.id)) ?? [],
    }))
    return { id, subject, verdict: verdicts.get(row) ?? null, cells }
  }
  const groups = [...subjects].map(([id, of]) => ({
    id,
    rows: of.map((subject) => rowOf(id, subject)).toSorted((a, b) => rank(a.verdict) - rank(b.verdict)),
  }))
  return {
    columns,
    groups: groups.toSorted((a, b) => rank(a.rows[0]?.verdict ?? null) - rank(b.rows[0]?.verdict ?? null)),
  }
}

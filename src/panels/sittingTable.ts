import type { PlaceEvaluation, Sitting } from '../domain/layout/evaluate/evaluation'
import type { Finding, Verdict } from '../domain/rules/finding'
import type { QuantityId, Subject } from '../domain/straps/quantity'
import { VERDICT_ORDER } from './verdicts'

/** One sitting of the place, with how many rules are at their worst in it. */
export interface SittingColumn {
  readonly sitting: Sitting
  readonly counts: Readonly<Record<Verdict, number>>
}

/** A number in one sitting, and the findings that are at their worst there, what needs a person first. */
export interface SittingCell {
  /** Null when it has no such number there. */
  readonly value: number | null
  readonly worstOf: readonly Finding[]
}

interface SittingRow {
  readonly id: QuantityId
  readonly subject: Subject
  /** The worst verdict of any rule about it; null where no rule speaks. */
  readonly verdict: Verdict | null
  /** In the order of the columns. */
  readonly cells: readonly SittingCell[]
}

export interface SittingGroup {
  readonly id: QuantityId
  readonly rows: readonly SittingRow[]
}

/** Columns where most is at its worst first, or in the order of the sittings. */
export type SittingOrder = 'worst' | 'drawn'

export interface SittingTable {
  readonly columns: readonly SittingColumn[]
  readonly groups: readonly SittingGroup[]
}

const rank = (verdict: Verdict | null): number =>
  verdict === null ? VERDICT_ORDER.length : VERDICT_ORDER.indexOf(verdict)

const rowKey = (quantity: string, subject: string): string => `${quantity}/${subject}`
const cellKey = (row: string, sittingId: string): string => `${row} ${sittingId}`

/** Findings by row, and by row and the sitting they are worst in. */
const findingIndex = (
  findings: readonly Finding[],
): {
  readonly verdicts: ReadonlyMap<string, Verdict>
  readonly worst: ReadonlyMap<string, readonly Finding[]>
} => {
  const verdicts = new Map<string, Verdict>()
  const worst = new Map<string, Finding[]>()
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

const columnOf = (sitting: Sitting, findings: readonly Finding[]): SittingColumn => {
  const counts = { broken: 0, unchecked: 0, tight: 0, clear: 0 }
  for (const { worstSitting, verdict } of findings) if (worstSitting === sitting.id) counts[verdict] += 1
  return { sitting, counts }
}

/** Where most is at its worst comes first; sittings alike keep their order. */
const byWorst = (a: SittingColumn, b: SittingColumn): number =>
  b.counts.broken - a.counts.broken ||
  b.counts.unchecked - a.counts.unchecked ||
  b.counts.tight - a.counts.tight

/** Every number in every sitting of a place. Columns in the order of the sittings or of the worst; rows of the worst verdict first. */
export const sittingTable = (place: PlaceEvaluation, order: SittingOrder): SittingTable => {
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

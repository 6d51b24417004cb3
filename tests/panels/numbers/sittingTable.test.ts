import { describe, expect, it } from 'vitest'
import { evaluateLayout } from '../../../src/domain/layout/evaluate/evaluateLayout'
import type { PlaceEvaluation, SittingEvaluation } from '../../../src/domain/layout/evaluate/evaluation'
import type { Finding, Verdict } from '../../../src/domain/rules/finding'
import type { QuantityId, QuantityValue, Subject } from '../../../src/domain/straps/quantity'
import { sittingTable } from '../../../src/panels/numbers/sittingTable'
import { VERDICT_ORDER } from '../../../src/panels/verdicts'
import { exampleIndex, exampleLayout } from '../../support/exampleLayouts'

const sitting = (id: string, quantities: readonly QuantityValue[]): SittingEvaluation =>
  ({ sitting: { id }, quantities }) as unknown as SittingEvaluation
const value = (id: QuantityId, subject: Subject, amount: number): QuantityValue => ({
  id,
  subject,
  value: amount,
})
const finding = (quantity: QuantityId, subject: Subject, worstSitting: string, verdict: Verdict): Finding =>
  ({ quantity, subject, worstSitting, verdict }) as unknown as Finding

const place: PlaceEvaluation = {
  placeId: 'p',
  sittings: [
    sitting('drawn', [value('shoulder-drop', 'shoulder-left', 5), value('lap-angle', 'lap-left', 50)]),
    sitting('forward', [value('shoulder-drop', 'shoulder-left', 7), value('lap-angle', 'lap-left', 42)]),
    sitting('rearward', [value('lap-angle', 'lap-left', 61), value('lap-angle', 'lap-right', 62)]),
  ],
  // Worst first, as the evaluation gives them.
  findings: [
    finding('lap-angle', 'lap-left', 'forward', 'broken'),
    finding('lap-angle', 'lap-left', 'rearward', 'tight'),
    finding('shoulder-drop', 'shoulder-left', 'forward', 'clear'),
  ],
  zones: [],
}

describe('sittingTable', () => {
  it('puts the sittings in their own order or where most is at its worst first', () => {
    const ids = (order: 'worst' | 'drawn'): readonly string[] =>
      sittingTable(place, order).columns.map((column) => column.sitting.id)
    expect(ids('drawn')).toEqual(['drawn', 'forward', 'rearward'])
    expect(ids('worst')).toEqual(['forward', 'rearward', 'drawn'])
  })

  it('puts the numbers with the worst verdict first and those without a rule last', () => {
    const { groups } = sittingTable(place, 'drawn')
    expect(groups.map(({ id }) => id)).toEqual(['lap-angle', 'shoulder-drop'])
    expect(groups[0]?.rows.map(({ subject, verdict }) => [subject, verdict])).toEqual([
      ['lap-left', 'broken'],
      ['lap-right', null],
    ])
  })

  it('marks each rule’s worst sitting and leaves out numbers that a sitting does not have', () => {
    const row = sittingTable(place, 'drawn').groups[0]?.rows[0]
    expect(row?.cells.map((cell) => [cell.value, cell.worstOf.map(({ verdict }) => verdict)])).toEqual([
      [50, []],
      [42, ['broken']],
      [61, ['tight']],
    ])
    expect(sittingTable(place, 'drawn').groups[1]?.rows[0]?.cells[2]?.value).toBeNull()
  })

  it('holds every number of every example once, and marks every finding with a worst sitting once', () => {
    for (const { file } of exampleIndex) {
      for (const evaluated of evaluateLayout(exampleLayout(file), { extent: 'what-moves' }).places) {
        const { columns, groups } = sittingTable(evaluated, 'worst')
        const cells = groups.flatMap(({ rows }) => rows.flatMap((row) => row.cells))
        const count = evaluated.sittings.reduce((sum, { quantities }) => sum + quantities.length, 0)
        expect(cells.filter((cell) => cell.value !== null)).toHaveLength(count)
        expect(columns.map((column) => column.sitting.id).toSorted()).toEqual(
          evaluated.sittings.map((each) => each.sitting.id).toSorted(),
        )
        const marked = cells.flatMap(({ worstOf }) => worstOf)
        const shown = new Set(groups.flatMap(({ rows }) => rows.map((row) => `${row.id}/${row.subject}`)))
        const expected = evaluated.findings.filter(
          ({ quantity, subject, worstSitting }) =>
            worstSitting !== null && shown.has(`${quantity}/${subject}`),
        )
        expect(marked).toHaveLength(expected.length)
        const ranks = groups.map(({ rows }) => VERDICT_ORDER.indexOf(rows[0]?.verdict ?? 'clear'))
        expect(ranks).toEqual(ranks.toSorted((a, b) => a - b))
      }
    }
  })
})

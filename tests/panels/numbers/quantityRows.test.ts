import { describe, expect, it } from 'vitest'
import type { PlaceEvaluation, SittingEvaluation } from '../../../src/domain/layout/evaluate/evaluation'
import type { Finding } from '../../../src/domain/rules/finding'
import type { QuantityValue } from '../../../src/domain/straps/quantity'
import { quantityGroups } from '../../../src/panels/numbers/quantityRows'

const sitting = (id: string, quantities: readonly QuantityValue[]): SittingEvaluation =>
  ({ sitting: { id }, quantities }) as unknown as SittingEvaluation
const lapAngle = (value: number): QuantityValue => ({ id: 'lap-angle', subject: 'lap-left', value })
const finding = (verdict: Finding['verdict']): Finding =>
  ({ quantity: 'lap-angle', subject: 'lap-left', verdict }) as unknown as Finding

const placeOf = (
  sittings: readonly SittingEvaluation[],
  findings: readonly Finding[] = [],
): PlaceEvaluation => ({ placeId: 'p', sittings, findings, zones: [] })

const quantityRows = (...of: Parameters<typeof quantityGroups>) =>
  quantityGroups(...of).flatMap(({ rows }) => rows)

describe('quantityGroups', () => {
  it('shows the value of the shown sitting beside the lowest and highest of all', () => {
    const [drawn, forward, rearward] = [
      sitting('drawn', [lapAngle(50)]),
      sitting('forward', [lapAngle(42)]),
      sitting('rearward', [lapAngle(61)]),
    ]
    expect(quantityRows(placeOf([drawn, forward, rearward]), drawn)).toEqual([
      { id: 'lap-angle', subject: 'lap-left', value: 50, lowest: 42, highest: 61, worst: null },
    ])
  })

  it('keeps a row for a number that the shown sitting does not have', () => {
    const [shown, other] = [sitting('shown', []), sitting('other', [lapAngle(42)])]
    expect(quantityRows(placeOf([shown, other]), shown)).toMatchObject([
      { value: null, lowest: 42, highest: 42 },
    ])
  })

  it('takes the first finding about the same quantity of the same subject: findings come worst first', () => {
    const shown = sitting('shown', [lapAngle(42)])
    const findings = [
      { ...finding('broken'), subject: 'lap-right' } as Finding,
      finding('tight'),
      finding('clear'),
    ]
    expect(quantityRows(placeOf([shown], findings), shown)[0]?.worst?.verdict).toBe('tight')
  })

  it('puts the rows of one quantity together, in the order in which the solver first gives it', () => {
    const drop: QuantityValue = { id: 'shoulder-drop', subject: 'shoulder-left', value: 10 }
    const right: QuantityValue = { id: 'lap-angle', subject: 'lap-right', value: 51 }
    const shown = sitting('shown', [lapAngle(50), drop, right])
    const groups = quantityGroups(placeOf([shown]), shown)
    expect(groups.map(({ id, rows }) => [id, rows.map(({ subject }) => subject)])).toEqual([
      ['lap-angle', ['lap-left', 'lap-right']],
      ['shoulder-drop', ['shoulder-left']],
    ])
  })
})

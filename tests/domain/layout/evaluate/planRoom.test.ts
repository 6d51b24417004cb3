import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { appliedRemedy } from '../../../../src/domain/layout/edit/remedy'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { crossTube, flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'

/** Shoulder tabs far out: they leave the shoulders diverging by more than the 20° of the rally and circuit rules. */
const diverging = (ruleSetId: string): Layout =>
  flatLayout(
    [
      flatPlace({
        anchors: [
          ...tabPair('lap', { xMm: 180, yMm: 200, zMm: -200 }),
          ...tabPair('shoulder', { xMm: 420, yMm: 260, zMm: 540 }, 'bar'),
        ],
      }),
    ],
    { ruleSetId, tubes: [crossTube('bar', 455, 540)] },
  )

describe('a limit in plan on straps that round the shoulder', () => {
  it('has a zone for every anchor and says how far a broken one lies outside', () => {
    const [place] = evaluateLayout(diverging('rally-circuit-253')).places
    expect(place?.zones).toHaveLength(4)
    const finding = place?.findings.find(({ ruleId }) => ruleId === 'fia-shoulder-plan')
    expect(finding?.verdict).toBe('broken')
    // Diverging by more than 20°: on the wrong side of the limit, and by no more than it takes to pull straight back.
    expect(finding?.value).toBeLessThan(-20)
    expect(finding?.roomMm).toBeLessThan(0)
    expect(finding?.roomMm).toBeGreaterThan(-260)
  })

  it('has a remedy that clears it when it is made', () => {
    const layout = diverging('rally-circuit-253')
    const broken = (drawn: Layout) =>
      evaluateLayout(drawn).places[0]?.findings.find(
        ({ ruleId, verdict }) => ruleId === 'fia-shoulder-plan' && verdict === 'broken',
      )
    const finding = broken(layout)
    if (finding === undefined) throw new Error('not broken')
    expect(finding.remedy?.kind).toBe('move-anchors')
    expect(broken(appliedRemedy(layout, finding))).toBeUndefined()
  })
})

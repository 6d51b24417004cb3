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
          ...tabPair('shoulder', { xMm: 420, yMm: 260, zMm: 540 }),
        ],
      }),
    ],
    { ruleSetId, tubes: [crossTube('bar', 420, 540)] },
  )

describe('a rule whose region could only be traced', () => {
  it('leaves its anchors without a zone and its findings without room, and others as they were', () => {
    const [place] = evaluateLayout(diverging('rally-circuit-253')).places
    expect(place?.zones.map(({ anchorId }) => anchorId)).toEqual(['lap-left-anchor', 'lap-right-anchor'])
    const finding = place?.findings.find(({ ruleId }) => ruleId === 'fia-shoulder-plan')
    expect(finding).toMatchObject({ verdict: 'broken', roomMm: null })
    const [student] = evaluateLayout(diverging('student-cars-2026')).places
    expect(student?.zones).toHaveLength(4)
  })

  it('has a remedy that was found by trying and that clears it when it is made', () => {
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

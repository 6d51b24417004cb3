import { describe, expect, it } from 'vitest'

import type { Layout } from '../../../../src/domain/layout/document/layout'
import { appliedRemedy } from '../../../../src/domain/layout/edit/remedy'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { findingSentence } from '../../../../src/domain/layout/wording/findingSentence'
import type { Finding } from '../../../../src/domain/rules/finding'
import { exampleLayout } from '../../../support/exampleLayouts'

const trail = exampleLayout('trail-car-two-seat.layout.json')

/** Two seats that share one bar; the second one's seat, and so its shoulders, set higher or lower. */
const withSecondSeatRaised = (byMm: number): Layout => ({
  ...trail,
  places: trail.places.map((place, index) => {
    if (index === 0) return place
    const { hipPoint } = place.seat
    return { ...place, seat: { ...place.seat, hipPoint: { ...hipPoint, zMm: hipPoint.zMm + byMm } } }
  }),
})

const findingsOf = (layout: Layout): readonly Finding[] =>
  evaluateLayout(layout).places.flatMap(({ findings }) => findings)

const isKept = ({ verdict }: Finding): boolean => verdict === 'clear' || verdict === 'tight'

const barRemedies = (layout: Layout) =>
  findingsOf(layout).flatMap((finding) =>
    finding.remedy?.kind === 'move-tube' ? [{ finding, remedy: finding.remedy }] : [],
  )

describe('a remedy that moves a bar which two places share', () => {
  it.each([-60, -30, 30, 60, 80])('names what it breaks at both, second seat %d mm up', (byMm) => {
    const layout = withSecondSeatRaised(byMm)
    const before = findingsOf(layout)
    for (const { finding, remedy } of barRemedies(layout)) {
      // Held against carrying the remedy out and evaluating the whole car anew.
      const after = findingsOf(appliedRemedy(layout, finding))
      const newlyOpen = before
        .filter(
          (each) => isKept(each) && !after.some(({ id, ...now }) => id === each.id && isKept({ id, ...now })),
        )
        .map(({ placeId, ruleId, subject }) => `${placeId}/${ruleId}/${subject}`)
      const named = (remedy.breaks ?? []).map(
        ({ placeId, ruleId, subject }) => `${placeId}/${ruleId}/${subject}`,
      )
      expect(named.toSorted()).toEqual(newlyOpen.toSorted())
    }
  })

  it('says so in words', () => {
    const found = [-60, -30, 30, 60, 80].flatMap((byMm) => {
      const layout = withSecondSeatRaised(byMm)
      return barRemedies(layout)
        .filter(({ remedy }) => remedy.breaks !== undefined)
        .map(({ finding }) => findingSentence(finding, layout).remedy)
    })
    expect(found.length).toBeGreaterThan(0)
    for (const text of found)
      expect(text).toMatch(
        /with every anchor on it\. But that breaks another limit: .+ shoulder strap, .+\.$/,
      )
  })
})

import { describe, expect, it } from 'vitest'

import type { Layout } from '../../../../src/domain/layout/document/layout'
import { appliedRemedy } from '../../../../src/domain/layout/edit/remedy'
import { evaluateLayout, layoutNumbers } from '../../../../src/domain/layout/evaluate/evaluateLayout'
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

/** What is kept in a layout, by place, rule and subject; by its numbers alone, so that no rooms are worked out. */
const keptKeys = (layout: Layout): readonly string[] =>
  layoutNumbers(layout).places.flatMap(({ findings }) =>
    findings
      .filter(({ verdict }) => verdict === 'kept' || verdict === 'clear')
      .map(({ placeId, ruleId, subject }) => `${placeId}/${ruleId}/${subject}`),
  )

const tubeRemedies = (layout: Layout) =>
  findingsOf(layout).flatMap((finding) =>
    finding.remedy?.kind === 'move-tube' ? [{ finding, remedy: finding.remedy }] : [],
  )

/** Cars with the second seat so much higher, each with its remedies that move a tube, evaluated once for all tests. */
const cars = [-60, -30, 30, 60, 80].map((byMm) => {
  const layout = withSecondSeatRaised(byMm)
  return { byMm, layout, remedies: tubeRemedies(layout) }
})

describe('a remedy that moves a tube which two places share', () => {
  it.each(cars)('names what it breaks at both, second seat $byMm mm up', ({ layout, remedies }) => {
    const before = keptKeys(layout)
    for (const { finding, remedy } of remedies) {
      // Held against carrying the remedy out and looking at the whole car anew.
      const after = new Set(keptKeys(appliedRemedy(layout, finding)))
      const newlyOpen = before.filter((key) => !after.has(key))
      const named = (remedy.breaks ?? []).map(
        ({ placeId, ruleId, subject }) => `${placeId}/${ruleId}/${subject}`,
      )
      expect(named.toSorted()).toEqual(newlyOpen.toSorted())
    }
  })

  it('says so in words', () => {
    const found = cars.flatMap(({ layout, remedies }) =>
      remedies
        .filter(({ remedy }) => remedy.breaks !== undefined)
        .map(({ finding }) => findingSentence(finding, layout).remedy),
    )
    expect(found.length).toBeGreaterThan(2)
    for (const text of found)
      expect(text).toMatch(/with every anchor on it\. But that breaks another limit: .+ strap, .+\.$/)
  })
})

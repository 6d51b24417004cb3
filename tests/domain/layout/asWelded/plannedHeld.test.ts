import { describe, expect, it } from 'vitest'
import { recordDeviations } from '../../../../src/domain/layout/asWelded/deviation'
import { measuredLayout } from '../../../../src/domain/layout/asWelded/measuredLayout'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import type { AsWeldedRecord } from '../../../../src/domain/measure/asWeldedRecord'
import { coordinatesAt, planOfExample, recordWith } from '../../../support/asWelded'

describe('a deviation', () => {
  it('of a wrap stays what it was when its bar is planned thicker afterwards, or not at all', () => {
    const plan = planOfExample('hill-climber-joined-straps.layout.json')
    const record = recordWith(plan, (entry) =>
      entry.plannedHeld === undefined
        ? entry
        : { ...entry, measurement: coordinatesAt(entry.plannedHeld, { zMm: -4 }) },
    )
    const offOf = (layout: Layout, of: AsWeldedRecord): readonly (number | undefined)[] =>
      recordDeviations(layout, of).flatMap(({ position }) => (position === null ? [] : [position.z.off]))
    expect(offOf(plan, record)).toEqual([expect.closeTo(-4, 9)])
    const thicker = { ...plan, tubes: plan.tubes.map((bar) => ({ ...bar, outsideDiameterMm: 44.5 })) }
    expect(offOf(thicker, record)).toEqual([expect.closeTo(-4, 9)])
    expect(offOf({ ...plan, tubes: [] }, record)).toEqual([expect.closeTo(-4, 9)])
    // A record without the held point goes by the bars of now: 44.5 for 38.1 puts the mark 3.2 mm higher.
    const older = { ...record, anchors: record.anchors.map(({ plannedHeld: _held, ...entry }) => entry) }
    expect(offOf(thicker, older)).toEqual([expect.closeTo(-7.2, 9)])
    const wrapIn = (layout: Layout) =>
      measuredLayout(layout, record).anchors.filter(({ anchor }) => anchor.mount.kind === 'wrap')
    expect(wrapIn(plan).map(({ isReplanned }) => isReplanned)).not.toContain(true)
    expect(wrapIn(thicker).map(({ isReplanned }) => isReplanned)).not.toContain(false)
  })
})

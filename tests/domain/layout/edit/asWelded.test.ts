import { describe, expect, it } from 'vitest'

import type { Layout } from '../../../../src/domain/layout/document/layout'
import {
  addRecord,
  entriesMissingIn,
  recordOf,
  removeRecord,
  withMeasurement,
  withMissingEntries,
  withRecord,
  withSignature,
  withTabReadings,
} from '../../../../src/domain/layout/edit/asWelded'
import type { Measurement } from '../../../../src/domain/measure/measurement'
import { exampleLayout } from '../../../support/exampleLayouts'

const buggy = (): Layout => {
  const { asWelded: _asWelded, ...plan } = exampleLayout('rock-buggy.layout.json')
  return plan
}

const REF = { recordId: 'welded-1', placeId: 'driver', anchorId: 'driver-lap-left' }
const AT: Measurement = { kind: 'coordinates', xMm: [1351], yMm: [70], zMm: [38] }

const planOf = ({ asWelded: _asWelded, ...plan }: Layout): unknown => plan

describe('edits of as-welded records', () => {
  it('begin a record with every anchor as planned and nothing measured', () => {
    const layout = addRecord(buggy())
    expect(layout.asWelded).toHaveLength(1)
    const record = recordOf(layout, 'welded-1')
    expect(record?.plannedRevision).toBe('A')
    expect(record?.anchors).toEqual(
      buggy().places.flatMap(({ id, anchors }) =>
        anchors.map((anchor) => ({
          placeId: id,
          anchorId: anchor.id,
          strap: anchor.strap,
          planned: anchor.mount,
          measurement: null,
        })),
      ),
    )
  })

  it('measure the one anchor of joined shoulder straps once', () => {
    const layout = addRecord(exampleLayout('hill-climber-joined-straps.layout.json'))
    const straps = layout.asWelded?.at(-1)?.anchors.map(({ strap }) => strap)
    expect(straps).toContain('shoulder-left')
    expect(straps).not.toContain('shoulder-right')
  })

  it('leave the plan as it is', () => {
    const before = buggy()
    const copy = structuredClone(before)
    const layout = withTabReadings(withMeasurement(addRecord(before), REF, AT), REF, 'planDeg', [-30, -31])
    expect(planOf(layout)).toEqual(copy)
    expect(before).toEqual(copy)
    expect(layout.asWelded?.[0]?.anchors.find(({ anchorId }) => anchorId === REF.anchorId)).toMatchObject({
      measurement: AT,
      planDeg: [-30, -31],
    })
  })

  it('take an angle out again when its last reading goes, and know none of a wrap', () => {
    const measured = withTabReadings(addRecord(buggy()), REF, 'leanDeg', [2])
    expect(withTabReadings(measured, REF, 'leanDeg', [])).toEqual(addRecord(buggy()))
    const wrapped = addRecord(exampleLayout('trail-car-two-seat.layout.json'))
    const record = wrapped.asWelded?.at(-1)
    const wrap = record?.anchors.find(({ planned }) => planned.kind === 'wrap')
    if (record === undefined || wrap === undefined) throw new Error('the example has no wrap')
    const ref = { recordId: record.id, placeId: wrap.placeId, anchorId: wrap.anchorId }
    expect(withTabReadings(wrapped, ref, 'planDeg', [1])).toBe(wrapped)
  })

  it('give the very same layout for a record or an anchor that is not there', () => {
    const layout = addRecord(buggy())
    expect(withMeasurement(layout, { ...REF, recordId: 'welded-9' }, AT)).toBe(layout)
    expect(withMeasurement(layout, { ...REF, anchorId: 'gone' }, AT)).toBe(layout)
    expect(removeRecord(layout, 'welded-9')).toBe(layout)
    expect(withRecord(buggy(), 'welded-1', { name: 'x' })).toEqual(buggy())
  })

  it('sign with a name and a day of the calendar only', () => {
    const layout = addRecord(buggy())
    expect(withSignature(layout, 'welded-1', { name: '  ', date: '2026-04-02' })).toBe(layout)
    expect(withSignature(layout, 'welded-1', { name: 'Ines', date: '2026-02-30' })).toBe(layout)
    expect(withSignature(layout, 'welded-1', { name: 'Ines', date: '' })).toBe(layout)
    const signed = withSignature(layout, 'welded-1', { name: ' Ines ', date: '2026-04-02' })
    expect(signed.asWelded?.[0]?.signed).toEqual({
      name: 'Ines',
      date: '2026-04-02',
      ruleSetId: layout.ruleSetId,
    })
    const tolerance = { xMm: 2, yMm: 2, zMm: 2, tabDeg: 2, reclineDeg: 1, spread: 'even' } as const
    const held = withSignature({ ...layout, tolerance }, 'welded-1', { name: 'Ines', date: '2026-04-02' })
    expect(held.asWelded?.[0]?.signed?.tolerance).toEqual(tolerance)
  })

  it('never change a signed record', () => {
    const measured = withMeasurement(addRecord(buggy()), REF, AT)
    const signed = withSignature(measured, 'welded-1', { name: 'Ines', date: '2026-04-02' })
    const edits: readonly ((layout: Layout) => Layout)[] = [
      (layout) => withRecord(layout, 'welded-1', { name: 'Other', notes: 'later' }),
      (layout) => withMeasurement(layout, REF, null),
      (layout) => withTabReadings(layout, REF, 'planDeg', [4]),
      (layout) => withSignature(layout, 'welded-1', { name: 'Somebody else', date: '2026-05-01' }),
      (layout) => withMissingEntries(layout, 'welded-1'),
      (layout) => removeRecord(layout, 'welded-1'),
    ]
    for (const edit of edits) expect(edit(signed)).toBe(signed)
    // Even with an anchor that the record does not know yet.
    const [place] = signed.places
    if (place === undefined) throw new Error('the example has no place')
    const added = { ...place, anchors: place.anchors.map((anchor) => ({ ...anchor, id: `${anchor.id}-b` })) }
    const replanned = { ...signed, places: [added] }
    expect(withMissingEntries(replanned, 'welded-1')).toBe(replanned)
  })

  it('begin another record without copying a reading, and keep the first', () => {
    const signed = withSignature(withMeasurement(addRecord(buggy()), REF, AT), 'welded-1', {
      name: 'Ines',
      date: '2026-04-02',
    })
    const second = addRecord(signed)
    expect(second.asWelded?.map(({ id }) => id)).toEqual(['welded-1', 'welded-2'])
    expect(second.asWelded?.[0]).toBe(signed.asWelded?.[0])
    expect(second.asWelded?.[1]?.anchors.every(({ measurement }) => measurement === null)).toBe(true)
    expect(second.asWelded?.[1]?.signed).toBeUndefined()
  })

  it('remove an open record, and the field with the last one', () => {
    expect(removeRecord(addRecord(buggy()), 'welded-1')).toEqual(buggy())
    const two = addRecord(addRecord(buggy()))
    expect(removeRecord(two, 'welded-1').asWelded?.map(({ id }) => id)).toEqual(['welded-2'])
  })

  it('add what was planned since, and keep what is gone from the plan', () => {
    const begun = withMeasurement(addRecord(buggy()), REF, AT)
    const replanned: Layout = {
      ...begun,
      places: begun.places.map((place) => ({
        ...place,
        anchors: place.anchors.flatMap((anchor) =>
          anchor.id === REF.anchorId ? [{ ...anchor, id: 'driver-lap-left-2' }] : [anchor],
        ),
      })),
    }
    const [record] = replanned.asWelded ?? []
    if (record === undefined) throw new Error('no record')
    expect(entriesMissingIn(replanned, record).map(({ anchorId }) => anchorId)).toEqual(['driver-lap-left-2'])
    const taken = withMissingEntries(replanned, 'welded-1')
    const ids = taken.asWelded?.[0]?.anchors.map(({ anchorId }) => anchorId) ?? []
    expect(ids).toContain('driver-lap-left')
    expect(ids.at(-1)).toBe('driver-lap-left-2')
    expect(withMissingEntries(taken, 'welded-1')).toBe(taken)
  })
})

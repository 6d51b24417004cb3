import { describe, expect, it } from 'vitest'
import { offeredPoints } from '../../../../src/domain/layout/asWelded/knownPoints'
import type { Measurement } from '../../../../src/domain/measure/measurement'
import { coordinatesAt, planOfExample, recordWith } from '../../../support/asWelded'

const BUGGY = planOfExample('rock-buggy.layout.json')

/** Other anchors that are offered beside the left lap tab when that of the right was measured so. */
const offeredWith = (measurement: Measurement | null): readonly string[] => {
  const record = recordWith(BUGGY, (entry) =>
    entry.strap === 'lap-right' ? { ...entry, measurement } : entry,
  )
  const own = record.anchors.find(({ strap }) => strap === 'lap-left')
  if (own === undefined) throw new Error('the example has no left lap tab')
  return offeredPoints(BUGGY, record, own).flatMap((offered) =>
    offered.sort === 'measured' ? [offered.entry.strap] : [],
  )
}

describe('points to measure from', () => {
  it('are what a tape can be held to by the plan', () => {
    const record = recordWith(BUGGY, (entry) => entry)
    const [own] = record.anchors
    if (own === undefined) throw new Error('the example has no anchors')
    expect(offeredPoints(BUGGY, record, own).length).toBeGreaterThan(3)
    expect(offeredPoints(BUGGY, record, own).every(({ sort }) => sort === 'place')).toBe(true)
  })

  it('are other anchors too, but never one that is itself not sure', () => {
    const at = coordinatesAt({ xMm: 1350, yMm: 650, zMm: 38 })
    if (at.kind !== 'coordinates') throw new Error('those are coordinates')
    expect(offeredWith(null)).toEqual([])
    expect(offeredWith(at)).toEqual(['lap-right'])
    // Readings 2 mm apart are sure to 1 mm either way, 2.2 mm apart are not.
    expect(offeredWith({ ...at, zMm: [37, 39] })).toEqual(['lap-right'])
    expect(offeredWith({ ...at, zMm: [37, 39.2] })).toEqual([])
    expect(offeredWith({ ...at, zMm: [] })).toEqual([])
  })
})

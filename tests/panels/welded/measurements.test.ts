import { describe, expect, it } from 'vitest'

import { offeredPoints } from '../../../src/domain/layout/asWelded/knownPoints'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { parseLayout } from '../../../src/domain/layout/document/parseLayout'
import { addRecord, withMeasurement } from '../../../src/domain/layout/edit/asWelded'
import { figureShapes } from '../../../src/panels/welded/figureShapes'
import { emptyMeasurement, knownPointOf, pointChoices } from '../../../src/panels/welded/measurements'
import { measuredAt, planOfExample, recordWith } from '../../support/asWelded'

const PLAN = planOfExample('rock-buggy.layout.json')
const RECORD = recordWith(PLAN, (entry) => (entry.strap === 'lap-left' ? measuredAt(entry, PLAN) : entry))
const OFFERED = offeredPoints(PLAN, RECORD, { placeId: 'driver', anchorId: 'driver-sub-left' })
const LAP = { xMm: 1350, yMm: 70, zMm: 38 }
const DATUM = { name: 'Datum', point: { xMm: 0, yMm: 0, zMm: 0 } }

describe('a measurement that was just picked', () => {
  it('has nothing read, and a layout file can hold it', () => {
    const ref = { recordId: 'welded-1', placeId: 'driver', anchorId: 'driver-lap-left' }
    for (const kind of ['coordinates', 'tapes', 'angle'] as const) {
      const layout = withMeasurement(addRecord(PLAN), ref, emptyMeasurement(kind, DATUM, LAP))
      expect(parseLayout(layout)).toEqual({ ok: true, value: layout })
    }
  })

  it('has its string run toward the plan, and chooses no side of a mirror', () => {
    expect(emptyMeasurement('angle', DATUM, LAP)).toMatchObject({ runs: 'rearward' })
    const behind = { name: 'Rear', point: { xMm: 2000, yMm: 0, zMm: 0 } }
    expect(emptyMeasurement('angle', behind, LAP)).toMatchObject({ runs: 'forward' })
    expect(emptyMeasurement('tapes', DATUM, LAP)).toMatchObject({ side: null })
  })
})

describe('points to measure from', () => {
  it('are listed in groups, each once', () => {
    const choices = pointChoices(OFFERED, PLAN)
    expect(choices.map(({ value }) => Number(value)).toSorted((a, b) => a - b)).toEqual(
      OFFERED.map((_, index) => index),
    )
    expect([...new Set(choices.map(({ group }) => group))]).toEqual([
      'Datum and named points',
      'Measured already',
      'Marks on tubes',
    ])
  })

  it('keep names that a layout file can hold, however long those of the tubes are', () => {
    const long: Layout = {
      ...PLAN,
      datum: 'd'.repeat(200),
      tubes: PLAN.tubes.map((tube) => ({ ...tube, name: `${tube.id} ${'n'.repeat(150)}` })),
    }
    const offered = offeredPoints(long, RECORD, { placeId: 'driver', anchorId: 'driver-sub-left' })
    for (const each of offered) expect(knownPointOf(each, long).name.length).toBeLessThanOrEqual(200)
  })
})

describe('figureShapes', () => {
  it('leads from each known point to what is measured, as the elevation shows it', () => {
    const { known, ways, target } = figureShapes(
      {
        kind: 'tapes',
        tapes: [{ from: DATUM, lengthsMm: [] }],
        coordinate: null,
        side: null,
      },
      LAP,
      'top',
    )
    expect(known).toEqual([{ name: '1', at: { uMm: 0, vMm: 0 } }])
    expect(target).toEqual({ uMm: 1350, vMm: 70 })
    expect(ways).toEqual([{ name: '1', points: [{ uMm: 0, vMm: 0 }, target] }])
  })

  it('goes along the axes from the datum for coordinates, and shows what is level beside a string', () => {
    const along = figureShapes({ kind: 'coordinates', xMm: [], yMm: [], zMm: [] }, LAP, 'side')
    expect(along.ways.map(({ name }) => name)).toEqual(['x', 'y', 'z'])
    expect(along.ways.at(-1)?.points.at(-1)).toEqual({ uMm: 1350, vMm: 38 })
    const string = figureShapes(emptyMeasurement('angle', DATUM, LAP), LAP, 'side')
    expect(string.ways.find(({ name }) => name === 'level')?.points).toEqual([
      { uMm: 0, vMm: 0 },
      { uMm: 1350, vMm: 0 },
    ])
  })
})

import { describe, expect, it } from 'vitest'

import { layoutText } from '../../../../src/domain/layout/document/layoutText'
import { parseLayout, parseLayoutText } from '../../../../src/domain/layout/document/parseLayout'
import {
  addRecord,
  withMeasurement,
  withSignature,
  withTabReadings,
} from '../../../../src/domain/layout/edit/asWelded'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import type { Measurement } from '../../../../src/domain/measure/measurement'
import { exampleLayout, type Path } from '../../../support/exampleLayouts'

const KNOWN = { name: 'Front left rail end', point: { xMm: 0, yMm: 0, zMm: 0 } }

const TAPES: Measurement = {
  kind: 'tapes',
  tapes: [
    { from: KNOWN, lengthsMm: [1352.5, 1353] },
    { from: { name: 'Front right rail end', point: { xMm: 0, yMm: 720, zMm: 0 } }, lengthsMm: [] },
  ],
  coordinate: { axis: 'z', readingsMm: [38] },
  side: 'opposite',
}

const ANGLE: Measurement = {
  kind: 'angle',
  from: KNOWN,
  stringDeg: [-2.5],
  lengthMm: [1400],
  runs: 'rearward',
  aside: { kind: 'plan', readingsDeg: [12.5, 12.6] },
}

const COORDINATES: Measurement = { kind: 'coordinates', xMm: [1351], yMm: [], zMm: [38, 38.5] }

const bare = (file: string): Layout => {
  const { asWelded: _asWelded, ...plan } = exampleLayout(file)
  return plan
}

/** A record with every way of measuring in it, and an angle of a tab. */
const recorded = (): Layout => {
  const ref = (strap: string) => ({ recordId: 'welded-1', placeId: 'driver', anchorId: `driver-${strap}` })
  let layout = addRecord(bare('rock-buggy.layout.json'))
  layout = withMeasurement(layout, ref('lap-left'), TAPES)
  layout = withMeasurement(layout, ref('lap-right'), ANGLE)
  layout = withMeasurement(layout, ref('sub-left'), COORDINATES)
  return withTabReadings(layout, ref('lap-left'), 'planDeg', [-30.5])
}

const problemsAt = (path: Path, value: unknown): readonly { path: string; message: string }[] => {
  // As text and back: a mount stands in the plan and in the record, and only one of them is changed.
  const copy: unknown = JSON.parse(JSON.stringify(recorded()))
  let parent = copy as Record<string | number, unknown>
  for (const key of path.slice(0, -1)) parent = parent[key] as Record<string | number, unknown>
  const last = path.at(-1) ?? ''
  if (value === undefined) delete parent[last]
  else parent[last] = value
  const parsed = parseLayout(copy)
  return parsed.ok ? [] : parsed.error
}

describe('as-welded records in a layout file', () => {
  it('survive being written and read, half measured, whole and signed', () => {
    const signed = withSignature(recorded(), 'welded-1', { name: 'Ines', date: '2026-04-02' })
    const tolerance = { xMm: 2, yMm: 2, zMm: 2, tabDeg: 2, reclineDeg: 1, spread: 'even' } as const
    const held = withSignature({ ...recorded(), tolerance }, 'welded-1', { name: 'Ines', date: '2026-04-02' })
    const wraps = addRecord(bare('hill-climber-joined-straps.layout.json'))
    expect(layoutText(wraps)).toContain('plannedHeld')
    for (const layout of [recorded(), signed, addRecord(signed), held, wraps]) {
      expect(parseLayoutText(layoutText(layout))).toEqual({ ok: true, value: layout })
    }
  })

  it('are left out of a file that has none', () => {
    const layout = bare('rock-buggy.layout.json')
    expect(layoutText(layout)).not.toContain('asWelded')
    expect(parseLayoutText(layoutText(layout))).toEqual({ ok: true, value: layout })
  })

  it('may speak of a place or an anchor that is gone', () => {
    expect(problemsAt(['asWelded', 0, 'anchors', 0, 'anchorId'], 'gone')).toEqual([])
    expect(problemsAt(['asWelded', 0, 'anchors', 0, 'placeId'], 'gone')).toEqual([])
    expect(problemsAt(['asWelded', 0, 'anchors', 0, 'planned', 'tubeId'], 'gone')).toEqual([])
  })

  it.each<{ what: string; path: Path; value: unknown; at: string; message: RegExp }>([
    {
      what: 'an anchor measured twice',
      path: ['asWelded', 0, 'anchors', 1, 'anchorId'],
      value: 'driver-shoulder-left',
      at: 'asWelded[0].anchors[1].anchorId',
      message: /already measured by entry 1 of this record/,
    },
    {
      what: 'a point on the outside of a bar for a tab',
      path: ['asWelded', 0, 'anchors', 0, 'plannedHeld'],
      value: { xMm: 1, yMm: 2, zMm: 3 },
      at: 'asWelded[0].anchors[0].plannedHeld',
      message: /only a wrapped strap/,
    },
    {
      what: 'a day that the calendar does not have',
      path: ['asWelded', 0, 'date'],
      value: '2026-02-30',
      at: 'asWelded[0].date',
      message: /no day 2026-02-30/,
    },
    {
      what: 'a signature on a day that the calendar does not have',
      path: ['asWelded', 0, 'signed'],
      value: { name: 'Ines', date: '2026-13-01', ruleSetId: 'x' },
      at: 'asWelded[0].signed.date',
      message: /no day 2026-13-01/,
    },
    {
      what: 'a signature of nobody',
      path: ['asWelded', 0, 'signed'],
      value: { name: ' ', date: '2026-04-02', ruleSetId: 'x' },
      at: 'asWelded[0].signed.name',
      message: /signed by nobody/,
    },
    {
      what: 'a signature without a date',
      path: ['asWelded', 0, 'signed'],
      value: { name: 'Ines', date: '', ruleSetId: 'x' },
      at: 'asWelded[0].signed.date',
      message: /found ""/,
    },
    {
      what: 'a tape of no length',
      path: ['asWelded', 0, 'anchors', 2, 'measurement', 'tapes', 0, 'lengthsMm'],
      value: [0],
      at: 'asWelded[0].anchors[2].measurement.tapes[0].lengthsMm[0]',
      message: /found 0 mm/,
    },
    {
      what: 'a string steeper than plumb',
      path: ['asWelded', 0, 'anchors', 3, 'measurement', 'stringDeg'],
      value: [90.5],
      at: 'asWelded[0].anchors[3].measurement.stringDeg[0]',
      message: /found 90.5°/,
    },
    {
      what: 'an unknown way of measuring',
      path: ['asWelded', 0, 'anchors', 2, 'measurement', 'kind'],
      value: 'guess',
      at: 'asWelded[0].anchors[2].measurement.kind',
      message: /found "guess"/,
    },
  ])('are refused with $what', ({ path, value, at, message }) => {
    const problems = problemsAt(path, value)
    expect(problems.map((problem) => problem.path)).toEqual([at])
    expect(problems[0]?.message).toMatch(message)
  })

  it('are refused with two of one id, and with tab angles of a wrap', () => {
    const two = addRecord(recorded())
    const same = { ...two, asWelded: (two.asWelded ?? []).map((record) => ({ ...record, id: 'welded-1' })) }
    const parsed = parseLayout(same)
    expect(parsed.ok ? [] : parsed.error.map(({ path }) => path)).toEqual(['asWelded[1].id'])
    const wrap = { kind: 'wrap', tubeId: 'harness-bar', point: KNOWN.point, over: 'over', guideHoops: true }
    const angles = problemsAt(['asWelded', 0, 'anchors', 2, 'planned'], wrap)
    expect(angles.map(({ path }) => path)).toEqual(['asWelded[0].anchors[2].planDeg'])
  })
})

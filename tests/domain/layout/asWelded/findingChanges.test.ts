import { describe, expect, it } from 'vitest'

import { assumedAnchors, findingChanges } from '../../../../src/domain/layout/asWelded/findingChanges'
import { measuredLayout } from '../../../../src/domain/layout/asWelded/measuredLayout'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import type { Finding, Verdict } from '../../../../src/domain/rules/finding'
import { coordinatesAt, planOfExample, recordWith } from '../../../support/asWelded'

const SOURCE: Finding['source'] = {
  document: 'Invented',
  section: '1',
  edition: '1',
  status: 'own',
  phrase: null,
}

const finding = (id: string, verdict: Verdict, level: Finding['level'] = 'must'): Finding => ({
  id,
  ruleId: id,
  quantity: 'lap-angle',
  placeId: 'driver',
  subject: 'lap-left',
  worstSitting: null,
  value: 50,
  limit: { min: 45, max: 60, wanted: null },
  level,
  verdict,
  roomMm: 12,
  source: SOURCE,
  problem: null,
  remedy: null,
})

describe('findingChanges', () => {
  it('tells what is new from what was so before, whatever the verdicts', () => {
    const verdicts: readonly Verdict[] = ['broken', 'unchecked', 'tight', 'clear']
    const kindOf = (before: Verdict | null, after: Verdict | null): string | null =>
      findingChanges(
        before === null ? [] : [finding('r', before)],
        after === null ? [] : [finding('r', after)],
        [],
      )[0]?.kind ?? null
    const table = [...verdicts, null].map((before) =>
      [...verdicts, null].map((after) => kindOf(before, after)),
    )
    // Rows: the plan; columns: the car; both in the order broken, unchecked, tight, clear, no such finding.
    expect(table).toEqual([
      ['still-broken', 'newly-unchecked', 'cleared', 'cleared', 'silent'],
      ['newly-broken', 'still-unchecked', 'cleared', 'cleared', 'silent'],
      ['newly-broken', 'newly-unchecked', null, null, null],
      ['newly-broken', 'newly-unchecked', 'newly-tight', null, null],
      ['newly-broken', 'newly-unchecked', null, null, null],
    ])
  })

  it('puts what is newly broken first, and a must before a should before advice', () => {
    const planned = [
      finding('a', 'broken'),
      finding('b', 'clear', 'advice'),
      finding('c', 'clear'),
      finding('d', 'clear'),
    ]
    const welded = [
      finding('a', 'broken'),
      finding('b', 'broken', 'advice'),
      finding('c', 'broken'),
      finding('d', 'tight'),
    ]
    expect(findingChanges(planned, welded, []).map(({ kind, welded: after }) => [kind, after?.id])).toEqual([
      ['newly-broken', 'c'],
      ['newly-broken', 'b'],
      ['still-broken', 'a'],
      ['newly-tight', 'd'],
    ])
  })

  it('finds a limit that a lap tab welded too high breaks, with both values, and nothing for a car welded as planned', () => {
    const plan = planOfExample('rock-buggy.layout.json')
    const planned = evaluateLayout(plan, { extent: 'what-moves' }).places.flatMap(({ findings }) => findings)
    const high = recordWith(plan, (entry) => ({
      ...entry,
      measurement: coordinatesAt(entry.planned.point, entry.strap === 'lap-left' ? { zMm: 60 } : {}),
    }))
    const { layout, anchors } = measuredLayout(plan, high)
    const welded = evaluateLayout(layout, { extent: 'what-moves' }).places.flatMap(({ findings }) => findings)
    const broken = findingChanges(planned, welded, anchors).filter(({ kind }) => kind === 'newly-broken')
    expect(broken.length).toBeGreaterThan(0)
    for (const { planned: before, welded: after, assumed } of broken) {
      expect(before?.verdict).not.toBe('broken')
      expect(after?.value).not.toBe(before?.value)
      expect(assumed).toEqual([])
    }
    const same = findingChanges(planned, planned, anchors)
    expect(same.every(({ kind }) => kind === 'still-broken' || kind === 'still-unchecked')).toBe(true)
  })
})

describe('assumedAnchors', () => {
  const plan = planOfExample('rock-buggy.layout.json')
  const withMeasured = (...straps: readonly string[]) =>
    measuredLayout(
      plan,
      recordWith(plan, (entry) =>
        straps.includes(entry.strap) ? { ...entry, measurement: coordinatesAt(entry.planned.point) } : entry,
      ),
    ).anchors
  const names = (subject: Finding['subject'], ...measured: readonly string[]): readonly string[] =>
    assumedAnchors({ placeId: 'driver', subject, quantity: 'lap-angle' }, withMeasured(...measured)).map(
      ({ anchor }) => anchor.strap,
    )

  it('are those of the strap or pair and of the lap, whose buckle every strap runs to', () => {
    expect(names('shoulder-left')).toEqual(['shoulder-left', 'lap-left', 'lap-right'])
    expect(names('shoulder-pair', 'lap-left')).toEqual(['shoulder-left', 'shoulder-right', 'lap-right'])
    expect(names('lap-left', 'lap-left', 'lap-right')).toEqual([])
    expect(names('body', 'lap-left', 'sub-left', 'sub-right')).toEqual([
      'shoulder-left',
      'shoulder-right',
      'lap-right',
    ])
  })

  it('are those whose angles were not measured too, for a finding of the plane of a tab', () => {
    const twist = { placeId: 'driver', subject: 'lap-left', quantity: 'tab-twist' } as const
    const measuredWith = (angles: {
      readonly planDeg?: readonly number[]
      readonly leanDeg?: readonly number[]
    }) =>
      measuredLayout(
        plan,
        recordWith(plan, (entry) => ({
          ...entry,
          measurement: coordinatesAt(entry.planned.point),
          ...angles,
        })),
      ).anchors
    const assumed = (angles: Parameters<typeof measuredWith>[0]): readonly string[] =>
      assumedAnchors(twist, measuredWith(angles)).map(({ anchor }) => anchor.strap)
    expect(assumed({})).toEqual(['lap-left'])
    expect(assumed({ planDeg: [-31] })).toEqual(['lap-left'])
    expect(assumed({ planDeg: [-31], leanDeg: [] })).toEqual(['lap-left'])
    expect(assumed({ planDeg: [-31], leanDeg: [0] })).toEqual([])
    expect(assumedAnchors({ ...twist, quantity: 'lap-angle' }, measuredWith({}))).toEqual([])
  })

  it('are none for the helmet and for tubes, and none of another place', () => {
    expect(names('head')).toEqual([])
    expect(names('tube:harness-bar')).toEqual([])
    expect(
      assumedAnchors({ placeId: 'other', subject: 'belt', quantity: 'lap-angle' }, withMeasured()),
    ).toEqual([])
  })
})

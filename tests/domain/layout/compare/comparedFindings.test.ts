import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import {
  comparedFindings,
  type EvaluatedVariant,
  findingTally,
  type FindingTurn,
  findingTurn,
  turnSide,
} from '../../../../src/domain/layout/compare/comparedFindings'
import {
  comparedNumbers,
  doesNumberDiffer,
  numberBy,
} from '../../../../src/domain/layout/compare/comparedNumbers'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { evaluateLayout, layoutNumbers } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import type { ShownFinding } from '../../../../src/domain/rules/finding'
import { exampleLayout } from '../../../support/exampleLayouts'
import { flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'
import { plausibleLayout } from '../../../support/plausibleLayouts'

const shown = (layout: Layout): EvaluatedVariant => ({ layout, evaluation: layoutNumbers(layout) })
const checked = (layout: Layout): EvaluatedVariant => ({
  layout,
  evaluation: evaluateLayout(layout, { extent: 'what-moves' }),
})

/** Lap tabs straight behind and below a hip point that is the datum. */
const lapAt = (xMm: number, zMm: number): Layout =>
  flatLayout([flatPlace({ anchors: [...tabPair('lap', { xMm, yMm: 220, zMm })] })])

describe('comparedNumbers', () => {
  it('says by how much the lap angle differs', () => {
    // atan(200 / 200) = 45°; atan(173.205 / 100) = 60°: the line from the tab to the hip point.
    const rows = comparedNumbers([shown(lapAt(200, -200)), shown(lapAt(100, -173.205_081))], 0)
    const row = rows.find(({ quantity, subject }) => quantity === 'lap-angle' && subject === 'lap-left')
    expect(row?.values[0]?.least).toBeCloseTo(45, 6)
    expect(row === undefined ? null : numberBy(row, 0, 1)).toBeCloseTo(15, 5)
    expect(row === undefined ? null : numberBy(row, 1, 0)).toBeCloseTo(-15, 5)
  })

  it('takes the worst of all sittings where a rule speaks of it, with the ends beside it', () => {
    const base = flatPlace()
    const sliding = (forwardMm: number): Layout =>
      flatLayout([
        {
          ...base,
          anchors: [...tabPair('lap', { xMm: 200, yMm: 220, zMm: -200 })],
          seat: { ...base.seat, slide: { forwardMm, rearwardMm: 0 } },
        },
      ])
    // 100 mm forward the tab is 300 behind the hip point: atan(200 / 300) = 33.69°, the worst by a rule of at least 45°.
    const rows = comparedNumbers([shown(sliding(0)), shown(sliding(100))], 0)
    const row = rows.find(({ quantity, subject }) => quantity === 'lap-angle' && subject === 'lap-left')
    expect(row?.values[1]?.least).toBeCloseTo(33.690_068, 5)
    expect(row?.values[1]?.most).toBeCloseTo(45, 5)
    expect(row?.values[1]?.worst).toBeCloseTo(33.690_068, 5)
    expect(row === undefined ? null : numberBy(row, 0, 1)).toBeCloseTo(33.690_068 - 45, 5)
  })

  it('takes the value of the worst finding where several rules speak of one number', () => {
    const variant = shown(lapAt(200, -200))
    const findings = [broken(40), finding({ id: 'driver/other/lap-left', ruleId: 'other', value: 50 })]
    const places = variant.evaluation.places.map((place) => ({ ...place, findings }))
    const rows = comparedNumbers([{ ...variant, evaluation: { ...variant.evaluation, places } }], 0)
    const row = rows.find(({ quantity, subject }) => quantity === 'lap-angle' && subject === 'lap-left')
    expect(row?.values[0]?.worst).toBe(40)
  })

  it('puts the largest change first', () => {
    const rows = comparedNumbers([shown(lapAt(200, -200)), shown(lapAt(200, -201))], 0)
    const sizes = rows.map((row) => Math.abs(numberBy(row, 0, 1) ?? 0))
    expect(rows.filter(doesNumberDiffer).length).toBeGreaterThan(0)
    expect(rows.findIndex(doesNumberDiffer)).toBe(0)
    expect(sizes.at(-1)).toBe(0)
  })

  it('never differs between a layout and its copy, and always turns its sign the other way round', () => {
    fc.assert(
      fc.property(plausibleLayout, plausibleLayout, (a, b) => {
        expect(comparedNumbers([shown(a), shown(a)], 0).some(doesNumberDiffer)).toBe(false)
        for (const row of comparedNumbers([shown(a), shown(b)], 0)) {
          const [there, back] = [numberBy(row, 0, 1), numberBy(row, 1, 0)]
          expect(there).toBe(back === null ? null : -back || 0)
        }
      }),
      { numRuns: 10 },
    )
  })
})

const finding = (change: Partial<ShownFinding>): ShownFinding =>
  ({
    id: 'driver/rule/lap-left',
    ruleId: 'rule',
    quantity: 'lap-angle',
    placeId: 'driver',
    subject: 'lap-left',
    worstSitting: null,
    value: 50,
    limit: { min: 45, max: 60, wanted: null },
    level: 'must',
    verdict: 'clear',
    roomMm: 30,
    source: { document: '', section: '', edition: '', status: 'read', phrase: null },
    problem: null,
    remedy: null,
    ...change,
  }) as ShownFinding

const broken = (value: number): ShownFinding => finding({ verdict: 'broken', value, roomMm: -10 })
const unchecked = finding({ verdict: 'unchecked', value: null, roomMm: null })

describe('findingTurn', () => {
  it.each<{ from: ShownFinding | null; to: ShownFinding; turn: FindingTurn; back: FindingTurn }>([
    { from: finding({}), to: broken(40), turn: 'newly-broken', back: 'mended' },
    { from: broken(44), to: broken(40), turn: 'further-out', back: 'less-far-out' },
    { from: broken(44), to: broken(61), turn: 'unchanged', back: 'unchanged' },
    {
      from: finding({ roomMm: 30 }),
      to: finding({ roomMm: 5, verdict: 'tight' }),
      turn: 'less-room',
      back: 'more-room',
    },
    {
      from: finding({ roomMm: 30, otherRoom: { elevation: 'top', mm: 4 } }),
      to: finding({ roomMm: 5 }),
      turn: 'more-room',
      back: 'less-room',
    },
    { from: finding({}), to: finding({}), turn: 'unchanged', back: 'unchanged' },
    { from: finding({}), to: unchecked, turn: 'newly-unchecked', back: 'now-checked' },
    { from: broken(40), to: unchecked, turn: 'newly-unchecked', back: 'now-checked' },
    { from: null, to: broken(40), turn: 'only-after', back: 'only-before' },
    {
      from: finding({ roomMm: 'pending', verdict: 'kept' } as Partial<ShownFinding>),
      to: finding({}),
      turn: 'pending',
      back: 'pending',
    },
    // No position decides it: what counts is how far the value is inside: 5 of 45 to 60, then 1.
    {
      from: finding({ roomMm: null }),
      to: finding({ roomMm: null, value: 46 }),
      turn: 'less-room',
      back: 'more-room',
    },
    {
      from: finding({
        roomMm: null,
        value: 'polyester',
        limit: { min: null, max: null, wanted: ['polyester'] },
      }),
      to: finding({
        roomMm: null,
        value: 'nylon',
        limit: { min: null, max: null, wanted: ['polyester', 'nylon'] },
      }),
      turn: 'other-word',
      back: 'other-word',
    },
  ])('is $turn, and $back the other way round', ({ from, to, turn, back }) => {
    expect(findingTurn(from, to)).toBe(turn)
    expect(findingTurn(to, from)).toBe(back)
    const opposite = { better: 'worse', worse: 'better', none: 'none' } as const
    expect(turnSide(back) ?? 'none').toBe(opposite[turnSide(turn) ?? 'none'])
  })

  it('is nothing where neither variant has it', () => {
    expect(findingTurn(null, null)).toBeNull()
  })
})

describe('comparedFindings', () => {
  it('puts what is broken in one of them first', () => {
    const rows = comparedFindings([checked(lapAt(120, -180)), checked(lapAt(300, -100))], 0)
    const [first] = rows
    expect(first?.findings[1]?.verdict).toBe('broken')
    expect(first?.findings[0]?.verdict).not.toBe('broken')
    const turns = rows.map(({ findings }) => findingTurn(findings[0] ?? null, findings[1] ?? null))
    expect(turns.indexOf('newly-broken')).toBe(0)
    expect(turns.lastIndexOf('newly-broken')).toBeLessThan(turns.indexOf('unchanged'))
  })

  it('holds every finding of every variant exactly once', () => {
    const variants = [
      exampleLayout('rock-buggy.layout.json'),
      exampleLayout('trail-car-two-seat.layout.json'),
    ].map(shown)
    const rows = comparedFindings(variants, 1)
    for (const [index, { evaluation }] of variants.entries()) {
      const own = rows.flatMap(({ findings }) => findings[index] ?? [])
      const all = evaluation.places.flatMap(({ findings }) => findings)
      expect(new Set(own)).toEqual(new Set(all))
      expect(own).toHaveLength(all.length)
    }
    expect(new Set(rows.map(({ key }) => key)).size).toBe(rows.length)
  })

  it('never finds a change between a layout and its copy', () => {
    fc.assert(
      fc.property(plausibleLayout, (layout) => {
        const rows = comparedFindings([checked(layout), checked(layout)], 0)
        expect(
          rows.every(({ findings }) => findingTurn(findings[0] ?? null, findings[1] ?? null) === 'unchanged'),
        ).toBe(true)
      }),
      { numRuns: 5 },
    )
  })
})

describe('findingTally', () => {
  it('counts by level and names the kept finding nearest to its limit', () => {
    const near = finding({ verdict: 'tight', roomMm: 4 })
    const tally = findingTally([
      broken(40),
      { ...broken(40), level: 'advice' } as ShownFinding,
      unchecked,
      finding({ roomMm: 30 }),
      near,
      finding({ roomMm: null }),
    ])
    expect(tally.broken).toEqual({ must: 1, should: 0, advice: 1 })
    expect(tally).toMatchObject({ unchecked: 1, tight: 1, kept: 2, isPending: false })
    expect(tally.nearest).toEqual({ finding: near, mm: 4 })
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { emptyLayout } from '../../../../src/domain/layout/document/empty'
import { layoutText } from '../../../../src/domain/layout/document/layoutText'
import { parseLayout, parseLayoutText } from '../../../../src/domain/layout/document/parseLayout'
import type { LayoutProblem } from '../../../../src/domain/layout/document/problem'
import { layoutArb } from '../../../support/arbitraries'
import { type Path, rockBuggyWith } from '../../../support/exampleLayouts'

const problemsOf = (input: unknown): readonly LayoutProblem[] => {
  const parsed = parseLayout(input)
  return parsed.ok ? [] : parsed.error
}

const anchorPath = (index: number, ...rest: Path): Path => ['places', 0, 'anchors', index, ...rest]

describe('parseLayout', () => {
  it('gives back what layoutText wrote, for any layout', () => {
    fc.assert(
      fc.property(layoutArb, (layout) => {
        expect(parseLayoutText(layoutText(layout))).toEqual({ ok: true, value: layout })
      }),
    )
  })

  it('accepts the starting layout', () => {
    expect(parseLayout(emptyLayout())).toEqual({ ok: true, value: emptyLayout() })
  })

  it('turns -0 into 0, so that two equal layouts are equal in every way', () => {
    const parsed = parseLayout(rockBuggyWith(anchorPath(0, 'mount', 'planDeg'), -0))
    const mount = parsed.ok ? parsed.value.places[0]?.anchors[0]?.mount : undefined
    expect(mount?.kind === 'tab' && Object.is(mount.planDeg, 0)).toBe(true)
  })

  it('says no more than a thousand things of a file with hundreds of thousands that are wrong, the first ones first', () => {
    const tubes = Array.from({ length: 50_000 }, (_, index) => ({ id: `t${index}` }))
    const problems = problemsOf({ ...emptyLayout(), tubes })
    expect(problems).toHaveLength(1_000)
    expect(problems[0]?.path).toBe('tubes[0].name')
    expect(new Set(problems.map(({ path, message }) => `${path} ${message}`)).size).toBe(1_000)
  })

  it.each([
    { what: 'a list', input: [], path: '', message: /not a layout/ },
    { what: 'null', input: null, path: '', message: /not a layout/ },
    { what: 'text', input: 'layout', path: '', message: /not a layout/ },
    { what: 'a foreign group', input: { shapes: [] }, path: 'version', message: /"version" is missing/ },
    { what: 'a newer version', input: { version: 2 }, path: 'version', message: /version 2, newer than/ },
    {
      what: 'a foreign version',
      input: { version: '0.1.0' },
      path: 'version',
      message: /says version "0.1.0"/,
    },
  ])(
    'says of $what, before anything else, that it is no layout of this version',
    ({ input, path, message }) => {
      const problems = problemsOf(input)
      expect(problems).toHaveLength(1)
      expect(problems[0]?.path).toBe(path)
      expect(problems[0]?.message).toMatch(message)
    },
  )

  it.each([
    {
      path: ['places', 0, 'seat', 'hipPoint', 'xMm'],
      value: '1200',
      message: 'Place 1 "Driver", seat, hip point, x: found "1200".',
      remedy: 'Put a number from -20000 to 20000 mm there.',
    },
    {
      path: ['places', 0, 'seat', 'slide'],
      value: undefined,
      message: 'Place 1 "Driver", seat, slide: missing.',
      remedy: 'Add "slide": a group with the fields forwardMm, rearwardMm.',
    },
    {
      path: ['places', 0, 'occupants', 0, 'massKg'],
      value: 251,
      message: 'Place 1 "Driver", occupant 1 "M. Dallow", mass: found 251 kg.',
      remedy: 'Put a number from 30 to 250 kg there.',
    },
    {
      path: ['places', 0, 'occupants', 0, 'measured', 'hipToShoulderMm'],
      value: null,
      message: 'Place 1 "Driver", occupant 1 "M. Dallow", measured values, hip to shoulder: found null.',
      remedy: 'Put a number from 200 to 900 mm there.',
    },
    {
      path: anchorPath(2, 'mount', 'kind'),
      value: 'bolt',
      message: 'Place 1 "Driver", anchor 3 "lap-left", mount, kind: found "bolt".',
      remedy: 'Put one of "tab", "wrap", "eye" there.',
    },
    {
      path: ['places', 0, 'belt'],
      value: [],
      message: 'Place 1 "Driver", belt: found a list of 0.',
      remedy:
        'Put a group with the fields arrangement, diagonal, thighStraps, shoulderTailMm, adjusters, hardware, webbingMm, material, buckle, lapAdjuster, headAndNeckRestraint, adjusterTailMm, wrapReturnMm there.',
    },
    {
      path: ['job', 'date'],
      value: '14.3.2026',
      message: 'Job, date: found "14.3.2026".',
      remedy: 'Put a date as YYYY-MM-DD, or "" for none there.',
    },
    {
      path: ['tolerance'],
      value: null,
      message: 'Weld and measuring error: found null.',
      remedy: 'Put a group with the fields xMm, yMm, zMm, tabDeg, reclineDeg, spread there.',
    },
    {
      path: ['tolerance'],
      value: { xMm: -1, yMm: 5, zMm: 5, tabDeg: 2, reclineDeg: 1, spread: 'even' },
      message: 'Weld and measuring error, x: found -1 mm.',
      remedy: 'Put a number from 0 to 50 mm there.',
    },
    {
      path: ['tolerance'],
      value: { xMm: 1, yMm: 5, zMm: 5, tabDeg: 2, reclineDeg: 1, spread: 'normal' },
      message: 'Weld and measuring error, spread: found "normal".',
      remedy: 'Put one of "worst-case", "even", "mostly-small" there.',
    },
    {
      path: ['units', 'colour'],
      value: 'red',
      message: 'Units: there is no field called "colour".',
      remedy: 'Correct its spelling or take it out; the fields here are length, force, mass.',
    },
    {
      path: ['places'],
      value: [],
      message: 'Places: found a list of 0.',
      remedy: 'Put a list of 1 to 8 items there.',
    },
  ])('names field, value and remedy: $message', ({ path, value, message, remedy }) => {
    const problems = problemsOf(rockBuggyWith(path, value))
    expect(problems).toHaveLength(1)
    expect(problems[0]).toMatchObject({ message, remedy })
  })

  it('refuses names that every object inherits, because no field may be dropped silently', () => {
    for (const name of ['toString', 'constructor', '__proto__']) {
      const text = layoutText(emptyLayout()).replace('"datum"', `"${name}": 1, "datum"`)
      const parsed = parseLayoutText(text)
      expect(parsed.ok ? [] : parsed.error.map((problem) => problem.path)).toEqual([name])
    }
  })

  it('lists every field that does not fit, not only the first', () => {
    const broken = rockBuggyWith(['places', 0, 'seat', 'reclineDeg'], 'steep') as { datum: unknown }
    broken.datum = 7
    expect(problemsOf(broken).map((problem) => problem.path)).toEqual(['datum', 'places[0].seat.reclineDeg'])
  })

  it.each([
    { limit: 'recline', path: ['places', 0, 'seat', 'reclineDeg'], inside: 80, outside: 80.001 },
    { limit: 'recline', path: ['places', 0, 'seat', 'reclineDeg'], inside: -10, outside: -10.001 },
    { limit: 'stature', path: ['places', 0, 'occupants', 0, 'statureMm'], inside: 1200, outside: 1199.9 },
    { limit: 'stature', path: ['places', 0, 'occupants', 0, 'statureMm'], inside: 2300, outside: 2300.1 },
    { limit: 'mass', path: ['places', 0, 'occupants', 0, 'massKg'], inside: 30, outside: 29.9 },
    { limit: 'coordinate', path: anchorPath(2, 'mount', 'point', 'xMm'), inside: 20_000, outside: 20_000.1 },
    { limit: 'coordinate', path: anchorPath(2, 'mount', 'point', 'xMm'), inside: -20_000, outside: Infinity },
  ])('takes the limit of $limit itself ($inside) and refuses $outside', ({ path, inside, outside }) => {
    const field = path.reduce<string>(
      (text, key) => (typeof key === 'number' ? `${text}[${key}]` : text === '' ? key : `${text}.${key}`),
      '',
    )
    const pathsAt = (value: number): readonly string[] =>
      problemsOf(rockBuggyWith(path, value))
        .filter((problem) => problem.message.includes('found'))
        .map((problem) => problem.path)
    expect(pathsAt(inside)).toEqual([])
    expect(pathsAt(outside)).toEqual([field])
  })
})

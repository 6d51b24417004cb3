import { describe, expect, it } from 'vitest'

import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import type { LayoutProblem } from '../../../../src/domain/layout/document/problem'
import { type Path, rockBuggyWith } from '../../../support/exampleLayouts'

const problemsOf = (input: unknown): readonly LayoutProblem[] => {
  const parsed = parseLayout(input)
  return parsed.ok ? [] : parsed.error
}

const anchorPath = (index: number, ...rest: Path): Path => ['places', 0, 'anchors', index, ...rest]

describe('layoutContradictions, through parseLayout', () => {
  it.each([
    {
      what: 'two tubes of one id',
      path: ['tubes', 1, 'id'],
      value: 'rail-left',
      at: 'tubes[1].id',
      message: /already used by item 1/,
    },
    {
      what: 'a wall thicker than the tube',
      path: ['tubes', 0, 'wallMm'],
      value: 19.06,
      at: 'tubes[0].wallMm',
      message: /more than half of the outside diameter of 38.1 mm/,
    },
    {
      what: 'two tube points in one place',
      path: ['tubes', 0, 'points', 1],
      value: { xMm: 0.9, yMm: 0, zMm: 0 },
      at: 'tubes[0].points[1]',
      message: /0.9 mm from the point before it/,
    },
    {
      what: 'an unknown rule set',
      path: ['ruleSetId'],
      value: 'house-rules',
      at: 'ruleSetId',
      message: /no rule set "house-rules"/,
    },
    {
      what: 'an unknown tube',
      path: anchorPath(2, 'mount', 'tubeId'),
      value: 'gone',
      at: 'places[0].anchors[2].mount.tubeId',
      message: /no tube "gone"/,
    },
    {
      what: 'two anchors for one strap',
      path: anchorPath(1, 'strap'),
      value: 'shoulder-left',
      at: 'places[0].anchors[1].strap',
      message: /already anchored by anchor 1/,
    },
    {
      what: 'two anchors of one id',
      path: anchorPath(1, 'id'),
      value: 'driver-shoulder-left',
      at: 'places[0].anchors[1].id',
      message: /already used by anchor 1 of place 1/,
    },
    {
      what: 'a strap in two slots',
      path: ['places', 0, 'seat', 'slots', 1, 'straps'],
      value: ['shoulder-left'],
      at: 'places[0].seat.slots[1].straps[0]',
      message: /already passes through slot 1/,
    },
    {
      what: 'a strap twice in one slot',
      path: ['places', 0, 'seat', 'slots', 1, 'straps'],
      value: ['shoulder-right', 'shoulder-right'],
      at: 'places[0].seat.slots[1].straps[1]',
      message: /listed twice/,
    },
    {
      what: 'a recline outside its range',
      path: ['places', 0, 'seat', 'reclineDeg'],
      value: 15.5,
      at: 'places[0].seat.reclineDeg',
      message: /15.5° is outside its range, from 15° to 15°/,
    },
    {
      what: 'a recline range that runs backwards',
      path: ['places', 0, 'seat', 'reclineRange'],
      value: { uprightDeg: 20, reclinedDeg: 10 },
      at: 'places[0].seat.reclineRange',
      message: /runs backwards, from 20° to 10°/,
    },
    {
      what: 'a day that the calendar does not have',
      path: ['job', 'date'],
      value: '2026-02-29',
      at: 'job.date',
      message: /no day 2026-02-29/,
    },
  ])('refuses $what', ({ path, value, at, message }) => {
    const problems = problemsOf(rockBuggyWith(path, value))
    expect(problems.map((problem) => problem.path)).toEqual([at])
    expect(problems[0]?.message).toMatch(message)
  })

  it('takes a solid bar: a wall of exactly half of the outside diameter', () => {
    expect(problemsOf(rockBuggyWith(['tubes', 0, 'wallMm'], 38.1 / 2))).toEqual([])
  })

  // 2024 is divisible by 4; 1900 by 100 but not 400; 2000 by 400.
  it.each([
    { date: '2024-02-29', isDay: true },
    { date: '1900-02-29', isDay: false },
    { date: '2000-02-29', isDay: true },
    { date: '2026-04-31', isDay: false },
    { date: '2026-13-01', isDay: false },
    { date: '2026-00-10', isDay: false },
    { date: '2026-12-00', isDay: false },
    { date: '', isDay: true },
  ])('knows whether "$date" is a day: $isDay', ({ date, isDay }) => {
    expect(problemsOf(rockBuggyWith(['job', 'date'], date)).length === 0).toBe(isDay)
  })

  it('refuses a wrap that is more than 1 mm off its tube, and says how far', () => {
    // Behind its bend the right rail runs along x at y = 720, z = −70: as much above that is as far off.
    const wrapAbove = (upMm: number) => ({
      kind: 'wrap',
      tubeId: 'rail-right',
      point: { xMm: 800, yMm: 720, zMm: -70 + upMm },
      over: 'over',
      guideHoops: true,
    })
    expect(problemsOf(rockBuggyWith(anchorPath(2, 'mount'), wrapAbove(1)))).toEqual([])
    const problems = problemsOf(rockBuggyWith(anchorPath(2, 'mount'), wrapAbove(1.25)))
    expect(problems).toHaveLength(1)
    expect(problems[0]?.message).toMatch(/1.25 mm off the centre line of Right floor rail/)
  })
})

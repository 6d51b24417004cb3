import { describe, expect, it } from 'vitest'

import { layoutText } from '../../../../src/domain/layout/document/layoutText'
import { parseLayout, parseLayoutText } from '../../../../src/domain/layout/document/parseLayout'
import type { LayoutProblem } from '../../../../src/domain/layout/document/problem'
import { type Path, rockBuggyWith } from '../../../support/exampleLayouts'

const problemsOf = (input: unknown): readonly LayoutProblem[] => {
  const parsed = parseLayout(input)
  return parsed.ok ? [] : parsed.error
}

const anchorPath = (index: number, ...rest: Path): Path => ['places', 0, 'anchors', index, ...rest]

const beltPath = (...rest: Path): Path => ['places', 0, 'belt', ...rest]

const tabOf = (part: object): unknown => ({
  kind: 'tab',
  point: { xMm: 1350, yMm: 100, zMm: 20 },
  planDeg: 0,
  leanDeg: 0,
  thicknessMm: 5,
  holeDiameterMm: 11.5,
  tubeId: null,
  ...part,
})

const EYE = {
  kind: 'eye',
  point: { xMm: 1350, yMm: 100, zMm: 20 },
  planDeg: 180,
  riseDeg: 45,
  threadDiameterMm: 11.1,
  eyeDiameterMm: 25,
  tubeId: null,
}

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
      what: 'two tape points of one id',
      path: ['tapePoints'],
      value: ['seat bolt', 'fire wall'].map((name) => ({
        id: 'bolt',
        name,
        point: { xMm: 1000, yMm: 100, zMm: 0 },
      })),
      at: 'tapePoints[1].id',
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
    {
      what: 'a diagonal on a 6-point belt',
      path: beltPath('diagonal'),
      value: 'left',
      at: 'places[0].belt.diagonal',
      message: /a 6-point belt has a strap over each shoulder/,
    },
    {
      what: 'anti-submarine adjusters beyond the anchor',
      path: beltPath('adjusters'),
      value: { sub: { fromAnchorMm: 34.9, lengthMm: 70 } },
      at: 'places[0].belt.adjusters.sub.fromAnchorMm',
      message: /34.9 mm from the anchor to the middle of a body of 70 mm/,
    },
    {
      what: 'a clevis in single shear',
      path: anchorPath(2, 'mount'),
      value: tabOf({ form: 'clevis', shear: 'single' }),
      at: 'places[0].anchors[2].mount.shear',
      message: /a clevis holds its bolt from both sides/,
    },
    {
      what: 'an insert in double shear',
      path: anchorPath(2, 'mount'),
      value: tabOf({ form: 'insert', shear: 'double' }),
      at: 'places[0].anchors[2].mount.shear',
      message: /a bolt in a welded insert is held from one side/,
    },
    {
      what: 'a gap in a single plate',
      path: anchorPath(2, 'mount'),
      value: tabOf({ form: 'plate', shear: 'single', gapMm: 8 }),
      at: 'places[0].anchors[2].mount.gapMm',
      message: /only a clevis has a gap/,
    },
    {
      what: 'an edge distance of an insert',
      path: anchorPath(2, 'mount'),
      value: tabOf({ form: 'insert', shear: 'single', edgeDistanceMm: 20 }),
      at: 'places[0].anchors[2].mount.edgeDistanceMm',
      message: /a welded insert is round/,
    },
    {
      what: 'an eye bolt on an unknown tube',
      path: anchorPath(2, 'mount'),
      value: { ...EYE, tubeId: 'gone' },
      at: 'places[0].anchors[2].mount.tubeId',
      message: /no tube "gone"/,
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

  it.each([
    { what: 'an eye bolt', mount: EYE },
    { what: 'a clevis', mount: tabOf({ form: 'clevis', shear: 'double' }) },
    { what: 'an insert', mount: tabOf({ form: 'insert', shear: 'single' }) },
    { what: 'a plate that is called one', mount: tabOf({ form: 'plate', shear: 'single' }) },
    {
      what: 'a clevis with every size typed',
      mount: tabOf({ form: 'clevis', shear: 'double', widthMm: 50, edgeDistanceMm: 25, gapMm: 6.4 }),
    },
    {
      what: 'an insert of its own diameter',
      mount: tabOf({ form: 'insert', shear: 'single', widthMm: 25.4 }),
    },
  ])('takes $what and gives it back as it was', ({ mount }) => {
    const parsed = parseLayout(rockBuggyWith(anchorPath(2, 'mount'), mount))
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.error))
    expect(parsed.value.places[0]?.anchors[2]?.mount).toEqual(mount)
    expect(parseLayoutText(layoutText(parsed.value))).toEqual(parsed)
  })

  it.each([
    { path: ['places', 0, 'seat', 'shellThicknessMm'], least: 0, most: 60 },
    { path: beltPath('shoulderTailMm'), least: 20, most: 2000 },
    { path: anchorPath(2, 'mount', 'widthMm'), least: 5, most: 200 },
    { path: anchorPath(2, 'mount', 'edgeDistanceMm'), least: 3, most: 150 },
  ])('holds $path to its limits', ({ path, least, most }) => {
    for (const value of [least, most]) expect(problemsOf(rockBuggyWith(path, value))).toEqual([])
    for (const value of [least - 0.1, most + 0.1]) {
      const [problem] = problemsOf(rockBuggyWith(path, value))
      expect(problem?.remedy).toBe(`Put a number from ${least} to ${most} mm there.`)
    }
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

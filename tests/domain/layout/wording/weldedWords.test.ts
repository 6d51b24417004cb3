import { describe, expect, it } from 'vitest'

import { anchorReading } from '../../../../src/domain/layout/asWelded/anchorReading'
import { anchorDeviation } from '../../../../src/domain/layout/asWelded/deviation'
import { findingChanges } from '../../../../src/domain/layout/asWelded/findingChanges'
import { measuredLayout } from '../../../../src/domain/layout/asWelded/measuredLayout'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import {
  problemOf,
  qualityLines,
  qualityText,
  readingLines,
} from '../../../../src/domain/layout/wording/readingLines'
import {
  anchorVerdictWords,
  assumedText,
  axisOffText,
  cannotTellText,
  changesSummaryText,
  entryName,
  goneText,
  judgedLength,
  measureToText,
  mirrorChoices,
  offBarText,
  plannedOnlyText,
  replannedText,
} from '../../../../src/domain/layout/wording/weldedWords'
import type { AsWeldedRecord, MeasuredAnchor } from '../../../../src/domain/measure/asWeldedRecord'
import type { Measurement } from '../../../../src/domain/measure/measurement'
import { coordinatesAt, measuredAt, planOfExample, recordWith } from '../../../support/asWelded'

const BUGGY = planOfExample('rock-buggy.layout.json')
const TWO_SEATS = planOfExample('trail-car-two-seat.layout.json')
const TOLERANCE = { xMm: 2, yMm: 2, zMm: 2, tabDeg: 2, reclineDeg: 1, spread: 'worst-case' } as const

/** Turn and lean read as they were planned. */
const anglesAsPlanned = ({ planned }: MeasuredAnchor): Pick<MeasuredAnchor, 'planDeg' | 'leanDeg'> =>
  planned.kind === 'tab' ? { planDeg: [planned.planDeg], leanDeg: [planned.leanDeg] } : {}

const entryIn = (layout: Layout, strap: string): MeasuredAnchor => {
  const found = recordWith(layout, (entry) => entry).anchors.find((entry) => entry.strap === strap)
  if (found === undefined) throw new Error(`no ${strap}`)
  return found
}

const LAP = entryIn(BUGGY, 'lap-left')

const deviationOf = (measurement: Measurement | null, layout: Layout = { ...BUGGY, tolerance: TOLERANCE }) =>
  anchorDeviation(layout, anchorReading({ ...LAP, measurement }))

describe('words for what was welded', () => {
  it('name an entry alone in a car of one place, with its place in a car of several, and when the place is gone', () => {
    expect(entryName(LAP, BUGGY)).toBe('Left lap tab')
    expect(entryName(entryIn(TWO_SEATS, 'lap-left'), TWO_SEATS)).toMatch(/^.+: left lap tab$/)
    expect(entryName({ ...LAP, placeId: 'place-9' }, BUGGY)).toBe('place place-9: left lap tab')
  })

  it.each([
    ['x', 2.5, '2.5 mm rearward'],
    ['x', -2.5, '2.5 mm forward'],
    ['y', 1, '1 mm to the right'],
    ['y', -1, '1 mm to the left'],
    ['z', 3, '3 mm up'],
    ['z', -3, '3 mm down'],
    ['z', 0.04, 'none'],
    ['z', -0.04, 'none'],
  ] as const)('say a deviation of %s by %d mm as "%s"', (axis, offMm, words) => {
    expect(axisOffText(axis, offMm, 'mm')).toBe(words)
  })

  it('judge in millimetres beside inches: a sixteenth is too coarse', () => {
    expect(axisOffText('x', 1.2, 'in')).toBe('1/16 in (1.2 mm) rearward')
    expect(axisOffText('x', 0.5, 'in')).toBe('0.5 mm rearward')
    expect(judgedLength(0, 'in')).toBe('0 in (0 mm)')
  })

  it('say on which axis a measurement is too unsure to tell, and by how much', () => {
    const apart = deviationOf({ kind: 'coordinates', xMm: [1348, 1352], yMm: [70], zMm: [38] })
    expect(cannotTellText(apart, 'mm')).toBeNull()
    const more = deviationOf({ kind: 'coordinates', xMm: [1347, 1353], yMm: [70], zMm: [38] })
    expect(cannotTellText(more, 'mm')).toBe(
      'Too near the limit for how well it was measured. Off in x: none, by its readings ± 3 mm, where ± 2 mm is allowed. Read it again, several times, or from points that lie more square to it.',
    )
  })

  it('say how an anchor was measured, and what is odd about it', () => {
    const read = deviationOf({ kind: 'coordinates', xMm: [1347, 1353], yMm: [70], zMm: [38] })
    expect(qualityText(read, 'mm')).toBe(
      '4 readings, lengths up to 6 mm apart; by its readings ± 3 mm in x, ± 0.5 mm in y, ± 0.5 mm in z',
    )
    const lines = qualityLines(read, 'mm')
    expect(lines.filter(({ isWarning }) => isWarning).map(({ text }) => text)).toEqual([
      'The readings of x are 6 mm apart, more than 5 mm. Read again.',
    ])
    expect(lines.some(({ text }) => text.startsWith('X: 2 readings, mean 1350 mm'))).toBe(true)
    expect(qualityText(deviationOf(null), 'mm')).toBeNull()
  })

  it('say why there is no position', () => {
    const half = deviationOf({ kind: 'coordinates', xMm: [1350], yMm: [], zMm: [38] })
    expect(problemOf(half.reading, 'mm')).toBe('There is no reading of y yet. Type at least one.')
    expect(problemOf(deviationOf(null).reading, 'mm')).toBeNull()
  })

  it('list every reading as it was taken', () => {
    const from = { name: 'Datum', point: { xMm: 0, yMm: 0, zMm: 0 } }
    const lines = (measurement: Measurement, more: Partial<MeasuredAnchor> = {}) =>
      readingLines({ ...LAP, ...more, measurement }, 'mm')
    expect(
      lines(
        {
          kind: 'tapes',
          tapes: [{ from, lengthsMm: [1352.5, 1353] }],
          coordinate: { axis: 'z', readingsMm: [] },
          side: null,
        },
        { planDeg: [-31], leanDeg: [0.5, 1] },
      ),
    ).toEqual([
      'Tape from Datum: 1352.5 mm, 1353 mm',
      'z not read',
      'Tab turned in plan −31°',
      'Tab leaned 0.5°, 1°',
    ])
    expect(
      lines({
        kind: 'angle',
        from,
        stringDeg: [-2.5],
        lengthMm: [1400],
        runs: 'rearward',
        aside: { kind: 'y', readingsMm: [70] },
      }),
    ).toEqual(['String from Datum, rearward: −2.5° from level, 1400 mm long, to the right 70 mm'])
  })

  it('offer both places that fit the tapes and tell which is nearer to the plan, choosing none', () => {
    const pair = {
      normal: { xMm: 1350, yMm: 70, zMm: 40 },
      opposite: { xMm: 1350, yMm: 70, zMm: -60 },
      normalFaces: 'z',
      through: [
        { index: 0, name: 'A' },
        { index: 2, name: 'B' },
      ],
    } as const
    expect(mirrorChoices(pair, LAP.planned.point)).toEqual([
      {
        side: 'normal',
        point: pair.normal,
        where: 'Above the plane through the known points of tapes 1 and 3',
        fromPlanMm: 2,
        isNearerToPlan: true,
      },
      {
        side: 'opposite',
        point: pair.opposite,
        where: 'Below the plane through the known points of tapes 1 and 3',
        fromPlanMm: 98,
        isNearerToPlan: false,
      },
    ])
  })

  it('say which anchors are only planned, and which findings lean on them', () => {
    const record = recordWith(BUGGY, (entry) =>
      entry.strap.startsWith('lap') ? measuredAt(entry, BUGGY) : entry,
    )
    const { anchors } = measuredLayout(BUGGY, record)
    expect(plannedOnlyText(anchors, BUGGY)).toMatch(
      /^4 of 6 anchors are taken as planned: left shoulder tab \(not measured\), .* and right anti-submarine tab \(not measured\)\./,
    )
    expect(assumedText(anchors.slice(0, 2))).toBe(
      'Taken as planned, because not measured: left shoulder tab and right shoulder tab.',
    )
    expect(assumedText([])).toBeNull()
    const all = measuredLayout(
      BUGGY,
      recordWith(BUGGY, (entry) => measuredAt(entry, BUGGY)),
    )
    expect(plannedOnlyText(all.anchors, BUGGY)).toBeNull()
  })

  it('name the angles of a tab where only its position was measured', () => {
    const { anchors } = measuredLayout(
      BUGGY,
      recordWith(BUGGY, (entry) => measuredAt(entry, BUGGY)),
    )
    expect(assumedText(anchors.slice(0, 1))).toBe(
      'Taken as planned, because not measured: the angles of the left shoulder tab.',
    )
  })

  it('never call a tab within tolerance whose angles nobody measured without saying so', () => {
    const verdict = 'within' as const
    expect(anchorVerdictWords({ verdict, areAnglesUnmeasured: false })).toBe('within tolerance')
    expect(anchorVerdictWords({ verdict, areAnglesUnmeasured: true })).toContain('not all angles')
    expect(anchorVerdictWords({ verdict: 'outside', areAnglesUnmeasured: true })).toBe('outside tolerance')
  })

  it('sum up findings without claiming anything of anchors that are only planned', () => {
    const findings = evaluateLayout(BUGGY, { extent: 'what-moves' }).places.flatMap((place) => place.findings)
    const summary = (record: AsWeldedRecord): string => {
      const { anchors } = measuredLayout(BUGGY, record)
      return changesSummaryText(findingChanges(findings, findings, anchors), findings, anchors)
    }
    const all = recordWith(BUGGY, (entry) => ({ ...measuredAt(entry, BUGGY), ...anglesAsPlanned(entry) }))
    expect(summary(all)).toBe('On the car as welded: none broken; none unchecked.')
    // Six tabs, each with one finding of how its plane is turned to its strap.
    expect(summary(recordWith(BUGGY, (entry) => measuredAt(entry, BUGGY)))).toBe(
      `On the car as far as it is measured: none broken; none unchecked. 6 of ${findings.length} findings rest on anchors or angles that are only planned, and say nothing of the car.`,
    )
    const onlyLap = recordWith(BUGGY, (entry) =>
      entry.strap.startsWith('lap') ? measuredAt(entry, BUGGY) : entry,
    )
    expect(summary(onlyLap)).toMatch(
      /^On the car as far as it is measured: none broken; none unchecked\. \d+ of \d+ findings rest on anchors or angles that are only planned/,
    )
  })

  it('say that a bar is not where it was planned, from more than 2 mm on', () => {
    const at = (zMm: number) => {
      const record = recordWith(TWO_SEATS, (entry) => measuredAt(entry, TWO_SEATS, { zMm }))
      const wrap = measuredLayout(TWO_SEATS, record).anchors.find(({ mount }) => mount.kind === 'wrap')
      return wrap === undefined ? 'no wrap' : offBarText(wrap, TWO_SEATS)
    }
    expect(at(2)).toBeNull()
    expect(at(-6)).toContain('so the bar itself is not where it was planned')
    expect(at(-6)).toContain('1/4 in (6 mm)')
  })

  it('say what went missing from the plan or was planned anew', () => {
    expect(goneText(LAP, BUGGY)).toContain('Left lap tab: the layout has no such anchor any more')
    const [welded] = measuredLayout(
      BUGGY,
      recordWith(BUGGY, (entry) => entry),
    ).anchors
    if (welded === undefined) throw new Error('no anchor')
    expect(replannedText(welded)).toBeNull()
    expect(replannedText({ ...welded, isReplanned: true })).toContain('the plan has changed')
  })

  it('say where the other end of the tape is held', () => {
    expect(measureToText(LAP.planned, BUGGY)).toContain('2.4 mm (1/8 in) in from either face')
    const wrap = entryIn(TWO_SEATS, 'shoulder-left').planned
    expect(measureToText(wrap, TWO_SEATS)).toContain('outside of the bar')
  })
})

describe('a measurement from coordinates', () => {
  it('is nobody’s plan: readings at the plan show no deviation', () => {
    const { position } = deviationOf(coordinatesAt(LAP.planned.point))
    expect([position?.x.off, position?.y.off, position?.z.off, position?.totalMm]).toEqual([0, 0, 0, 0])
  })
})

import { describe, expect, it } from 'vitest'

import {
  measureProblemText,
  residualText,
  scatterText,
  scatterWarning,
  sensitivityWarning,
} from '../../../../src/domain/layout/wording/measureWords'
import type { MeasureProblem } from '../../../../src/domain/measure/measureProblem'
import { type Scatter, scatterOf } from '../../../../src/domain/measure/scatter'
import { pointMm } from '../../../../src/domain/geometry/point'

const A = { index: 0, name: 'seat bolt' }
const B = { index: 1, name: 'hoop mark' }
const C = { index: 2, name: '' }
const tape = { kind: 'tape', ...A } as const

const problems: readonly {
  readonly problem: MeasureProblem
  readonly mm: RegExp
  readonly inches: RegExp
}[] = [
  {
    problem: { kind: 'no-readings', of: tape },
    mm: /no reading of the tape from “seat bolt” yet\. Type at least one/,
    inches: /at least one/,
  },
  {
    problem: { kind: 'not-finite', of: { kind: 'coordinate', axis: 'z' }, index: 1 },
    mm: /Reading 2 of z is not a number\. Type it again/,
    inches: /Reading 2/,
  },
  {
    problem: { kind: 'not-above-zero', of: tape, index: 0, value: -12 },
    mm: /is −12 mm, but a length is more than 0/,
    inches: /is −1\/2 in \(−12 mm\)/,
  },
  {
    problem: { kind: 'out-of-range', of: { kind: 'string-angle' }, index: 2, value: 95, min: -90, max: 90 },
    mm: /Reading 3 of the angle of the string is 95°, outside −90° to 90°/,
    inches: /95°, outside −90° to 90°/,
  },
  {
    problem: { kind: 'known-point-unusable', name: 'fire wall', point: pointMm(1e9, 0, 0) },
    mm: /“fire wall” cannot be used/,
    inches: /Type it again/,
  },
  {
    problem: { kind: 'too-few-tapes', tapes: 1, hasCoordinate: true },
    mm: /^1 tape and a coordinate do not tell a position\. Pull three tapes/,
    inches: /or two and measure one coordinate/,
  },
  {
    problem: { kind: 'too-few-tapes', tapes: 2, hasCoordinate: false },
    mm: /^2 tapes do not tell/,
    inches: /three tapes/,
  },
  { problem: { kind: 'too-many-tapes', tapes: 9, most: 8 }, mm: /Keep the best 8/, inches: /9 tapes/ },
  {
    problem: { kind: 'same-point-twice', first: A, second: C, apartMm: 0.4 },
    mm: /^“seat bolt” and known point 3 are one and the same point \(0\.4 mm apart\)\. Put both readings into one tape/,
    inches: /another tape from elsewhere/,
  },
  {
    problem: { kind: 'points-in-line', names: [A, B, C], offMm: 0.3 },
    mm: /“seat bolt”, “hoop mark” and known point 3 lie in one line .*Pull a tape from a point well off the line/,
    inches: /\(0\.3 mm off it at most\)/,
  },
  {
    problem: { kind: 'points-along-axis', names: [A, B], axis: 'z', offMm: 0 },
    mm: /lie plumb over each other, so z tells nothing/,
    inches: /Measure another coordinate/,
  },
  {
    problem: { kind: 'tapes-too-short', first: A, second: B, apartMm: 1000, shortMm: 20 },
    mm: /“seat bolt” and “hoop mark” do not meet: the points are 1000 mm apart, and together the tapes are 20 mm too short/,
    // 20 mm rounded up to the next sixteenth: 13/16 in is 20.6 mm.
    inches: /13\/16 in \(20 mm\) too short/,
  },
  {
    problem: { kind: 'tapes-too-short', first: A, second: B, apartMm: 1000, shortMm: 1e-6 },
    mm: /0\.1 mm too short/,
    inches: /1\/16 in \(0\.1 mm\) too short/,
  },
  {
    problem: { kind: 'tape-too-long', longer: B, shorter: A, apartMm: 1000, overMm: 25.4 },
    mm: /The tape from “hoop mark” is 25\.4 mm too long to end where the one from “seat bolt” ends/,
    inches: /1 in \(25\.4 mm\) too long/,
  },
  {
    problem: { kind: 'third-tape-misses', first: A, second: B, third: C, lengthMm: 390, nearestMm: 400 },
    mm: /The tape from known point 3 does not end where those from “seat bolt” and “hoop mark” meet: it is at least 10 mm too short/,
    inches: /too short/,
  },
  {
    problem: { kind: 'third-tape-misses', first: A, second: B, third: C, lengthMm: 410, nearestMm: 400 },
    mm: /at least 10 mm too long\. Read the three again/,
    inches: /too long/,
  },
  {
    // As much as tapes are read to: to read again would give the same.
    problem: { kind: 'third-tape-misses', first: A, second: B, third: C, lengthMm: 403, nearestMm: 400 },
    mm: /at least 3 mm too long\. No more than readings may be off by: .* Pull one more tape from a point well out of it/,
    inches: /Pull one more tape/,
  },
  {
    problem: {
      kind: 'coordinate-out-of-reach',
      first: A,
      second: B,
      axis: 'z',
      coordinateMm: 310,
      nearestMm: 300,
    },
    mm: /has z 310 mm: the nearest is 10 mm away, at 300 mm/,
    inches: /7\/16 in \(10 mm\) away/,
  },
  {
    problem: {
      kind: 'side-not-chosen',
      pair: { normal: pointMm(0, 0, 1), opposite: pointMm(0, 0, -1), normalFaces: 'z', through: [A, B, C] },
    },
    mm: /Two places fit these tapes, one on each side of the plane of “seat bolt”, “hoop mark” and known point 3\. Choose/,
    inches: /one more tape from a point out of that plane/,
  },
  {
    problem: { kind: 'aside-too-long', asideMm: -260, levelRunMm: 250 },
    mm: /goes 260 mm aside, but at its angle its level run is only 250 mm long: 10 mm too short/,
    inches: /too short/,
  },
]

describe('measureProblemText', () => {
  it.each(problems)('says what, where and how to mend it: $problem.kind', ({ problem, mm, inches }) => {
    expect(measureProblemText(problem, 'mm')).toMatch(mm)
    expect(measureProblemText(problem, 'in')).toMatch(inches)
    // A whole sentence on what to do ends it.
    expect(measureProblemText(problem, 'mm')).toMatch(/\.$/)
    expect(measureProblemText(problem, 'mm')).not.toMatch(/NaN|Infinity|undefined|null/)
  })
})

const scatter = (readings: readonly number[]): Scatter => {
  const result = scatterOf(tape, 'mm', readings, { min: 0, max: 10_000, isLength: true })
  if (!result.ok) throw new Error(result.error.kind)
  return result.value
}

describe('what is said of readings', () => {
  it('one as it is, several with their mean and how far they are apart', () => {
    expect(scatterText(scatter([612]), 'mm')).toBe('1 reading, 612 mm')
    expect(scatterText(scatter([612, 613.5]), 'mm')).toBe('2 readings, mean 612.8 mm, 1.5 mm apart')
    expect(scatterText(scatter([254, 254]), 'in')).toBe('2 readings, mean 10 in (254 mm), 0 in (0 mm) apart')
  })

  it('a stray one by its number, its value and how far off it is', () => {
    expect(scatterWarning(scatter([612, 622, 613]), 'mm')).toBe(
      'Reading 2 of the tape from “seat bolt”, 622 mm, is 9.5 mm more than the others, which agree. It still counts in the mean: read again, and take it out if it was a slip.',
    )
    expect(scatterWarning(scatter([612, 613]), 'mm')).toBeNull()
    expect(scatterWarning(scatter([612, 620]), 'mm')).toMatch(/8 mm apart, more than 5 mm\. Read again/)
  })
})

describe('what is said of how a point was measured', () => {
  it('nothing where it is good, what it costs where it is bad', () => {
    expect(sensitivityWarning({ mmPerMm: 1.7, mmPerDeg: null }, 'mm', 'tapes')).toBeNull()
    expect(sensitivityWarning({ mmPerMm: 12.03, mmPerDeg: null }, 'mm', 'tapes')).toBe(
      'This is a bad way to measure this point: 1 mm of error in what was read moves it by up to 12.1 mm. The tapes pull nearly along one plane. Pull one from a point that lies square to the others.',
    )
    expect(sensitivityWarning({ mmPerMm: 1, mmPerDeg: 9 }, 'mm', 'angle')).toMatch(
      /^1° of error in the angles moves this point by up to 9 mm\. Start from a nearer point/,
    )
    expect(sensitivityWarning({ mmPerMm: 1, mmPerDeg: 7.9 }, 'mm', 'angle')).toBeNull()
  })

  it('how well more tapes than are needed agree', () => {
    expect(residualText({ residualMm: null, oddOneOut: null, hiddenMm: null }, 'mm')).toBeNull()
    expect(residualText({ residualMm: 0.42, oddOneOut: null, hiddenMm: 5 }, 'mm')).toBe(
      'What was measured agrees within 0.5 mm.',
    )
    expect(residualText({ residualMm: 3, oddOneOut: null, hiddenMm: 9 }, 'mm')).toMatch(
      /agrees within 3 mm\. One wrong reading could still hide in that and move the point by up to 9 mm/,
    )
    expect(residualText({ residualMm: 0, oddOneOut: null, hiddenMm: null }, 'mm')).toMatch(
      /one of the readings is checked by none of the others: pull one more tape/,
    )
    expect(residualText({ residualMm: 6, oddOneOut: tape, hiddenMm: 9 }, 'mm')).toMatch(
      /disagrees by up to 6 mm\. Without the tape from “seat bolt” all others agree/,
    )
    expect(residualText({ residualMm: 3.1, oddOneOut: null, hiddenMm: 9 }, 'mm')).toMatch(
      /which one cannot be told: read all of them again, or pull more tapes/,
    )
  })
})

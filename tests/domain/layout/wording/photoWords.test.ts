import { describe, expect, it } from 'vitest'
import {
  calibrationProblemText,
  checkLengthText,
  markWords,
  parallaxText,
  traceErrorText,
} from '../../../../src/domain/layout/wording/photoWords'
import type { CalibrationProblem } from '../../../../src/domain/measure/photo/calibrationProblem'
import { LENGTH_MARKS, RECTANGLE_MARKS } from '../../../../src/domain/measure/photo/photo'
import { px, rectanglePhoto, squarePhoto } from '../../measure/photo/photos'

const SIDE = squarePhoto()
const TOP = rectanglePhoto([px(1, 1), px(2, 1), px(2, 2), px(1, 2)], {}, { elevation: 'top' })

describe('markWords', () => {
  it('names each cross of a kind differently, and sides as the occupant has them', () => {
    const length = LENGTH_MARKS.map((id) => markWords(SIDE, id))
    const corners = RECTANGLE_MARKS.map((id) => markWords(TOP, id))
    expect(new Set(length).size).toBe(5)
    expect(new Set(corners).size).toBe(4)
    // The top elevation has +y, the occupant's right, up: what is low on it is to the left.
    expect(markWords(TOP, 'frontLow')).toBe('left front corner')
    expect(markWords(squarePhoto({ runs: 'plumb' }, { elevation: 'top' }), 'levelFrom')).toContain('left end')
  })
})

describe('calibrationProblemText', () => {
  it.each<{ problem: CalibrationProblem; says: readonly string[] }>([
    { problem: { kind: 'mark-missing', marks: ['known', 'levelTo'] }, says: ['known point', 'rear end'] },
    { problem: { kind: 'number-missing', what: 'place' }, says: ['typed', 'from the datum'] },
    {
      problem: { kind: 'points-too-near', marks: ['lengthFrom', 'lengthTo'], apartPx: 12.4, leastPx: 80 },
      says: ['first end', 'second end', '12 px', '80 px'],
    },
    {
      problem: { kind: 'in-line', marks: ['rearLow', 'rearHigh', 'frontHigh'], offPx: 17.9, leastPx: 40 },
      says: ['lower rear corner', '18 px', '40 px'],
    },
    { problem: { kind: 'corners-crossed' }, says: ['swapped'] },
    { problem: { kind: 'wrong-way-round', mirrored: false }, says: ['from the other side', 'swap'] },
    { problem: { kind: 'horizon-in-picture' }, says: ['inside the picture'] },
    {
      problem: { kind: 'scale-out-of-reason', spanMm: 49.8, leastMm: 50, mostMm: 40_000 },
      says: ['49.8 mm', '50 mm', '40000 mm'],
    },
  ])('says what is wrong and how to mend it: $problem.kind', ({ problem, says }) => {
    const text = calibrationProblemText(problem, SIDE, 'mm')
    for (const part of says) expect(text).toContain(part)
    expect(text.endsWith('.')).toBe(true)
  })
})

describe('figures in words', () => {
  it('a pixel and the crosses, never finer than it means anything', () => {
    expect(traceErrorText({ pixelMm: 0.472, marksMm: 12.6 }, 'mm')).toContain('0.5 mm here')
    expect(traceErrorText({ pixelMm: 0.472, marksMm: 12.6 }, 'mm')).toContain('about 13 mm off')
    // 0.01 in is 0.254 mm.
    expect(traceErrorText({ pixelMm: 0.001, marksMm: 2.54 }, 'in')).toContain('0.01 in here')
    expect(traceErrorText({ pixelMm: 0.001, marksMm: 2.54 }, 'in')).toContain('about 0.1 in off')
  })

  it('a check length: how much, which way, and in per cent', () => {
    // 2 of 400 are 0.5 %.
    expect(checkLengthText(402, 400, 'mm')).toBe(
      'Typed 400 mm; on the picture it measures 402 mm: 2 mm too long (0.5 %).',
    )
    expect(checkLengthText(399, 400, 'mm')).toContain('1 mm too short')
    expect(checkLengthText(400.04, 400, 'mm')).toContain('the same')
    expect(checkLengthText(400, undefined, 'mm')).toContain('Type what it is')
  })

  it('parallax both ways, and of a part that would be at the lens', () => {
    // 1,000·300/2,700 = 111 mm; 1,000·300/3,300 = 91 mm.
    expect(parallaxText(3000, 300, 'mm')).toContain('111 mm too far out')
    expect(parallaxText(3000, -300, 'mm')).toContain('91 mm too far in')
    expect(parallaxText(300, 300, 'mm')).toContain('Check the distance')
  })
})

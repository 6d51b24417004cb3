import { describe, expect, it } from 'vitest'
import { pointMm } from '../../../../src/domain/geometry/point'
import { clockText, fromMarkText, templateProblemText } from '../../../../src/domain/layout/wording/tabText'
import type { Way } from '../../../../src/domain/shop/tab/way'
import { exampleLayout } from '../../../support/exampleLayouts'

const rock = exampleLayout('rock-buggy.layout.json')
const inches = { ...rock, units: { ...rock.units, length: 'in' as const } }

describe('clockText', () => {
  it.each([
    { from: 'top', clockDeg: -38.04, toward: 'front', text: '38° from plumb toward the front' },
    { from: 'top', clockDeg: 90, toward: 'rear', text: '90° from plumb toward the rear' },
    { from: 'top', clockDeg: 0.04, toward: 'rear', text: 'at the very top of the tube' },
    { from: 'top', clockDeg: -179.97, toward: 'front', text: 'at the very bottom of the tube' },
    { from: 'front', clockDeg: 30, toward: 'right', text: '30° from straight forward toward the right' },
    { from: 'front', clockDeg: 180, toward: 'right', text: 'at the very rear of the tube' },
    { from: 'top', clockDeg: 45, toward: 'up', text: '45° from plumb toward the top' },
    {
      from: 'top',
      clockDeg: 38,
      toward: 'front',
      zeroOffDeg: 18,
      text: '38° round the tube from its top line toward the front',
    },
    { from: 'top', clockDeg: 38, toward: 'front', zeroOffDeg: 5, text: '38° from plumb toward the front' },
  ] as const)('says $text', ({ text, ...clock }) => {
    expect(clockText({ zeroOffDeg: 0, ...clock })).toBe(text)
  })
})

describe('fromMarkText', () => {
  const mark = {
    kind: 'crossing',
    otherTubeId: 'harness-bar',
    pointNumber: null,
    point: pointMm(0, 0, 0),
    alongTubeMm: 100,
  } as const

  it.each([
    { layout: rock, way: 'left', text: '70 mm to the left of the crossing with Harness bar (centre lines)' },
    {
      layout: inches,
      way: 'down',
      text: '2 3/4 in (70 mm) below the crossing with Harness bar (centre lines)',
    },
    { layout: rock, way: 'up', text: '70 mm above the crossing with Harness bar (centre lines)' },
    { layout: rock, way: null, text: 'on the crossing with Harness bar (centre lines)' },
  ] as const)('says $text', ({ layout, way, text }) => {
    expect(fromMarkText({ mark, distanceMm: 70, way: way satisfies Way | null }, layout)).toBe(text)
  })

  it('names a bend by its point', () => {
    const bend = { ...mark, kind: 'bend', otherTubeId: null, pointNumber: 3 } as const
    expect(fromMarkText({ mark: bend, distanceMm: 12.34, way: 'right' }, rock)).toBe(
      '12.3 mm to the right of the bend P3 (centre lines)',
    )
  })
})

describe('templateProblemText', () => {
  it('tells the numbers and what to do, in the shop’s unit', () => {
    expect(templateProblemText({ kind: 'hole-at-tube', roomMm: 2.5, neededMm: 4.8 }, rock)).toBe(
      'Between the edge of its hole and the tube there is 2.5 mm; a bead as large as the plate is thick needs 4.8 mm. Move the hole away from the tube.',
    )
    expect(templateProblemText({ kind: 'hole-at-tube', roomMm: -1, neededMm: 4.8 }, rock)).toContain(
      'no steel at all',
    )
    expect(templateProblemText({ kind: 'plane-misses', besideMm: 25.4 }, inches)).toContain(
      '1 in (25.4 mm) beside it',
    )
    expect(templateProblemText({ kind: 'insert-beside', gapMm: -3 }, rock)).toContain(
      '3 mm of it in the tube',
    )
    expect(templateProblemText({ kind: 'beyond-end', tubeId: 'harness-bar', beyondMm: 8 }, rock)).toBe(
      'It lies 8 mm past the end of Harness bar. Move it back along the tube, or draw the tube longer.',
    )
  })
})

import { describe, expect, it } from 'vitest'

import { elevationDrawing } from '../../../../src/domain/layout/drawing/elevationDrawing'
import type { DrawingOptions } from '../../../../src/domain/layout/drawing/options'
import {
  type MeasuredMark,
  measuredPrimitives,
} from '../../../../src/domain/layout/drawing/measuredPrimitives'
import type { Primitive } from '../../../../src/domain/layout/drawing/primitive'
import { layoutNumbers } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { planOfExample } from '../../../support/asWelded'

const MARK: MeasuredMark = {
  placeId: 'driver',
  anchorId: 'driver-lap-left',
  from: { xMm: 1350, yMm: 70, zMm: 38 },
  to: { xMm: 1356, yMm: 68, zMm: 41 },
  text: '7 mm',
  isOutside: false,
  isPicked: false,
}

const lines = (primitives: readonly Primitive[]) =>
  primitives.flatMap((primitive) => (primitive.kind === 'polyline' ? [primitive] : []))

describe('measuredPrimitives', () => {
  it('puts a cross where the anchor was measured, and the way there from where it is planned', () => {
    const [way, level, upright] = lines(measuredPrimitives([MARK], 'side', 20))
    expect(way?.points).toEqual([
      { uMm: 1350, vMm: 38 },
      { uMm: 1356, vMm: 41 },
    ])
    // Nine tenths of a line of text of 20 mm across.
    expect(level?.points).toEqual([
      { uMm: 1347, vMm: 41 },
      { uMm: 1365, vMm: 41 },
    ])
    expect(upright?.points).toEqual([
      { uMm: 1356, vMm: 32 },
      { uMm: 1356, vMm: 50 },
    ])
  })

  it('shows y in the top elevation', () => {
    const [way] = lines(measuredPrimitives([MARK], 'top', 20))
    expect(way?.points).toEqual([
      { uMm: 1350, vMm: 70 },
      { uMm: 1356, vMm: 68 },
    ])
  })

  it('draws what is outside the tolerance as broken, what is in hand strongly, the rest plainly', () => {
    const styleOf = (part: Partial<MeasuredMark>) =>
      lines(measuredPrimitives([{ ...MARK, ...part }], 'side', 20))[1]?.style
    expect(styleOf({ isOutside: true, isPicked: true })).toBe('broken')
    expect(styleOf({ isPicked: true })).toBe('focus')
    expect(styleOf({})).toBe('outline')
  })

  it('is on both elevations of a layout with how far off it is, and on none without', () => {
    const layout = planOfExample('rock-buggy.layout.json')
    const evaluation = layoutNumbers(layout)
    const options: DrawingOptions = {
      placeId: null,
      sittingId: null,
      ghosts: false,
      zones: 'none',
      focusedFindingId: null,
      dimensions: 'none',
      lengthUnit: 'mm',
      angles: false,
      handles: false,
    }
    for (const elevation of ['side', 'top'] as const) {
      const drawn = (measured: readonly MeasuredMark[]) =>
        elevationDrawing(layout, evaluation, elevation, { ...options, measured }).primitives
      const marked = drawn([{ ...MARK, isPicked: true }])
      expect(marked.some((primitive) => primitive.kind === 'label' && primitive.text === '7 mm')).toBe(true)
      expect(drawn([])).toEqual(elevationDrawing(layout, evaluation, elevation, options).primitives)
    }
  })
})

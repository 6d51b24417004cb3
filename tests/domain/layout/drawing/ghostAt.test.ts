import { describe, expect, it } from 'vitest'
import { planePoint } from '../../../../src/domain/geometry/plane'
import { elevationDrawing } from '../../../../src/domain/layout/drawing/elevationDrawing'
import { ghostAt, ghostPart } from '../../../../src/domain/layout/drawing/ghostAt'
import type { Primitive } from '../../../../src/domain/layout/drawing/primitive'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { exampleLayout } from '../../../support/exampleLayouts'

const square = (sittingId: string, sideMm: number): Primitive => ({
  kind: 'polyline',
  key: `p/ghost/${sittingId}/trunk`,
  part: ghostPart(sittingId),
  points: [planePoint(0, 0), planePoint(sideMm, 0), planePoint(sideMm, sideMm), planePoint(0, sideMm)],
  closed: true,
  style: 'ghost',
})
const circle = (sittingId: string, radiusMm: number): Primitive => ({
  kind: 'circle',
  key: `p/ghost/${sittingId}/helmet`,
  part: ghostPart(sittingId),
  centre: planePoint(0, 0),
  radiusMm,
  style: 'ghost',
})

describe('ghostAt', () => {
  it('finds the outline within reach and nothing beyond it', () => {
    expect(ghostAt([square('a', 100)], planePoint(50, -5), 5)).toBe('a')
    expect(ghostAt([square('a', 100)], planePoint(50, -5.1), 5)).toBeNull()
  })

  it('counts the side that closes an outline, and the line of a circle but not its middle', () => {
    expect(ghostAt([square('a', 100)], planePoint(-3, 50), 5)).toBe('a')
    expect(ghostAt([circle('a', 100)], planePoint(0, 97), 5)).toBe('a')
    expect(ghostAt([circle('a', 100)], planePoint(0, 0), 5)).toBeNull()
  })

  it('takes the nearest of several', () => {
    expect(ghostAt([square('a', 100), square('b', 104)], planePoint(50, 101), 10)).toBe('a')
    expect(ghostAt([square('a', 100), square('b', 104)], planePoint(50, 103), 10)).toBe('b')
  })

  it('passes over everything that is no ghost', () => {
    expect(ghostAt([{ ...square('a', 100), part: null }], planePoint(50, 0), 5)).toBeNull()
  })
})

describe('elevationDrawing of a sitting that is pointed at', () => {
  const layout = exampleLayout('trail-car-two-seat.layout.json')
  const evaluation = evaluateLayout(layout)
  const sittings = evaluation.places[0]?.sittings ?? []
  const drawn = (pointedSittingId: string | null): readonly Primitive[] =>
    elevationDrawing(layout, evaluation, 'side', {
      placeId: evaluation.places[0]?.placeId ?? null,
      sittingId: null,
      ghosts: true,
      pointedSittingId,
      zones: 'none',
      focusedFindingId: null,
      dimensions: 'none',
      lengthUnit: 'mm',
      angles: false,
      handles: false,
    }).primitives

  it('names that ghost once, draws it dashed and above the others', () => {
    const pointed = sittings[1]?.sitting.id ?? ''
    const primitives = drawn(pointed)
    const own = primitives.filter(({ part }) => part === ghostPart(pointed))
    expect(own.filter(({ kind }) => kind === 'label')).toHaveLength(1)
    const lines = own.filter(({ kind }) => kind === 'circle' || kind === 'polyline')
    expect(lines.some((line) => 'style' in line && line.style === 'hidden')).toBe(true)
    const ghosts = primitives.filter(
      ({ part, kind }) => part?.startsWith('sitting:') === true && kind === 'circle',
    )
    expect(ghosts).toHaveLength(sittings.length - 1)
    expect(ghosts.at(-1)?.part).toBe(ghostPart(pointed))
  })

  it('names nothing when none is pointed at, or the one that is drawn solid', () => {
    const names = (id: string | null): number =>
      drawn(id).filter(({ part, kind }) => part?.startsWith('sitting:') === true && kind === 'label').length
    expect(names(null)).toBe(0)
    expect(names(sittings[0]?.sitting.id ?? null)).toBe(0)
  })
})

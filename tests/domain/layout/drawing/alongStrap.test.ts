import { describe, expect, it } from 'vitest'

import { pointMm } from '../../../../src/domain/geometry/point'
import { bandAbout, placedAdjusters, polylinePart } from '../../../../src/domain/layout/drawing/alongStrap'
import { emptyLayout } from '../../../../src/domain/layout/document/empty'
import type { StrapPath } from '../../../../src/domain/straps/path'

// 100 mm rearward, then 50 mm up.
const line = [pointMm(0, 0, 0), pointMm(100, 0, 0), pointMm(100, 0, 50)]

describe('polylinePart', () => {
  it('cuts out what lies between two lengths, round a corner too', () => {
    expect(polylinePart(line, 20, 60)).toEqual([pointMm(20, 0, 0), pointMm(60, 0, 0)])
    expect(polylinePart(line, 90, 120)).toEqual([pointMm(90, 0, 0), pointMm(100, 0, 0), pointMm(100, 0, 20)])
  })

  it('starts at a corner without a piece of no length', () => {
    expect(polylinePart(line, 100, 130)).toEqual([pointMm(100, 0, 0), pointMm(100, 0, 30)])
  })

  it('ends where the line ends, and is empty beyond it', () => {
    expect(polylinePart(line, 140, 200)).toEqual([pointMm(100, 0, 40), pointMm(100, 0, 50)])
    expect(polylinePart(line, 150, 200)).toEqual([])
  })
})

describe('placedAdjusters', () => {
  const path: StrapPath = {
    strap: 'lap-left',
    contacts: [],
    polyline: line,
    effectiveAnchor: pointMm(0, 0, 0),
    bodyContact: pointMm(100, 0, 0),
    lengthMm: 150,
  }
  const belt = emptyLayout().places[0]?.belt
  if (belt === undefined) throw new Error('no place')

  it('lay the body half of its length to each side of its middle, measured from the anchor', () => {
    const placed = placedAdjusters({ ...belt, adjusters: { lap: { fromAnchorMm: 50, lengthMm: 60 } } }, [
      path,
    ])
    expect(placed.map(({ line: body }) => body)).toEqual([[pointMm(20, 0, 0), pointMm(80, 0, 0)]])
  })

  it('are none on straps of another family, nor beyond the end of the strap', () => {
    expect(
      placedAdjusters({ ...belt, adjusters: { shoulder: { fromAnchorMm: 50, lengthMm: 60 } } }, [path]),
    ).toEqual([])
    expect(
      placedAdjusters({ ...belt, adjusters: { lap: { fromAnchorMm: 181, lengthMm: 60 } } }, [path]),
    ).toEqual([])
  })
})

describe('bandAbout', () => {
  it('is as wide as asked on both sides of the line', () => {
    expect(bandAbout([pointMm(0, 7, 0), pointMm(100, 7, 0)], 6, 'side')).toEqual([
      { uMm: 0, vMm: 6 },
      { uMm: 100, vMm: 6 },
      { uMm: 100, vMm: -6 },
      { uMm: 0, vMm: -6 },
    ])
  })

  it('is nothing where the elevation sees the line end on', () => {
    expect(bandAbout([pointMm(0, 0, 0), pointMm(0, 0, 60)], 6, 'top')).toBeNull()
  })
})

import { describe, expect, it } from 'vitest'
import { type PointMm, pointMm } from '../../../../src/domain/geometry/point'
import type { Tube } from '../../../../src/domain/geometry/tube'
import { type AnchorDetail, anchorDetail } from '../../../../src/domain/layout/drawing/anchorDetail'
import type { Primitive } from '../../../../src/domain/layout/drawing/primitive'
import { tabOnTube } from '../../../../src/domain/shop/tab/tabOnTube'
import type { Mount, TabMount } from '../../../../src/domain/straps/anchor'

/** Straight across the car, left to right, 40 mm thick. */
const bar: Tube = {
  id: 'bar',
  name: 'Harness bar',
  role: 'harness-bar',
  points: [pointMm(1600, -400, 700), pointMm(1600, 400, 700)],
  outsideDiameterMm: 40,
  wallMm: 2.5,
}

const tabAt = (point: PointMm): TabMount => ({
  kind: 'tab',
  point,
  planDeg: 0,
  leanDeg: 0,
  thicknessMm: 5,
  holeDiameterMm: 12,
  shear: 'double',
  tubeId: 'bar',
})

const detailOf = (mount: Mount): AnchorDetail =>
  anchorDetail({ mount, on: tabOnTube({ mount }, [bar]), path: null, lengthUnit: 'mm', textHeightMm: 6 })

const find = (detail: AnchorDetail, key: string): Primitive | undefined =>
  detail.primitives.find((primitive) => primitive.key === key)

const middleOf = (primitive: Primitive | undefined): readonly [number, number] => {
  if (primitive?.kind !== 'polyline') throw new Error('it is a line')
  const us = primitive.points.map(({ uMm }) => uMm)
  const vs = primitive.points.map(({ vMm }) => vMm)
  return [(Math.min(...us) + Math.max(...us)) / 2, (Math.min(...vs) + Math.max(...vs)) / 2]
}

describe('anchorDetail', () => {
  it('looks along the tube from its first point: to the right, so that front is at the left and rear at the right', () => {
    // Looking toward +y with z up, the right hand points along (+y) × z = +x, which is rearward.
    const detail = detailOf(tabAt(pointMm(1600, 0, 750)))
    expect(detail).toMatchObject({ facing: 'right', up: 'up', right: 'rear' })
  })

  it('puts the hole where it is: 30 mm ahead of and 40 mm above the centre line is left and up', () => {
    const detail = detailOf(tabAt(pointMm(1570, 0, 740)))
    const [u, v] = middleOf(find(detail, 'detail/hole'))
    expect(u).toBeCloseTo(-30, 6)
    expect(v).toBeCloseTo(40, 6)
    const clock = find(detail, 'detail/clock')
    // atan(30 / 40) = 36.87°, and 50 mm from the middle less the radius of 20 is 30 mm of standoff.
    expect(clock).toMatchObject({ kind: 'angle', text: '36.9°', fromDeg: 90 })
    expect(find(detail, 'detail/standoff-text')).toMatchObject({ text: '30' })
  })

  it('draws tube and bore at their true size about the middle', () => {
    const detail = detailOf(tabAt(pointMm(1600, 0, 750)))
    expect(find(detail, 'detail/tube')).toMatchObject({ kind: 'circle', radiusMm: 20 })
    expect(find(detail, 'detail/bore')).toMatchObject({ kind: 'circle', radiusMm: 17.5 })
  })

  it('shows a plate square across the tube face on, and one along the tube by its thickness', () => {
    const widthOf = (mount: TabMount): number => {
      const plate = find(detailOf(mount), 'detail/plate/only')
      if (plate?.kind !== 'polyline') throw new Error('there is a plate')
      const us = plate.points.map(({ uMm }) => uMm)
      return Math.max(...us) - Math.min(...us)
    }
    const across = tabAt(pointMm(1600, 0, 750))
    // Its rounded head is drawn with chords. Typed width; the tube runs across the car, so that a plate fore and aft is square across it and one turned 90° lies along it.
    expect(widthOf({ ...across, widthMm: 44 })).toBeCloseTo(44, 1)
    expect(widthOf({ ...across, widthMm: 44, planDeg: 90 })).toBeCloseTo(5, 3)
  })

  it('draws the webbing round the tube for a wrap, and neither hole nor standoff', () => {
    const detail = detailOf({
      kind: 'wrap',
      tubeId: 'bar',
      point: pointMm(1600, 0, 700),
      over: 'over',
      guideHoops: true,
    })
    expect(find(detail, 'detail/wrap')).toMatchObject({ kind: 'circle' })
    expect(find(detail, 'detail/hole')).toBeUndefined()
    expect(find(detail, 'detail/standoff')).toBeUndefined()
  })

  it('looks forward from behind at what stands on no tube', () => {
    const detail = detailOf({
      kind: 'eye',
      point: pointMm(1300, -280, 100),
      planDeg: 0,
      riseDeg: 60,
      threadDiameterMm: 11,
      eyeDiameterMm: 25,
      tubeId: null,
    })
    expect(detail).toMatchObject({ facing: 'front', up: 'up', right: 'right' })
    const [, v] = middleOf(find(detail, 'detail/shank'))
    // The shank rises to the eye, so that it lies below it.
    expect(v).toBeLessThan(0)
  })
})

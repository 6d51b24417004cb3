import { describe, expect, it } from 'vitest'

import type { Layout, Place } from '../../../../src/domain/layout/document/layout'
import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import { addAnchor, removeAnchor, withAnchor } from '../../../../src/domain/layout/edit/changeAnchors'
import {
  withAdjuster,
  withBelt,
  withShoulderTail,
  withStrapBolt,
} from '../../../../src/domain/layout/edit/changeBelt'
import { movedHandle } from '../../../../src/domain/layout/edit/move'
import type { Anchor } from '../../../../src/domain/straps/anchor'
import { strapsOf, type StrapId } from '../../../../src/domain/straps/strap'
import { exampleLayout } from '../../../support/exampleLayouts'

const rock = exampleLayout('rock-buggy.layout.json')

const first = (layout: Layout): Place => {
  const place = layout.places[0]
  if (place === undefined) throw new Error('no place')
  return place
}

const anchorOf = (layout: Layout, strap: StrapId): Anchor => {
  const anchor = first(layout).anchors.find((candidate) => candidate.strap === strap)
  if (anchor === undefined) throw new Error(`no anchor for ${strap}`)
  return anchor
}

const pointOf = (layout: Layout, strap: StrapId) => anchorOf(layout, strap).mount.point

describe('withBelt', () => {
  it('makes a 3-point belt of one shoulder strap, over the left shoulder until the right is chosen', () => {
    const three = withBelt(rock, 'driver', { arrangement: 3 })
    expect(strapsOf(first(three).belt)).toEqual(['shoulder-left', 'lap-left', 'lap-right'])
    const right = withBelt(three, 'driver', { diagonal: 'right' })
    expect(strapsOf(first(right).belt)).toEqual(['shoulder-right', 'lap-left', 'lap-right'])
  })

  it('drops what only another arrangement has', () => {
    const full = withAdjuster(
      withShoulderTail(withBelt(rock, 'driver', { thighStraps: 'under-thighs' }), 'driver', 160),
      'driver',
      'sub',
      { fromAnchorMm: 200, lengthMm: 50 },
    )
    expect(first(full).belt).toMatchObject({ thighStraps: 'under-thighs', shoulderTailMm: 160 })
    const five = first(withBelt(full, 'driver', { arrangement: 5 })).belt
    expect(five).not.toHaveProperty('thighStraps')
    expect(five).toMatchObject({
      shoulderTailMm: 160,
      adjusters: { sub: { fromAnchorMm: 200, lengthMm: 50 } },
    })
    const three = first(withBelt(full, 'driver', { arrangement: 3 })).belt
    expect(Object.keys(three)).not.toEqual(expect.arrayContaining(['thighStraps']))
    expect(three).not.toHaveProperty('shoulderTailMm')
    expect(three).not.toHaveProperty('adjusters')
    const six = withBelt(withBelt(full, 'driver', { arrangement: 3, diagonal: 'right' }), 'driver', {
      arrangement: 6,
    })
    expect(first(six).belt).not.toHaveProperty('diagonal')
  })
})

describe('withAdjuster', () => {
  it('keeps the body on the strap: its middle at least half its length from the anchor', () => {
    const placed = withAdjuster(rock, 'driver', 'lap', { fromAnchorMm: 10, lengthMm: 70 })
    expect(first(placed).belt.adjusters).toEqual({ lap: { fromAnchorMm: 35, lengthMm: 70 } })
  })

  it('says nothing about a family once it is cleared, and nothing at all once none is left', () => {
    const both = withAdjuster(
      withAdjuster(rock, 'driver', 'lap', { fromAnchorMm: 120, lengthMm: 70 }),
      'driver',
      'shoulder',
      { fromAnchorMm: 300, lengthMm: 60 },
    )
    const one = withAdjuster(both, 'driver', 'lap', null)
    expect(first(one).belt.adjusters).toEqual({ shoulder: { fromAnchorMm: 300, lengthMm: 60 } })
    expect(first(withAdjuster(one, 'driver', 'shoulder', null)).belt).not.toHaveProperty('adjusters')
  })
})

describe('joined shoulder straps', () => {
  const left = pointOf(rock, 'shoulder-left')
  const right = pointOf(rock, 'shoulder-right')
  const joined = withShoulderTail(rock, 'driver', 150)

  it('end on one anchor, in the middle between where the two were', () => {
    const middle = { ...left, yMm: (left.yMm + right.yMm) / 2 }
    expect(pointOf(joined, 'shoulder-left')).toEqual(middle)
    expect(anchorOf(joined, 'shoulder-right').mount).toEqual(anchorOf(joined, 'shoulder-left').mount)
    expect(parseLayout(joined)).toEqual({ ok: true, value: joined })
  })

  it('stay on one anchor however either is moved or changed', () => {
    const moved = movedHandle(
      joined,
      { kind: 'anchor', placeId: 'driver', anchorId: anchorOf(joined, 'shoulder-right').id },
      { yMm: 400, zMm: 700 },
    )
    expect(pointOf(moved, 'shoulder-left')).toMatchObject({ yMm: 400, zMm: 700 })
    expect(pointOf(moved, 'shoulder-right')).toEqual(pointOf(moved, 'shoulder-left'))
    const anchor = anchorOf(moved, 'shoulder-left')
    if (anchor.mount.kind !== 'tab') throw new Error('the rock buggy has shoulder tabs')
    const turned = withAnchor(moved, 'driver', anchor.id, { ...anchor.mount, planDeg: 7 })
    expect(anchorOf(turned, 'shoulder-right').mount).toEqual(anchorOf(turned, 'shoulder-left').mount)
  })

  it('stay there too where each side is moved alone', () => {
    const [place] = joined.places
    if (place === undefined) throw new Error('no place')
    const split: Layout = {
      ...joined,
      places: [{ ...place, mirrored: { ...place.mirrored, shoulder: false } }],
    }
    const moved = movedHandle(
      split,
      { kind: 'anchor', placeId: 'driver', anchorId: anchorOf(split, 'shoulder-left').id },
      { xMm: left.xMm + 30 },
    )
    expect(pointOf(moved, 'shoulder-right')).toEqual(pointOf(moved, 'shoulder-left'))
  })

  it('get one tab in the middle of the seat where neither has an anchor yet', () => {
    const ids = ['shoulder-left', 'shoulder-right'].map((strap) => anchorOf(joined, strap as StrapId).id)
    const bare = ids.reduce((layout, id) => removeAnchor(layout, 'driver', id), joined)
    const added = addAnchor(bare, 'driver', 'shoulder-right')
    expect(pointOf(added, 'shoulder-left').yMm).toBe(first(rock).seat.hipPoint.yMm)
    expect(anchorOf(added, 'shoulder-right').mount).toEqual(anchorOf(added, 'shoulder-left').mount)
  })

  it('keep their anchor when only the tail changes, and when they are parted', () => {
    const longer = withShoulderTail(joined, 'driver', 220)
    expect(first(longer).belt.shoulderTailMm).toBe(220)
    expect(first(longer).anchors).toEqual(first(joined).anchors)
    const parted = withShoulderTail(joined, 'driver', null)
    expect(first(parted).belt).not.toHaveProperty('shoulderTailMm')
    expect(first(parted).anchors).toEqual(first(joined).anchors)
  })

  it('are not made of the one shoulder strap of a 3-point belt', () => {
    const three = withBelt(rock, 'driver', { arrangement: 3 })
    expect(withShoulderTail(three, 'driver', 150)).toEqual(three)
  })
})

describe('withStrapBolt', () => {
  it('keeps what is typed, drops what is emptied, and leaves no empty group behind', () => {
    const typed = withStrapBolt(rock, 'driver', 'lap', { torqueNm: 40, source: 'Page 6' })
    expect(first(typed).belt.hardware).toEqual({ lap: { torqueNm: 40, source: 'Page 6' } })
    const graded = withStrapBolt(typed, 'driver', 'lap', { grade: '8.8', torqueNm: undefined })
    expect(first(graded).belt.hardware).toEqual({ lap: { grade: '8.8', source: 'Page 6' } })
    const emptied = withStrapBolt(graded, 'driver', 'lap', { grade: '', source: '' })
    expect(first(emptied).belt).toEqual(first(rock).belt)
  })

  it('forgets the bolts of straps that the belt no longer has', () => {
    const typed = withStrapBolt(rock, 'driver', 'sub', { boltDiameterMm: 8 })
    expect(first(withBelt(typed, 'driver', { arrangement: 4 })).belt).not.toHaveProperty('hardware')
    expect(first(withBelt(typed, 'driver', { arrangement: 5 })).belt.hardware).toEqual({
      sub: { boltDiameterMm: 8 },
    })
  })
})

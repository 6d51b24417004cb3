import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { emptyLayout } from '../../../../src/domain/layout/document/empty'
import type { Layout, Place } from '../../../../src/domain/layout/document/layout'
import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import { withBelt } from '../../../../src/domain/layout/edit/changeBelt'
import {
  addAnchor,
  asTab,
  asWrap,
  removeAnchor,
  withAnchor,
  withMirrored,
} from '../../../../src/domain/layout/edit/changeAnchors'
import { startingEye } from '../../../../src/domain/layout/edit/startingMount'
import { addTube } from '../../../../src/domain/layout/edit/changeTubes'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import type { Anchor } from '../../../../src/domain/straps/anchor'
import { shankAxis } from '../../../../src/domain/straps/eyeShank'
import { lineOfPull } from '../../../../src/domain/straps/lineOfPull'
import { tabSize } from '../../../../src/domain/straps/tabSize'
import type { QuantityId } from '../../../../src/domain/straps/quantity'
import { STRAP_IDS, type StrapId } from '../../../../src/domain/straps/strap'
import { layoutArb } from '../../../support/arbitraries'
import { exampleLayout } from '../../../support/exampleLayouts'

const rock = exampleLayout('rock-buggy.layout.json')
const trail = exampleLayout('trail-car-two-seat.layout.json')

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

const fullyAnchored = (layout: Layout): Layout =>
  STRAP_IDS.reduce((anchored, strap) => addAnchor(anchored, 'place-1', strap), layout)

const values = (layout: Layout, id: QuantityId): readonly number[] =>
  evaluateLayout(layout).places.flatMap(({ sittings }) =>
    (sittings[0]?.quantities ?? []).filter((quantity) => quantity.id === id).map(({ value }) => value),
  )

describe('addAnchor', () => {
  it('adds both sides of a pair that moves as one, and never a second anchor for a strap', () => {
    const once = addAnchor(emptyLayout(), 'place-1', 'lap-right')
    expect(first(once).anchors.map((anchor) => anchor.strap)).toEqual(['lap-right', 'lap-left'])
    expect(addAnchor(once, 'place-1', 'lap-left')).toBe(once)
  })

  it('adds one side of a split pair alone', () => {
    const split = withMirrored(emptyLayout(), 'place-1', 'lap', false)
    expect(first(addAnchor(split, 'place-1', 'lap-right')).anchors).toHaveLength(1)
  })

  it('mirrors the anchor of the other side when that is there', () => {
    const oneSided = removeAnchor(rock, 'driver', 'driver-lap-right')
    const again = addAnchor(oneSided, 'driver', 'lap-right')
    expect(anchorOf(again, 'lap-right').mount).toEqual(anchorOf(rock, 'lap-right').mount)
  })

  it('always leaves a layout that can be saved and opened again', () => {
    fc.assert(
      fc.property(layoutArb, fc.constantFrom(...STRAP_IDS), (layout, strap) => {
        const added = addAnchor(layout, 'place-1', strap)
        expect(parseLayout(added)).toEqual({ ok: true, value: added })
        expect(first(added).anchors.some((anchor) => anchor.strap === strap)).toBe(true)
      }),
    )
  })

  it('starts tabs where the starting values say: lap 52.5°, shoulder 10° below square to the spine, in line with the pull', () => {
    const layout = fullyAnchored(withBelt(emptyLayout(), 'place-1', { arrangement: 7 }))
    for (const angle of values(layout, 'lap-angle')) expect(angle).toBeCloseTo(52.5, 6)
    // The starting line goes through the shoulder point, the real strap is tangent to the shoulder beside it: up to 3° apart.
    for (const angle of values(layout, 'shoulder-to-spine')) expect(Math.abs(angle - 10)).toBeLessThan(3)
    expect(values(layout, 'sub-spacing')).toEqual([100])
    for (const twist of values(layout, 'tab-twist')) expect(twist).toBeCloseTo(0, 6)
    // The starting shell has no opening for the straps between the thighs yet; the page says so.
    expect(evaluateLayout(layout).places[0]?.sittings[0]?.problems).toEqual(
      ['sub-left', 'sub-right', 'sub-centre'].map((strap) => ({ kind: 'no-slot', strap })),
    )
  })
})

describe('withAnchor', () => {
  it('mirrors a tab’s turn and lean to the other side', () => {
    const { mount } = anchorOf(rock, 'lap-left')
    const turned = { ...mount, planDeg: -20, leanDeg: 7 } as typeof mount
    const changed = withAnchor(rock, 'driver', 'driver-lap-left', turned)
    expect(anchorOf(changed, 'lap-left').mount).toEqual(turned)
    expect(anchorOf(changed, 'lap-right').mount).toEqual({
      ...anchorOf(rock, 'lap-right').mount,
      planDeg: 20,
      leanDeg: -7,
    })
  })

  it('puts a tab that becomes a wrap on the nearest place of its tube, both sides', () => {
    const anchor = anchorOf(rock, 'shoulder-left') // 36 mm ahead of and 12 mm above the bar at x 1648, z 620
    const wrapped = withAnchor(rock, 'driver', anchor.id, asWrap(anchor, 'harness-bar'))
    expect(anchorOf(wrapped, 'shoulder-left').mount).toMatchObject({
      kind: 'wrap',
      over: 'over',
      guideHoops: true,
      point: { xMm: 1648, yMm: 250, zMm: 620 },
    })
    expect(anchorOf(wrapped, 'shoulder-right').mount.point).toEqual({ xMm: 1648, yMm: 470, zMm: 620 })
    expect(parseLayout(wrapped).ok).toBe(true)
  })

  it('makes a tab of a wrap where it is', () => {
    const anchor = anchorOf(trail, 'shoulder-left')
    const tabbed = withAnchor(trail, 'driver', anchor.id, asTab(first(trail), anchor, 'plate'))
    expect(anchorOf(tabbed, 'shoulder-left').mount).toMatchObject({
      kind: 'tab',
      tubeId: 'harness-bar',
      point: anchor.mount.point,
    })
  })

  it.each([
    { form: 'clevis', shear: 'double' },
    { form: 'insert', shear: 'single' },
  ] as const)('makes a $form of a tab: $shear shear, the same point, plane and tube', ({ form, shear }) => {
    const anchor = anchorOf(rock, 'lap-left')
    const made = withAnchor(rock, 'driver', anchor.id, asTab(first(rock), anchor, form))
    expect(anchorOf(made, 'lap-left').mount).toEqual({ ...anchor.mount, form, shear })
    const back = withAnchor(
      made,
      'driver',
      anchor.id,
      asTab(first(made), anchorOf(made, 'lap-left'), 'plate'),
    )
    expect(anchorOf(back, 'lap-left').mount).toEqual({ ...anchor.mount, shear })
    expect(parseLayout(made)).toEqual({ ok: true, value: made })
  })

  it('keeps the typed sizes of a tab while its form stays, and lets them go with it: each form means something else by them', () => {
    const anchor = anchorOf(rock, 'lap-left')
    if (anchor.mount.kind !== 'tab') throw new Error('no tab')
    const sized = { ...anchor, mount: { ...anchor.mount, widthMm: 50, edgeDistanceMm: 25 } }
    expect(asTab(first(rock), sized, 'plate')).toEqual(sized.mount)
    expect(asTab(first(rock), sized, 'insert')).toEqual({
      ...anchor.mount,
      form: 'insert',
      shear: 'single',
    })
    const clevis = { ...sized, mount: { ...sized.mount, form: 'clevis' as const, gapMm: 7 } }
    expect(asTab(first(rock), clevis, 'clevis')).toMatchObject({ widthMm: 50, gapMm: 7 })
    expect(asTab(first(rock), clevis, 'plate')).not.toHaveProperty('gapMm')
    expect(tabSize(anchor.mount)).toEqual({
      // 11.5 mm hole with 15 mm of steel on every side.
      widthMm: 41.5,
      edgeDistanceMm: 20.75,
      gapMm: 0,
      chosen: ['widthMm', 'edgeDistanceMm'],
    })
    expect(tabSize(clevis.mount)).toEqual({ widthMm: 50, edgeDistanceMm: 25, gapMm: 7, chosen: [] })
  })

  it('makes an eye bolt where a tab is, its shank along the pull, mirrored to the other side', () => {
    const anchor = anchorOf(rock, 'lap-left')
    const eye = startingEye(rock, first(rock), anchor)
    const made = withAnchor(rock, 'driver', anchor.id, eye)
    expect(anchorOf(made, 'lap-left').mount).toMatchObject({
      kind: 'eye',
      point: anchor.mount.point,
      tubeId: anchor.mount.tubeId,
    })
    // The direction of the shank is the unit vector of the strap's first piece.
    const [sitting] = evaluateLayout(made).places[0]?.sittings ?? []
    const path = sitting?.paths.find(({ strap }) => strap === 'lap-left')
    if (path === undefined) throw new Error('no path')
    const pull = lineOfPull(path)
    const shank = shankAxis(eye)
    expect([shank.x, shank.y, shank.z].map((part) => part.toFixed(9))).toEqual(
      [pull.x, pull.y, pull.z].map((part) => part.toFixed(9)),
    )
    const other = anchorOf(made, 'lap-right').mount
    if (other.kind !== 'eye') throw new Error('not mirrored')
    expect(shankAxis(other)).toEqual({ x: shank.x, y: -shank.y, z: shank.z })
    expect(asTab(first(made), anchorOf(made, 'lap-left'), 'plate')).toMatchObject({
      kind: 'tab',
      point: anchor.mount.point,
      tubeId: anchor.mount.tubeId,
    })
  })

  it('mirrors a tab on one rail to the rail on the other side', () => {
    // The rails lie at y = 0 and 720, the seat in the middle at 360: each is the mirror image of the other.
    const { mount } = anchorOf(rock, 'lap-left')
    const onRail = { ...mount, tubeId: 'rail-left', point: { xMm: 1350, yMm: 10, zMm: 35 } } as typeof mount
    const changed = withAnchor(rock, 'driver', 'driver-lap-left', onRail)
    expect(anchorOf(changed, 'lap-right').mount).toMatchObject({
      tubeId: 'rail-right',
      point: { xMm: 1350, yMm: 710, zMm: 35 },
    })
  })

  it('changes nothing for a tube that does not exist', () => {
    const anchor = anchorOf(rock, 'shoulder-left')
    expect(withAnchor(rock, 'driver', anchor.id, asWrap(anchor, 'gone'))).toBe(rock)
  })
})

describe('withMirrored', () => {
  it('splits a pair without moving anything', () => {
    const split = withMirrored(rock, 'driver', 'lap', false)
    expect(first(split).anchors).toEqual(first(rock).anchors)
    expect(first(split).mirrored).toEqual({ shoulder: true, lap: false, sub: true })
  })

  it('makes the right side the mirror image of the left when the pair is joined again', () => {
    const split = withMirrored(rock, 'driver', 'lap', false)
    const { mount } = anchorOf(rock, 'lap-left')
    const moved = withAnchor(split, 'driver', 'driver-lap-left', {
      ...mount,
      point: { xMm: 1300, yMm: 140, zMm: 50 },
    })
    const joined = withMirrored(moved, 'driver', 'lap', true)
    expect(anchorOf(joined, 'lap-left')).toEqual(anchorOf(moved, 'lap-left'))
    expect(anchorOf(joined, 'lap-right').mount).toMatchObject({
      point: { xMm: 1300, yMm: 580, zMm: 50 },
      planDeg: 31,
    })
    expect(anchorOf(joined, 'sub-right')).toEqual(anchorOf(moved, 'sub-right'))
  })

  it('always leaves a layout that can be saved and opened again', () => {
    fc.assert(
      fc.property(layoutArb, fc.constantFrom('shoulder', 'lap', 'sub'), (layout, family) => {
        const joined = withMirrored(layout, 'place-1', family, true)
        expect(parseLayout(joined)).toEqual({ ok: true, value: joined })
      }),
    )
  })

  it('keeps both shoulder wraps on a new bar', () => {
    const layout = addTube(fullyAnchored(emptyLayout()), 'harness-bar')
    const anchor = anchorOf(layout, 'shoulder-left')
    const wrapped = withAnchor(layout, 'place-1', anchor.id, asWrap(anchor, 'harness-bar-1'))
    expect(anchorOf(wrapped, 'shoulder-right').mount.kind).toBe('wrap')
    expect(parseLayout(wrapped).ok).toBe(true)
  })
})

import { describe, expect, it } from 'vitest'

import { planeDistanceMm, type PlanePointMm } from '../../../../src/domain/geometry/plane'
import { pointMm } from '../../../../src/domain/geometry/point'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { elevationDrawing } from '../../../../src/domain/layout/drawing/elevationDrawing'
import type { Primitive } from '../../../../src/domain/layout/drawing/primitive'
import { withAnchor } from '../../../../src/domain/layout/edit/changeAnchors'
import { withSeat } from '../../../../src/domain/layout/edit/change'
import { withAdjuster, withShoulderTail } from '../../../../src/domain/layout/edit/changeBelt'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import type { Mount } from '../../../../src/domain/straps/anchor'
import { exampleLayout } from '../../../support/exampleLayouts'

// A set without limits on straps: there are no zones to work out, which this drawing leaves out anyway.
const rock: Layout = { ...exampleLayout('rock-buggy.layout.json'), ruleSetId: 'desert-score' }

const primitives = (layout: Layout, elevation: 'side' | 'top'): readonly Primitive[] =>
  elevationDrawing(layout, evaluateLayout(layout, { extent: 'what-moves' }), elevation, {
    placeId: null,
    sittingId: null,
    ghosts: false,
    zones: 'none',
    focusedFindingId: null,
    dimensions: 'none',
    lengthUnit: 'mm',
    angles: false,
    handles: false,
  }).primitives

const pointsOf = (drawn: readonly Primitive[], key: string): readonly PlanePointMm[] => {
  const found = drawn.find((primitive) => primitive.key === key)
  if (found?.kind !== 'polyline') throw new Error(`no line ${key}`)
  return found.points
}

const spanOf = (points: readonly PlanePointMm[], axis: 'uMm' | 'vMm'): readonly [number, number] => {
  const values = points.map((point) => point[axis])
  return [Math.min(...values), Math.max(...values)]
}

const withLapLeft = (mount: Mount): Layout => withAnchor(rock, 'driver', 'driver-lap-left', mount)

const KEY = 'driver/anchor/driver-lap-left'
const at = pointMm(1350, 100, 20)

const tab = (part: object): Mount =>
  ({
    kind: 'tab',
    point: at,
    planDeg: 0,
    leanDeg: 0,
    thicknessMm: 5,
    holeDiameterMm: 12,
    shear: 'double',
    tubeId: null,
    ...part,
  }) as Mount

describe('the drawing of what straps are fixed to', () => {
  it('shows a clevis as two plates of its thickness, clear of each other, at both sides of the fitting', () => {
    // Upright and fore-and-aft, the plates are seen edge on from above: lines across the car.
    const drawn = primitives(withLapLeft(tab({ form: 'clevis' })), 'top')
    const faces = ['', '/2', '/3', '/4'].map((suffix) => {
      const [least, most] = spanOf(pointsOf(drawn, `${KEY}${suffix}/plate`), 'vMm')
      expect(most - least).toBeCloseTo(0, 9)
      return least - at.yMm
    })
    expect(faces.map((mm) => Number(mm.toFixed(6))).toSorted((a, b) => a - b)).toEqual([-9, -4, 4, 9])
  })

  it('shows an insert from the face under the fitting back along its bolt', () => {
    const drawn = primitives(withLapLeft(tab({ form: 'insert', shear: 'single', thicknessMm: 22 })), 'top')
    const faces = ['', '/2'].map((suffix) => spanOf(pointsOf(drawn, `${KEY}${suffix}/plate`), 'vMm')[0])
    expect(faces.map((mm) => Number(((mm ?? 0) - at.yMm).toFixed(6)))).toEqual([0, -22])
  })

  it('shows an eye bolt by its eye at true size, with the shank behind it along its axis', () => {
    const eye: Mount = {
      kind: 'eye',
      point: at,
      planDeg: 180,
      riseDeg: 30,
      threadDiameterMm: 12,
      eyeDiameterMm: 26,
      tubeId: null,
    }
    const drawn = primitives(withLapLeft(eye), 'side')
    // The eye's plane is upright and fore-and-aft: a full circle from the side.
    for (const point of pointsOf(drawn, `${KEY}/eye`)) {
      expect(planeDistanceMm(point, { uMm: at.xMm, vMm: at.zMm })).toBeCloseTo(13, 9)
    }
    // Pointing forward and 30° up, its thread lies rearward and below: 13 + 12 mm from the middle, then two threads on.
    const [near, far] = pointsOf(drawn, `${KEY}/shank`)
    const along = (mm: number) => [at.xMm + mm * Math.cos(Math.PI / 6), at.zMm - mm * Math.sin(Math.PI / 6)]
    expect([near?.uMm, near?.vMm].map((mm) => mm?.toFixed(6))).toEqual(along(25).map((mm) => mm.toFixed(6)))
    expect([far?.uMm, far?.vMm].map((mm) => mm?.toFixed(6))).toEqual(along(49).map((mm) => mm.toFixed(6)))
    expect(drawn.find(({ key }) => key === `${KEY}/mark`)).toMatchObject({ kind: 'mark', mark: 'eye' })
    const label = drawn.find(({ key }) => key === 'driver/label/driver-lap-left')
    expect(label).toMatchObject({ text: expect.stringMatching(/lap eye bolts?$/) as string })
  })

  it('shows a slot at both faces of a shell with thickness', () => {
    const slot = rock.places[0]?.seat.slots.find(({ face }) => face === 'side')
    if (slot === undefined) throw new Error('a slot in the side of the shell expected')
    const thick = primitives(withSeat(rock, 'driver', { shellThicknessMm: 18 }), 'top')
    const key = `driver/slot/${slot.id}`
    const [one] = spanOf(pointsOf(thick, key), 'vMm')
    const [other] = spanOf(pointsOf(thick, `${key}/other-face`), 'vMm')
    expect(one - other).toBeCloseTo(18, 9)
    expect(primitives(rock, 'top').some((primitive) => primitive.key === `${key}/other-face`)).toBe(false)
  })

  it('shows the body of an adjuster along its strap: its length on the strap, its webbing’s width from above', () => {
    const layout = withAdjuster(rock, 'driver', 'shoulder', { fromAnchorMm: 40, lengthMm: 50 })
    const width = layout.places[0]?.belt.webbingMm.shoulder ?? 0
    const drawn = primitives(layout, 'top')
    const strap = pointsOf(drawn, 'driver/strap/shoulder-left')
    const body = pointsOf(drawn, 'driver/adjuster/shoulder-left')
    // Of a straight piece: four corners, two to each side of the strap's line.
    expect(body).toHaveLength(4)
    const [first, second, third] = body
    if (first === undefined || second === undefined || third === undefined) throw new Error('four corners')
    expect(planeDistanceMm(second, third)).toBeCloseTo(width, 6)
    const [from, to] = strap
    if (from === undefined || to === undefined) throw new Error('a line')
    expect(planeDistanceMm(first, second)).toBeLessThanOrEqual(50)
    // The strap's line runs through the middle of the body.
    const middle = { uMm: (first.uMm + third.uMm) / 2, vMm: (first.vMm + third.vMm) / 2 }
    const off =
      ((middle.uMm - from.uMm) * (to.vMm - from.vMm) - (middle.vMm - from.vMm) * (to.uMm - from.uMm)) /
      planeDistanceMm(from, to)
    expect(off).toBeCloseTo(0, 6)
    expect(primitives(rock, 'top').some(({ key }) => key.startsWith('driver/adjuster/'))).toBe(false)
  })

  it('marks the junction of joined shoulder straps once, at the tail’s length from the anchor', () => {
    const [place] = rock.places
    if (place === undefined) throw new Error('a place expected')
    const noSlots = withSeat(rock, 'driver', {
      slots: place.seat.slots.filter(({ straps }) => !straps.some((strap) => strap.startsWith('shoulder'))),
    })
    const joined = withShoulderTail(noSlots, 'driver', 60)
    const evaluation = evaluateLayout(joined, { extent: 'what-moves' })
    const path = evaluation.places[0]?.sittings[0]?.paths.find(({ strap }) => strap === 'shoulder-left')
    const contact = path?.contacts.find(({ on }) => on === 'junction')
    if (contact === undefined) throw new Error('a junction expected')
    for (const elevation of ['side', 'top'] as const) {
      const marks = primitives(joined, elevation).filter(({ key }) => key === 'driver/junction')
      expect(marks).toHaveLength(1)
      expect(marks[0]).toMatchObject({
        mark: 'junction',
        at: {
          uMm: contact.point.xMm,
          vMm: elevation === 'side' ? contact.point.zMm : contact.point.yMm,
        },
      })
    }
  })
})

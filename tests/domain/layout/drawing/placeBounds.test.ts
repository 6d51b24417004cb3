import { describe, expect, it } from 'vitest'

import type { Layout } from '../../../../src/domain/layout/document/layout'
import { placeBounds } from '../../../../src/domain/layout/drawing/placeBounds'
import { shellHandlesOf } from '../../../../src/domain/layout/edit/handles'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { exampleLayout } from '../../../support/exampleLayouts'

const trail = exampleLayout('trail-car-two-seat.layout.json')
const boundsOf = (layout: Layout, placeId: string, elevation: 'side' | 'top') =>
  placeBounds(layout, evaluateLayout(layout), placeId, elevation)

describe('placeBounds', () => {
  it('holds the seat, every anchor and the height of the harness bar of its place', () => {
    for (const place of trail.places) {
      const box = boundsOf(trail, place.id, 'side')
      const points = [
        ...shellHandlesOf(place).flatMap((handle) =>
          handle.id.includes(':side:') ? [{ u: handle.point.xMm, v: handle.point.zMm }] : [],
        ),
        ...place.anchors.map(({ mount }) => ({ u: mount.point.xMm, v: mount.point.zMm })),
        ...trail.tubes
          .filter((tube) => tube.role === 'harness-bar')
          .flatMap((tube) => tube.points.map((point) => ({ u: point.xMm, v: point.zMm }))),
      ]
      for (const { u, v } of points) {
        expect(u).toBeGreaterThanOrEqual(box.min.uMm)
        expect(u).toBeLessThanOrEqual(box.max.uMm)
        expect(v).toBeGreaterThanOrEqual(box.min.vMm)
        expect(v).toBeLessThanOrEqual(box.max.vMm)
      }
    }
  })

  it('ignores other places, other tubes and the datum', () => {
    const driver = trail.places.filter((place) => place.id === 'driver')
    const bars = trail.tubes.filter((tube) => tube.role === 'harness-bar')
    const alone: Layout = { ...trail, places: driver, tubes: bars }
    expect(boundsOf(trail, 'driver', 'top')).toEqual(boundsOf(alone, 'driver', 'top'))
    expect(boundsOf(trail, 'driver', 'side').min.uMm).toBeGreaterThan(0)
  })

  it('follows a bar that is raised above everything else', () => {
    const raised: Layout = {
      ...trail,
      tubes: trail.tubes.map((tube) =>
        tube.role === 'harness-bar'
          ? { ...tube, points: tube.points.map((point) => ({ ...point, zMm: 2500 })) }
          : tube,
      ),
    }
    expect(boundsOf(raised, 'driver', 'side').max.vMm).toBe(2500)
  })

  it('is no wider across the car for a bar that goes on beyond the seat', () => {
    const wider: Layout = {
      ...trail,
      tubes: trail.tubes.map((tube) =>
        tube.role === 'harness-bar'
          ? {
              ...tube,
              points: tube.points.map((point) => ({ ...point, yMm: point.yMm < 0 ? -3000 : point.yMm })),
            }
          : tube,
      ),
    }
    expect(boundsOf(wider, 'driver', 'top').min.vMm).toBeGreaterThan(-2000)
  })

  it('is the whole drawing for an unknown place', () => {
    const all = boundsOf(trail, 'nobody', 'side')
    const own = boundsOf(trail, 'driver', 'side')
    expect(all.max.uMm - all.min.uMm).toBeGreaterThan(own.max.uMm - own.min.uMm)
  })
})

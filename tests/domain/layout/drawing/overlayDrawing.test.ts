import { describe, expect, it } from 'vitest'

import { type Elevation, planeDistanceMm } from '../../../../src/domain/geometry/plane'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { elevationDrawing } from '../../../../src/domain/layout/drawing/elevationDrawing'
import { PLAIN_DRAWING } from '../../../../src/domain/layout/drawing/options'
import { overlayDrawing } from '../../../../src/domain/layout/drawing/overlayDrawing'
import type { Primitive } from '../../../../src/domain/layout/drawing/primitive'
import { layoutNumbers } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { crossTube, flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'

const lapAt = (xMm: number, zMm: number): Layout =>
  flatLayout([flatPlace({ anchors: [...tabPair('lap', { xMm, yMm: 220, zMm })] })], {
    tubes: [crossTube('bar', 400, 500)],
  })

const overlaid = (solid: Layout, dotted: Layout, elevation: Elevation): readonly Primitive[] =>
  overlayDrawing(
    {
      solid: { layout: solid, evaluation: layoutNumbers(solid) },
      dotted: { layout: dotted, evaluation: layoutNumbers(dotted) },
      lengthUnit: 'mm',
      textHeightMm: 25,
    },
    elevation,
  ).primitives

const texts = (primitives: readonly Primitive[]): readonly string[] =>
  primitives.flatMap((primitive) => (primitive.kind === 'label' ? [primitive.text] : []))

const dotted = (primitives: readonly Primitive[]): readonly Primitive[] =>
  primitives.filter((primitive) => 'style' in primitive && primitive.style === 'other')

const plan = lapAt(200, -200)

describe('overlayDrawing', () => {
  it('draws the solid variant exactly as every elevation is drawn, and of its copy nothing more', () => {
    const alone = elevationDrawing(plan, layoutNumbers(plan), 'side', {
      ...PLAIN_DRAWING,
      labels: false,
      lengthUnit: 'mm',
      textHeightMm: 25,
    })
    expect(overlaid(plan, structuredClone(plan), 'side')).toEqual(alone.primitives)
  })

  it('names a pair once from the side, with its true shift, and each of it from above', () => {
    // 30 rearward and 40 down: 50 mm, the 3-4-5 triangle; from above only 30 of it is seen, and 50 is still said.
    const moved = lapAt(230, -240)
    expect(texts(overlaid(plan, moved, 'side'))).toEqual(['Lap tabs 50 mm'])
    expect(texts(overlaid(plan, moved, 'top'))).toEqual(['Left lap tab 50 mm', 'Right lap tab 50 mm'])
  })

  it('never says the shift of one side for another that only looks alike', () => {
    const [place] = plan.places
    // Both 20 up; the right one 100 further out too: 101.98 mm, the root of 20² + 100².
    const anchors = place?.anchors.map((anchor) => {
      const { point } = anchor.mount
      const yMm = point.yMm > 0 ? point.yMm + 100 : point.yMm
      return { ...anchor, mount: { ...anchor.mount, point: { ...point, yMm, zMm: point.zMm + 20 } } }
    })
    const places = plan.places.map((each) => ({ ...each, anchors: anchors ?? [] }))
    expect(texts(overlaid(plan, { ...plan, places }, 'side')).toSorted((a, b) => a.localeCompare(b))).toEqual(
      ['Left lap tab 20 mm', 'Right lap tab 102 mm'],
    )
  })

  it('dots only what lies elsewhere, and gives its anchors rhombs instead of circles', () => {
    const moved = overlaid(plan, lapAt(230, -240), 'top')
    const other = dotted(moved)
    expect(other.length).toBeGreaterThan(0)
    // The bar, the seat and the datum are the same in both.
    expect(other.some(({ key }) => key.includes('bar') || key.includes('datum'))).toBe(false)
    const rhombs = other.filter((each) => each.kind === 'polyline' && each.closed && each.points.length === 4)
    expect(rhombs.length).toBeGreaterThanOrEqual(2)
    expect(new Set(moved.map(({ key }) => key)).size).toBe(moved.length)
  })

  it('dots a strap only where it does not lie on the solid one', () => {
    const belted = (zMm: number): Layout =>
      flatLayout([
        flatPlace({
          anchors: [
            ...tabPair('shoulder', { xMm: 450, yMm: 90, zMm }),
            ...tabPair('lap', { xMm: 200, yMm: 220, zMm: -200 }),
          ],
        }),
      ])
    const all = overlaid(belted(480), belted(380), 'side')
    const length = (each: Primitive): number =>
      each.kind === 'polyline'
        ? each.points
            .slice(1)
            .reduce((sum, to, index) => sum + planeDistanceMm(each.points[index] ?? to, to), 0)
        : 0
    const isStrap = (each: Primitive): boolean =>
      each.key.includes('shoulder-left') && each.kind === 'polyline' && !each.closed
    const solid = all.filter((each) => isStrap(each) && 'style' in each && each.style === 'strap').map(length)
    const moved = dotted(all).filter(isStrap).map(length)
    const sum = (lengths: readonly number[]): number => lengths.reduce((a, b) => a + b, 0)
    expect(sum(moved)).toBeGreaterThan(100)
    // Down the chest to the buckle, some 400 mm, it is the same strap.
    expect(sum(moved)).toBeLessThan(sum(solid) - 300)
  })

  it('says how far a tube and a seat lie elsewhere', () => {
    const [bar] = plan.tubes
    const raised = bar?.points.map((point) => ({ ...point, zMm: point.zMm + 22 })) ?? []
    const [place] = plan.places
    const seat = place && { ...place.seat, hipPoint: { xMm: 0, yMm: 0, zMm: 12 } }
    const changed: Layout = {
      ...plan,
      tubes: plan.tubes.map((tube) => ({ ...tube, points: raised })),
      places: plan.places.map((each) => ({ ...each, seat: seat ?? each.seat })),
    }
    expect(texts(overlaid(plan, changed, 'side')).toSorted((a, b) => a.localeCompare(b))).toEqual([
      'Seat 12 mm',
      'Test bar 22 mm',
    ])
  })
})

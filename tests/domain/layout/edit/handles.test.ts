import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { emptyLayout } from '../../../../src/domain/layout/document/empty'
import { handleById, handleId, handlesOf, tubeMiddle } from '../../../../src/domain/layout/edit/handles'
import { layoutArb } from '../../../support/arbitraries'
import { exampleLayout } from '../../../support/exampleLayouts'

const rock = exampleLayout('rock-buggy.layout.json')
const trail = exampleLayout('trail-car-two-seat.layout.json')

describe('handlesOf', () => {
  it('gives each handle its own id, made from its reference, and a finite place', () => {
    fc.assert(
      fc.property(layoutArb, (layout) => {
        const handles = handlesOf(layout)
        expect(new Set(handles.map((handle) => handle.id)).size).toBe(handles.length)
        for (const handle of handles) {
          expect(handle.id).toBe(handleId(handle.ref))
          expect(handleById(layout, handle.id)).toEqual(handle)
          expect(Object.values(handle.point).every(Number.isFinite)).toBe(true)
        }
      }),
    )
  })

  it('has hip point, recline and shoulder point for a place without anchors, and nothing else', () => {
    expect(handlesOf(emptyLayout()).map((handle) => handle.id)).toEqual([
      'hip:place-1',
      'recline:place-1',
      'shoulder-point:place-1',
    ])
  })

  it('names parts as the trade does', () => {
    const names = Object.fromEntries(handlesOf(trail).map((handle) => [handle.id, handle.name]))
    expect(names).toMatchObject({
      'hip:driver': 'Driver, hip point',
      'anchor:driver:driver-lap-left': 'Driver, left lap tab',
      'anchor:co-driver:co-driver-shoulder-right': 'Co-driver, right shoulder wrap',
      'anchor:driver:driver-sub-centre': 'Driver, centre anti-submarine tab',
      'slot:co-driver:sub-opening': 'Co-driver, slot for left and right anti-submarine straps',
      'tube-height:harness-bar': 'Harness bar, height',
      'tube-point:harness-bar:0': 'Harness bar, left end',
      'tube-point:harness-bar:1': 'Harness bar, right end',
      'tube-point:main-hoop:2': 'Main hoop, bend 2',
    })
  })

  it('gives height as a whole to harness bars only', () => {
    const whole = handlesOf(rock).filter((handle) => handle.ref.kind === 'tube-height')
    expect(whole.map((handle) => handle.id)).toEqual(['tube-height:harness-bar'])
    expect(whole[0]?.moves).toEqual({ x: false, y: false, z: true })
  })

  it('lets a wrap move only the way its tube runs, a tab every way', () => {
    const moves = (layout: typeof trail, id: string) => handleById(layout, id)?.moves
    expect(moves(trail, 'anchor:driver:driver-shoulder-left')).toEqual({ x: false, y: true, z: false })
    expect(moves(trail, 'anchor:driver:driver-lap-left')).toEqual({ x: true, y: true, z: true })
  })

  it('has the recline handle on the torso line at the height of the backrest rim', () => {
    // Hip (1200, 230), rim 665 mm up the torso line, recline 15°: + 665 (sin 15°, cos 15°) = + (172.114668, 642.340674)
    const point = handleById(rock, 'recline:driver')?.point
    expect(point?.xMm).toBeCloseTo(1372.114_668, 5)
    expect(point?.zMm).toBeCloseTo(872.340_674, 5)
  })
})

describe('tubeMiddle', () => {
  it('is half of the length along the tube, round its bends', () => {
    // Legs of 300 and 500: half of 800 is 400, so 100 into the second leg.
    const points = [
      { xMm: 0, yMm: 0, zMm: 0 },
      { xMm: 0, yMm: 0, zMm: 300 },
      { xMm: 0, yMm: 500, zMm: 300 },
    ]
    const tube = { id: 't', name: '', role: 'cage' as const, points, outsideDiameterMm: 38, wallMm: 2 }
    expect(tubeMiddle(tube)).toEqual({ xMm: 0, yMm: 100, zMm: 300 })
  })
})

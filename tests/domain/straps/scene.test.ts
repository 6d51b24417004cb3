import { describe, expect, it } from 'vitest'
import { mountCircle, tubeAt } from '../../../src/domain/straps/mount'
import { contactOnMount, mountEndOf } from '../../../src/domain/straps/mountEnd'
import { seatFrame } from '../../../src/domain/straps/placeFrame'
import { innerPortal, portalOf, type Portal } from '../../../src/domain/straps/portal'
import type { StrapScene } from '../../../src/domain/straps/scene'
import { slotCorners } from '../../../src/domain/straps/slotGate'
import type { StrapId } from '../../../src/domain/straps/strap'
import { bar, plane, point, scene, slot, tab, wrap } from './scenes'

const back = slot({ straps: ['shoulder-left'], face: 'back', centre: point(130, -90, 560) })

describe('slotCorners', () => {
  const sorted = (face: 'back' | 'side' | 'cushion', turnDeg: number): number[][] =>
    slotCorners(slot({ straps: [], face, centre: point(10, 20, 30), lengthMm: 100, heightMm: 40, turnDeg }))
      .map(({ xMm, yMm, zMm }) => [xMm, yMm, zMm].map((part) => Math.round(part * 1e6) / 1e6 + 0))
      .sort((a, b) => (a[0] ?? 0) - (b[0] ?? 0) || (a[1] ?? 0) - (b[1] ?? 0) || (a[2] ?? 0) - (b[2] ?? 0))

  it('lies long side across the seat in the back and the cushion, fore and aft in a side wall', () => {
    expect(sorted('back', 0)).toEqual([
      [10, -30, 10],
      [10, -30, 50],
      [10, 70, 10],
      [10, 70, 50],
    ])
    expect(sorted('side', 0)).toEqual([
      [-40, 20, 10],
      [-40, 20, 50],
      [60, 20, 10],
      [60, 20, 50],
    ])
    expect(sorted('cushion', 0)).toEqual([
      [-10, -30, 30],
      [-10, 70, 30],
      [30, -30, 30],
      [30, 70, 30],
    ])
  })

  it('turns in its own face, a quarter turn exchanging the sides', () => {
    expect(sorted('back', 90)).toEqual([
      [10, 0, -20],
      [10, 0, 80],
      [10, 40, -20],
      [10, 40, 80],
    ])
  })

  it('keeps its right angles when it turns', () => {
    // Half sides 50 and 20 turned by 30°: 50·cos − 20·sin = 33.301 and 50·sin + 20·cos = 42.321.
    const [corner] = slotCorners(slot({ straps: [], face: 'back', centre: point(0, 0, 0), turnDeg: 30 }))
    expect(corner?.yMm).toBeCloseTo(33.301_27, 5)
    expect(corner?.zMm).toBeCloseTo(42.320_508, 5)
  })

  it('turns from y towards z, x towards z and y towards x', () => {
    const first = (face: 'back' | 'side' | 'cushion'): { xMm: number; yMm: number; zMm: number } =>
      slotCorners(
        slot({ straps: [], face, centre: point(0, 0, 0), lengthMm: 100, heightMm: 0, turnDeg: 30 }),
      )[0] ?? point(0, 0, 0)
    expect(first('back')).toEqual(point(0, 50 * Math.cos(Math.PI / 6), 50 * Math.sin(Math.PI / 6)))
    expect(first('side')).toEqual(point(50 * Math.cos(Math.PI / 6), 0, 50 * Math.sin(Math.PI / 6)))
    expect(first('cushion')).toEqual(point(50 * Math.sin(Math.PI / 6), 50 * Math.cos(Math.PI / 6), 0))
  })
})

/** The opening of a strap in a scene. */
const portalIn = (given: StrapScene, strap: StrapId): Portal | null =>
  portalOf(seatFrame(given), given, strap)

describe('portalOf', () => {
  it('is the slot as a rectangle, its long side shortened by half the webbing at each end', () => {
    const portal = portalIn(scene({ seat: { slots: [back] } }), 'shoulder-left')
    expect(portal).toMatchObject({
      on: 'slot',
      face: 'back',
      centre: point(130, -90, 560),
      longMinMm: -(50 - 38),
      longMaxMm: 50 - 38,
      shortMinMm: -20,
      shortMaxMm: 20,
      depthMm: 0,
    })
    expect(portal?.normal.x).toBe(1)
  })

  it('is the middle line where the webbing is wider, and the whole rectangle in a side wall', () => {
    const narrow = { ...back, lengthMm: 60 }
    expect(portalIn(scene({ seat: { slots: [narrow] } }), 'shoulder-left')).toMatchObject({ longMaxMm: 0 })
    const wall = slot({ straps: ['lap-left'], face: 'side', centre: point(0, -200, 0), lengthMm: 90 })
    const portal = portalIn(scene({ seat: { slots: [wall] } }), 'lap-left')
    expect(portal).toMatchObject({ longMaxMm: 45, normal: { x: -0, y: -1, z: -0 } })
  })

  it('is the rim, open above, for a shoulder strap without a slot, and nothing for the others', () => {
    const given = scene({ seat: { slots: [back], backrestRim: { xMm: 120, zMm: 500 } } })
    expect(portalIn(given, 'shoulder-right')).toMatchObject({
      on: 'rim',
      centre: point(120, 0, 500),
      shortMinMm: 0,
      shortMaxMm: Infinity,
      longMaxMm: Infinity,
    })
    expect(portalIn(given, 'lap-left')).toBeNull()
  })

  it('turns and moves with the seat', () => {
    const given = scene({ hip: point(1000, 50, 200), reclineDeg: 30, seat: { slots: [back] } })
    const portal = portalIn(given, 'shoulder-left')
    // (130, 560) turned by 30°: 130·cos + 560·sin behind, −130·sin + 560·cos above.
    expect(portal?.centre.xMm).toBeCloseTo(1000 + 130 * Math.cos(Math.PI / 6) + 280, 9)
    expect(portal?.centre.zMm).toBeCloseTo(200 - 65 + 560 * Math.cos(Math.PI / 6), 9)
    expect(portal?.centre.yMm).toBe(50 - 90)
    expect(portal?.short.x).toBeCloseTo(0.5, 12)
  })

  it('is two openings, half the shell’s thickness to either side, facing away from the body', () => {
    const cushion = slot({ straps: ['sub-left'], face: 'cushion', centre: point(-50, -50, -110) })
    const given = scene({ seat: { slots: [cushion], shellThicknessMm: 12 } })
    const portal = portalIn(given, 'sub-left')
    expect(portal?.centre).toEqual(point(-50, -50, -116))
    expect(portal && innerPortal(portal).centre).toEqual(point(-50, -50, -104))
  })
})

describe('a mount', () => {
  it('is a point for a tab and the tube’s outside for a wrap', () => {
    const tubes = [bar(400, 500, 38)]
    expect(mountCircle(tab('lap-left', point(1, 2, 3)).mount, tubes)).toEqual({
      centre: plane(1, 3),
      radiusMm: 0,
    })
    expect(mountCircle(wrap('lap-left', point(400, 2, 500), 'over').mount, tubes)?.radiusMm).toBe(19)
    expect(mountCircle(wrap('lap-left', point(400, 2, 500), 'over', 'gone').mount, tubes)).toBeNull()
    expect(tubeAt(tubes, 'bar')?.outsideDiameterMm).toBe(38)
  })

  it('is touched on its upper half with over and on its lower half with under, whichever way the strap runs', () => {
    const tubes = [bar(400, 500, 38)]
    const at = point(400, 0, 500)
    for (const towards of [point(0, 0, 500), point(0, 90, 300), point(800, -90, 500), point(800, 0, 700)])
      for (const over of ['over', 'under'] as const) {
        const end = mountEndOf(wrap('lap-left', at, over).mount, tubes, at)
        const contact = end && contactOnMount(end, towards)
        if (!contact) throw new Error('no contact')
        expect(Math.sign(contact.zMm - 500)).toBe(over === 'over' ? 1 : -1)
        // On the circle in the plane of the wrap, and a tangent there seen along the bar: x and z of the offset square to the strap.
        const [dx, dz] = [contact.xMm - 400, contact.zMm - 500]
        expect(contact.yMm).toBe(0)
        expect(Math.hypot(dx, dz)).toBeCloseTo(19, 9)
        expect(dx * (towards.xMm - contact.xMm) + dz * (towards.zMm - contact.zMm)).toBeCloseTo(0, 6)
      }
  })

  it('has no contact for a strap that comes from inside the tube', () => {
    const at = point(400, 0, 500)
    const end = mountEndOf(wrap('lap-left', at, 'over').mount, [bar(400, 500, 38)], at)
    expect(end && contactOnMount(end, point(410, 300, 505))).toBeNull()
    expect(mountEndOf(wrap('lap-left', at, 'over', 'gone').mount, [], at)).toBeNull()
  })
})

import { describe, expect, it } from 'vitest'
import { planePoint } from '../../../src/domain/geometry/plane'
import type { Elevation } from '../../../src/domain/geometry/plane'
import type { StrapScene } from '../../../src/domain/straps/scene'
import type { StrapId } from '../../../src/domain/straps/strap'
import { STRAP_PATH } from '../../../src/domain/zones/limit'
import { fieldOf } from '../../../src/domain/zones/sittingField'
import { bar, belt, lapTabs, point, scene, slot, tab, wrap } from '../straps/scenes'
import { zoneCaseOf } from './zoneCases'

/** How far places of a drawn plane are from giving the strap no path, or with a minus one, mm. */
const pathMmAt = (given: StrapScene, strap: StrapId, elevation: Elevation) => {
  const zoneCase = zoneCaseOf([given], strap, false)
  const [zoneScene] = zoneCase.scenes
  if (zoneScene === undefined) throw new Error('one sitting')
  const field = fieldOf(zoneScene, zoneCase, elevation)
  return (uMm: number, vMm: number): number => field.marginAt(STRAP_PATH, planePoint(uMm, vMm))
}

const shoulderTab = tab('shoulder-left', point(400, -80, 560))

/** Back slot 150 mm behind the hip point in a shell of this thickness, high enough for the straight strap. */
const backSlot = (shellThicknessMm: number) => ({
  shellThicknessMm,
  slots: [slot({ straps: ['shoulder-left'], face: 'back', centre: point(150, -80, 580) })],
})

describe('the number of the path', () => {
  it.each([
    ['a thin shell', 0, 150],
    ['a shell 40 mm thick', 40, 170],
  ])('is how far a tab is behind its slot in %s, and is 0 in the slot’s plane', (_name, thickMm, planeMm) => {
    const mm = pathMmAt(
      scene({ seat: backSlot(thickMm), anchors: [...lapTabs, shoulderTab] }),
      'shoulder-left',
      'side',
    )
    for (const behindMm of [200, 30, 1, 0.001]) expect(mm(planeMm + behindMm, 560)).toBeCloseTo(behindMm, 9)
    for (const behindMm of [0.001, 1, 30]) expect(mm(planeMm - behindMm, 560)).toBeCloseTo(-behindMm, 9)
  })

  it('is how far outside its wall a lap tab is, and is 0 in the wall', () => {
    const given = scene({
      seat: { slots: [slot({ straps: ['lap-left'], face: 'side', centre: point(60, -200, -100) })] },
    })
    const mm = pathMmAt(given, 'lap-left', 'top')
    for (const outMm of [40, 1, 0.001]) {
      expect(mm(200, -200 - outMm)).toBeCloseTo(outMm, 9)
      expect(mm(200, -200 + outMm)).toBeCloseTo(-outMm, 9)
    }
  })

  it('is how far behind the hip point a lap tab is, and is 0 straight below it', () => {
    const mm = pathMmAt(scene(), 'lap-left', 'side')
    for (const behindMm of [150, 20, 1, 0.001]) {
      expect(mm(behindMm, -250)).toBeCloseTo(behindMm, 9)
      expect(mm(-behindMm, -250)).toBeCloseTo(-behindMm, 9)
    }
  })

  it('is how far below the groin an anti-submarine tab is, and is 0 level with it', () => {
    // Groin arc of radius 97 about the hip point: its lowest point is at z = −97.
    const given = scene({
      belt: belt(6),
      anchors: [
        ...lapTabs,
        shoulderTab,
        tab('sub-left', point(-60, -60, -300)),
        tab('sub-right', point(-60, 60, -300)),
      ],
    })
    const mm = pathMmAt(given, 'sub-left', 'side')
    for (const belowMm of [20, 1, 0.01]) {
      expect(mm(-60, -97 - belowMm)).toBeCloseTo(belowMm, 9)
      expect(mm(-60, -97 + belowMm)).toBeCloseTo(-belowMm, 9)
    }
  })

  it('has no measure over the rim', () => {
    const mm = pathMmAt(scene({ anchors: [...lapTabs, shoulderTab] }), 'shoulder-left', 'side')
    expect(mm(400, 560)).toBe(Infinity)
  })

  it('says of a strap that the wearer sits on how far ahead of the groin’s lowest point it leaves, else nothing', () => {
    // Tab 250 mm behind and 200 below the groin arc’s middle, 320.16 mm away at −38.660°: the tangent below the arc of radius 97 touches
    // it at −38.660° − acos(97/320.16) = −111.02°, 97·cos 111.02° = 34.80 mm ahead of the lowest point.
    const given = scene({
      belt: belt(6, { thighStraps: 'under-thighs' }),
      anchors: [...lapTabs, tab('sub-left', point(250, -60, -60)), tab('sub-right', point(250, 60, -60))],
    })
    const mm = pathMmAt(given, 'sub-left', 'side')
    expect(mm(250, -200)).toBeCloseTo(-34.8, 2)
    expect(mm(250, -60)).toBe(Infinity)
  })

  it('says of a mount on the body that it is as far inside as it is', () => {
    // The lap arc of radius 110 about the hip point, between the front hip bones: 40 mm from its middle is 70 mm inside.
    const mm = pathMmAt(
      scene({ anchors: [tab('lap-left', point(200, -60, -200)), tab('lap-right', point(200, 60, -200))] }),
      'lap-left',
      'side',
    )
    expect(mm(40, 0)).toBeCloseTo(-70, 6)
  })

  it('measures a wrapped bar to the slot from where the strap leaves the bar', () => {
    // Bar of 40 mm, the strap over its top and level: it leaves the bar straight above its middle, 20 mm higher.
    const given = scene({
      seat: { slots: [slot({ straps: ['shoulder-left'], face: 'back', centre: point(150, -80, 590) })] },
      anchors: [...lapTabs, wrap('shoulder-left', point(400, -80, 570), 'over')],
      tubes: [bar(400, 570, 40)],
    })
    expect(pathMmAt(given, 'shoulder-left', 'side')(400, 570)).toBeCloseTo(250, 6)
  })
})

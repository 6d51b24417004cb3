import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { movedInPlane, type PlanePointMm } from '../../../src/domain/geometry/plane'
import { regionContains } from '../../../src/domain/geometry/region'
import type { QuantityId, Subject } from '../../../src/domain/straps/quantity'
import type { StrapScene } from '../../../src/domain/straps/scene'
import { ruleRegion } from '../../../src/domain/zones/ruleRegion'
import { anyScene } from '../straps/arbitraryScenes'
import { isNearEdge, isThin, planeOrigin, spread, valueAt } from './bruteForce'
import { quantityRule, zoneCaseOf } from './zoneCases'

/* Two shoulder straps on one tail have one anchor: whoever moves it takes both along to the same point, off the middle too. */

/** The farthest that an edge is drawn from where it is. */
const EDGE_MM = 0.5

const onTail = (scene: StrapScene, shoulderTailMm: number): StrapScene => {
  const left = scene.anchors.find(({ strap }) => strap === 'shoulder-left')
  if (left === undefined) throw new Error('no shoulder strap')
  return {
    ...scene,
    belt: { ...scene.belt, shoulderTailMm },
    anchors: scene.anchors.map((anchor) =>
      anchor.strap === 'shoulder-right' ? { ...anchor, mount: left.mount } : anchor,
    ),
  }
}

interface Case {
  readonly quantity: QuantityId
  readonly subject: Subject
  readonly min: number
  readonly mirrored: boolean
  readonly elevation: 'side' | 'top'
}

const JUNCTION = { quantity: 'shoulder-junction', subject: 'shoulder-pair', min: 100 } as const
const BEHIND = { quantity: 'shoulder-length-behind-seat', subject: 'shoulder-left', min: 150 } as const

const CASES: readonly Case[] = [
  { ...JUNCTION, mirrored: true, elevation: 'side' },
  { ...JUNCTION, mirrored: true, elevation: 'top' },
  { ...JUNCTION, mirrored: false, elevation: 'top' },
  { ...BEHIND, mirrored: true, elevation: 'side' },
  { quantity: 'spine-load-share', subject: 'shoulder-pair', min: 0.1, mirrored: true, elevation: 'top' },
]

describe('the region of a rule for the anchor of joined straps', () => {
  it.each(CASES)(
    '$elevation: $quantity of at least $min, mirrored $mirrored, agrees with the strap solver',
    ({ quantity, subject, min, mirrored, elevation }) => {
      let kept = 0
      let offMiddle = 0
      fc.assert(
        fc.property(anyScene, fc.integer({ min: 0, max: 1000 }), (given, turn) => {
          const scene = onTail(given, 80)
          const zoneCase = zoneCaseOf([scene], 'shoulder-left', mirrored)
          const region = ruleRegion(quantityRule(quantity, min, null), zoneCase, elevation)
          if (region === null) throw new Error('no region')
          const isKept = (at: PlanePointMm): boolean => {
            const moved = movedInPlane(zoneCase.anchor.mount.point, at, elevation)
            const value = valueAt({ scene, strap: 'shoulder-left', at: moved, mirrored }, quantity, subject)
            return value !== null && value >= min
          }
          const about = planeOrigin(scene, 'shoulder-left', elevation)
          for (const at of spread(about, 100, turn)) {
            const isIn = regionContains(region, at)
            if (isIn !== isKept(at) && !isNearEdge(region, at, EDGE_MM) && !isThin(isKept, at, about))
              throw new Error(`(${at.uMm}, ${at.vMm}): region ${isIn}`)
            kept += isIn ? 1 : 0
            offMiddle += isIn && elevation === 'top' && Math.abs(at.vMm - about.vMm) > 20 ? 1 : 0
          }
        }),
        { numRuns: 2, endOnFailure: true },
      )
      expect(kept).toBeGreaterThan(10)
      expect(offMiddle).toBeGreaterThan(elevation === 'top' ? 10 : -1)
    },
    60_000,
  )
})

import { describe, expect, it } from 'vitest'
import { movedInPlane, type PlanePointMm } from '../../../src/domain/geometry/plane'
import { regionContains } from '../../../src/domain/geometry/region'
import type { QuantityId, Subject } from '../../../src/domain/straps/quantity'
import type { StrapScene } from '../../../src/domain/straps/scene'
import { ruleRegion } from '../../../src/domain/zones/ruleRegion'
import { belt, lapTabs, point, scene, slot, tab } from '../straps/scenes'
import { isNearEdge, isThin, planeOrigin, spread, valueAt } from './bruteForce'
import { quantityRule, zoneCaseOf } from './zoneCases'

/* Two shoulder straps on one tail have one anchor: whoever moves it takes both along to the same point, off the middle too. */

/** The farthest that an edge is drawn from where it is. */
const EDGE_MM = 0.5

/** Both shoulder straps on one tab off the seat's middle; one car with slots, one with a rim that they bend over. */
const CARS: readonly StrapScene[] = [
  {
    slots: ([-1, 1] as const).map((side) =>
      slot({
        id: `slot-${side}`,
        straps: [side < 0 ? 'shoulder-left' : 'shoulder-right'],
        face: 'back',
        centre: point(130, 70 * side, 540),
      }),
    ),
  },
  { backrestRim: { xMm: 120, zMm: 540 } },
].map((seat) =>
  scene({
    reclineDeg: 15,
    seat,
    belt: belt(4, { shoulderTailMm: 80 }),
    anchors: [
      ...lapTabs,
      tab('shoulder-left', point(620, 60, 480)),
      tab('shoulder-right', point(620, 60, 480)),
    ],
  }),
)

interface Case {
  readonly quantity: QuantityId
  readonly subject: Subject
  readonly mirrored: boolean
  readonly elevation: 'side' | 'top'
  /** Only the car with slots: a number of the pair costs most where it is the same nearly everywhere. */
  readonly slotsOnly?: true
}

const JUNCTION = { quantity: 'shoulder-junction', subject: 'shoulder-pair' } as const
const BEHIND = { quantity: 'shoulder-length-behind-seat', subject: 'shoulder-left' } as const

const CASES: readonly Case[] = [
  { ...JUNCTION, mirrored: true, elevation: 'side' },
  { ...JUNCTION, mirrored: true, elevation: 'top' },
  { ...JUNCTION, mirrored: false, elevation: 'top' },
  { ...BEHIND, mirrored: true, elevation: 'side' },
  {
    quantity: 'spine-load-share',
    subject: 'shoulder-pair',
    mirrored: false,
    elevation: 'top',
    slotsOnly: true,
  },
]

describe('the region of a rule for the anchor of joined straps', () => {
  it.each(CASES)(
    '$elevation: $quantity, mirrored $mirrored, agrees with the strap solver',
    ({ quantity, subject, mirrored, elevation, slotsOnly }) => {
      let kept = 0
      let offMiddle = 0
      for (const [turn, car] of CARS.slice(0, slotsOnly ? 1 : 2).entries()) {
        const zoneCase = zoneCaseOf([car], 'shoulder-left', mirrored)
        const about = planeOrigin(car, 'shoulder-left', elevation)
        const places = spread(about, 150, turn)
        const valueThere = (at: PlanePointMm): number | null => {
          const moved = movedInPlane(zoneCase.anchor.mount.point, at, elevation)
          return valueAt({ scene: car, strap: 'shoulder-left', at: moved, mirrored }, quantity, subject)
        }
        // A limit that cuts right through what the places give.
        const values = places.flatMap((at) => valueThere(at) ?? [])
        const min = (Math.min(...values) + Math.max(...values)) / 2
        const region = ruleRegion(quantityRule(quantity, min, null), zoneCase, elevation)
        if (region === null) throw new Error('no region')
        const isKept = (at: PlanePointMm): boolean => (valueThere(at) ?? -Infinity) >= min
        for (const at of places) {
          const isIn = regionContains(region, at)
          if (isIn !== isKept(at) && !isNearEdge(region, at, EDGE_MM) && !isThin(isKept, at, about))
            throw new Error(`(${at.uMm}, ${at.vMm}) in car ${turn}: region ${isIn}`)
          kept += isIn ? 1 : 0
          offMiddle += isIn && elevation === 'top' && Math.abs(at.vMm - about.vMm) > 20 ? 1 : 0
        }
      }
      expect(kept).toBeGreaterThan(20)
      expect(offMiddle).toBeGreaterThan(elevation === 'top' ? 10 : -1)
    },
    60_000,
  )
})

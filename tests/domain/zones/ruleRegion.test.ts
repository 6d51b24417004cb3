import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  movedInPlane,
  planePoint,
  type Elevation,
  type PlanePointMm,
} from '../../../src/domain/geometry/plane'
import { regionContains } from '../../../src/domain/geometry/region'
import { isWithin } from '../../../src/domain/rules/check'
import type { QuantityId, Subject } from '../../../src/domain/straps/quantity'
import type { StrapScene } from '../../../src/domain/straps/scene'
import { type StrapId, strapFamily } from '../../../src/domain/straps/strap'
import { anchorZone, ruleRegion } from '../../../src/domain/zones/ruleRegion'
import { anyScene } from '../straps/arbitraryScenes'
import { bar, lapTabs, point, scene as handScene, slot, tab, wrap } from '../straps/scenes'
import { isNearEdge, isThin, planeOrigin, spread, valueAt } from './bruteForce'
import { quantityRule, zoneCaseOf } from './zoneCases'

interface Case {
  readonly quantity: QuantityId
  readonly strap: StrapId
  readonly min: number | null
  readonly max: number | null
  /** Left out: the strap itself. */
  readonly pair?: Subject
  readonly mirrored?: boolean
}

/** The farthest that an edge is drawn outside where it is: at the shadow of a tube, and where two limits meet. */
const EDGE_MM = 0.5

/** The farthest inside: at the corner of a shadow. */
const CORNER_MM = 2

/** Where the region and the strap solver say different things, in words for the failure message. */
const disagreements = (
  scene: StrapScene,
  one: Case,
  elevation: Elevation,
  turn: number,
): readonly string[] => {
  const rule = quantityRule(one.quantity, one.min, one.max)
  const mirrored = one.mirrored ?? false
  const zoneCase = zoneCaseOf([scene], one.strap, mirrored)
  const region = ruleRegion(rule, zoneCase, elevation)
  if (region === null) throw new Error(`${one.quantity} has no region in the ${elevation} elevation`)
  const from = zoneCase.anchor.mount.point
  const about = planeOrigin(scene, one.strap, elevation)
  const valueThere = (at: PlanePointMm): number | null => {
    const moved = movedInPlane(from, at, elevation)
    return valueAt({ scene, strap: one.strap, at: moved, mirrored }, one.quantity, one.pair ?? one.strap)
  }
  const isKept = (at: PlanePointMm): boolean => {
    const value = valueThere(at)
    return value !== null && isWithin(value, rule)
  }
  return spread(about, 200, turn).flatMap((at) => {
    const kept = isKept(at)
    if (kept === regionContains(region, at)) return []
    if (isNearEdge(region, at, kept ? CORNER_MM : EDGE_MM) || isThin(isKept, at, about)) return []
    return [`(${at.uMm - about.uMm}, ${at.vMm - about.vMm}) from the body: value ${valueThere(at)}`]
  })
}

/** 'agrees', or the report of the first random place where region and strap solver differ. */
const agreement = (one: Case, elevation: Elevation, numRuns: number): string => {
  const details = fc.check(
    fc.property(anyScene, fc.integer({ min: 0, max: 1000 }), (scene, turn) => {
      fc.pre(one.quantity !== 'slot-bend' || scene.seat.slots.length > 0)
      const found = disagreements(scene, one, elevation, turn)
      if (found.length > 0) throw new Error(found.slice(0, 5).join('; '))
    }),
    { numRuns, endOnFailure: true },
  )
  if (!details.failed) return 'agrees'
  return `${String(details.errorInstance)} (seed ${details.seed}, path ${details.counterexamplePath})`
}

/** Limits of the kind that rule books have; the numbers themselves are only inputs here. */
const OWN: readonly Case[] = [
  { quantity: 'shoulder-drop', strap: 'shoulder-left', min: -10, max: 20 },
  { quantity: 'shoulder-drop', strap: 'shoulder-right', min: null, max: 45 },
  { quantity: 'shoulder-to-spine', strap: 'shoulder-right', min: -5, max: 5 },
  { quantity: 'lap-angle', strap: 'lap-left', min: 45, max: 60 },
  { quantity: 'lap-angle', strap: 'lap-right', min: 20, max: 75 },
  { quantity: 'lap-run-angle', strap: 'lap-left', min: 30, max: 65 },
  { quantity: 'lap-shifted-angle', strap: 'lap-right', min: 30, max: 75 },
  { quantity: 'lap-over-asis', strap: 'lap-left', min: null, max: 0 },
  { quantity: 'lap-over-asis', strap: 'lap-right', min: -60, max: 10 },
  { quantity: 'sub-to-vertical', strap: 'sub-left', min: 0, max: 20 },
  { quantity: 'sub-to-vertical', strap: 'sub-right', min: 0, max: null },
  { quantity: 'sub-to-vertical', strap: 'sub-right', min: null, max: 30 },
  { quantity: 'sub-to-chest', strap: 'sub-left', min: -10, max: 10 },
  { quantity: 'slot-bend', strap: 'shoulder-left', min: null, max: 3 },
  { quantity: 'slot-bend', strap: 'shoulder-right', min: null, max: 25 },
  { quantity: 'slot-bend', strap: 'lap-left', min: null, max: 3 },
  { quantity: 'slot-bend', strap: 'sub-left', min: null, max: 3 },
  { quantity: 'slot-bend', strap: 'sub-right', min: null, max: 20 },
  { quantity: 'shoulder-rim-drop', strap: 'shoulder-left', min: 0, max: 45 },
  { quantity: 'shoulder-plan', strap: 'shoulder-right', min: -10, max: 20 },
  { quantity: 'shoulder-above-hip', strap: 'shoulder-right', min: 400, max: 520 },
  { quantity: 'shoulder-behind-hip', strap: 'shoulder-left', min: 150, max: 600 },
  { quantity: 'shoulder-behind-fk', strap: 'shoulder-left', min: 0, max: null },
  { quantity: 'shoulder-reference-plan', strap: 'shoulder-left', min: -10, max: 20 },
  { quantity: 'shoulder-free-length', strap: 'shoulder-left', min: null, max: 400 },
  { quantity: 'shoulder-length-behind-seat', strap: 'shoulder-left', min: 50, max: 250 },
]

const PAIRS: readonly Case[] = [
  { quantity: 'shoulder-spacing', strap: 'shoulder-left', pair: 'shoulder-pair', min: 100, max: 400 },
  { quantity: 'spine-load-share', strap: 'shoulder-right', pair: 'shoulder-pair', min: null, max: 0.3 },
  { quantity: 'lap-mirror', strap: 'lap-left', pair: 'lap-pair', min: null, max: 150 },
  { quantity: 'lap-mirror', strap: 'lap-right', pair: 'lap-pair', min: 40, max: null },
]

const ACROSS: readonly Case[] = [
  { quantity: 'lap-off-centre', strap: 'lap-left', min: 120, max: null },
  { quantity: 'lap-off-centre', strap: 'lap-right', min: 100, max: 300, mirrored: true },
  { quantity: 'lap-spacing', strap: 'lap-left', pair: 'lap-pair', min: 165, max: null },
  { quantity: 'lap-spacing', strap: 'lap-right', pair: 'lap-pair', min: 300, max: 500, mirrored: true },
  { quantity: 'sub-spacing', strap: 'sub-left', pair: 'sub-pair', min: 90, max: 110, mirrored: true },
  { quantity: 'sub-spacing', strap: 'sub-right', pair: 'sub-pair', min: null, max: 110 },
]

const BOTH = ['side', 'top'] as const

/** Each is a whole region and hundreds of solutions of a place. */
const RUNS = 12

describe('ruleRegion against the strap solver, 200 positions in each random place', () => {
  for (const elevation of BOTH) {
    it.each(OWN)(
      `${elevation}: $quantity of $strap from $min to $max agrees everywhere`,
      (one) => {
        expect(agreement(one, elevation, RUNS)).toBe('agrees')
      },
      60_000,
    )
    it.each(PAIRS)(
      `${elevation}: $quantity of a split pair from $min to $max agrees everywhere`,
      (one) => {
        expect(agreement(one, elevation, RUNS)).toBe('agrees')
      },
      60_000,
    )
  }
  it.each(ACROSS)(
    'top: $quantity from $min to $max, mirrored $mirrored, agrees everywhere',
    (one) => {
      expect(agreement(one, 'top', RUNS)).toBe('agrees')
    },
    60_000,
  )
})

describe('anchorZone', () => {
  it('is the overlap of its rules', () => {
    const rules = [quantityRule('shoulder-drop', -10, 20), quantityRule('slot-bend', null, 10)]
    let inside = 0
    fc.assert(
      fc.property(anyScene, fc.integer({ min: 0, max: 999 }), (scene, turn) => {
        fc.pre(scene.seat.slots.length > 0)
        const zoneCase = zoneCaseOf([scene], 'shoulder-left', false)
        const regions = rules.map((rule) => ruleRegion(rule, zoneCase, 'side') ?? [])
        const zone = anchorZone(rules, zoneCase).side
        for (const at of spread(planeOrigin(scene, 'shoulder-left', 'side'), 300, turn)) {
          if ([zone, ...regions].some((region) => isNearEdge(region, at, EDGE_MM))) continue
          inside += regionContains(zone, at) ? 1 : 0
          expect(regionContains(zone, at)).toBe(regions.every((region) => regionContains(region, at)))
        }
      }),
      { numRuns: 8 },
    )
    expect(inside).toBeGreaterThan(0)
  })

  it('holds every sitting: a point of the zone keeps the rule for each of them', () => {
    const rules = [quantityRule('lap-angle', 30, 75)]
    fc.assert(
      fc.property(anyScene, anyScene, fc.integer({ min: 0, max: 999 }), (one, other, turn) => {
        const both = [one, { ...other, anchors: one.anchors, seat: one.seat, tubes: one.tubes }]
        const zoneCase = zoneCaseOf(both, 'lap-left', false)
        const zone = anchorZone(rules, zoneCase).side
        const about = planeOrigin(one, 'lap-left', 'side')
        for (const at of spread(about, 60, turn)) {
          if (!regionContains(zone, at) || isNearEdge(zone, at, 0.05)) continue
          for (const scene of both) {
            const moved = movedInPlane(zoneCase.anchor.mount.point, at, 'side')
            const value = valueAt(
              { scene, strap: 'lap-left', at: moved, mirrored: false },
              'lap-angle',
              'lap-left',
            )
            expect(value).toBeGreaterThanOrEqual(30)
            expect(value).toBeLessThanOrEqual(75)
          }
        }
      }),
      { numRuns: 8 },
    )
  })

  it('never shrinks when limits are widened', () => {
    fc.assert(
      fc.property(anyScene, fc.double({ min: 0, max: 15, noNaN: true }), (scene, moreDeg) => {
        for (const strap of ['shoulder-left', 'lap-left', 'sub-left'] as const) {
          const quantity = { shoulder: 'shoulder-drop', lap: 'lap-angle', sub: 'sub-to-vertical' } as const
          const id = quantity[strapFamily(strap)]
          const zoneCase = zoneCaseOf([scene], strap, false)
          const narrow = ruleRegion(quantityRule(id, 20, 50), zoneCase, 'side') ?? []
          const wide = ruleRegion(quantityRule(id, 20 - moreDeg, 50 + moreDeg), zoneCase, 'side') ?? []
          for (const polygon of narrow)
            for (const corner of polygon) expect(regionContains(wide, corner, EDGE_MM)).toBe(true)
        }
      }),
      { numRuns: 12 },
    )
  })
})

describe('ruleRegion by hand', () => {
  it('draws the lap wedge of 45° to 60° behind and below the hip point', () => {
    // Hip point (0, 0), tabs, no slot. A tab 200 mm behind: 45° is 200 mm below it, 60° is 200·tan 60° = 346.41 mm below.
    const region = ruleRegion(
      quantityRule('lap-angle', 45, 60),
      zoneCaseOf([handScene()], 'lap-left', false),
      'side',
    )
    expect(regionContains(region ?? [], planePoint(200, -200.01))).toBe(true)
    expect(regionContains(region ?? [], planePoint(200, -199.99))).toBe(false)
    expect(regionContains(region ?? [], planePoint(200, -346.4))).toBe(true)
    expect(regionContains(region ?? [], planePoint(200, -346.42))).toBe(false)
  })

  it('cuts the same wedge in the top elevation to the strip of x at the tab’s height', () => {
    // The tab is 200 mm below the hip point: 60° is 200/tan 60° = 115.47 mm behind it, 45° is 200 mm behind it.
    const region = ruleRegion(
      quantityRule('lap-angle', 45, 60),
      zoneCaseOf([handScene()], 'lap-left', false),
      'top',
    )
    expect(regionContains(region ?? [], planePoint(115.48, -250))).toBe(true)
    expect(regionContains(region ?? [], planePoint(115.46, -250))).toBe(false)
    expect(regionContains(region ?? [], planePoint(199.99, -900))).toBe(true)
    expect(regionContains(region ?? [], planePoint(200.01, -900))).toBe(false)
    // On its own side only: beyond the middle of the seat the strap would cut the body.
    expect(regionContains(region ?? [], planePoint(150, -0.01))).toBe(true)
    expect(regionContains(region ?? [], planePoint(150, 0.01))).toBe(false)
  })

  it('puts the centre of a wrapped bar half its diameter under the level line over the shoulder', () => {
    // Shoulder arc about (0, 490), radius 100: a level strap leaves it at z = 590. Bar 40 mm, strap over its top: centre at 570.
    const scene = handScene({
      anchors: [
        ...lapTabs,
        wrap('shoulder-left', point(400, -80, 560), 'over'),
        wrap('shoulder-right', point(400, 80, 560), 'over'),
      ],
      tubes: [bar(400, 560, 40)],
    })
    const region = ruleRegion(
      quantityRule('shoulder-drop', 0, null),
      zoneCaseOf([scene], 'shoulder-left', true),
      'side',
    )
    expect(regionContains(region ?? [], planePoint(400, 569.99))).toBe(true)
    expect(regionContains(region ?? [], planePoint(400, 570.01))).toBe(false)
  })

  it('ends where a strap over the lower edge of its slot has turned by the allowed angle', () => {
    // Shoulder arc about (0, 490), radius 100; lower edge at P (150, 540), 158.11 mm from its middle: the tangent from P over the
    // arc falls rearward by asin(100/158.11) − atan(50/150) = 20.80°.
    const scene = handScene({
      seat: { slots: [slot({ straps: ['shoulder-left'], face: 'back', centre: point(150, -80, 560) })] },
      anchors: [...lapTabs, tab('shoulder-left', point(400, -80, 430))],
    })
    const region =
      ruleRegion(quantityRule('slot-bend', null, 5), zoneCaseOf([scene], 'shoulder-left', false), 'side') ??
      []
    const fallRad = Math.asin(100 / Math.hypot(150, 50)) - Math.atan(50 / 150)
    const at = (turnDeg: number) => {
      const radians = fallRad + (turnDeg * Math.PI) / 180
      return planePoint(150 + 200 * Math.cos(radians), 540 - 200 * Math.sin(radians))
    }
    expect(regionContains(region, at(4.99))).toBe(true)
    expect(regionContains(region, at(5.01))).toBe(false)
  })

  it('is null for what no position decides, and for a spacing in the side elevation', () => {
    const zoneCase = zoneCaseOf([handScene()], 'lap-left', true)
    expect(ruleRegion(quantityRule('tab-twist', null, 5), zoneCase, 'side')).toBeNull()
    expect(ruleRegion(quantityRule('strap-length', null, 5), zoneCase, 'top')).toBeNull()
    expect(ruleRegion(quantityRule('lap-spacing', 165, null), zoneCase, 'side')).toBeNull()
    expect(ruleRegion(quantityRule('lap-mirror', null, 5), zoneCase, 'side')).toBeNull()
    expect(ruleRegion(quantityRule('shoulder-drop', 0, 20), zoneCase, 'side')).toBeNull()
  })

  it('keeps to the shoulder height in mm for a tab', () => {
    // Shoulder point at z = 590: 0 to 101.6 mm lower is 488.4 to 590.
    const scene = handScene({ anchors: [...lapTabs, tab('shoulder-left', point(400, -80, 560))] })
    const region =
      ruleRegion(
        quantityRule('shoulder-height', 0, 101.6),
        zoneCaseOf([scene], 'shoulder-left', false),
        'side',
      ) ?? []
    expect(regionContains(region, planePoint(400, 488.41))).toBe(true)
    expect(regionContains(region, planePoint(400, 488.39))).toBe(false)
    expect(regionContains(region, planePoint(400, 589.99))).toBe(true)
    expect(regionContains(region, planePoint(400, 590.01))).toBe(false)
  })
})

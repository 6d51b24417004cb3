import { describe, expect, it } from 'vitest'

import type { Layout } from '../../../../src/domain/layout/document/layout'
import { withAnchorMoved } from '../../../../src/domain/layout/edit/anchorMove'
import { ruleSetOf } from '../../../../src/domain/layout/document/ruleSetOf'
import { evaluateLayout, layoutNumbers } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { proposedPositions } from '../../../../src/domain/layout/propose/propose'
import type { ProposalWish } from '../../../../src/domain/layout/propose/wish'
import { exampleLayout } from '../../../support/exampleLayouts'
import { crossTube, flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'
import { firstPlace, isKept, lapCar, lapWish, ownRule, proposalsFor, under } from './wishes'

/** A box that leaves only z free, at 150 mm behind the hip point. */
const upright = {
  kind: 'anywhere',
  box: { min: { xMm: 150, yMm: -230, zMm: -500 }, max: { xMm: 150, yMm: -230, zMm: -20 } },
} as const

/**
 * How far a hole at (x, z) is from the places from which a strap straight to the hip at (0, 0) runs through a tube of radius 19 about
 * (150, −200): behind both tangents from the hip and behind the circle over hip and centre (right angles, Thales); 0 there.
 */
const nearestThrough = (x: number, z: number): number => {
  const middle = Math.atan2(200, 150)
  const half = Math.asin(19 / 250)
  const isBehind = (x - 150) * x + (z + 200) * z > 0
  if (isBehind && Math.abs(Math.atan2(-z, x) - middle) < half) return 0
  const tangents = [middle - half, middle + half].map((angle) => {
    const along = Math.max(Math.sqrt(250 ** 2 - 19 ** 2), x * Math.cos(angle) - z * Math.sin(angle))
    return Math.hypot(x - along * Math.cos(angle), z + along * Math.sin(angle))
  })
  const corners = Array.from({ length: 2001 }, (_, step) => {
    const turn = -middle + ((step - 1000) / 1000) * 2 * half
    return [75 + 125 * Math.cos(turn), -100 + 125 * Math.sin(turn)] as const
  }).filter(([u, v]) => Math.hypot(u - 150, v + 200) <= 19)
  return Math.min(...tangents, ...corners.map(([u, v]) => Math.hypot(x - u, z - v)))
}

describe('proposedPositions, closed forms', () => {
  it('lies where two angle limits leave the same: midway between 45° and 75°, straight below', () => {
    // The room to a limit is the distance to its line through the hip point, r·sin|α − limit|; with one r these are equal at
    // α = 60°. At x = 150: z = −150·tan 60° = −259.81, r = 150/cos 60° = 300, room = 300·sin 15° = 77.646. Derived here.
    const layout = under(lapCar(), [ownRule('lap', 'lap-angle', { min: 45, max: 75 })])
    const { proposals, present } = proposalsFor(layout, lapWish({ space: upright }))
    const [best] = proposals
    expect(best?.mounts.map(({ anchorId }) => anchorId)).toEqual(['lap-left-anchor', 'lap-right-anchor'])
    expect(best?.mounts[0]?.mount.point.zMm).toBeCloseTo(-259.8, 6)
    expect(best?.mounts[1]?.mount.point).toEqual({
      xMm: 150,
      yMm: 230,
      zMm: best?.mounts[0]?.mount.point.zMm,
    })
    // At −259.8 the nearer limit is 45°: (259.8 − 150)/√2 = 77.640.
    expect(best?.roomMm).toBeCloseTo(77.64, 3)
    expect(best?.limiting).toMatchObject({ ruleId: 'lap', side: 'min', subject: 'lap-left' })
    // Toward 45° is up and to the rear, square to a line that falls at 45°.
    expect(best?.limiting?.towards.toSorted()).toEqual(['rearward', 'up'])
    // As drawn, at −100: atan(100/150) = 33.7°, which is below 45° on both sides.
    expect(present).toMatchObject({ roomMm: null, broken: { must: 0, should: 2, advice: 0 } })
  })

  it('goes out along the ridge of the wedge to the corner of the box that is furthest', () => {
    // Free in x and z: on the ridge α = 60° room grows with r, so the box ends it. x ≤ 200, z ≥ −300: the ridge leaves it at
    // z = −300 (x = 173.2). Along that edge toward larger x the upper limit's room grows and the lower one's falls: the best is
    // where they are equal, on the ridge: r = 300/sin 60° = 346.41, room = r·sin 15° = 89.657.
    const layout = under(lapCar(), [ownRule('lap', 'lap-angle', { min: 45, max: 75 })])
    const box = {
      min: { xMm: 40, yMm: -230, zMm: -300 },
      max: { xMm: 200, yMm: -230, zMm: -60 },
    }
    const [best] = proposalsFor(layout, lapWish({ space: { kind: 'anywhere', box } })).proposals
    expect(best?.roomMm).toBeGreaterThan(89.657 - 0.1)
    expect(best?.roomMm).toBeLessThanOrEqual(89.6576)
    expect(best?.mounts[0]?.mount.point.zMm).toBe(-300)
  })

  it('stands a tab off a tube on the side with the most room', () => {
    // A tube across the car at 150/−200, hole 19 + 25 = 44 mm from its centre line. The room to 45° is (|z| − x)/√2. A strap from
    // behind would run through its own tube: the nearest such place is where it passes the centre line at a right angle, just inside
    // the surface. The best hole is where both are equal; the numbers come from `nearestThrough`.
    const layout = under({ ...lapCar(), tubes: [crossTube('floor-tube', 150, -200, 'floor')] }, [
      ownRule('lap', 'lap-angle', { min: 45, max: 75 }),
    ])
    const space = { kind: 'tubes', tubeIds: ['floor-tube'], standOffMm: 25 } as const
    const [best] = proposalsFor(layout, lapWish({ space })).proposals
    const point = best?.mounts[0]?.mount.point
    if (point === undefined) throw new Error('no proposal')
    expect(Math.hypot(point.xMm - 150, point.zMm + 200)).toBeCloseTo(44, 6)
    const expected = Math.max(
      ...Array.from({ length: 3600 }, (_, step) => {
        const turn = (step * Math.PI) / 1800
        const [x, z] = [150 + 44 * Math.cos(turn), -200 + 44 * Math.sin(turn)]
        const to75 = x * Math.sin((75 * Math.PI) / 180) + z * Math.cos((75 * Math.PI) / 180)
        return Math.min((-z - x) / Math.SQRT2, to75, nearestThrough(x, z))
      }),
    )
    // Tubes' shadows are found to half a millimetre (zones/README.md).
    expect(Math.abs((best?.roomMm ?? 0) - expected)).toBeLessThan(0.5)
    expect(best?.mounts.every(({ mount }) => mount.tubeId === 'floor-tube')).toBe(true)
  })
})

describe('proposedPositions against a slow search', { timeout: 900_000 }, () => {
  const roomAt = (layout: Layout, wish: ProposalWish, xMm: number, zMm: number): number | null => {
    const moved = withAnchorMoved(layout, wish.placeId, wish.anchorId ?? '', { xMm, zMm })
    // Numbers first: where something is broken no room has to be worked out.
    const numbers = layoutNumbers(moved).places[0]?.findings ?? []
    if (numbers.some(({ subject, verdict }) => subject.startsWith('lap-') && verdict === 'broken'))
      return null
    const findings = evaluateLayout(moved, { extent: 'what-moves' }).places[0]?.findings ?? []
    const own = findings.filter(({ subject }) => subject.startsWith('lap-'))
    if (!own.every(isKept)) return null
    return Math.min(...own.flatMap(({ roomMm }) => roomMm ?? []))
  }

  /** The layout under those of its rules that speak about straps of one family, so that nothing else is worked out. */
  const onlyAbout = (family: 'lap-', layout: Layout): Layout => {
    const spoken = new Set(
      layoutNumbers(layout).places.flatMap(({ findings }) =>
        findings.filter(({ subject }) => subject.startsWith(family)).map(({ ruleId }) => ruleId),
      ),
    )
    const ruleSet = ruleSetOf(layout)
    if (ruleSet === null) throw new Error('no rule set')
    const rules = ruleSet.rules.flatMap((rule) =>
      rule.kind === 'quantity' && spoken.has(rule.id) ? [rule] : [],
    )
    return under(layout, rules)
  }

  it('is not beaten by more than 0.5 mm by any point of a fine grid', () => {
    const layout = onlyAbout('lap-', exampleLayout('rock-buggy.layout.json'))
    const place = firstPlace(layout)
    const anchor = place.anchors.find(({ strap }) => strap === 'lap-left')
    if (anchor === undefined) throw new Error('no lap anchor')
    const { point } = anchor.mount
    const box = {
      min: { xMm: point.xMm - 40, yMm: point.yMm, zMm: point.zMm - 40 },
      max: { xMm: point.xMm + 40, yMm: point.yMm, zMm: point.zMm + 40 },
    }
    const wish: ProposalWish = {
      ...lapWish({ space: { kind: 'anywhere', box } }),
      placeId: place.id,
      anchorId: anchor.id,
    }
    const [best] = proposalsFor(layout, wish).proposals
    let grid = Number.NEGATIVE_INFINITY
    for (let dx = -40; dx <= 40; dx += 5)
      for (let dz = -40; dz <= 40; dz += 5)
        grid = Math.max(grid, roomAt(layout, wish, point.xMm + dx, point.zMm + dz) ?? grid)
    expect(grid).toBeGreaterThan(10)
    expect(best?.roomMm ?? 0).toBeGreaterThan(grid - 0.5)
  })

  it('finds the best place of a wrap along its bar as a look every 2 mm does', () => {
    const layout = under(
      flatLayout(
        [
          flatPlace({
            anchors: [
              ...tabPair('lap', { xMm: 150, yMm: 230, zMm: -200 }),
              ...tabPair('shoulder', { xMm: 420, yMm: 60, zMm: 520 }, 'bar').map((anchor) => ({
                ...anchor,
                mount: {
                  kind: 'wrap' as const,
                  tubeId: 'bar',
                  point: anchor.mount.point,
                  over: 'over' as const,
                  guideHoops: true,
                },
              })),
            ],
          }),
        ],
        { tubes: [crossTube('bar', 420, 520)] },
      ),
      [ownRule('apart', 'shoulder-spacing', { min: 150, max: 260 })],
    )
    const wish = lapWish({
      anchorId: 'shoulder-left-anchor',
      space: { kind: 'tubes', tubeIds: ['bar'], standOffMm: 0 },
    })
    const [best] = proposalsFor(layout, wish).proposals
    // Half way between 75 and 130 mm from the middle: 102.5, and 27.5 mm of room either way. Derived here.
    expect(best?.mounts[0]?.mount.point.yMm).toBeCloseTo(-102.5, 6)
    expect(best?.roomMm).toBeCloseTo(27.5, 6)
  })
})

describe('proposedPositions stays on the tube', () => {
  it('puts no webbing beyond the end of a bar, however much room is there', () => {
    // The bar ends 150 mm from the middle, and the webbing reaches half its width beyond its own middle.
    const bar = crossTube('bar', 420, 520)
    const short = {
      ...bar,
      points: bar.points.map((point) => ({ ...point, yMm: Math.sign(point.yMm) * 150 })),
    }
    const wraps = tabPair('shoulder', { xMm: 420, yMm: 60, zMm: 520 }, 'bar').map((anchor) => ({
      ...anchor,
      mount: {
        kind: 'wrap' as const,
        tubeId: 'bar',
        point: anchor.mount.point,
        over: 'over' as const,
        guideHoops: true,
      },
    }))
    const lap = tabPair('lap', { xMm: 150, yMm: 230, zMm: -200 })
    const car = flatLayout([flatPlace({ anchors: [...lap, ...wraps] })], { tubes: [short] })
    const place = firstPlace(car)
    const halfMm = place.belt.webbingMm.shoulder / 2
    // Both alike under a rule that wants 150 mm; one by itself, the other 60 mm from the middle, under one that wants more than there is.
    for (const [symmetric, min] of [
      [true, 150],
      [false, 180],
    ] as const) {
      const layout = under(
        { ...car, places: [{ ...place, mirrored: { ...place.mirrored, shoulder: symmetric } }] },
        [ownRule('apart', 'shoulder-spacing', { min })],
      )
      const wish = lapWish({
        anchorId: 'shoulder-left-anchor',
        space: { kind: 'tubes', tubeIds: ['bar'], standOffMm: 0 },
        symmetric,
      })
      const [best] = proposalsFor(layout, wish).proposals
      expect(best?.mounts).toHaveLength(symmetric ? 2 : 1)
      expect(best?.mounts[0]?.mount.point.yMm).toBeCloseTo(halfMm - 150, 0)
      for (const { mount } of best?.mounts ?? [])
        expect(Math.abs(mount.point.yMm) + halfMm).toBeLessThanOrEqual(150 + 1e-6)
    }
  })
})

describe('proposedPositions says why not', () => {
  it('names the smallest group that contradicts itself where nothing keeps everything', () => {
    const layout = under(lapCar(-200), [
      ownRule('flat', 'lap-angle', { max: 40 }),
      ownRule('steep', 'lap-angle', { min: 60 }),
      ownRule('wide', 'lap-spacing', { min: 300 }),
    ])
    const [best] = proposalsFor(layout, lapWish({ space: upright })).proposals
    expect(best?.broken.should).toBeGreaterThan(0)
    const [staying] = best?.staying ?? []
    if (staying?.why.kind !== 'contradiction') throw new Error(`no contradiction: ${staying?.why.kind}`)
    expect(staying.why.contradiction.rules.map(({ ruleId }) => ruleId).toSorted()).toEqual(['flat', 'steep'])
  })

  it('says that only the places allowed are in the way', () => {
    const layout = under(lapCar(-200), [ownRule('flat', 'lap-angle', { max: 10, min: 5 })])
    const box = { min: { xMm: 150, yMm: -230, zMm: -500 }, max: { xMm: 150, yMm: -230, zMm: -100 } }
    const [best] = proposalsFor(layout, lapWish({ space: { kind: 'anywhere', box } })).proposals
    expect(best?.staying.map(({ why }) => why.kind)).toEqual(['not-among-allowed', 'not-among-allowed'])
    // As near as the box allows: its upper edge.
    expect(best?.mounts[0]?.mount.point.zMm).toBe(-100)
  })

  it('only watches a rule without a room, and turns a tab that it would not leave as it is', () => {
    const layout = under(lapCar(), [
      ownRule('lap', 'lap-angle', { min: 45, max: 75 }),
      ownRule('in-line', 'tab-twist', { max: 10 }),
    ])
    const space = {
      kind: 'anywhere',
      box: { min: { xMm: 150, yMm: -330, zMm: -500 }, max: { xMm: 150, yMm: -330, zMm: -20 } },
    } as const
    const [best] = proposalsFor(layout, lapWish({ space })).proposals
    expect(best?.unmeasured.map(({ ruleId }) => ruleId)).toEqual(['in-line', 'in-line'])
    expect(best?.turnedTabs).toEqual(['lap-left-anchor', 'lap-right-anchor'])
    expect(best?.broken).toEqual({ must: 0, should: 0, advice: 0 })
    expect(best?.roomMm).toBeCloseTo(77.64, 2)
  })

  it.each([
    { wish: lapWish({ placeId: 'nowhere' }), problem: { kind: 'place-unknown', placeId: 'nowhere' } },
    { wish: lapWish({ anchorId: 'nobody' }), problem: { kind: 'anchor-unknown', anchorId: 'nobody' } },
    {
      wish: lapWish({ space: { kind: 'tubes', tubeIds: ['gone'], standOffMm: 25 } }),
      problem: { kind: 'no-tubes' },
    },
    {
      wish: lapWish({
        space: {
          kind: 'anywhere',
          box: { min: { xMm: 0, yMm: 5, zMm: 0 }, max: { xMm: 1, yMm: 4, zMm: 1 } },
        },
      }),
      problem: { kind: 'box-turned-round', axis: 'y' },
    },
    {
      // A box on the other side of the seat.
      wish: lapWish({
        space: {
          kind: 'anywhere',
          box: { min: { xMm: 0, yMm: 5, zMm: -300 }, max: { xMm: 200, yMm: 400, zMm: 0 } },
        },
      }),
      problem: { kind: 'no-spot', anchorId: 'lap-left-anchor' },
    },
  ])('refuses what cannot be looked for: $problem.kind', ({ wish, problem }) => {
    expect(proposedPositions(lapCar(), wish)).toEqual({ ok: false, error: problem })
  })

  it('refuses a place without anchors', () => {
    expect(proposedPositions(flatLayout([flatPlace()]), lapWish({ anchorId: null }))).toEqual({
      ok: false,
      error: { kind: 'no-anchors' },
    })
  })

  it('tells progress that never falls and ends at the whole', () => {
    const told: { readonly done: number; readonly total: number }[] = []
    const layout = under(lapCar(), [ownRule('lap', 'lap-angle', { min: 45, max: 75 })])
    proposedPositions(layout, lapWish({ space: upright }), (done, total) => told.push({ done, total }))
    expect(told[0]?.done).toBe(0)
    expect(told.length).toBeGreaterThan(3)
    expect(told.map(({ done }) => done)).toEqual(told.map(({ done }) => done).toSorted((a, b) => a - b))
    expect(new Set(told.map(({ total }) => total)).size).toBe(1)
    expect(told.at(-1)?.done).toBe(told.at(-1)?.total)
  })
})

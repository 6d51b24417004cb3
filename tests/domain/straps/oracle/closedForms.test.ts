import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pointMm } from '../../../../src/domain/geometry/point'
import { scene } from '../scenes'
import { lapEnd, shoulderEnd, subEnd } from './bodyEnds'
import { shortestChain, type Opening } from './chain'
import { ovalLength, ovalPoint, ovalReach, overtaken, pointReach, type Oval } from './oval'
import { mountEnd } from './mountEnd'
import { tautStrap } from './taut'
import { apart, dot, minus, plus, towards, unit, type Vector } from './vector'

/* The slow solver itself against formulas that need no search. */

const mm = (min: number, max: number): fc.Arbitrary<number> =>
  fc.noBias(fc.integer({ min: 0, max: 1_000_000 })).map((step) => min + ((max - min) * step) / 1_000_000)
const anywhere = (low: number, high: number): fc.Arbitrary<Vector> =>
  fc.tuple(mm(-300, 300), mm(-300, 300), mm(low, high))

const ORIGIN: Vector = [0, 0, 0]

/** The line through the origin along y, as an opening without height. */
const edge: Opening = {
  origin: [0, 0, 0],
  across: [0, 1, 0],
  up: [0, 0, 1],
  low: [-1e6, 0],
  high: [1e6, 0],
}

describe('point – edge – point', () => {
  it('is as long as the two triangles unfolded into one plane', () => {
    fc.assert(
      fc.property(anywhere(-200, -10), anywhere(-200, -10), (start, end) => {
        const found = shortestChain(start, [edge], end, [0, 0])
        // Unfolded about the edge: heights add, the distance along the edge stays (plane geometry).
        const heights = Math.hypot(start[0], start[2]) + Math.hypot(end[0], end[2])
        expect(found.length).toBeCloseTo(Math.hypot(heights, end[1] - start[1]), 9)
        const point = found.points[0] ?? start
        // Equal angles with the edge on both sides.
        const into = dot(towards(start, point), [0, 1, 0])
        expect(into).toBeCloseTo(dot(towards(point, end), [0, 1, 0]), 9)
      }),
    )
  })

  it('passes two parallel edges at shares of the unfolded length', () => {
    const second: Opening = { ...edge, origin: [40, 0, 0] }
    const found = shortestChain([-30, 0, -40], [edge, second], [70, 120, -40], [0, 0, 0, 0])
    // 50, 40 and 50 mm of height in 140, 120 mm along: y = 120·50/140 and 120·90/140.
    expect(found.points.map(([, y]) => y)).toEqual([
      expect.closeTo(42.857142857, 6),
      expect.closeTo(77.142857143, 6),
    ])
    expect(found.length).toBeCloseTo(Math.hypot(140, 120), 9)
  })

  it('stays at the corner of an opening that it cannot leave', () => {
    const window: Opening = { ...edge, low: [-20, -10], high: [20, 10] }
    const found = shortestChain([-100, 60, 50], [window], [100, 80, 70], [0, 0])
    expect(found.points[0]).toEqual([0, 20, 10])
  })

  it('has no shorter way among a thousand others through thick openings', () => {
    const share = fc.tuple(mm(-1, 1), mm(-1, 1), mm(-1, 1), mm(-1, 1))
    const one = fc.tuple(anywhere(-300, 300), anywhere(-300, 300), mm(-30, 30), mm(1, 50), share)
    fc.assert(
      fc.property(one, ([a, b, turn, thick, at]) => {
        const c = Math.cos((turn * Math.PI) / 180)
        const s = Math.sin((turn * Math.PI) / 180)
        const window = (x: number): Opening => ({
          origin: [x, 0, 0],
          across: [0, c, s],
          up: [0, -s, c],
          low: [-25, -12],
          high: [25, 12],
        })
        const openings = [window(-thick / 2), window(thick / 2)]
        const start: Vector = [-100 - Math.abs(a[0]), a[1], a[2]]
        const end: Vector = [100 + Math.abs(b[0]), b[1], b[2]]
        const found = shortestChain(start, openings, end, [0, 0, 0, 0])
        const [p, q] = openings.map(({ origin, across, up }, i) =>
          plus(plus(origin, across, 25 * (at[2 * i] ?? 0)), up, 12 * (at[2 * i + 1] ?? 0)),
        ) as [Vector, Vector]
        expect(found.length).toBeLessThanOrEqual(apart(start, p) + apart(p, q) + apart(q, end) + 1e-9)
      }),
      { numRuns: 1000 },
    )
  })
})

describe('ellipse', () => {
  /*
   * Complete elliptic integral of the second kind E(m). Values of m = 0.05 … 0.3 read in a public table of test values that names
   * Abramowitz & Stegun 1964 as its source; 0.5 and 0.9 read in public tests of elliptic integral programs. The handbook's own
   * table 17.1 was not at hand.
   */
  it.each([
    [0.05, 1.550973351780472],
    [0.1, 1.530757636897763],
    [0.2, 1.489035058095853],
    [0.3, 1.445363064412665],
    [0.5, 1.3506438810476755],
    [0.9, 1.1047747327040733],
  ])('has a quarter of length a·E(m), m = %f', (m, e) => {
    const a = 120
    const oval: Oval = { centre: [7, -3], along: [0.6, 0.8], a, b: a * Math.sqrt(1 - m) }
    const along = Math.atan2(0.8, 0.6)
    expect(ovalLength(oval, along, along + Math.PI / 2)).toBeCloseTo(a * e, 9)
    expect(ovalLength(oval, along + Math.PI / 2, along + Math.PI)).toBeCloseTo(a * e, 9)
  })

  it('squeezed flat has the length of its long axis on each side', () => {
    const flat: Oval = { centre: [0, 0], along: [1, 0], a: 50, b: 0 }
    expect(ovalLength(flat, -0.1, Math.PI - 0.1)).toBeCloseTo(100, 9)
  })

  it('is touched where the tangent from a point outside touches by the polar line', () => {
    fc.assert(
      fc.property(mm(40, 150), mm(20, 150), mm(0, 1.5), mm(1.05, 6), (a, b, angle, far) => {
        const oval: Oval = { centre: [0, 0], along: [1, 0], a, b }
        const from: [number, number] = [-a * far * Math.cos(angle), b * far * Math.sin(angle)]
        const meets = overtaken(ovalReach(oval), pointReach(from), 0, Math.PI, 720)
        expect(meets).not.toBeNull()
        const [x, y] = ovalPoint(oval, meets ?? 0)
        // The polar of the point: x·x₀/a² + y·y₀/b² = 1.
        expect((x * from[0]) / a ** 2 + (y * from[1]) / b ** 2).toBeCloseTo(1, 9)
        expect((x / a) ** 2 + (y / b) ** 2).toBeCloseTo(1, 9)
      }),
    )
  })
})

describe('over a circle', () => {
  it('runs a shoulder strap in closed form: tangent, arc, tangent', () => {
    // Arc of 100 mm about (0, 490); the anchor level with its top 400 mm behind, the buckle level with its foremost 300 below.
    const { body } = scene({ shoulderHalfSpacingMm: 0 })
    const clear = { ...body, chest: { ...body.chest, acrossMm: 0, alongMm: 0 } }
    const arrival = shoulderEnd(clear, 'left', [-100, 0, 190])([400, 0, 590])
    expect(arrival?.touch).toEqual([expect.closeTo(0, 6), 0, expect.closeTo(590, 9)])
    expect(arrival?.restMm()).toBeCloseTo((100 * Math.PI) / 2 + 300, 6)
  })

  it('winds a thigh strap into a helix: unrolled it is straight', () => {
    const { body } = scene({ groinRadiusMm: 90 })
    fc.assert(
      fc.property(mm(-60, 60), mm(20, 200), mm(-400, -150), (y, x, z) => {
        const buckle: Vector = [-90, 0, 60]
        const last: Vector = [x, y, z]
        const arrival = subEnd(body, buckle)(last)
        const total = apart(last, arrival?.touch ?? ORIGIN) + (arrival?.restMm() ?? 0)
        // Tangent lengths √(d² − r²) and the angle between the radii to the two touching points.
        const d1 = Math.hypot(90, 60)
        const d2 = Math.hypot(x, z)
        const swept =
          2 * Math.PI - (Math.atan2(60, -90) - Math.atan2(z, x)) - Math.acos(90 / d1) - Math.acos(90 / d2)
        const flat = Math.sqrt(d1 ** 2 - 8100) + Math.sqrt(d2 ** 2 - 8100) + 90 * swept
        expect(total).toBeCloseTo(Math.hypot(flat, y), 6)
      }),
    )
  })

  it('winds it as a chain over many rulings does', () => {
    const { body } = scene({ groinRadiusMm: 90 })
    const buckle: Vector = [-90, 0, 60]
    const last: Vector = [150, 140, -250]
    const arrival = subEnd(body, buckle)(last)
    const rulings = Array.from({ length: 60 }, (_, i): Opening => {
      const angle = Math.PI + (i / 60) * (Math.PI / 2 + 0.8)
      return { ...edge, origin: [90 * Math.cos(angle), 0, 90 * Math.sin(angle)] }
    })
    // Only those between the touching points hold it.
    const from = Math.atan2(60, -90) + Math.acos(90 / Math.hypot(90, 60))
    const to = 2 * Math.PI + Math.atan2(-250, 150) - Math.acos(90 / Math.hypot(150, 250))
    const held = rulings.filter((_, i) => {
      const angle = Math.PI + (i / 60) * (Math.PI / 2 + 0.8)
      return angle > from && angle < to
    })
    expect(held.length).toBeGreaterThan(20)
    const found = shortestChain(
      buckle,
      held,
      last,
      held.flatMap(() => [0, 0]),
    )
    const total = apart(last, arrival?.touch ?? ORIGIN) + (arrival?.restMm() ?? 0)
    // Chords instead of arcs: shorter by less than step²/24 of the arc, and of the cut at both ends.
    expect(total - found.length).toBeGreaterThan(0)
    expect(total - found.length).toBeLessThan(0.02)
  })

  it('leaves a tilted tube square to the radius there, as seen along the tube', () => {
    const axis = unit([0.2, 1, -0.3])
    const at = (share: number): ReturnType<typeof pointMm> =>
      pointMm(300 + axis[0] * share, axis[1] * share, 100 + axis[2] * share)
    const tube = {
      id: 'bar',
      name: 'bar',
      role: 'harness-bar' as const,
      points: [at(-300), at(300)],
      outsideDiameterMm: 40,
      wallMm: 2,
    }
    const wrap = { kind: 'wrap' as const, tubeId: 'bar', point: pointMm(300, 0, 100), guideHoops: true }
    const next: Vector = [0, 70, 160]
    for (const over of ['over', 'under'] as const) {
      const contact = mountEnd({ ...wrap, over }, [tube])(next) ?? ORIGIN
      const radius = minus(contact, [300, 0, 100])
      expect(Math.hypot(...radius)).toBeCloseTo(20, 9)
      expect(dot(radius, axis)).toBeCloseTo(0, 9)
      expect(dot(radius, minus(next, contact))).toBeCloseTo(0, 9)
      expect(Math.sign(radius[2])).toBe(over === 'over' ? 1 : -1)
    }
  })
})

describe('round the hip', () => {
  it('is a quarter ellipse and a tangent when the anchor is beside the hip bone of a level strap', () => {
    // Aim through the hip point from 45° below; the last point outside lies straight outward of the pelvis' middle plane.
    const { body } = scene({ lapRadiusMm: 100, hipHalfBreadthMm: 175 })
    // yb = 115, so the end of the pelvis reaches 60 mm out. From far behind, 175 outward: the tangent is along the line of aim.
    const last: Vector = [300, 175, -300]
    const arrival = lapEnd(body, 'right')(last)
    expect(arrival?.touch).toEqual([expect.closeTo(0, 3), expect.closeTo(175, 6), expect.closeTo(0, 3)])
    // Half-axes 100 and 60: m = 1 − 0.36 = 0.64; E(0.64) = 1.2763499431699064 (from memory).
    expect(arrival?.restMm()).toBeCloseTo(100 * 1.2763499431699064, 3)
    expect(arrival?.later[0]).toEqual([
      expect.closeTo(-100 * Math.SQRT1_2, 9),
      115,
      expect.closeTo(100 * Math.SQRT1_2, 9),
    ])
  })

  it('is the shortest way from the anchor to the front of the pelvis as a solid of revolution', () => {
    // Geodesics by a chain of points on circles about the lateral axis: each may turn freely about it.
    const { body } = scene({ lapRadiusMm: 100, hipHalfBreadthMm: 175, lapLowestDeg: 0 })
    const last: Vector = [220, 260, -160]
    const taut = tautStrap(() => last, [[]], lapEnd(body, 'right'), last)
    const away = Math.hypot(220, 160)
    const flat = (radius: number, y: number): Vector => [radius, y, 0]
    // In the meridian plane the anchor lies at (−away, 260): the polygon over many points of the meridian.
    const meridian = Array.from({ length: 20_001 }, (_, i) => {
      const t = (Math.PI * i) / 20_000
      return flat(100 * Math.cos(t), 115 + 60 * Math.sin(t))
    })
    let best = Infinity
    let along = 0
    for (let i = 0; i < meridian.length; i += 1) {
      const at = meridian[i] ?? ORIGIN
      if (i > 0) along += apart(meridian[i - 1] ?? ORIGIN, at)
      const normal: Vector = [at[0] / 100 ** 2, (at[1] - 115) / 60 ** 2, 0]
      if (dot(minus([-away, 260, 0], at), normal) >= 0)
        best = Math.min(best, along + apart(at, [-away, 260, 0]))
    }
    expect(taut?.lengthMm).toBeCloseTo(best, 3)
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Mount } from '../../../../src/domain/straps/anchor'
import type { StrapPath } from '../../../../src/domain/straps/path'
import type { StrapScene } from '../../../../src/domain/straps/scene'
import { solvePlace } from '../../../../src/domain/straps/solve'
import { strapFamily } from '../../../../src/domain/straps/strap'
import { openingPoint } from './chain'
import { inAir, outsideMm, unbalanced, type InAir } from './held'
import { randomScene, VARIANTS } from './randomScenes'
import { apart, dot, minus, norm, plus, times, towards, unit, vectorOf, type Vector } from './vector'

/* What a taut strap must be, whatever found it: no second solver here. */

const anyScene: fc.Arbitrary<StrapScene> = fc.constantFrom(...VARIANTS).chain(randomScene)
const RUNS = { numRuns: 1500, endOnFailure: true }
const TINY = 1e-6

const eachPath = (given: StrapScene, look: (path: StrapPath, air: InAir) => void): void => {
  for (const path of solvePlace(given).paths) look(path, inAir(given, path))
}

/** Side distance from the hip's lateral axis as a share of the pelvis' radius, and lateral place beyond its straight part as one of its end. */
const pelvisLevel = ({ body }: StrapScene, at: Vector): number => {
  const radial = Math.hypot(at[0] - body.hip.xMm, at[2] - body.hip.zMm) / body.lapArc.radiusMm
  const half = (body.frontHipBone.right.yMm - body.frontHipBone.left.yMm) / 2
  const beyond = Math.abs(at[1] - body.hip.yMm) - half
  if (beyond <= 0) return radial
  const reach = body.hipHalfBreadthMm - half
  // A flat end: everything beyond it is outside.
  return reach <= 0 ? Infinity : Math.hypot(radial, beyond / reach)
}

const levelOf = (given: StrapScene, path: StrapPath, at: Vector): number => {
  const family = strapFamily(path.strap)
  if (family === 'lap') return pelvisLevel(given, at)
  const { centre, radiusMm } = family === 'shoulder' ? given.body.shoulderArc : given.body.groinArc
  return Math.hypot(at[0] - centre.uMm, at[2] - centre.vMm) / radiusMm
}

/** How far a path's first contact and direction are from what its mount asks: mm or parts of 1. */
const offMount = (given: StrapScene, mount: Mount, path: StrapPath): number => {
  const [contact, next] = path.contacts.map(({ point }) => vectorOf(point))
  if (contact === undefined || next === undefined) return Infinity
  if (mount.kind !== 'wrap') return apart(contact, vectorOf(mount.point))
  const tube = given.tubes.find(({ id }) => id === mount.tubeId)
  const [from, to] = tube?.points.map(vectorOf) ?? []
  if (tube === undefined || from === undefined || to === undefined) return Infinity
  const radius = minus(contact, vectorOf(mount.point))
  return Math.max(
    Math.abs(norm(radius) - tube.outsideDiameterMm / 2),
    Math.abs(dot(radius, unit(minus(to, from)))),
    Math.abs(dot(unit(radius), towards(contact, next))),
  )
}

describe('a solved path', () => {
  it('touches the body on its surface, and no straight piece outside enters it', () => {
    let touched = 0
    let deepest = 0
    let off = 0
    fc.assert(
      fc.property(anyScene, (given) => {
        eachPath(given, (path, { points }) => {
          const isOnBody = path.contacts.some(
            ({ on, point }) => on === 'body' && apart(vectorOf(point), vectorOf(path.bodyContact)) < TINY,
          )
          const flatEnd =
            given.body.hipHalfBreadthMm <= given.body.frontHipBone.right.yMm - given.body.hip.yMm
          if (isOnBody && !(strapFamily(path.strap) === 'lap' && flatEnd)) {
            touched += 1
            off = Math.max(off, Math.abs(levelOf(given, path, vectorOf(path.bodyContact)) - 1))
          }
          for (const [i, end] of points.slice(1).entries()) {
            const start = points[i] ?? end
            for (let share = 0; share <= 1; share += 0.05)
              deepest = Math.max(deepest, 1 - levelOf(given, path, plus(start, minus(end, start), share)))
          }
        })
        expect(off).toBeLessThan(TINY)
        expect(deepest).toBeLessThan(TINY)
      }),
      RUNS,
    )
    expect(touched).toBeGreaterThan(4000)
  })

  it('starts at its point or leaves its tube square to the radius, in the plane of its groove', () => {
    let wrapped = 0
    fc.assert(
      fc.property(anyScene, (given) => {
        const off = solvePlace(given).paths.map((path) => {
          const mount = given.anchors.find(({ strap }) => strap === path.strap)?.mount
          if (mount?.kind === 'wrap') wrapped += 1
          return mount ? offMount(given, mount, path) : Infinity
        })
        expect(Math.max(0, ...off)).toBeLessThan(TINY)
      }),
      RUNS,
    )
    expect(wrapped).toBeGreaterThan(1500)
  })

  it('stays inside its slots and above the rim, and is in balance on their edges', () => {
    let bent = 0
    let clean = 0
    let [out, loose] = [0, 0]
    fc.assert(
      fc.property(anyScene, (given) => {
        eachPath(given, (_, { points, passes }) => {
          for (const { opening, at, isBent } of passes) {
            out = Math.max(out, outsideMm(opening, at))
            if (!isBent) {
              clean += 1
              continue
            }
            bent += 1
            const place = points.findIndex((point) => apart(point, at) < TINY)
            const [before, after] = [points[place - 1], points[place + 1]]
            if (before === undefined || after === undefined) throw new Error('a held point at an end')
            loose = Math.max(loose, unbalanced(opening, before, at, after))
          }
        })
        expect(out).toBeLessThan(TINY)
        expect(loose).toBeLessThan(TINY)
      }),
      RUNS,
    )
    expect(bent).toBeGreaterThan(1000)
    expect(clean).toBeGreaterThan(300)
  })

  it('is not longer than any of 200 others through the same slots between the same ends', () => {
    let tried = 0
    const share = fc.noBias(fc.integer({ min: 0, max: 1000 })).map((step) => step / 1000)
    const others = fc.array(fc.tuple(share, share, share, share), { minLength: 200, maxLength: 200 })
    fc.assert(
      fc.property(anyScene, others, (given, shares) => {
        let longestLead = -Infinity
        eachPath(given, (_, { points, passes }) => {
          const [start, end] = [points[0], points.at(-1)]
          if (passes.length === 0 || start === undefined || end === undefined) return
          const ownMm = points.slice(1).reduce((sum, point, i) => sum + apart(point, points[i] ?? point), 0)
          const leads = shares.map((random) => ownMm - otherMm(passes, start, end, random))
          tried += leads.length
          longestLead = Math.max(longestLead, ...leads)
        })
        expect(longestLead).toBeLessThan(TINY)
      }),
      { numRuns: 300, endOnFailure: true },
    )
    expect(tried).toBeGreaterThan(50_000)
  })

  it('holds the junction of joined straps in line with the resultant of two equal pulls', () => {
    let joined = 0
    fc.assert(
      fc.property(anyScene, (given) => {
        const tailMm = given.belt.shoulderTailMm
        const pairs = solvePlace(given).paths.flatMap(({ contacts }) => {
          const [anchor, junction, next] = contacts
          return anchor && next && junction?.on === 'junction' ? [[anchor, junction, next] as const] : []
        })
        const [left, right] = pairs
        if (tailMm === undefined || left === undefined || right === undefined) return
        joined += 1
        const [anchor, junction, onLeft] = left.map(({ point }) => vectorOf(point)) as [
          Vector,
          Vector,
          Vector,
        ]
        expect(apart(junction, vectorOf(right[1].point))).toBeLessThan(TINY)
        expect(Math.abs(apart(anchor, junction) - tailMm)).toBeLessThan(TINY)
        const pull = plus(towards(junction, onLeft), towards(junction, vectorOf(right[2].point)))
        expect(apart(unit(pull), times(towards(junction, anchor), -1))).toBeLessThan(TINY)
      }),
      RUNS,
    )
    expect(joined).toBeGreaterThan(100)
  })
})

/** Length of another way: a random point of each opening (the open rim up to 300 mm beyond the strap's own place). */
const otherMm = (passes: InAir['passes'], start: Vector, end: Vector, random: readonly number[]): number => {
  const inOrder = passes.toSorted((a, b) => apart(a.at, start) - apart(b.at, start))
  const points = inOrder.map(({ opening, at }, i) => {
    const away = minus(at, opening.origin)
    const [u, v] = [opening.across, opening.up].map((axis, k) => {
      const low = opening.low[k] ?? 0
      const high = opening.high[k] ?? 0
      const own = dot(away, axis)
      const from = Math.max(low, own - 300)
      const to = Math.min(high, own + 300)
      return from + (to - from) * (random[2 * i + k] ?? 0)
    }) as [number, number]
    return openingPoint(opening, u, v)
  })
  return [...points, end].reduce(({ at, sum }, next) => ({ at: next, sum: sum + apart(at, next) }), {
    at: start,
    sum: 0,
  }).sum
}

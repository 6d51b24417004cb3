import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pointDistanceMm, pointSum, type Direction, type PointMm } from '../../../src/domain/geometry/point'
import { contactOnMount, mountEndOf, type MountEnd } from '../../../src/domain/straps/mountEnd'
import { placeFrame, type StrapFrame } from '../../../src/domain/straps/placeFrame'
import { contactFollows, pullTurn } from '../../../src/domain/straps/pullTurn'
import { shoulderEnd, shoulderRun } from '../../../src/domain/straps/shoulderPath'
import type { StrapRun } from '../../../src/domain/straps/strapRun'
import { randomScene } from './oracle/randomScenes'

/* What turns how when the place a strap starts from moves, against the strap found anew a little to both sides: central differences. */

const SHORT_MM = 0.01

const AXES: readonly Direction[] = [
  { x: 1, y: 0, z: 0 },
  { x: 0, y: 1, z: 0 },
  { x: 0, y: 0, z: 1 },
]

const perMm = (after: PointMm, before: PointMm): readonly number[] =>
  [after.xMm - before.xMm, after.yMm - before.yMm, after.zMm - before.zMm].map((mm) => mm / (2 * SHORT_MM))

const apart = (a: Direction, b: readonly number[]): number =>
  Math.hypot(a.x - (b[0] ?? NaN), a.y - (b[1] ?? NaN), a.z - (b[2] ?? NaN))

/** A strap from a place in the air. */
const runFrom = (framed: StrapFrame, end: ReturnType<typeof shoulderEnd>, at: PointMm): StrapRun | null => {
  const mount: MountEnd = { point: at, radiusMm: 0, axis: null, upward: 1 }
  const run = shoulderRun(framed, mount, end)
  return run.ok ? run.value : null
}

/** The direction of its pull there, as a point. */
const pullOf = ({ contact, edges, reach }: StrapRun): PointMm => {
  const next = edges[0] ?? reach.point
  const mm = pointDistanceMm(contact, next)
  return {
    xMm: (next.xMm - contact.xMm) / mm,
    yMm: (next.yMm - contact.yMm) / mm,
    zMm: (next.zMm - contact.zMm) / mm,
  }
}

/** Which of its openings a strap bears on, and where on their edges: a turn has no one size where that changes. */
const wayOf = (run: StrapRun): string => `${run.pass === null ? 'none' : run.edgesOn} ${run.edges.length}`

describe('the pull of a shoulder strap', () => {
  it('turns with the place it starts from as the strap found anew does', () => {
    const met = new Map<string, number>()
    let off = 0
    fc.assert(
      fc.property(randomScene('4-point'), (given) => {
        const place = placeFrame(given)
        for (const { strap, frame } of place.straps) {
          if (frame === null || (strap !== 'shoulder-left' && strap !== 'shoulder-right')) continue
          const end = shoulderEnd(place, strap)
          const at = frame.anchor.mount.point
          const run = runFrom(frame, end, at)
          if (run === null) continue
          const turn = pullTurn(end, frame.portal, run)
          for (const axis of AXES) {
            const after = runFrom(frame, end, pointSum(at, axis, SHORT_MM))
            const before = runFrom(frame, end, pointSum(at, axis, -SHORT_MM))
            if (after === null || before === null) continue
            if (wayOf(after) !== wayOf(run) || wayOf(before) !== wayOf(run)) continue
            met.set(wayOf(run), (met.get(wayOf(run)) ?? 0) + 1)
            off = Math.max(off, apart(turn(axis), perMm(pullOf(after), pullOf(before))))
          }
        }
      }),
      { numRuns: 1500 },
    )
    // A pull turns by some thousandths in a mm: a ten-thousandth of that is beyond the error of the differences.
    expect(off).toBeLessThan(1e-7)
    for (const way of ['none 0', 'slot 0', 'slot 1', 'slot 2', 'rim 1'])
      expect(met.get(way) ?? 0).toBeGreaterThan(20)
  })
})

describe('the contact on a wrapped tube', () => {
  it('follows the point that the strap comes from as the contact found anew does', () => {
    let wraps = 0
    fc.assert(
      fc.property(randomScene('4-point'), (given) => {
        for (const { strap, mount } of given.anchors) {
          if (mount.kind !== 'wrap') continue
          const end = mountEndOf(mount, given.tubes, mount.point)
          const from: PointMm = {
            xMm: mount.point.xMm - 150,
            yMm: mount.point.yMm + 40,
            zMm: mount.point.zMm + (strap.endsWith('left') ? 90 : -60),
          }
          const contact = end && contactOnMount(end, from)
          if (end === null || contact === null) throw new Error('no contact')
          wraps += 1
          for (const axis of AXES) {
            const after = contactOnMount(end, pointSum(from, axis, SHORT_MM))
            const before = contactOnMount(end, pointSum(from, axis, -SHORT_MM))
            if (after === null || before === null) throw new Error('no contact')
            expect(apart(contactFollows(end, contact, from)(axis), perMm(after, before))).toBeLessThan(1e-7)
          }
        }
      }),
      { numRuns: 200 },
    )
    expect(wraps).toBeGreaterThan(100)
  })
})

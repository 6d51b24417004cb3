import type { PointMm } from '../geometry/point'
import { beyondMm, type Portal } from './portal'
import { sideTurnDeg, type GatePass, type Touch } from './strapPath'
import { crossingOf, type StrapRun } from './strapRun'

/**
 * The contacts of a strap from its mount up to, but without, the body. `tailFrom` is where the tail of joined straps leaves the mount:
 * the run then starts at the junction. Null: no tail.
 */
export const outsideTouches = (run: StrapRun, tailFrom: PointMm | null): [Touch, ...Touch[]] => {
  const start: Touch = { on: 'anchor', point: tailFrom ?? run.contact, bendDeg: 0, arcToNext: null }
  const touches: [Touch, ...Touch[]] = [start]
  if (tailFrom !== null)
    touches.push(bent('junction', tailFrom, run.contact, run.edges[0] ?? run.reach.point))
  let before = run.contact
  for (let index = 0; index < run.edges.length; index += 1) {
    const point = run.edges[index]
    if (point === undefined) break
    touches.push(bent(run.edgesOn, before, point, run.edges[index + 1] ?? run.reach.point))
    before = point
  }
  return touches
}

const bent = (on: Touch['on'], before: PointMm, point: PointMm, after: PointMm): Touch => ({
  on,
  point,
  bendDeg: sideTurnDeg(before, point, after),
  arcToNext: null,
})

/** Where the tail of joined straps passes over the rim because their junction lies ahead of it, as their runs then do not. */
export const tailPassOf = (portal: Portal | null, tailFrom: PointMm, junction: PointMm): GatePass | null =>
  portal?.on === 'rim' && beyondMm(portal, tailFrom) > 0 && beyondMm(portal, junction) <= 0
    ? { gate: portal, point: crossingOf(portal, tailFrom, junction), touches: false }
    : null

export const passOf = ({ pass }: StrapRun): GatePass | null =>
  pass && { gate: pass.portal, point: pass.point, touches: pass.touches }

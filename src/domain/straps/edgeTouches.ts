import type { PointMm } from '../geometry/point'
import { sideTurnDeg, type GatePass, type Touch } from './strapPath'
import type { StrapRun } from './strapRun'

/**
 * The contacts of a strap from its mount up to, but without, the body. `tailFrom` is where the tail of joined straps leaves the mount:
 * the run then starts at the junction. Null: no tail.
 */
export const outsideTouches = (run: StrapRun, tailFrom: PointMm | null): [Touch, ...Touch[]] => {
  const start: Touch = { on: 'anchor', point: tailFrom ?? run.contact, bendDeg: 0, arcToNext: null }
  const touches: [Touch, ...Touch[]] = [start]
  let before = start.point
  const add = (on: Touch['on'], point: PointMm, after: PointMm): void => {
    touches.push({ on, point, bendDeg: sideTurnDeg(before, point, after), arcToNext: null })
    before = point
  }
  if (tailFrom !== null) add('junction', run.contact, run.edges[0] ?? run.reach.point)
  for (let index = 0; index < run.edges.length; index += 1) {
    const point = run.edges[index]
    if (point !== undefined) add(run.edgesOn, point, run.edges[index + 1] ?? run.reach.point)
  }
  return touches
}

export const passOf = ({ pass }: StrapRun): GatePass | null =>
  pass && { gate: pass.portal, point: pass.point, touches: pass.touches }

import type { PointMm } from '../geometry/point'
import { sideTurnDeg, type GatePass, type Touch } from './strapPath'
import type { StrapRun } from './strapRun'

/** The contacts of a strap from its mount up to, but without, the body. */
export const outsideTouches = (run: StrapRun): [Touch, ...Touch[]] => {
  const touches: [Touch, ...Touch[]] = [{ on: 'anchor', point: run.contact, bendDeg: 0, arcToNext: null }]
  let before: PointMm = run.contact
  for (let index = 0; index < run.edges.length; index += 1) {
    const point = run.edges[index]
    if (point === undefined) break
    const after = run.edges[index + 1] ?? run.reach.point
    touches.push({ on: run.edgesOn, point, bendDeg: sideTurnDeg(before, point, after), arcToNext: null })
    before = point
  }
  return touches
}

export const passOf = ({ pass }: StrapRun): GatePass | null =>
  pass && { gate: pass.portal, point: pass.point, touches: pass.touches }

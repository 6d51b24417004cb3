import { atan2Deg, tanDeg } from '../units/angle'
import type { Span } from './ruled'

/** A slot whose ends hold the webbing across the seat, as one run of a strap meets it in the side plane. */
export interface AcrossRun {
  /** Where the webbing's middle may pass. */
  readonly yMinMm: number
  readonly yMaxMm: number
  /** y where the strap lies on the body, and the length of strap from there to the slot in the side plane, > 0. */
  readonly bodyYMm: number
  readonly bodyMm: number
  /** How far along that length, from the slot, the next contact is: 1 at the body itself. */
  readonly nextShare: number
  /** Distance of that contact from the slot along the axis the bend is seen against: fore-and-aft, or vertical in the cushion. */
  readonly nextAlongMm: number
  /** The part of the run from the slot on to the mount along that axis, per mm of its length; ≤ 0 where the strap doubles back. */
  readonly alongPerMm: number
}

/** y = `atZero + perMm·L`, L the length from slot to mount in the side plane. */
interface Line {
  readonly atZero: number
  readonly perMm: number
}

/** The mount's y not below (`low`) or not above (`high`) a line. */
interface Bound {
  readonly side: 'low' | 'high'
  readonly line: Line
}

/** y of the mount at which a straight strap passes the slot at `slotYMm`: even change of y with the length. */
const throughLine = ({ bodyYMm, bodyMm }: AcrossRun, slotYMm: number): Line => ({
  atZero: slotYMm,
  perMm: (slotYMm - bodyYMm) / bodyMm,
})

/** The mount's y at which a strap held at `heldMm` leans `moreDeg` further than before the slot; no bound at a right angle. */
const leanBound = (run: AcrossRun, heldMm: number, moreDeg: number): readonly Bound[] => {
  const nextYMm = heldMm + run.nextShare * (run.bodyYMm - heldMm)
  const leanDeg = atan2Deg(nextYMm - heldMm, run.nextAlongMm) + moreDeg
  if (Math.abs(leanDeg) >= 90) return []
  const line: Line = { atZero: heldMm, perMm: -run.alongPerMm * tanDeg(leanDeg) }
  return [{ side: moreDeg > 0 ? 'low' : 'high', line }]
}

/**
 * The ways of keeping the bend in plan (for a slot in the cushion: seen from the front) within `maxDeg`: not held, or held at
 * one end and turned little. Each way is a list of bounds that all have to hold. The strap is straight across in the unrolled
 * run, so held and free do not quite meet where it also bends in side view.
 */
export const acrossWays = (run: AcrossRun, maxDeg: number): readonly (readonly Bound[])[] => {
  const { yMinMm, yMaxMm } = run
  if (run.bodyMm <= 0) return []
  const held = (heldMm: number): readonly Bound[] => [
    ...leanBound(run, heldMm, maxDeg),
    ...leanBound(run, heldMm, -maxDeg),
  ]
  const low = throughLine(run, yMinMm)
  const high = throughLine(run, yMaxMm)
  const free: readonly Bound[] = [
    { side: 'low', line: low },
    { side: 'high', line: high },
  ]
  // Doubled back, a held strap bends by more than a right angle: no limit of the trade allows that.
  if (run.nextAlongMm <= 0 || run.alongPerMm <= 0) return [free]
  return [
    [{ side: 'high', line: low }, ...held(yMinMm)],
    free,
    [{ side: 'low', line: high }, ...held(yMaxMm)],
  ]
}

/** Shorter spans are rounding, and smaller gaps are none. Our judgement. */
const SPAN_MM = 1e-6

/** Spans of L ≥ 0 or of y in rising order; those that touch or overlap become one. */
const joinedSpans = (spans: readonly Span[]): readonly Span[] => {
  const joined: Span[] = []
  for (const span of spans
    .filter(({ fromMm, toMm }) => toMm - fromMm > SPAN_MM)
    .toSorted((a, b) => a.fromMm - b.fromMm)) {
    const last = joined.at(-1)
    if (last !== undefined && span.fromMm <= last.toMm + SPAN_MM)
      joined[joined.length - 1] = { fromMm: last.fromMm, toMm: Math.max(last.toMm, span.toMm) }
    else joined.push(span)
  }
  return joined
}

/** The mount's allowed y at a given length from slot to mount. */
export const ySpans = (ways: readonly (readonly Bound[])[], lengthMm: number): readonly Span[] =>
  joinedSpans(
    ways.map((bounds) => {
      let fromMm = -Infinity
      let toMm = Infinity
      for (const { side, line } of bounds) {
        const yMm = line.atZero + line.perMm * lengthMm
        if (side === 'low') fromMm = Math.max(fromMm, yMm)
        else toMm = Math.min(toMm, yMm)
      }
      return { fromMm, toMm }
    }),
  )

/** The allowed lengths from slot to mount for a given y of the mount. */
export const lengthSpans = (ways: readonly (readonly Bound[])[], yMm: number): readonly Span[] =>
  joinedSpans(
    ways.map((bounds) => {
      let fromMm = 0
      let toMm = Infinity
      for (const { side, line } of bounds) {
        // Kept where perMm·L ≤ rest (low) or −perMm·L ≤ rest (high).
        const perMm = side === 'low' ? line.perMm : -line.perMm
        const restMm = side === 'low' ? yMm - line.atZero : line.atZero - yMm
        if (perMm === 0) {
          if (restMm < 0) toMm = -Infinity
        } else if (perMm > 0) toMm = Math.min(toMm, restMm / perMm)
        else fromMm = Math.max(fromMm, restMm / perMm)
      }
      return { fromMm, toMm }
    }),
  )

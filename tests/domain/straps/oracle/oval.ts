/** A point of a drawn plane or of a section, as two numbers. */
export type Flat = readonly [number, number]

/** An ellipse (a circle, or a flat piece when one half-axis is 0): half-axis `a` along the unit direction `along`, `b` a quarter turn further. */
export interface Oval {
  readonly centre: Flat
  readonly along: Flat
  readonly a: number
  readonly b: number
}

/** How far a shape reaches in the direction at `angle`: the support function of convex geometry. */
export type Reach = (angle: number) => number

export const pointReach =
  ([x, y]: Flat): Reach =>
  (angle) =>
    x * Math.cos(angle) + y * Math.sin(angle)

/** Parts of the direction at `angle` along the oval's own axes. */
const ownParts = ({ along: [c, s] }: Oval, angle: number): Flat => {
  const x = Math.cos(angle)
  const y = Math.sin(angle)
  return [x * c + y * s, y * c - x * s]
}

export const ovalReach =
  (oval: Oval): Reach =>
  (angle) => {
    const [p, q] = ownParts(oval, angle)
    return pointReach(oval.centre)(angle) + Math.hypot(oval.a * p, oval.b * q)
  }

/** The eccentric angle of the point whose outward normal has direction `angle`. */
const eccentric = (oval: Oval, angle: number): number => {
  const [p, q] = ownParts(oval, angle)
  return Math.atan2(oval.b * q, oval.a * p)
}

/** The point of the oval whose outward normal has direction `angle`. */
export const ovalPoint = (oval: Oval, angle: number): Flat => {
  const t = eccentric(oval, angle)
  const [c, s] = oval.along
  const p = oval.a * Math.cos(t)
  const q = oval.b * Math.sin(t)
  return [oval.centre[0] + p * c - q * s, oval.centre[1] + p * s + q * c]
}

/** Abscissas and weights of the five-point Gauss–Legendre rule, Abramowitz & Stegun table 25.4 (from memory). */
const GAUSS = [
  [0, 0.5688888888888889],
  [0.5384693101056831, 0.47862867049936647],
  [-0.5384693101056831, 0.47862867049936647],
  [0.906179845938664, 0.23692688505618908],
  [-0.906179845938664, 0.23692688505618908],
] as const

/** Length of the oval between two eccentric angles by quadrature in `panels` equal pieces. */
const quadratureLength = ({ a, b }: Oval, from: number, to: number, panels: number): number => {
  const half = (to - from) / panels / 2
  let sum = 0
  for (let panel = 0; panel < panels; panel += 1) {
    const middle = from + half * (2 * panel + 1)
    for (const [at, weight] of GAUSS) {
      const t = middle + half * at
      sum += weight * Math.hypot(a * Math.sin(t), b * Math.cos(t))
    }
  }
  return sum * half
}

/** Length of the oval between the points with outward normals `from` and `to`, going anticlockwise, less than a full turn. */
export const ovalLength = (oval: Oval, from: number, to: number): number => {
  const start = eccentric(oval, from)
  const end = eccentric(oval, to)
  const turn = (((end - start) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)
  // A rounding error below 0 is no full turn.
  const swept = turn > 2 * Math.PI - 1e-7 ? turn - 2 * Math.PI : turn
  if (oval.a === oval.b) return oval.a * swept
  return quadratureLength(oval, start, start + swept, 24)
}

/** The root of a function that changes sign between `low` and `high`, by bisection to rounding. */
export const bisected = (value: (at: number) => number, low: number, high: number): number => {
  const isLowPositive = value(low) > 0
  let [a, b] = [low, high]
  for (let step = 0; step < 52; step += 1) {
    const middle = (a + b) / 2
    if (value(middle) > 0 === isLowPositive) a = middle
    else b = middle
  }
  return (a + b) / 2
}

/**
 * Turning anticlockwise from `from`, where the reach of `next` first exceeds that of `now`: there the common tangent lies along
 * both. Null when it does not happen up to `to`.
 */
export const overtaken = (now: Reach, next: Reach, from: number, to: number, steps = 120): number | null => {
  const lead = (angle: number): number => next(angle) - now(angle)
  let before = from
  for (let step = 1; step <= steps; step += 1) {
    const angle = from + ((to - from) * step) / steps
    if (lead(angle) > 0) return bisected(lead, before, angle)
    before = angle
  }
  return null
}

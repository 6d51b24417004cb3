/**
 * A map between two planes that keeps straight lines straight, as nine numbers in rows: (x, y) goes to
 * ((a·x + b·y + c) / w, (d·x + e·y + f) / w) with w = g·x + h·y + i.
 */
export type Homography = readonly [number, number, number, number, number, number, number, number, number]

export type Pair = readonly [x: number, y: number]

/** The denominator w of the map at a point; 0 on the line that goes to infinity. */
export const depthAt = (map: Homography, [x, y]: Pair): number => map[6] * x + map[7] * y + map[8]

/** Where a point goes, or null when it goes to infinity. */
export const mappedPair = (map: Homography, point: Pair): Pair | null => {
  const w = depthAt(map, point)
  const [x, y] = point
  const to: Pair = [(map[0] * x + map[1] * y + map[2]) / w, (map[3] * x + map[4] * y + map[5]) / w]
  return Number.isFinite(to[0]) && Number.isFinite(to[1]) ? to : null
}

/** First `first`, then `then`. */
export const joined = (then: Homography, first: Homography): Homography => {
  const cell = (row: number, column: number): number =>
    [0, 1, 2].reduce((sum, k) => sum + (then[3 * row + k] ?? 0) * (first[3 * k + column] ?? 0), 0)
  return [
    cell(0, 0),
    cell(0, 1),
    cell(0, 2),
    cell(1, 0),
    cell(1, 1),
    cell(1, 2),
    cell(2, 0),
    cell(2, 1),
    cell(2, 2),
  ]
}

/**
 * The map back: the adjugate, which is the inverse times the determinant, and a common factor means nothing here. Scaled so that
 * numbers stay in a sound range. Source: linear algebra, inverse by cofactors. Null when the map lays the plane on a line.
 */
export const inverted = (map: Homography): Homography | null => {
  const [a, b, c, d, e, f, g, h, i] = map
  const adjugate: Homography = [
    e * i - f * h,
    c * h - b * i,
    b * f - c * e,
    f * g - d * i,
    a * i - c * g,
    c * d - a * f,
    d * h - e * g,
    b * g - a * h,
    a * e - b * d,
  ]
  const determinant = a * adjugate[0] + b * adjugate[3] + c * adjugate[6]
  if (!Number.isFinite(determinant) || determinant === 0) return null
  return scaled(adjugate, 1 / determinant)
}

const scaled = (map: Homography, factor: number): Homography =>
  map.map((value) => value * factor) as unknown as Homography

/**
 * The map that takes the corners (0, 0), (1, 0), (1, 1), (0, 1) of the unit square to four points, in closed form. Null when three of them
 * lie in line. Source: P. Heckbert, Fundamentals of Texture Mapping and Image Warping, 1989, section 2.2.3, case "square to
 * quadrilateral" (from memory; read as restated in the public listing G2dMatrixImpl, UnitSquareToQuadrilateral, of the Computer
 * History Museum's archive, which names Heckbert 1986).
 */
export const squareToQuad = (quad: readonly [Pair, Pair, Pair, Pair]): Homography | null => {
  const [[x0, y0], [x1, y1], [x2, y2], [x3, y3]] = quad
  const [dx1, dy1] = [x1 - x2, y1 - y2]
  const [dx2, dy2] = [x3 - x2, y3 - y2]
  const [sx, sy] = [x0 - x1 + x2 - x3, y0 - y1 + y2 - y3]
  const determinant = dx1 * dy2 - dx2 * dy1
  if (determinant === 0) return null
  const g = (sx * dy2 - dx2 * sy) / determinant
  const h = (dx1 * sy - sx * dy1) / determinant
  return [x1 - x0 + g * x1, x3 - x0 + h * x3, x0, y1 - y0 + g * y1, y3 - y0 + h * y3, y0, g, h, 1]
}

/**
 * The largest stretch of the map at a point: how far a step of 1 can go, in the worst direction. The larger singular value of the
 * map's derivative J, √((s + √(s² − 4·det²)) / 2) with s the sum of the squares of J. Source: the closed form of the singular values of a 2 × 2
 * matrix (from memory); the derivative of a quotient. Null at infinity.
 */
export const stretchAt = (map: Homography, point: Pair): number | null => {
  const to = mappedPair(map, point)
  if (to === null) return null
  const w = depthAt(map, point)
  const [u, v] = to
  const [ux, uy] = [(map[0] - u * map[6]) / w, (map[1] - u * map[7]) / w]
  const [vx, vy] = [(map[3] - v * map[6]) / w, (map[4] - v * map[7]) / w]
  const sum = ux * ux + uy * uy + vx * vx + vy * vy
  const determinant = ux * vy - uy * vx
  const root = Math.sqrt(Math.max(0, sum * sum - 4 * determinant * determinant))
  const stretch = Math.sqrt((sum + root) / 2)
  return Number.isFinite(stretch) ? stretch : null
}

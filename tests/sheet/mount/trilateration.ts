import type { PrintedSheet, Triple } from './printedSheet'

/*
 * A position worked out of printed tape distances, with nothing of the program: for tests of the paper and of the printed file.
 */

interface Sphere {
  readonly centre: Triple
  readonly radiusMm: number
}

export const away = (a: Triple, b: Triple): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])

/** Cramer's rule. Source: any textbook of linear algebra. */
const solved = (rows: readonly [Triple, Triple, Triple], right: Triple): Triple => {
  const det = ([a, b, c]: readonly [Triple, Triple, Triple]): number =>
    a[0] * (b[1] * c[2] - b[2] * c[1]) -
    a[1] * (b[0] * c[2] - b[2] * c[0]) +
    a[2] * (b[0] * c[1] - b[1] * c[0])
  const whole = det(rows)
  const column = (index: number): number => {
    const put = (row: Triple, value: number): Triple => [
      index === 0 ? value : row[0],
      index === 1 ? value : row[1],
      index === 2 ? value : row[2],
    ]
    return det([put(rows[0], right[0]), put(rows[1], right[1]), put(rows[2], right[2])]) / whole
  }
  return [column(0), column(1), column(2)]
}

const residualMm = (at: Triple, spheres: readonly Sphere[]): number =>
  Math.max(...spheres.map(({ centre, radiusMm }) => Math.abs(away(at, centre) - radiusMm)))

/** Gauss and Newton from one start. Source: least squares of distances, any textbook of surveying. */
const improved = (start: Triple, spheres: readonly Sphere[]): Triple => {
  let at = start
  for (let step = 0; step < 60; step += 1) {
    const m = [
      [0, 0, 0],
      [0, 0, 0],
      [0, 0, 0],
    ]
    const r = [0, 0, 0]
    for (const { centre, radiusMm } of spheres) {
      const length = Math.max(1e-9, away(at, centre))
      const unit = [0, 1, 2].map((axis) => ((at[axis] ?? 0) - (centre[axis] ?? 0)) / length)
      for (let i = 0; i < 3; i += 1) {
        r[i] = (r[i] ?? 0) - (unit[i] ?? 0) * (length - radiusMm)
        for (let j = 0; j < 3; j += 1) {
          const row = m[i]
          if (row !== undefined)
            row[j] = (row[j] ?? 0) + (unit[i] ?? 0) * (unit[j] ?? 0) + (i === j ? 1e-6 : 0)
        }
      }
    }
    const rows = m as unknown as readonly [Triple, Triple, Triple]
    const move = solved(rows, r as unknown as Triple)
    at = [at[0] + move[0], at[1] + move[1], at[2] + move[2]]
  }
  return at
}

/** The place that fits the distances best, looked for from the eight corners of a box round the points. */
export const trilaterated = (
  spheres: readonly Sphere[],
): { readonly at: Triple; readonly residualMm: number } => {
  const starts = [-1, 1].flatMap((x) => [-1, 1].flatMap((y) => [-1, 1].map((z) => [x, y, z] as const)))
  const middle = [0, 1, 2].map(
    (axis) => spheres.reduce((sum, { centre }) => sum + (centre[axis] ?? 0), 0) / spheres.length,
  )
  const found = starts.map(([x, y, z]): Triple =>
    improved([(middle[0] ?? 0) + 900 * x, (middle[1] ?? 0) + 900 * y, (middle[2] ?? 0) + 900 * z], spheres),
  )
  const [best] = found
    .map((at) => ({ at, residualMm: residualMm(at, spheres) }))
    .toSorted((a, b) => a.residualMm - b.residualMm)
  if (best === undefined) throw new Error('there are starts')
  return best
}

export const spheresOf = (item: string, sheet: PrintedSheet): readonly Sphere[] =>
  (sheet.distances.get(item)?.from ?? []).map(({ letter, lengthMm }) => {
    const centre = sheet.places.get(letter)
    if (centre === undefined) throw new Error(`${letter} is not in the list of points`)
    return { centre, radiusMm: lengthMm }
  })

/** Where the tapes say an anchor is, and what is left over of them; `point` is where the anchor table says it is. */
export interface ToldByTape {
  readonly item: string
  readonly tapeCount: number
  readonly told: Triple
  readonly point: Triple
  readonly residualMm: number
}

/** Every anchor of the table, worked out from its tapes; joined shoulder straps share those of their one anchor. */
export const toldByTapes = (sheet: PrintedSheet): readonly ToldByTape[] =>
  [...sheet.anchors].map(([item, { point, words }]) => {
    const same = /The same anchor as (\d+)/.exec(words)?.[1] ?? item
    const spheres = spheresOf(same, sheet)
    const { at, residualMm: left } = trilaterated(spheres)
    const [x, y, z] = sheet.distances.get(same)?.offset ?? [0, 0, 0]
    return {
      item,
      tapeCount: spheres.length,
      told: [at[0] - x, at[1] - y, at[2] - z],
      point,
      residualMm: left,
    }
  })

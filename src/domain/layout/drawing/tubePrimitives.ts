import {
  planeDistanceMm,
  type PlanePointMm,
  planePoint,
  projected,
  type ViewPlane,
} from '../../geometry/plane'
import type { Tube } from '../../geometry/tube'
import { handleId } from '../edit/handles'
import type { Primitive } from './primitive'

/** Shorter projected pieces are seen end on. A drawing tolerance, our judgement. */
const END_ON_MM = 0.1

/**
 * Where the bend between two pieces is so sharp that the mitre would reach further than about three half widths, the corner is
 * drawn blunt. A drawing convention of ours.
 */
const LEAST_MITRE_COSINE = 0.35

const sameText = (point: PlanePointMm): string => `${point.uMm.toFixed(1)},${point.vMm.toFixed(1)}`

interface Runs {
  /** Projected pieces that follow one another. */
  readonly lines: readonly (readonly PlanePointMm[])[]
  /** Points where the tube runs straight through the drawn plane. */
  readonly endOn: readonly PlanePointMm[]
}

/**
 * A tube's centre line as the elevation shows it. A hoop that goes up one side and down the other would be drawn twice in side
 * elevation; a piece that lies on an earlier one is left out.
 */
export const projectedRuns = (tube: Tube, plane: ViewPlane): Runs => {
  const lines: PlanePointMm[][] = []
  const endOn: PlanePointMm[] = []
  const seen = new Set<string>()
  let current: PlanePointMm[] = []
  const close = (): void => {
    if (current.length > 1) lines.push(current)
    current = []
  }
  const points = tube.points.map((point) => projected(point, plane))
  points.slice(1).forEach((to, index) => {
    const from = points[index]
    if (from === undefined) return
    if (planeDistanceMm(from, to) < END_ON_MM) {
      if (!endOn.some((at) => planeDistanceMm(at, from) < END_ON_MM)) endOn.push(from)
      return
    }
    const piece = [sameText(from), sameText(to)].toSorted().join(' ')
    if (seen.has(piece)) return close()
    seen.add(piece)
    const last = current.at(-1)
    if (last === undefined || planeDistanceMm(last, from) >= END_ON_MM) {
      close()
      current = [from]
    }
    current.push(to)
  })
  close()
  return { lines, endOn }
}

interface Normal {
  readonly u: number
  readonly v: number
}

const leftNormal = (from: PlanePointMm, to: PlanePointMm): Normal => {
  const length = planeDistanceMm(from, to)
  return { u: -(to.vMm - from.vMm) / length, v: (to.uMm - from.uMm) / length }
}

/** One edge of the tube: the centre line moved `byMm` to the left (right when negative), corners mitred. */
const offsetLine = (line: readonly PlanePointMm[], byMm: number): PlanePointMm[] => {
  const at = (point: PlanePointMm, normal: Normal, lengthMm: number): PlanePointMm =>
    planePoint(point.uMm + normal.u * lengthMm, point.vMm + normal.v * lengthMm)
  const normals = line.slice(1).map((to, index) => leftNormal(line[index] ?? to, to))
  return line.flatMap((point, index) => {
    const before = normals[index - 1] ?? normals[index]
    const after = normals[index] ?? normals[index - 1]
    if (before === undefined || after === undefined) return []
    const sum = { u: before.u + after.u, v: before.v + after.v }
    const length = Math.hypot(sum.u, sum.v)
    const cosine = length / 2
    if (cosine < LEAST_MITRE_COSINE) return [at(point, before, byMm), at(point, after, byMm)]
    return [at(point, { u: sum.u / length, v: sum.v / length }, byMm / cosine)]
  })
}

/** The closed outline of a tube of the given half width about a projected centre line of at least two points. */
export const tubeOutline = (line: readonly PlanePointMm[], halfWidthMm: number): readonly PlanePointMm[] => [
  ...offsetLine(line, halfWidthMm),
  ...offsetLine(line, -halfWidthMm).toReversed(),
]

/**
 * Chassis tubes as double lines at their true outside diameter with their centre lines; seen end on, as circles.
 * Tubes that lie exactly on an earlier one (the right-hand rail behind the left-hand one) are drawn once.
 */
export const tubePrimitives = (tubes: readonly Tube[], plane: ViewPlane): Primitive[] => {
  const drawn = new Set<string>()
  const isNew = (text: string): boolean => {
    if (drawn.has(text)) return false
    drawn.add(text)
    return true
  }
  return tubes.flatMap((tube) => {
    const part = handleId({ kind: 'tube-height', tubeId: tube.id })
    const halfWidthMm = tube.outsideDiameterMm / 2
    const runs = projectedRuns(tube, plane)
    const size = tube.outsideDiameterMm.toFixed(1)
    const lines = runs.lines.flatMap((points, index): Primitive[] => {
      const forward = points.map(sameText).join(' ')
      const backward = points.toReversed().map(sameText).join(' ')
      if (drawn.has(`${size} ${backward}`) || !isNew(`${size} ${forward}`)) return []
      const key = `tube/${tube.id}/${index}`
      return [
        {
          kind: 'polyline',
          key: `${key}/outline`,
          part,
          points: tubeOutline(points, halfWidthMm),
          closed: true,
          style: 'tube',
        },
        { kind: 'polyline', key: `${key}/centre`, part, points, closed: false, style: 'centre' },
      ]
    })
    const circles = runs.endOn.flatMap((centre, index): Primitive[] =>
      isNew(`${size} end ${sameText(centre)}`)
        ? [
            {
              kind: 'circle',
              key: `tube/${tube.id}/end-on/${index}`,
              part,
              centre,
              radiusMm: halfWidthMm,
              style: 'tube',
            },
          ]
        : [],
    )
    return [...lines, ...circles]
  })
}

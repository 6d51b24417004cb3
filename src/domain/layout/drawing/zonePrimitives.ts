import { type Elevation, type PlanePointMm, planePoint } from '../../geometry/plane'
import type { ConvexPolygon, Region } from '../../geometry/polygon'
import { strapFamily, type StrapFamily } from '../../straps/strap'
import { handleId } from '../edit/handles'
import type { DrawnPlace } from './drawnPlace'
import type { DrawingOptions } from './options'
import type { Primitive } from './primitive'

/**
 * Families overlap on the drawing, so each has its own hatch direction and none depends on colour. The directions run across the
 * wedges that the families' zones usually are, so that a hatch line is not taken for an edge. A drawing convention of ours.
 */
const HATCH_DEG: Readonly<Record<StrapFamily, number>> = { shoulder: 75, lap: 30, sub: 0 }

/** Edges closer to one line than this count as shared. Far above rounding at ±3 m, far below anything visible. Our judgement. */
const SHARED_EDGE_MM = 1e-4

interface Edge {
  readonly from: PlanePointMm
  readonly to: PlanePointMm
}

const edgesOf = (polygon: ConvexPolygon): Edge[] =>
  polygon.flatMap((from, index) => {
    const to = polygon[(index + 1) % polygon.length]
    return to === undefined ? [] : [{ from, to }]
  })

interface Span {
  readonly start: number
  readonly end: number
}

/** The part of `edge` that `other` covers while running the other way along the same line, as shares of `edge`; null when none. */
const sharedSpan = (edge: Edge, other: Edge): Span | null => {
  const du = edge.to.uMm - edge.from.uMm
  const dv = edge.to.vMm - edge.from.vMm
  const length = Math.hypot(du, dv)
  if (length === 0) return null
  const across = (point: PlanePointMm): number =>
    (du * (point.vMm - edge.from.vMm) - dv * (point.uMm - edge.from.uMm)) / length
  const along = (point: PlanePointMm): number =>
    (du * (point.uMm - edge.from.uMm) + dv * (point.vMm - edge.from.vMm)) / (length * length)
  if (Math.abs(across(other.from)) > SHARED_EDGE_MM || Math.abs(across(other.to)) > SHARED_EDGE_MM)
    return null
  const start = along(other.to)
  const end = along(other.from)
  return end > start ? { start, end } : null
}

const uncovered = (spans: readonly Span[]): Span[] => {
  const gaps: Span[] = []
  let reached = 0
  for (const span of spans.toSorted((a, b) => a.start - b.start)) {
    if (span.start > reached) gaps.push({ start: reached, end: Math.min(1, span.start) })
    reached = Math.max(reached, span.end)
    if (reached >= 1) return gaps
  }
  return [...gaps, { start: reached, end: 1 }]
}

/**
 * The outer edges of a region that is cut into convex pieces: every piece's edge less what a neighbour shares with it.
 * Two pieces that touch run along the common edge in opposite directions, because all corners go anticlockwise.
 */
export const regionEdges = (region: Region): readonly (readonly [PlanePointMm, PlanePointMm])[] => {
  const edges = region.flatMap(edgesOf).toSorted((a, b) => leastU(a) - leastU(b))
  const spans = edges.map((): Span[] => [])
  // From left to right only edges that overlap in u can share anything.
  edges.forEach((edge, index) => {
    const lastU = Math.max(edge.from.uMm, edge.to.uMm) + SHARED_EDGE_MM
    for (let other = index + 1; other < edges.length; other += 1) {
      const neighbour = edges[other]
      if (neighbour === undefined || leastU(neighbour) > lastU) break
      const own = sharedSpan(edge, neighbour)
      const its = sharedSpan(neighbour, edge)
      if (own !== null) spans[index]?.push(own)
      if (its !== null) spans[other]?.push(its)
    }
  })
  return edges.flatMap((edge, index) => {
    const length = Math.hypot(edge.to.uMm - edge.from.uMm, edge.to.vMm - edge.from.vMm)
    const at = (share: number): PlanePointMm =>
      planePoint(
        edge.from.uMm + (edge.to.uMm - edge.from.uMm) * share,
        edge.from.vMm + (edge.to.vMm - edge.from.vMm) * share,
      )
    return uncovered(spans[index] ?? [])
      .filter((gap) => (gap.end - gap.start) * length > SHARED_EDGE_MM)
      .map((gap) => [at(gap.start), at(gap.end)] as const)
  })
}

const leastU = ({ from, to }: Edge): number => Math.min(from.uMm, to.uMm)

const regionText = (region: Region): string =>
  region
    .map((polygon) => polygon.map((corner) => `${corner.uMm.toFixed(2)},${corner.vMm.toFixed(2)}`).join(' '))
    .join(';')

/** Where the asked anchors may lie in the drawn plane, as far as it is known; a pair whose zones coincide is hatched once. */
export const zonePrimitives = (
  drawn: DrawnPlace,
  elevation: Elevation,
  zones: DrawingOptions['zones'],
): Primitive[] => {
  if (zones === 'none') return []
  const seen = new Set<string>()
  return drawn.evaluation.zones.flatMap((zone): Primitive[] => {
    const anchor = drawn.place.anchors.find((candidate) => candidate.id === zone.anchorId)
    if (anchor === undefined || (zones !== 'all' && !zones.includes(anchor.id))) return []
    const region = zone[elevation]
    if (region === 'pending') return []
    const hatchDeg = HATCH_DEG[strapFamily(anchor.strap)]
    const text = `${hatchDeg} ${regionText(region)}`
    if (region.length === 0 || seen.has(text)) return []
    seen.add(text)
    const part = handleId({ kind: 'anchor', placeId: drawn.place.id, anchorId: anchor.id })
    return [
      {
        kind: 'zone',
        key: `${drawn.place.id}/zone/${anchor.id}`,
        part,
        region,
        edges: regionEdges(region),
        hatchDeg,
      },
    ]
  })
}

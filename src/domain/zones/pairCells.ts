import type { Elevation, PlanePointMm } from '../geometry/plane'
import type { QuantityRule } from '../rules/rule'
import { anchorOf } from '../straps/mount'
import { mirroredStrap, strapSide } from '../straps/strap'
import { cosDeg, sinDeg } from '../units/angle'
import { bandCell, type Cells, NOTHING, WHOLE_PLANE } from './cells'
import { ruledCells, type Span } from './ruled'
import type { ZoneCase, ZoneScene } from './zone'

type Limits = Pick<QuantityRule, 'min' | 'max'>

/** The points whose distance along one axis from `fromMm` lies within the limits, on either side. */
const awayBands = (along: 'u' | 'v', fromMm: number, { min, max }: Limits): Cells => {
  if (max !== null && max < 0) return NOTHING
  const leastMm = Math.max(0, min ?? 0)
  const mostMm = max ?? Infinity
  if (mostMm < leastMm) return NOTHING
  const end = (mm: number): number | null => (Number.isFinite(mm) ? mm : null)
  if (leastMm === 0) return [bandCell(along, end(fromMm - mostMm), end(fromMm + mostMm))]
  return [
    bandCell(along, end(fromMm - mostMm), fromMm - leastMm),
    bandCell(along, fromMm + leastMm, end(fromMm + mostMm)),
  ]
}

/** Limits on a length as limits on its part in a plane, when it is `acrossMm` across that plane; null: nothing keeps them. */
const inPlane = ({ min, max }: Limits, acrossMm: number): Limits | null => {
  const part = (limitMm: number): number => Math.sqrt(Math.max(0, limitMm ** 2 - acrossMm ** 2))
  if (max !== null && max < Math.abs(acrossMm)) return null
  return { min: min === null ? null : part(Math.max(0, min)), max: max === null ? null : part(max) }
}

/** The points whose distance from `centre` lies within the limits: a disc, a ring or what is outside a disc. */
const ringCells = (centre: PlanePointMm, limits: Limits | null): Cells => {
  if (limits === null) return NOTHING
  const span: Span = { fromMm: limits.min ?? 0, toMm: limits.max ?? Infinity }
  if (span.fromMm === 0 && span.toMm === Infinity) return WHOLE_PLANE
  if (span.toMm < span.fromMm) return NOTHING
  return ruledCells(
    {
      pointAt: (angleDeg, alongMm) => ({
        uMm: centre.uMm + alongMm * cosDeg(angleDeg),
        vMm: centre.vMm + alongMm * sinDeg(angleDeg),
      }),
      spansAt: () => [span],
    },
    0,
    360,
    12,
  )
}

/** Lateral distance of the two mounts (`lap-spacing`, `sub-spacing`), in the top elevation; null in the side elevation. */
export const spacingCells = (
  limits: Limits,
  { scene }: ZoneScene,
  { anchor, mirrored }: ZoneCase,
  elevation: Elevation,
): Cells | null => {
  if (elevation === 'side') return null
  const half = (limit: number | null): number | null => (limit === null ? null : limit / 2)
  if (mirrored) return awayBands('v', scene.body.hip.yMm, { min: half(limits.min), max: half(limits.max) })
  const other = otherPoint(scene, anchor.strap)
  return other && awayBands('v', other.yMm, limits)
}

/** Distance of a lap anchor from the seat's middle plane (`lap-off-centre`), in the top elevation; null in the side elevation. */
export const offCentreCells = (
  { min, max }: Limits,
  { scene }: ZoneScene,
  { anchor }: ZoneCase,
  elevation: Elevation,
): Cells | null => {
  if (elevation === 'side') return null
  const middleMm = scene.body.hip.yMm
  const outward = strapSide(anchor.strap) === 'left' ? -1 : 1
  const at = (limit: number | null): number | null => (limit === null ? null : middleMm + outward * limit)
  return [outward > 0 ? bandCell('v', at(min), at(max)) : bandCell('v', at(max), at(min))]
}

const otherPoint = (scene: ZoneScene['scene'], strap: ZoneCase['anchor']['strap']) => {
  const partner = mirroredStrap(strap)
  return partner && (anchorOf(scene.anchors, partner)?.mount.point ?? null)
}

/** Mismatch of the two mounts in x and z (`lap-mirror`); null for a mirrored pair, which has none. */
export const mirrorCells = (
  limits: Limits,
  { scene }: ZoneScene,
  { anchor, mirrored }: ZoneCase,
  elevation: Elevation,
): Cells | null => {
  const other = mirrored ? null : otherPoint(scene, anchor.strap)
  if (other === null) return null
  if (elevation === 'side') return ringCells({ uMm: other.xMm, vMm: other.zMm }, limits)
  const acrossMm = anchor.mount.point.zMm - other.zMm
  const level = inPlane(limits, acrossMm)
  return level === null ? NOTHING : awayBands('u', other.xMm, level)
}

/**
 * Distance of the two shoulder contacts between tabs. A mirrored pair: bands in the top elevation, null in the side elevation.
 * A split pair: a ring about the other tab's hole, cut by the drawn plane.
 */
export const shoulderSpacingCells = (
  limits: Limits,
  zoneScene: ZoneScene,
  zoneCase: ZoneCase,
  elevation: Elevation,
): Cells | null => {
  if (zoneCase.mirrored) return spacingCells(limits, zoneScene, zoneCase, elevation)
  const { point } = zoneCase.anchor.mount
  const other = otherPoint(zoneScene.scene, zoneCase.anchor.strap)
  if (other === null) return null
  return elevation === 'side'
    ? ringCells({ uMm: other.xMm, vMm: other.zMm }, inPlane(limits, point.yMm - other.yMm))
    : ringCells({ uMm: other.xMm, vMm: other.yMm }, inPlane(limits, point.zMm - other.zMm))
}

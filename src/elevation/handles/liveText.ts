import type { Elevation } from '../../domain/geometry/plane'
import type { Layout } from '../../domain/layout/document/layout'
import type { Handle, HandleRef } from '../../domain/layout/edit/handle'
import type { SittingEvaluation } from '../../domain/layout/evaluate/evaluation'
import { quantityName } from '../../domain/layout/wording/quantities'
import type { QuantityId } from '../../domain/straps/quantity'
import { strapFamily, type StrapId } from '../../domain/straps/strap'
import { angleText } from '../../domain/units/angle'
import { lengthText } from '../../domain/units/length'

const MAIN_ANGLE = {
  shoulder: 'shoulder-drop',
  lap: 'lap-angle',
  sub: 'sub-to-vertical',
} as const satisfies Record<string, QuantityId>

/** The strap whose angle the builder watches while this handle moves; null when no strap hangs on it. */
const strapOf = (layout: Layout, ref: HandleRef): StrapId | null => {
  switch (ref.kind) {
    case 'hip':
      return 'lap-left'
    case 'recline':
    case 'shoulder-point':
      return 'shoulder-left'
    case 'anchor':
    case 'slot': {
      const place = layout.places.find((candidate) => candidate.id === ref.placeId)
      return ref.kind === 'anchor'
        ? (place?.anchors.find((anchor) => anchor.id === ref.anchorId)?.strap ?? null)
        : (place?.seat.slots.find((slot) => slot.id === ref.slotId)?.straps[0] ?? null)
    }
    case 'tube-point':
    case 'tube-height': {
      const tube = layout.tubes.find((candidate) => candidate.id === ref.tubeId)
      return tube?.role === 'harness-bar' ? 'shoulder-left' : null
    }
    case 'shell-point':
      return null
  }
}

const angleLine = (layout: Layout, ref: HandleRef, sitting: SittingEvaluation): readonly string[] => {
  if (ref.kind === 'recline') return [`recline ${angleText(sitting.body.reclineDeg)}`]
  const strap = strapOf(layout, ref)
  if (strap === null) return []
  const id = MAIN_ANGLE[strapFamily(strap)]
  const value = sitting.quantities.find((candidate) => candidate.id === id && candidate.subject === strap)
  return value === undefined ? [] : [`${quantityName(id)} ${angleText(value.value)}`]
}

/** Coordinates as the elevation shows them: "x 812, z 402.5 mm". */
export const coordinateText = (
  elevation: Elevation,
  point: { readonly uMm: number; readonly vMm: number },
  unit: Layout['units']['length'],
): string =>
  `x ${lengthText(point.uMm, unit)}, ${elevation === 'side' ? 'z' : 'y'} ${lengthText(point.vMm, unit)} ${unit}`

/** What is written beside a handle while it moves: where it is, and the main angle that follows from it. */
export const liveLines = (
  layout: Layout,
  handle: Handle,
  sitting: SittingEvaluation,
  elevation: Elevation,
): readonly string[] => {
  const { xMm, yMm, zMm } = handle.point
  const point = { uMm: xMm, vMm: elevation === 'side' ? zMm : yMm }
  return [coordinateText(elevation, point, layout.units.length), ...angleLine(layout, handle.ref, sitting)]
}

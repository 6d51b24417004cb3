import type { Tube } from '../geometry/tube'
import { tubeAreaMm2, tubeSecondMomentMm4 } from '../geometry/tubeSection'
import type { Remedy } from './finding'
import type { PropertyId, PropertyRule } from './rule'

/** Tube walls are proposed in steps of this size. Our judgement: tables of tube sizes go by tenths of a millimetre. */
const WALL_STEP_MM = 0.1

/**
 * Wall of a tube of this outside diameter that has the wanted area, mm; null when even a solid bar has less.
 * Formula: A = π/4·(D² − d²), t = (D − d)/2, solved for t. Source: area of a circle; derived.
 */
const wallForAreaMm = (outsideDiameterMm: number, areaMm2: number): number | null => {
  const boreSqMm2 = outsideDiameterMm ** 2 - (4 * areaMm2) / Math.PI
  return boreSqMm2 < 0 ? null : (outsideDiameterMm - Math.sqrt(boreSqMm2)) / 2
}

/**
 * Wall of a tube of this outside diameter that has the wanted second moment of area, mm; null when even a solid bar has less.
 * Formula: I = π/64·(D⁴ − d⁴), t = (D − d)/2, solved for t. Source: second moment of a circle about its diameter; derived.
 */
const wallForSecondMomentMm = (outsideDiameterMm: number, secondMomentMm4: number): number | null => {
  const boreFourthMm4 = outsideDiameterMm ** 4 - (64 * secondMomentMm4) / Math.PI
  return boreFourthMm4 < 0 ? null : (outsideDiameterMm - boreFourthMm4 ** 0.25) / 2
}

const NO_TUBE: Remedy = { kind: 'none', reason: 'The tube is not in the layout.' }

const wallRemedy = (
  tube: Tube | null,
  wallMm: number | null,
  clears: (wallMm: number) => boolean,
): Remedy => {
  if (tube === null) return NO_TUBE
  if (wallMm === null) {
    return { kind: 'none', reason: 'A bar of this diameter is too thin even when solid: take a larger tube.' }
  }
  // Rounded up from a hair below, so that an exact tenth is not raised to the next one by rounding alone.
  const steps = Math.ceil(wallMm / WALL_STEP_MM - 1e-9)
  const rounded = Number((steps * WALL_STEP_MM).toFixed(1))
  const proposedMm = clears(rounded) ? rounded : Number(((steps + 1) * WALL_STEP_MM).toFixed(1))
  return proposedMm > tube.outsideDiameterMm / 2
    ? { kind: 'none', reason: 'Only a solid bar of this diameter would do: take a larger tube.' }
    : { kind: 'change-property', property: 'bar-wall', to: String(proposedMm) }
}

/** What to do about a property that no single typed value decides. */
const PLACE_REMEDIES: Partial<Record<PropertyId, string>> = {
  'strap-slot': 'Add a slot for the strap under Seat, where the seat has or can have one.',
  'slot-spare': 'Correct the length of the slot under Seat, or take webbing of another width.',
  'tab-to-tube':
    'Choose the tube that it is really fixed to under Anchors, or move it to its tube; a fixing to the floor has no tube.',
  'sub-to-lap':
    'Move the thigh strap’s anchor to the lap strap’s anchor on its side, or let the thigh straps run rearward.',
  'shoulder-anchorages': 'Give each shoulder strap an anchor of its own.',
  'belt-joined': 'Part the shoulder straps under Belt and give each its own anchor.',
  'straps-crossed': 'Anchor each strap of the pair on the other side of the seat.',
  'anchor-form': 'Choose another way of fixing it under Anchors, “How it is made”.',
  'wrap-tube-role': 'Wrap the strap round another tube, or put a tab in its place.',
}

/**
 * The smallest change of a typed value that clears a property rule that is broken at `value`. For area and second moment it is
 * a thicker wall at the same outside diameter, rounded up to 0.1 mm. `tube` is the bar in question, null for other properties.
 */
export const propertyRemedy = (rule: PropertyRule, value: number | string, tube: Tube | null): Remedy => {
  const { property, min, max, wanted } = rule
  const where = PLACE_REMEDIES[property]
  if (where !== undefined) return { kind: 'none', reason: where }
  if (wanted !== null) {
    const first = wanted[0]
    return first === undefined
      ? { kind: 'none', reason: 'The rule names no value that would do.' }
      : { kind: 'change-property', property, to: first }
  }
  if (property === 'bar-area' && min !== null) {
    const wallMm = tube && wallForAreaMm(tube.outsideDiameterMm, min)
    return wallRemedy(
      tube,
      wallMm,
      (wall) => tube !== null && tubeAreaMm2(tube.outsideDiameterMm, wall) >= min,
    )
  }
  if (property === 'bar-second-moment' && min !== null) {
    const wallMm = tube && wallForSecondMomentMm(tube.outsideDiameterMm, min)
    return wallRemedy(
      tube,
      wallMm,
      (wall) => tube !== null && tubeSecondMomentMm4(tube.outsideDiameterMm, wall) >= min,
    )
  }
  const nearest = min !== null && typeof value === 'number' && value < min ? min : max
  return nearest === null
    ? { kind: 'none', reason: 'The rule has no limit on that side.' }
    : { kind: 'change-property', property, to: String(nearest) }
}

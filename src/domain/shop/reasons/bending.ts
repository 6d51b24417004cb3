import { cosDeg, sinDeg } from '../../units/angle'

/*
 * Why direction, both-sided holding and short spans matter, as ratios. They explain and check nothing: no strength of a real part
 * is computed here.
 */

/**
 * How many times the greatest stress at the foot of a flat plate exceeds that of the same pull in its plane, ≥ 0; 1 at 0°. The plate stands
 * free from its foot to the hole, `heightMm` > 0 above it; the pull turns out of the plane by `offPlaneDeg`, range [0°, 90°].
 * Source: tension and bending of a rectangular section added, σ = N/(W·t) + 6·M/(W·t²), N = P·cos φ, M = P·sin φ·h; elementary
 * beam theory, derived here. The width cancels.
 */
export const plateStressRatio = (
  plate: { readonly heightMm: number; readonly thicknessMm: number },
  offPlaneDeg: number,
): number => cosDeg(offPlaneDeg) + (6 * plate.heightMm * sinDeg(offPlaneDeg)) / plate.thicknessMm

/** A pin through a fitting and the plate or plates that hold it, lengths in mm ≥ 0. */
export interface HeldPin {
  readonly plateMm: number
  readonly fittingMm: number
  /** Clear between the fitting and a plate. */
  readonly gapMm: number
}

/**
 * Bending moment of the pin per unit of pull, mm, held by one plate: t₁/2 + gap + t₂/2.
 * Source: Niu, Airframe Stress Analysis and Sizing, eq. 9.8.8 (read).
 */
export const singleShearArmMm = ({ plateMm, fittingMm, gapMm }: HeldPin): number =>
  plateMm / 2 + gapMm + fittingMm / 2

/**
 * The same held by a plate of `plateMm` on each side: half the pull at t₁/2 + δ + γ·t₂/4, γ from 0 to 1 for how far the pull
 * crowds to the fitting's faces; 1 (evenly spread) is the safe side. Source: Niu, eq. 9.8.9 (read).
 */
export const doubleShearArmMm = ({ plateMm, fittingMm, gapMm }: HeldPin, crowding = 1): number =>
  (plateMm / 2 + gapMm + (crowding * fittingMm) / 4) / 2

/**
 * How far the middle of a bar moves under the same pull, as a multiple of one that spans `referenceMm` > 0: (L/L₀)³.
 * Source: P·L³/(48·E·I) for a bar on two supports with the load in the middle (read in a public beam table); P, E and I cancel.
 */
export const deflectionRatio = (spanMm: number, referenceMm: number): number => (spanMm / referenceMm) ** 3

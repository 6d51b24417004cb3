import type { PlanePointMm } from './plane'

/** A circle in a drawn plane. Radius 0 is allowed and stands for its centre. */
export interface CircleMm {
  readonly centre: PlanePointMm
  readonly radiusMm: number
}

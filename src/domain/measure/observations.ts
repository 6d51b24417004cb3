import type { CoordinatePlane, TapeSphere } from '../geometry/spheres'
import type { NamedTape } from './measureProblem'

/** A tape from a known point with its averaged length. */
export interface Tape extends NamedTape, TapeSphere {}

/** Everything that was measured of one point by tapes, averaged. */
export interface TapeObservations {
  readonly tapes: readonly Tape[]
  readonly coordinate: CoordinatePlane | null
}

/** Three observations: as many as a point has coordinates, so that nothing is left to check them by. */
export const isExact = ({ tapes, coordinate }: TapeObservations): boolean =>
  tapes.length + (coordinate === null ? 0 : 1) === 3

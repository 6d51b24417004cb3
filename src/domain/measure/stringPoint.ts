import { pointMm, type PointMm } from '../geometry/point'
import { err, ok, type Result } from '../result'
import { cosDeg, sinDeg } from '../units/angle'
import type { MeasureProblem } from './measureProblem'
import { worstMoveMm, type Sensitivity } from './sensitivity'

/** A string pulled from a known point, its readings averaged. */
export interface StringReading {
  readonly from: PointMm
  /** From level, + when it rises away from the known point, −90 to 90. */
  readonly stringDeg: number
  /** mm > 0. */
  readonly lengthMm: number
  readonly runs: 'forward' | 'rearward'
  readonly aside:
    | { readonly kind: 'y'; readonly mm: number }
    /** From the car's centre-line, + to the occupant's right, −90 to 90. */
    | { readonly kind: 'plan'; readonly deg: number }
}

/** Rounding of a level run of some metres: going aside by this little more than the run still reaches. Our judgement. */
const REACH_MM = 1e-9

/**
 * Where the string ends. Formula: level run r = L·cos e, rise L·sin e; with a plan angle p the run is r·cos p fore or aft and
 * r·sin p aside, with a distance aside y it is √(r² − y²) fore or aft. Source: spherical coordinates; Pythagoras.
 */
export const stringEnd = (reading: StringReading): Result<PointMm, MeasureProblem> => {
  const { lengthMm, stringDeg, aside } = reading
  const levelRunMm = lengthMm * cosDeg(stringDeg)
  if (aside.kind === 'y' && Math.abs(aside.mm) > levelRunMm + REACH_MM)
    return err({ kind: 'aside-too-long', asideMm: aside.mm, levelRunMm })
  return ok(reachedEnd(reading))
}

/** As `stringEnd`, with a string that cannot go aside so far ending square to the car. */
const reachedEnd = ({ from, stringDeg, lengthMm, runs, aside }: StringReading): PointMm => {
  const levelRunMm = lengthMm * cosDeg(stringDeg)
  const asideMm = aside.kind === 'y' ? aside.mm : levelRunMm * sinDeg(aside.deg)
  const alongMm =
    aside.kind === 'plan'
      ? levelRunMm * cosDeg(aside.deg)
      : Math.sqrt(Math.max(0, levelRunMm ** 2 - aside.mm ** 2))
  return pointMm(
    from.xMm + (runs === 'rearward' ? alongMm : -alongMm),
    from.yMm + asideMm,
    from.zMm + lengthMm * sinDeg(stringDeg),
  )
}

/** How far the end of the string moves at worst for 1 mm in its lengths, and for 1° in its angles. */
export const stringSensitivity = (reading: StringReading): Sensitivity => {
  const end = reachedEnd(reading)
  const { aside, lengthMm, stringDeg } = reading
  return aside.kind === 'y'
    ? {
        mmPerMm: worstMoveMm(end, [lengthMm, aside.mm], ([length = 0, mm = 0]) =>
          reachedEnd({ ...reading, lengthMm: length, aside: { kind: 'y', mm } }),
        ),
        mmPerDeg: worstMoveMm(end, [stringDeg], ([deg = 0]) => reachedEnd({ ...reading, stringDeg: deg })),
      }
    : {
        mmPerMm: worstMoveMm(end, [lengthMm], ([length = 0]) => reachedEnd({ ...reading, lengthMm: length })),
        mmPerDeg: worstMoveMm(end, [stringDeg, aside.deg], ([string = 0, deg = 0]) =>
          reachedEnd({ ...reading, stringDeg: string, aside: { kind: 'plan', deg } }),
        ),
      }
}

import type { Direction } from '../geometry/point'
import { asinDeg, atan2Deg, wrappedDeg } from '../units/angle'

/** The way a strap leaves its anchor, as angles that an angle finder and a protractor can set. */
export interface LineOfPullAngles {
  /**
   * Side view: angle of the line from level, + when it rises away from the anchor, range [-90°, 90°]. Looked at squarely from
   * the side of the car. Whether the line then runs forward or rearward is `runs`.
   */
  readonly sideFromLevelDeg: number
  /**
   * Plan view: angle of the line from the car's centre-line, range [0°, 90°]; toward which side is `turns`. Null for a line
   * within half a degree of plumb, which has no direction in plan worth setting.
   */
  readonly planFromCentreDeg: number | null
  /**
   * True angle from level: what a level-reading angle finder shows when it is laid on a string pulled along the line,
   * + when it rises away from the anchor, range [-90°, 90°]. Equals the side angle only for a line without plan angle.
   */
  readonly stringFromLevelDeg: number
  readonly runs: 'forward' | 'rearward' | 'neither'
  readonly turns: 'left' | 'right' | 'neither'
}

/** Less than this share of a unit line counts as none: sine of 0.05°, half of the last place shown. Our judgement. */
const NO_SHARE = 8.7e-4

/** Less than this level share of a unit line is plumb: sine of 0.5°, about what a hand-held angle finder resolves. Our judgement. */
const PLUMB_SHARE = 8.7e-3

/**
 * The angles of a line of pull given as a direction of length 1 from the anchor toward the strap, vehicle frame.
 *
 * Formulas: side = atan2(z, |x|), plan = atan2(|y|, |x|), string = asin(z).
 * Source: the direction's components x = cos e · cos p, y = cos e · sin p, z = sin e for elevation e and plan angle p
 * (spherical coordinates), read back. A direction without length gives level, no plan angle and neither way.
 */
export const lineOfPullAngles = (direction: Direction): LineOfPullAngles => {
  const { x, y, z } = direction
  return {
    sideFromLevelDeg: atan2Deg(z, Math.abs(x)),
    planFromCentreDeg: Math.hypot(x, y) < PLUMB_SHARE ? null : atan2Deg(Math.abs(y), Math.abs(x)),
    stringFromLevelDeg: asinDeg(z),
    runs: Math.abs(x) < NO_SHARE ? 'neither' : x < 0 ? 'forward' : 'rearward',
    turns: Math.abs(y) < NO_SHARE ? 'neither' : y < 0 ? 'left' : 'right',
  }
}

/**
 * The same line in side view as one angle from level forward, turning up through plumb (90°) to level rearward (180°), range
 * (-180°, 180°]: unlike the angle from level it tells a line that leans forward from one that leans as much rearward.
 */
export const forwardTurnDeg = ({ x, z }: Direction): number => atan2Deg(z, -x)

/** Reads `forwardTurnDeg` back: the angle from level, and which way the line runs. */
export const sideOfTurn = (turnDeg: number): Pick<LineOfPullAngles, 'sideFromLevelDeg' | 'runs'> => {
  const deg = wrappedDeg(turnDeg)
  if (Math.abs(deg) <= 90) return { sideFromLevelDeg: deg, runs: 'forward' }
  return { sideFromLevelDeg: deg > 0 ? 180 - deg : -180 - deg, runs: 'rearward' }
}

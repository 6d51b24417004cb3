import type { PointMm } from '../../geometry/point'

/** A place on the car that the builder named because a tape reaches it: a seat bolt, a punch mark, a tube crossing. */
export interface TapePoint {
  readonly id: string
  /** In words a welder can find it by. */
  readonly name: string
  /** Where the tape is held, from the datum. */
  readonly point: PointMm
}

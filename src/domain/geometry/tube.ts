import type { PointMm } from './point'

/** What a tube is there for; decides which rules speak about it and how it is drawn. */
export type TubeRole = 'harness-bar' | 'cage' | 'floor'

/** A round chassis tube: a polyline of its centre line with a constant section. */
export interface Tube {
  readonly id: string
  readonly name: string
  readonly role: TubeRole
  /** At least two points, from the datum; consecutive points at least 1 mm apart. */
  readonly points: readonly PointMm[]
  readonly outsideDiameterMm: number
  readonly wallMm: number
}

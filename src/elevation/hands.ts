import type { Elevation } from '../domain/geometry/plane'

/** Which elevation fingers are on: both share one view, and hands on both would pull it to and fro. */
export interface Hands {
  readonly areElsewhere: (elevation: Elevation) => boolean
  readonly take: (elevation: Elevation) => void
  readonly free: (elevation: Elevation) => void
}

export const freeHands = (): Hands => {
  let held: Elevation | null = null
  return {
    areElsewhere: (elevation) => held !== null && held !== elevation,
    take: (elevation) => {
      held = elevation
    },
    free: (elevation) => {
      if (held === elevation) held = null
    },
  }
}

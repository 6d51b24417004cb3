import type { Tube } from '../../geometry/tube'
import type { Layout } from '../document/layout'
import { freshId } from '../edit/change'
import { removeTube, STARTING_SECTION } from '../edit/changeTubes'
import { startingMount } from '../edit/startingMount'
import { askedPlace } from './askedPlace'
import { type AskChoice, type Begun } from './question'
import { crossTubeOf, sideTubesOf } from './tubeTape'

/** Which floor tubes the lap tabs may sit on: none, one across the car, or one along it on each side. */
export type FloorTubes = 'none' | 'cross' | 'sides'

export const FLOOR_TUBES: readonly AskChoice[] = [
  { value: 'none', words: 'None' },
  { value: 'cross', words: 'One across' },
  { value: 'sides', words: 'One each side' },
]

/** One across before one on each side: a tab behind the seat is the usual one. */
export const floorTubesOf = (layout: Layout): FloorTubes =>
  crossTubeOf(layout) !== null ? 'cross' : sideTubesOf(layout) !== null ? 'sides' : 'none'

/** How far floor tubes reach to each side of where the lap tabs start. Starting values, our judgement. */
const HALF_CROSS_MM = 450
const HALF_SIDE_MM = 400

const startOfLap = (layout: Layout) => startingMount(askedPlace(layout), 'lap-left').point

const crossTube = (layout: Layout): Tube => {
  const { xMm, zMm } = startOfLap(layout)
  const { yMm } = askedPlace(layout).seat.hipPoint
  return {
    id: freshId('floor', layout.tubes),
    name: 'Floor cross tube',
    role: 'floor',
    points: [
      { xMm, yMm: yMm - HALF_CROSS_MM, zMm },
      { xMm, yMm: yMm + HALF_CROSS_MM, zMm },
    ],
    ...STARTING_SECTION,
  }
}

const sideTube = (layout: Layout, side: 'left' | 'right'): Tube => {
  const { xMm, yMm, zMm } = startOfLap(layout)
  const middleMm = askedPlace(layout).seat.hipPoint.yMm
  const sideMm = side === 'left' ? yMm : 2 * middleMm - yMm
  return {
    id: freshId('floor', layout.tubes),
    name: `Floor tube, ${side}`,
    role: 'floor',
    points: [
      { xMm: xMm - HALF_SIDE_MM, yMm: sideMm, zMm },
      { xMm: xMm + HALF_SIDE_MM, yMm: sideMm, zMm },
    ],
    ...STARTING_SECTION,
  }
}

const askedTubes = (layout: Layout): readonly Tube[] => {
  const cross = crossTubeOf(layout)
  return cross !== null ? [cross] : Object.values(sideTubesOf(layout) ?? {})
}

const without = (layout: Layout): Layout => {
  const found = askedTubes(layout)
  return found.length === 0 ? layout : without(found.reduce((made, { id }) => removeTube(made, id), layout))
}

const withTubeAdded = (layout: Layout, tube: Tube): Layout => {
  const isTaken = layout.tubes.some(({ id }) => id === tube.id)
  return {
    ...layout,
    tubes: [...layout.tubes, isTaken ? { ...tube, id: freshId('floor', layout.tubes) } : tube],
  }
}

/** With floor tubes of that kind instead of what there was: those that the questions began with, else new ones. */
export const withFloorTubes = (layout: Layout, kind: FloorTubes, { base }: Begun): Layout => {
  if (floorTubesOf(layout) === kind) return layout
  const bare = without(layout)
  if (kind === 'none') return bare
  if (floorTubesOf(base) === kind) return askedTubes(base).reduce(withTubeAdded, bare)
  if (kind === 'cross') return withTubeAdded(bare, crossTube(bare))
  const left = withTubeAdded(bare, sideTube(bare, 'left'))
  return withTubeAdded(left, sideTube(left, 'right'))
}

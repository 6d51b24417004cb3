import {
  areOverlapping,
  isInside,
  itemBox,
  textItem,
  type Box,
  type PagePoint,
  type SheetItem,
} from '../../page/item'
import { balloonItems, type BalloonTarget } from './balloons'
import type { FigureView } from './figureView'
import { type Ordinate, ordinateItems } from './ordinates'
import { FIGURE_TEXT_MM } from './primitiveItems'

/** Room for balloons round a view. */
export const BALLOON_BAND_MM = 4

/** One view of the car on the page, before names and numbers are put on it. */
export interface DimensionedView {
  readonly view: FigureView
  /** Around what is drawn, balloon band included. */
  readonly box: Box
  readonly drawn: readonly SheetItem[]
  readonly targets: readonly BalloonTarget[]
  /** What balloons had better not cover. */
  readonly straps: readonly (readonly PagePoint[])[]
  /** Numbers at the left edge, and below; null where there are none. */
  readonly across: readonly Ordinate[] | null
  readonly along: readonly Ordinate[] | null
}

/** A view with its names, item balloons and running dimensions: no two texts overlap, and none lies under a balloon. */
export const dimensionedItems = (given: DimensionedView): readonly SheetItem[] => {
  const { view, box, drawn, targets, straps, across, along } = given
  const lines = drawn.filter((item) => item.kind !== 'text')
  const names = keptApart([datumName(view), ...drawn.filter((item) => item.kind === 'text')], box)
  const balloons = balloonItems(targets, { room: box, obstacles: names.map(itemBox), straps })
  return [
    ...(across === null
      ? []
      : ordinateItems(across, {
          side: 'left',
          edgeMm: box.leftMm,
          fromMm: box.topMm + 1,
          toMm: box.bottomMm - 1,
        })),
    ...(along === null
      ? []
      : ordinateItems(along, {
          side: 'below',
          edgeMm: box.bottomMm,
          fromMm: box.leftMm + 1,
          toMm: box.rightMm - 1,
        })),
    ...lines,
    ...notUnder(names, balloons),
    ...balloons,
  ]
}

const datumName = ({ datum }: FigureView): SheetItem =>
  textItem({ xMm: datum.xMm + 2.2, yMm: datum.yMm + 3.4 }, 'datum', FIGURE_TEXT_MM, { halo: true })

/** Names inside the drawing's box, without those that would cover an earlier one. */
const keptApart = (names: readonly SheetItem[], room: Box): readonly SheetItem[] => {
  const kept: SheetItem[] = []
  for (const name of names) {
    const box = itemBox(name)
    if (isInside(box, room) && !kept.some((other) => areOverlapping(box, itemBox(other)))) kept.push(name)
  }
  return kept
}

/** Where there was no free place a balloon may lie on a name: the number matters more, and the name stands in the tables too. */
const notUnder = (names: readonly SheetItem[], balloons: readonly SheetItem[]): readonly SheetItem[] => {
  const bodies = balloons.filter((item) => item.kind === 'line' && item.closed).map(itemBox)
  return names.filter((name) => !bodies.some((body) => areOverlapping(itemBox(name), body)))
}

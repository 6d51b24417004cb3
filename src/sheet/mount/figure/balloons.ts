import type { Box, PagePoint, SheetItem } from '../../page/item'
import { areOverlapping, lineItem, straightItem, textItem } from '../../page/item'
import { textWidthMm } from '../../page/textWidth'

/** An anchor on the page with its number in the table. */
export interface BalloonTarget {
  readonly itemNumber: number
  readonly at: PagePoint
}

const TEXT_MM = 2.3
const HALF_HEIGHT_MM = 1.9
const SIDE_MM = 1
/** Anchors nearer together than this on paper share one balloon: left and right fall together in the side elevation. */
const SHARED_MM = 1.2
const REACHES_MM = [6, 8.5, 11, 14, 18, 24, 32] as const
const DIRECTIONS = 16

export interface BalloonSurroundings {
  /** Balloons stay inside it. */
  readonly room: Box
  /** What a balloon must not cover. */
  readonly obstacles: readonly Box[]
  /** What it had better not cover. */
  readonly straps: readonly (readonly PagePoint[])[]
}

interface Trial extends Omit<BalloonSurroundings, 'obstacles'> {
  readonly taken: readonly Box[]
  /** Other balloons. */
  readonly placed: readonly Box[]
  readonly leaders: readonly (readonly [PagePoint, PagePoint])[]
}

interface Balloon {
  readonly text: string
  readonly at: PagePoint
}

/**
 * Numbered balloons beside their anchors, each with a leader, in free places inside `room`. Where every tried place is taken the
 * least covered one is used; a balloon is never left out.
 */
export const balloonItems = (
  targets: readonly BalloonTarget[],
  surroundings: BalloonSurroundings,
): readonly SheetItem[] => {
  const { room, obstacles, straps } = surroundings
  const balloons = sharedBalloons(targets)
  const taken = [...obstacles, ...balloons.map((balloon) => boxAround(balloon.at, 1.2, 1.2))]
  const placed: Box[] = []
  const leaders: (readonly [PagePoint, PagePoint])[] = []
  const lines: SheetItem[] = []
  const bodies = balloons.flatMap((balloon) => {
    const halfWidthMm = Math.max(HALF_HEIGHT_MM, textWidthMm(balloon.text, TEXT_MM, 'bold') / 2 + SIDE_MM)
    const centre = bestPlace(balloon.at, halfWidthMm, { room, taken, placed, leaders, straps })
    placed.push(boxAround(centre, halfWidthMm + 0.3, HALF_HEIGHT_MM + 0.3))
    leaders.push([balloon.at, centre])
    lines.push(straightItem(balloon.at, centre, { widthMm: 0.15 }))
    return [
      lineItem(capsule(centre, halfWidthMm), { closed: true, fill: 'white', widthMm: 0.25 }),
      textItem({ xMm: centre.xMm, yMm: centre.yMm + TEXT_MM * 0.35 }, balloon.text, TEXT_MM, {
        weight: 'bold',
        align: 'centre',
      }),
    ]
  })
  // Leaders below all balloons: none of them then crosses a number.
  return [...lines, ...bodies]
}

const sharedBalloons = (targets: readonly BalloonTarget[]): readonly Balloon[] => {
  const groups: { at: PagePoint; numbers: number[] }[] = []
  for (const target of targets) {
    const group = groups.find(
      ({ at }) => Math.hypot(at.xMm - target.at.xMm, at.yMm - target.at.yMm) < SHARED_MM,
    )
    if (group === undefined) groups.push({ at: target.at, numbers: [target.itemNumber] })
    else group.numbers.push(target.itemNumber)
  }
  return groups.map(({ at, numbers }) => ({ at, text: numbers.join(', ') }))
}

const boxAround = (centre: PagePoint, halfWidthMm: number, halfHeightMm: number): Box => ({
  leftMm: centre.xMm - halfWidthMm,
  rightMm: centre.xMm + halfWidthMm,
  topMm: centre.yMm - halfHeightMm,
  bottomMm: centre.yMm + halfHeightMm,
})

/** The nearest place that covers least; a hidden balloon counts most, then what is covered, then crossed leaders. */
const bestPlace = (
  at: PagePoint,
  halfWidthMm: number,
  { room, taken, placed, leaders, straps }: Trial,
): PagePoint => {
  let best = heldInside(at, halfWidthMm, room)
  let bestCost = Infinity
  for (const reachMm of REACHES_MM) {
    for (let step = 0; step < DIRECTIONS; step += 1) {
      const turn = (2 * Math.PI * (step + 0.5)) / DIRECTIONS
      const centre = heldInside(
        {
          xMm: at.xMm + (reachMm + halfWidthMm - HALF_HEIGHT_MM) * Math.cos(turn),
          yMm: at.yMm - reachMm * Math.sin(turn),
        },
        halfWidthMm,
        room,
      )
      const box = boxAround(centre, halfWidthMm, HALF_HEIGHT_MM)
      const covered = taken.filter((other) => areOverlapping(box, other)).length
      const crossed = leaders.filter(([from, to]) => doCross(at, centre, from, to)).length
      const spoiled = straps.filter((line) => doesMeet(line, box)).length
      const hidden = placed.filter((other) => areOverlapping(box, other)).length
      const cost = 10 * COVERING * hidden + COVERING * covered + 30 * crossed + 12 * spoiled + reachMm
      if (cost < bestCost) {
        best = centre
        bestCost = cost
      }
    }
  }
  return bestCost < COVERING ? best : (nearestFree(at, halfWidthMm, room, [...taken, ...placed]) ?? best)
}

/** What covering one thing costs. */
const COVERING = 100
const GRID_MM = 1

/** The place nearest to `at` anywhere in the room where a balloon covers nothing; null when there is none. */
const nearestFree = (
  at: PagePoint,
  halfWidthMm: number,
  room: Box,
  taken: readonly Box[],
): PagePoint | null => {
  let best: PagePoint | null = null
  let bestMm = Infinity
  for (let xMm = room.leftMm + halfWidthMm; xMm <= room.rightMm - halfWidthMm; xMm += GRID_MM)
    for (let yMm = room.topMm + HALF_HEIGHT_MM; yMm <= room.bottomMm - HALF_HEIGHT_MM; yMm += GRID_MM) {
      const awayMm = Math.hypot(xMm - at.xMm, yMm - at.yMm)
      if (awayMm >= bestMm) continue
      const box = boxAround({ xMm, yMm }, halfWidthMm, HALF_HEIGHT_MM)
      if (taken.some((other) => areOverlapping(box, other))) continue
      best = { xMm, yMm }
      bestMm = awayMm
    }
  return best
}

const heldInside = (centre: PagePoint, halfWidthMm: number, room: Box): PagePoint => ({
  xMm: Math.min(room.rightMm - halfWidthMm, Math.max(room.leftMm + halfWidthMm, centre.xMm)),
  yMm: Math.min(room.bottomMm - HALF_HEIGHT_MM, Math.max(room.topMm + HALF_HEIGHT_MM, centre.yMm)),
})

/** Whether a line passes through a rectangle: it has a corner inside, or crosses one of the diagonals. */
const doesMeet = (line: readonly PagePoint[], box: Box): boolean =>
  line.some((point, index) => {
    const isIn =
      point.xMm > box.leftMm && point.xMm < box.rightMm && point.yMm > box.topMm && point.yMm < box.bottomMm
    const before = line[index - 1]
    if (isIn || before === undefined) return isIn
    return (
      doCross(before, point, { xMm: box.leftMm, yMm: box.topMm }, { xMm: box.rightMm, yMm: box.bottomMm }) ||
      doCross(before, point, { xMm: box.leftMm, yMm: box.bottomMm }, { xMm: box.rightMm, yMm: box.topMm })
    )
  })

const side = (a: PagePoint, b: PagePoint, c: PagePoint): number =>
  Math.sign((b.xMm - a.xMm) * (c.yMm - a.yMm) - (b.yMm - a.yMm) * (c.xMm - a.xMm))

const doCross = (a: PagePoint, b: PagePoint, c: PagePoint, d: PagePoint): boolean =>
  side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0

/** A circle drawn out sideways to hold several numbers. */
const capsule = (centre: PagePoint, halfWidthMm: number): readonly PagePoint[] => {
  const straightMm = halfWidthMm - HALF_HEIGHT_MM
  return Array.from({ length: 24 }, (_, index) => {
    const turn = (2 * Math.PI * index) / 24 - Math.PI / 2
    const half = index < 12 ? straightMm : -straightMm
    return {
      xMm: centre.xMm + half + HALF_HEIGHT_MM * Math.cos(turn),
      yMm: centre.yMm + HALF_HEIGHT_MM * Math.sin(turn),
    }
  })
}

import { type PlanePointMm, planePoint } from '../../geometry/plane'
import { type Box, boxContains, boxesMeet, boxesOverlap, labelBox, segmentMeetsBox } from './box'
import type { PartId, Primitive } from './primitive'

type Label = Extract<Primitive, { kind: 'label' }>

/** A text that wants to stand beside a point. */
export interface LabelWish {
  readonly key: string
  readonly part: PartId
  readonly at: PlanePointMm
  readonly text: string
  readonly weight: 'plain' | 'strong'
  /**
   * `must` is drawn even where it overlaps, if need be further away on a leader; `may` only close by, covering nothing and crossing
   * one line at most (the outline it stands beside); `if-free` only close by and where it crosses nothing.
   */
  readonly need: 'must' | 'may' | 'if-free'
}

export interface LabelSurroundings {
  /** Rectangles that no label may cover. */
  readonly blocked: readonly Box[]
  /** Lines that a label had better not cross. */
  readonly lines: readonly (readonly PlanePointMm[])[]
  readonly textHeightMm: number
  /** Where a label can be seen whole; null: everywhere. */
  readonly within: Box | null
}

interface Spot {
  readonly across: -1 | 0 | 1
  readonly up: -1 | 0 | 1
}

/** Tried in this order: to the right first, as lettering on a drawing board usually stands. */
const SPOTS: readonly Spot[] = [
  { across: 1, up: 0 },
  { across: 1, up: 1 },
  { across: 1, up: -1 },
  { across: -1, up: 0 },
  { across: -1, up: 1 },
  { across: -1, up: -1 },
  { across: 0, up: 1 },
  { across: 0, up: -1 },
]

/** Distances from the point, in text heights: beside the mark, then further out on a leader. */
const CLOSE_REACH = 1
const REACHES = [CLOSE_REACH, 2.2, 3.6, 5.2] as const

const ALIGN = { '-1': 'right', '0': 'centre', '1': 'left' } as const

interface Candidate {
  readonly label: Label
  readonly box: Box
  readonly isClose: boolean
}

const candidates = (wish: LabelWish, textHeightMm: number): readonly Candidate[] =>
  REACHES.filter((reach) => wish.need === 'must' || reach === CLOSE_REACH).flatMap((reach) =>
    SPOTS.map((spot) => {
      const label: Label = {
        kind: 'label',
        key: wish.key,
        part: wish.part,
        at: planePoint(
          wish.at.uMm + spot.across * reach * 0.7 * textHeightMm,
          wish.at.vMm + spot.up * reach * textHeightMm,
        ),
        text: wish.text,
        align: ALIGN[`${spot.across}`],
        weight: wish.weight,
      }
      return { label, box: labelBox(label, textHeightMm), isClose: reach === CLOSE_REACH }
    }),
  )

/** A covered label is far worse than any number of crossed lines. */
const COVERED_COST = 1000

/** A label cut off by the edge is worse still: it cannot be read at all. */
const CUT_COST = 10_000

/** A line with the rectangle it fills, so that most lines are passed over without looking at their pieces. */
interface Line {
  readonly points: readonly PlanePointMm[]
  readonly extent: Box
}

const lineOf = (points: readonly PlanePointMm[]): Line => {
  const us = points.map(({ uMm }) => uMm)
  const vs = points.map(({ vMm }) => vMm)
  return {
    points,
    extent: {
      min: planePoint(Math.min(...us), Math.min(...vs)),
      max: planePoint(Math.max(...us), Math.max(...vs)),
    },
  }
}

const crosses = ({ points, extent }: Line, box: Box): boolean =>
  boxesMeet(extent, box) &&
  points.some((to, index) => {
    const from = points[index - 1]
    return from !== undefined && segmentMeetsBox(from, to, box)
  })

const costOf = (box: Box, blocked: readonly Box[], lines: readonly Line[]): number =>
  blocked.filter((other) => boxesOverlap(box, other)).length * COVERED_COST +
  lines.filter((line) => crosses(line, box)).length

/** What each need will put up with. Our judgement. */
const MOST_COST: Readonly<Record<LabelWish['need'], number>> = {
  must: Number.POSITIVE_INFINITY,
  may: 1,
  'if-free': 0,
}

interface Chosen extends Candidate {
  readonly cost: number
}

const bestSpot = (
  wish: LabelWish,
  blocked: readonly Box[],
  lines: readonly Line[],
  { textHeightMm, within }: LabelSurroundings,
): Chosen | null => {
  let best: Chosen | null = null
  for (const candidate of candidates(wish, textHeightMm)) {
    const isCut = within !== null && !boxContains(within, candidate.box)
    const cost = costOf(candidate.box, blocked, lines) + (isCut ? CUT_COST : 0)
    if (best === null || cost < best.cost) best = { ...candidate, cost }
    if (cost === 0) break
  }
  return best !== null && best.cost > MOST_COST[wish.need] ? null : best
}

/** From the point to the nearest spot on the label's edge, for labels that had to go further away. */
const leader = (wish: LabelWish, box: Box): Primitive => ({
  kind: 'polyline',
  key: `${wish.key}/leader`,
  part: wish.part,
  points: [
    wish.at,
    planePoint(
      Math.min(box.max.uMm, Math.max(box.min.uMm, wish.at.uMm)),
      Math.min(box.max.vMm, Math.max(box.min.vMm, wish.at.vMm)),
    ),
  ],
  closed: false,
  style: 'dimension',
})

/**
 * Labels beside their points without covering one another: each in turn takes the spot that covers nothing and crosses the fewest
 * lines. Earlier wishes win, so the order is the order of importance.
 */
export const placedLabels = (
  wishes: readonly LabelWish[],
  surroundings: LabelSurroundings,
): readonly Primitive[] => {
  const blocked = [...surroundings.blocked]
  const lines = surroundings.lines.map(lineOf)
  return wishes.flatMap((wish) => {
    const best = bestSpot(wish, blocked, lines, surroundings)
    if (best === null) return []
    blocked.push(best.box)
    return best.isClose ? [best.label] : [leader(wish, best.box), best.label]
  })
}

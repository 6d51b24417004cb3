import { type PlanePointMm, planePoint } from '../../geometry/plane'
import { type Box, boxesOverlap, labelBox, segmentMeetsBox } from './box'
import type { PartId, Primitive } from './primitive'

type Label = Extract<Primitive, { kind: 'label' }>

/** A text that wants to stand beside a point. */
export interface LabelWish {
  readonly key: string
  readonly part: PartId
  readonly at: PlanePointMm
  readonly text: string
  readonly weight: 'plain' | 'strong'
  /** `must` is drawn even where it overlaps; `may` is left out when there is no free spot. */
  readonly need: 'must' | 'may'
}

export interface LabelSurroundings {
  /** Rectangles that no label may cover. */
  readonly blocked: readonly Box[]
  /** Lines that a label had better not cross. */
  readonly lines: readonly (readonly PlanePointMm[])[]
  readonly textHeightMm: number
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

/** Distances from the point, in text heights: beside the mark, then further out. */
const REACHES = [1, 2.2, 3.6] as const

const ALIGN = { '-1': 'right', '0': 'centre', '1': 'left' } as const

const candidates = (wish: LabelWish, textHeightMm: number): readonly Label[] =>
  REACHES.flatMap((reach) =>
    SPOTS.map((spot): Label => ({
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
    })),
  )

/** A covered label is far worse than any number of crossed lines. */
const COVERED_COST = 1000

const costOf = (box: Box, blocked: readonly Box[], lines: LabelSurroundings['lines']): number => {
  const covered = blocked.filter((other) => boxesOverlap(box, other)).length
  const crossed = lines.filter((line) =>
    line.some((to, index) => {
      const from = line[index - 1]
      return from !== undefined && segmentMeetsBox(from, to, box)
    }),
  ).length
  return covered * COVERED_COST + crossed
}

/**
 * Labels beside their points without covering one another: each in turn takes the spot that covers nothing and crosses the fewest
 * lines. Earlier wishes win, so the order is the order of importance.
 */
export const placedLabels = (
  wishes: readonly LabelWish[],
  surroundings: LabelSurroundings,
): readonly Label[] => {
  const blocked = [...surroundings.blocked]
  const placed: Label[] = []
  for (const wish of wishes) {
    let best: { readonly label: Label; readonly box: Box; readonly cost: number } | null = null
    for (const label of candidates(wish, surroundings.textHeightMm)) {
      const box = labelBox(label, surroundings.textHeightMm)
      const cost = costOf(box, blocked, surroundings.lines)
      if (best === null || cost < best.cost) best = { label, box, cost }
      if (cost === 0) break
    }
    if (best === null || (wish.need === 'may' && best.cost >= COVERED_COST)) continue
    placed.push(best.label)
    blocked.push(best.box)
  }
  return placed
}

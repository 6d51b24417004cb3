import type { PointMm } from '../../geometry/point'
import type { NumberLimits } from '../document/limits'

/** A box along the vehicle axes, both corners included. */
export interface BoxMm {
  readonly min: PointMm
  readonly max: PointMm
}

/** Where anchors may be proposed. */
export type ProposalSpace =
  | {
      readonly kind: 'tubes'
      readonly tubeIds: readonly string[]
      /** From a tube's surface to the middle of a tab's hole or an eye, mm ≥ 0; a wrap lies on the centre line. */
      readonly standOffMm: number
    }
  /** Anywhere that the rules permit, within the box; without one within the box about all tubes and anchors of the car. */
  | { readonly kind: 'anywhere'; readonly box: BoxMm | null }

/** What the builder asks for. */
export interface ProposalWish {
  readonly placeId: string
  /** Null: all anchors of the place at once. */
  readonly anchorId: string | null
  readonly space: ProposalSpace
  /** The other side of a pair becomes the mirror image about the seat's middle, also where the pair does not move as one. */
  readonly symmetric: boolean
  /** Two proposals differ by at least this in some anchor, or have it on different tubes; mm > 0. */
  readonly apartMm: number
}

/** Why nothing can be looked for; the message says how to mend it (wording/proposalText.ts). */
export type WishProblem =
  | { readonly kind: 'place-unknown'; readonly placeId: string }
  | { readonly kind: 'anchor-unknown'; readonly anchorId: string }
  | { readonly kind: 'no-anchors' }
  | { readonly kind: 'no-tubes' }
  | { readonly kind: 'box-turned-round'; readonly axis: 'x' | 'y' | 'z' }
  /** None of the places allowed can hold this anchor: wrong side of the seat, no tube opposite, no room beside another wrap. */
  | { readonly kind: 'no-spot'; readonly anchorId: string }

/** What may be typed. Our judgement, no source: a tab's hole stands some 20–60 mm off; nearer than 5 mm nobody tells two welds apart. */
export const WISH_LIMITS = {
  standOffMm: { min: 0, max: 300, unit: 'mm' },
  apartMm: { min: 5, max: 1_000, unit: 'mm' },
} as const satisfies Record<string, NumberLimits>

/** What the form starts with: a hole one and a half bolt-head widths clear of a tube; two hands' breadths of a weld apart. Our judgement. */
export const STARTING_WISH = { standOffMm: 25, apartMm: 40 } as const

/** How many proposals are given at most: more are no longer compared by anybody. Our judgement. */
export const MOST_PROPOSALS = 4

/** More room than this counts as this much: of two such positions the one nearer to the drawn one is better. Our judgement: a hand's breadth and a half. */
export const MOST_ROOM_MM = 150

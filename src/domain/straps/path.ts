import type { PointMm } from '../geometry/point'
import type { StrapId } from './strap'

/**
 * Where a taut strap touches something. `anchor` is the middle of the hole or eye or the first contact with the wrapped tube;
 * `junction` where two shoulder straps become one tail; `slot` the edge of a slot, of which a thick shell may give two;
 * `seat-side` the upper edge of the shell's side.
 */
export interface PathContact {
  readonly on: 'anchor' | 'junction' | 'slot' | 'rim' | 'seat-side' | 'body' | 'buckle'
  readonly point: PointMm
  /** Change of direction there in side view, degrees ≥ 0; 0 at the ends. The whole turn round an arc counts where the strap meets it first. */
  readonly bendDeg: number
}

/**
 * The taut path of one strap in one sitting, from its anchor to the buckle. While no lap strap has a path the buckle's place is
 * unknown; a shoulder strap then ends on top of the shoulder, has no `buckle` contact, and a `buckle-unknown` problem says so.
 */
export interface StrapPath {
  readonly strap: StrapId
  readonly contacts: readonly PathContact[]
  /** Points to draw it by, arcs included, from the anchor to the buckle. */
  readonly polyline: readonly PointMm[]
  /** The last contact before the body: the effective anchor that rules speak of. */
  readonly effectiveAnchor: PointMm
  /** Where it first touches the body. */
  readonly bodyContact: PointMm
  /** From the anchor contact to the last contact, the buckle, along the strap, mm. */
  readonly lengthMm: number
}

/**
 * Why a strap has no path (`buckle-unknown` on a shoulder strap: only no front part); the offending numbers are inside.
 * `slot-blocked`: the slot edge or backrest rim that the strap would bear on, or the slot as a whole, lies inside the body or the wrapped tube.
 * `clear-of-shoulder`: pulled straight, the strap would not bear on the shoulder.
 * `sub-anchor-not-below`: the anchor of an anti-submarine strap is not below the lowest point of the groin, or the slot's edge
 * that it bears on is not below the body there: nothing would pull down.
 * `lap-anchor-across`: the anchor of a lap strap lies on the other side of the seat's middle; the strap would cut the body.
 * `slot-not-reached`: the mount is not beyond the slot the strap is led through; `isSlotOnWrongSide`: because that slot lies above the
 * body (cushion) or ahead of it (backrest).
 * `no-slot`: the seat has no slot for this strap, and pulled straight it would pass through the shell or the backrest below its rim.
 * `through-tube`: the taut strap would pass through a tube; its path is there to be drawn, its other quantities are withheld.
 * `sub-anchor-not-behind`: a strap worn under the thighs does not leave the body at or behind its lowest point.
 * `flesh-not-measured`: the strap has its path, but how low it lies on this person nobody knows; only findings have it, no sitting.
 * `junction-apart`: two joined shoulder straps whose mounts are not at one place.
 * `tail-too-long`: no place was found where the junction of joined shoulder straps is in balance; with a tail `overMm` shorter one was.
 */
export type PathProblem =
  | { readonly kind: 'anchor-missing'; readonly strap: StrapId }
  | { readonly kind: 'anchor-inside-body'; readonly strap: StrapId; readonly insideMm: number }
  | { readonly kind: 'anchor-ahead-of-shoulder'; readonly strap: StrapId; readonly aheadMm: number }
  | { readonly kind: 'lap-anchor-not-behind'; readonly strap: StrapId; readonly aheadMm: number }
  | { readonly kind: 'buckle-unknown'; readonly strap: StrapId }
  | {
      readonly kind: 'slot-blocked'
      readonly strap: StrapId
      readonly by: 'body' | 'tube'
      readonly insideMm: number
    }
  | { readonly kind: 'clear-of-shoulder'; readonly strap: StrapId; readonly clearMm: number }
  | { readonly kind: 'sub-anchor-not-below'; readonly strap: StrapId; readonly aboveMm: number }
  | {
      readonly kind: 'slot-not-reached'
      readonly strap: StrapId
      readonly shortMm: number
      readonly isSlotOnWrongSide?: true
    }
  | { readonly kind: 'no-slot'; readonly strap: StrapId }
  | { readonly kind: 'flesh-not-measured'; readonly strap: StrapId; readonly bodyMassIndex: number }
  | {
      readonly kind: 'through-tube'
      readonly strap: StrapId
      readonly tubeId: string
      readonly insideMm: number
    }
  | { readonly kind: 'sub-anchor-not-behind'; readonly strap: StrapId; readonly aheadMm: number }
  | { readonly kind: 'junction-apart'; readonly strap: StrapId; readonly apartMm: number }
  | { readonly kind: 'tail-too-long'; readonly strap: StrapId; readonly overMm: number }
  | { readonly kind: 'lap-anchor-across'; readonly strap: StrapId; readonly acrossMm: number }

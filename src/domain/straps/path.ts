import type { PointMm } from '../geometry/point'
import type { StrapId } from './strap'

/** Where a taut strap touches something. `anchor` is the tab's hole centre or the first contact with the wrapped tube. */
export interface PathContact {
  readonly on: 'anchor' | 'slot' | 'rim' | 'body' | 'buckle'
  readonly point: PointMm
  /** Change of direction there in side view, degrees ≥ 0; 0 at the ends. */
  readonly bendDeg: number
}

/** The taut path of one strap in one sitting, from its anchor to the buckle. */
export interface StrapPath {
  readonly strap: StrapId
  readonly contacts: readonly PathContact[]
  /** Points to draw it by, arcs included, from the anchor to the buckle. */
  readonly polyline: readonly PointMm[]
  /** The last contact before the body: the effective anchor that rules speak of. */
  readonly effectiveAnchor: PointMm
  /** Where it first touches the body. */
  readonly bodyContact: PointMm
  /** From the anchor contact to the buckle along the strap, mm. */
  readonly lengthMm: number
}

/** Why a strap has no path; the offending numbers are inside. */
export type PathProblem =
  | { readonly kind: 'anchor-missing'; readonly strap: StrapId }
  | { readonly kind: 'anchor-inside-body'; readonly strap: StrapId; readonly insideMm: number }
  | { readonly kind: 'anchor-ahead-of-shoulder'; readonly strap: StrapId; readonly aheadMm: number }
  | { readonly kind: 'lap-anchor-not-behind'; readonly strap: StrapId; readonly aheadMm: number }
  | { readonly kind: 'buckle-unknown'; readonly strap: StrapId }

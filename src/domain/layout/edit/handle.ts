import type { Elevation } from '../../geometry/plane'
import type { PointMm } from '../../geometry/point'

/**
 * What can be taken hold of. Anchors and slots by id; a bar or other tube by one of its points or, `tube-height`, as a whole
 * up and down; `shoulder-point` changes the first occupant's measured hip-to-shoulder length; `recline` is the top of the torso line;
 * `shell-point` is one point of the seat's outline, drawn and moved in one elevation only.
 */
export type HandleRef =
  | { readonly kind: 'hip'; readonly placeId: string }
  | { readonly kind: 'recline'; readonly placeId: string }
  | { readonly kind: 'shoulder-point'; readonly placeId: string }
  | { readonly kind: 'anchor'; readonly placeId: string; readonly anchorId: string }
  | { readonly kind: 'slot'; readonly placeId: string; readonly slotId: string }
  | { readonly kind: 'tube-point'; readonly tubeId: string; readonly index: number }
  | { readonly kind: 'tube-height'; readonly tubeId: string }
  | {
      readonly kind: 'shell-point'
      readonly placeId: string
      readonly elevation: Elevation
      readonly index: number
    }

export interface Handle {
  /** Stable text id made from the reference, for test ids, selection and lists. */
  readonly id: string
  readonly ref: HandleRef
  /** Where it is now, vehicle frame. */
  readonly point: PointMm
  /** Which coordinates it can move in. */
  readonly moves: { readonly x: boolean; readonly y: boolean; readonly z: boolean }
  /** Plain name, for example "Driver, left lap tab". */
  readonly name: string
}

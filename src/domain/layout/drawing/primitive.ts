import type { Elevation, PlanePointMm } from '../../geometry/plane'
import type { Region } from '../../geometry/polygon'

/**
 * Line weights and patterns of the drawing board; the renderer owns widths and colours.
 * `body` is the occupant as shown, `ghost` the same person or another in a further sitting, `limit` a rule's limit line, `other` what lies
 * elsewhere in another variant of the car.
 */
export type LineStyle =
  | 'outline'
  | 'hidden'
  | 'centre'
  | 'strap'
  | 'ghost'
  | 'body'
  | 'dimension'
  | 'limit'
  | 'broken'
  | 'focus'
  | 'tube'
  | 'other'

/** The part a primitive belongs to: a handle id, a finding's subject path or null for scenery. */
export type PartId = string | null

export type Primitive =
  | {
      readonly kind: 'polyline'
      readonly key: string
      readonly part: PartId
      readonly points: readonly PlanePointMm[]
      readonly closed: boolean
      readonly style: LineStyle
    }
  | {
      readonly kind: 'circle'
      readonly key: string
      readonly part: PartId
      readonly centre: PlanePointMm
      readonly radiusMm: number
      readonly style: LineStyle
    }
  /**
   * A permitted zone, drawn as a fine hatch of lines at `hatchDeg` (0 is +u, 90 is +v), with its outer edges alone as thin lines:
   * the region is cut into convex pieces whose shared edges are no boundary.
   */
  | {
      readonly kind: 'zone'
      readonly key: string
      readonly part: PartId
      readonly region: Region
      readonly edges: readonly (readonly [PlanePointMm, PlanePointMm])[]
      readonly hatchDeg: number
    }
  /** `at` is half the text's height up, at its left end, middle or right end. */
  | {
      readonly kind: 'label'
      readonly key: string
      readonly part: PartId
      readonly at: PlanePointMm
      readonly text: string
      readonly align: 'left' | 'centre' | 'right'
      /** `strong` is what the reader must not miss, such as the value of a finding. */
      readonly weight: 'plain' | 'strong'
    }
  /** A dimension line with architectural ticks; `offsetMm` is its distance from the measured points, + to the left of from→to. */
  | {
      readonly kind: 'dimension'
      readonly key: string
      readonly part: PartId
      readonly from: PlanePointMm
      readonly to: PlanePointMm
      readonly offsetMm: number
      readonly text: string
    }
  /** An angle arc about an apex, anticlockwise from `fromDeg` to `toDeg` (0 is +u, 90 is +v). */
  | {
      readonly kind: 'angle'
      readonly key: string
      readonly part: PartId
      readonly apex: PlanePointMm
      readonly radiusMm: number
      readonly fromDeg: number
      readonly toDeg: number
      readonly text: string
    }
  /** A small symbol of constant size on screen and paper. */
  | {
      readonly kind: 'mark'
      readonly key: string
      readonly part: PartId
      readonly at: PlanePointMm
      readonly mark: MarkKind
      readonly verdict: 'broken' | 'tight' | 'clear' | 'none'
    }

export type MarkKind =
  | 'datum'
  | 'hip'
  | 'shoulder'
  | 'hip-bone'
  | 'tab'
  | 'wrap'
  | 'eye'
  | 'slot'
  | 'rim'
  | 'buckle'
  | 'junction'
  | 'tube-end'
  | 'recline'

export interface Drawing {
  readonly elevation: Elevation
  /** Corners of everything drawn but the zones, which reach far beyond the car; mm. */
  readonly bounds: { readonly min: PlanePointMm; readonly max: PlanePointMm }
  readonly primitives: readonly Primitive[]
}

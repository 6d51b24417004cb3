import type { Region } from '../geometry/polygon'
import type { RuleContext } from '../rules/applies'
import type { Anchor } from '../straps/anchor'
import type { StrapScene } from '../straps/scene'
import type { SolvedPlace } from '../straps/solve'

/** Where one anchor may lie in each drawn plane with everything else as drawn. For a wrap: the tube's centre. */
export interface AnchorZone {
  readonly anchorId: string
  readonly side: Region
  readonly top: Region
}

/** One sitting as the zones need it. */
export interface ZoneScene {
  readonly sittingId: string
  readonly scene: StrapScene
  /** `solvePlace(scene)`: the caller has it already and it is not computed twice. */
  readonly solved: SolvedPlace
  /** The facts for the anchor's own strap (mount and strap filled in). */
  readonly context: RuleContext
}

/** One anchor in all sittings of its place. */
export interface ZoneCase {
  /** Every sitting of the place, each with the same anchors and tubes. */
  readonly scenes: readonly ZoneScene[]
  readonly anchor: Anchor
  /** Whether the strap's pair moves as one: the other side follows, mirrored about the seat's centre line. */
  readonly mirrored: boolean
}

export const STRAP_IDS = [
  'shoulder-left',
  'shoulder-right',
  'lap-left',
  'lap-right',
  'sub-left',
  'sub-right',
  'sub-centre',
] as const

export type StrapId = (typeof STRAP_IDS)[number]
export type StrapFamily = 'shoulder' | 'lap' | 'sub'
export type StrapSide = 'left' | 'right' | 'centre'

export const strapFamily = (strap: StrapId): StrapFamily => {
  switch (strap) {
    case 'shoulder-left':
    case 'shoulder-right':
      return 'shoulder'
    case 'lap-left':
    case 'lap-right':
      return 'lap'
    case 'sub-left':
    case 'sub-right':
    case 'sub-centre':
      return 'sub'
  }
}

export const strapSide = (strap: StrapId): StrapSide => {
  switch (strap) {
    case 'shoulder-left':
    case 'lap-left':
    case 'sub-left':
      return 'left'
    case 'shoulder-right':
    case 'lap-right':
    case 'sub-right':
      return 'right'
    case 'sub-centre':
      return 'centre'
  }
}

/** The strap on the other side of the seat, or null for the centre strap. */
export const mirroredStrap = (strap: StrapId): StrapId | null => {
  switch (strap) {
    case 'shoulder-left':
      return 'shoulder-right'
    case 'shoulder-right':
      return 'shoulder-left'
    case 'lap-left':
      return 'lap-right'
    case 'lap-right':
      return 'lap-left'
    case 'sub-left':
      return 'sub-right'
    case 'sub-right':
      return 'sub-left'
    case 'sub-centre':
      return null
  }
}

/** Number of straps that meet at the buckle, counting both halves of each pair. */
export const ARRANGEMENTS = [4, 5, 6, 7] as const
export type Arrangement = (typeof ARRANGEMENTS)[number]

/** The straps of an arrangement. Source: common practice, no source (points counted as the trade does). */
export const strapsOf = (arrangement: Arrangement): readonly StrapId[] => {
  const four = ['shoulder-left', 'shoulder-right', 'lap-left', 'lap-right'] as const
  switch (arrangement) {
    case 4:
      return four
    case 5:
      return [...four, 'sub-centre']
    case 6:
      return [...four, 'sub-left', 'sub-right']
    case 7:
      return [...four, 'sub-left', 'sub-right', 'sub-centre']
  }
}

type WebbingMaterial = 'polyester' | 'nylon'
type BuckleKind = 'latch-and-link' | 'rotary-cam'

/** One harness as ordered for a place. */
export interface Belt {
  readonly arrangement: Arrangement
  readonly webbingMm: { readonly shoulder: number; readonly lap: number; readonly sub: number }
  readonly material: WebbingMaterial
  readonly buckle: BuckleKind
  readonly lapAdjuster: 'pull-up' | 'pull-down'
  readonly headAndNeckRestraint: boolean
  /** Webbing beyond the adjuster that the wearer pulls on, added to each order length. */
  readonly adjusterTailMm: number
  /** Webbing woven back through a three-bar slide behind a wrap, added to the order length of wrapped straps. */
  readonly wrapReturnMm: number
}

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
export const STRAP_FAMILIES = ['shoulder', 'lap', 'sub'] as const
export type StrapFamily = (typeof STRAP_FAMILIES)[number]
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

/**
 * Number of straps that meet at the buckle, counting both halves of each pair. 3 is a lap belt with one shoulder strap, the
 * diagonal.
 */
export const ARRANGEMENTS = [3, 4, 5, 6, 7] as const
export type Arrangement = (typeof ARRANGEMENTS)[number]

/** Over which shoulder the diagonal of a 3-point belt runs. */
export type DiagonalShoulder = 'left' | 'right'

/** The shoulder that the diagonal of a 3-point belt runs over while nobody has chosen: the left one. */
export const diagonalShoulder = (belt: Pick<Belt, 'diagonal'>): DiagonalShoulder => belt.diagonal ?? 'left'

/** The straps of a belt. Source: common practice, no source (points counted as the trade does). */
export const strapsOf = (belt: Pick<Belt, 'arrangement' | 'diagonal'>): readonly StrapId[] => {
  const four = ['shoulder-left', 'shoulder-right', 'lap-left', 'lap-right'] as const
  switch (belt.arrangement) {
    case 3:
      return [`shoulder-${diagonalShoulder(belt)}`, 'lap-left', 'lap-right']
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

/**
 * How the pair of thigh straps of a 6- or 7-point belt runs: rearward of the groin through the seat, or down, under the wearer
 * who sits on them, and rearward to anchors at or near those of the lap strap.
 */
export type ThighStraps = 'rearward' | 'under-thighs'

/** Where the body of a strap's adjuster lies. */
export interface Adjuster {
  /** From the contact at the anchor along the strap to the middle of the adjuster's body, ≥ 0. */
  readonly fromAnchorMm: number
  /** Length of the adjuster's body along the strap, > 0. */
  readonly lengthMm: number
}

/**
 * The bolts of one kind of strap, as the belt maker's instructions give them: only what the builder has typed from there. Nothing
 * here is ever filled in by the program.
 */
export interface StrapBolt {
  readonly boltDiameterMm?: number
  /** As it is stamped on the head or written in the instructions. */
  readonly grade?: string
  /** Tightening torque, N·m. */
  readonly torqueNm?: number
  /** Where it is written. */
  readonly source?: string
}

/** How the pair of thigh straps runs; null for a belt that has none. */
export const thighStraps = (belt: Pick<Belt, 'arrangement' | 'thighStraps'>): ThighStraps | null =>
  belt.arrangement === 6 || belt.arrangement === 7 ? (belt.thighStraps ?? 'rearward') : null

/** Whether the two shoulder straps are joined into one tail behind the neck. */
export const areShoulderStrapsJoined = (belt: Pick<Belt, 'arrangement' | 'shoulderTailMm'>): boolean =>
  belt.arrangement !== 3 && belt.shoulderTailMm !== undefined

type WebbingMaterial = 'polyester' | 'nylon'
type BuckleKind = 'latch-and-link' | 'rotary-cam'

/** One harness as ordered for a place. */
export interface Belt {
  readonly arrangement: Arrangement
  /** Only of a 3-point belt: the shoulder its one shoulder strap runs over; left when it is not said. */
  readonly diagonal?: DiagonalShoulder
  /** Only of a 6- or 7-point belt; rearward when it is not said. */
  readonly thighStraps?: ThighStraps
  /**
   * Only of a belt with two shoulder straps: they are sewn or joined into one tail behind the neck, this long from the anchor
   * to the junction. Not there: two separate straps.
   */
  readonly shoulderTailMm?: number
  /** Where the adjusters lie, for the families where somebody has said so; alike on both sides. */
  readonly adjusters?: { readonly [family in StrapFamily]?: Adjuster }
  /** Bolts and torque for the families where somebody has typed them. */
  readonly hardware?: { readonly [family in StrapFamily]?: StrapBolt }
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

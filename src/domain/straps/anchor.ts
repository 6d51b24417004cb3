import type { PointMm } from '../geometry/point'
import type { StrapId } from './strap'

/**
 * What a strap's end fitting is bolted to: one plate, a clevis (two plates with the fitting between them: always double
 * shear) or a welded threaded insert, whose bolt axis is the normal of the tab's plane.
 */
export const TAB_FORMS = ['plate', 'clevis', 'insert'] as const
export type TabForm = (typeof TAB_FORMS)[number]

/** A welded or bolted tab with a hole for the strap's end fitting. */
export interface TabMount {
  readonly kind: 'tab'
  /** A plate when it is not said. */
  readonly form?: TabForm
  /** Centre of the hole in the middle of the plate, from the datum. */
  readonly point: PointMm
  /** Turn of the tab's plane about the vertical, from fore-and-aft; + turns the rearward edge to the occupant's right. */
  readonly planDeg: number
  /** Lean of the plane from upright (0) to flat (±90), about its own fore-and-aft line; + leans the normal on its right side upward. */
  readonly leanDeg: number
  readonly thicknessMm: number
  readonly holeDiameterMm: number
  /** Of the plate, square to the line from its hole to the tube; of an insert its outside diameter. Left out: as `tabSize` chooses. */
  readonly widthMm?: number
  /** From the hole's centre to the end of the plate beyond it. Left out: as `tabSize` chooses. */
  readonly edgeDistanceMm?: number
  /** Clear between the two plates of a clevis. Left out: as `tabSize` chooses. */
  readonly gapMm?: number
  readonly shear: 'single' | 'double'
  /** The tube it is welded to; the tab moves with that tube. Null: to the floor or another structure. */
  readonly tubeId: string | null
}

/** A strap looped round a tube through a three-bar slide. */
export interface WrapMount {
  readonly kind: 'wrap'
  readonly tubeId: string
  /** On the tube's centre line where the middle of the webbing lies, from the datum. */
  readonly point: PointMm
  /** Whether the strap reaches the tube over its top or under its bottom. */
  readonly over: 'over' | 'under'
  /** Welded guide hoops keep the loop from sliding along the tube. */
  readonly guideHoops: boolean
}

/** An eye bolt that the strap's end fitting is hooked into. */
export interface EyeMount {
  readonly kind: 'eye'
  /** Centre of the eye, from the datum. */
  readonly point: PointMm
  /** Turn of the shank's axis, pointing outward from what it is screwed into to the eye, about the vertical; 0 points rearward, + turns it to the occupant's right. */
  readonly planDeg: number
  /** Rise of that axis above horizontal, −90 to 90. */
  readonly riseDeg: number
  readonly threadDiameterMm: number
  /** Inside diameter of the eye. */
  readonly eyeDiameterMm: number
  /** The tube that carries its boss; the eye moves with that tube. Null: the floor or another structure. */
  readonly tubeId: string | null
}

export type Mount = TabMount | WrapMount | EyeMount

export const MOUNT_KINDS = ['tab', 'wrap', 'eye'] as const satisfies readonly Mount['kind'][]

/** The form of a tab; a plate while nobody has said otherwise. */
export const tabForm = (mount: Pick<TabMount, 'form'>): TabForm => mount.form ?? 'plate'

/** How a form holds its bolt, where the form itself decides it; null for a plate, of which there may be one or two. */
export const formShear = (form: TabForm): TabMount['shear'] | null => {
  switch (form) {
    case 'plate':
      return null
    case 'clevis':
      return 'double'
    case 'insert':
      return 'single'
  }
}

/** How a strap is fixed, as the trade tells its ways apart: the form of a tab, or an eye bolt or wrap. */
export const ANCHOR_FORMS = [...TAB_FORMS, 'eye', 'wrap'] as const
export type AnchorForm = (typeof ANCHOR_FORMS)[number]

export const anchorForm = (mount: Mount): AnchorForm => (mount.kind === 'tab' ? tabForm(mount) : mount.kind)

export interface Anchor {
  readonly id: string
  readonly strap: StrapId
  readonly mount: Mount
}

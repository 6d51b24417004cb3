import { createStore } from 'zustand/vanilla'
import type { Layout, Place } from '../../domain/layout/document/layout'
import { type BoxMm, type ProposalWish, STARTING_WISH } from '../../domain/layout/propose/wish'

/** What has been chosen for the next search; kept while its panel is not in view. */
export interface WishDraft {
  /** Null: all anchors of the place. */
  readonly anchorId: string | null
  readonly where: 'tubes' | 'anywhere'
  /** Null: the tubes that the anchors are on now. */
  readonly tubeIds: readonly string[] | null
  readonly standOffMm: number
  /** Null: no box. */
  readonly box: BoxMm | null
  readonly symmetric: boolean
  readonly apartMm: number
}

/** Before anything was chosen. */
export const FIRST_DRAFT: WishDraft = {
  anchorId: null,
  where: 'tubes',
  tubeIds: null,
  standOffMm: STARTING_WISH.standOffMm,
  box: null,
  symmetric: true,
  apartMm: STARTING_WISH.apartMm,
}

/** The tubes chosen for a place, those that are gone left out. */
export const chosenTubeIds = ({ tubeIds }: WishDraft, layout: Layout, place: Place): readonly string[] => {
  const wanted = tubeIds ?? place.anchors.map(({ mount }) => mount.tubeId)
  return layout.tubes.flatMap(({ id }) => (wanted.includes(id) ? [id] : []))
}

/** The draft as a wish for a place; an anchor of another place counts as all of this one. */
export const wishOf = (draft: WishDraft, layout: Layout, place: Place): ProposalWish => ({
  placeId: place.id,
  anchorId: place.anchors.some(({ id }) => id === draft.anchorId) ? draft.anchorId : null,
  space:
    draft.where === 'anywhere'
      ? { kind: 'anywhere', box: draft.box }
      : { kind: 'tubes', tubeIds: chosenTubeIds(draft, layout, place), standOffMm: draft.standOffMm },
  symmetric: draft.symmetric,
  apartMm: draft.apartMm,
})

/** The page's one draft. */
export const pageDraft = createStore<WishDraft>(() => FIRST_DRAFT)

import { useState } from 'react'
import { withMark } from '../../domain/layout/edit/changePhotos'
import { markWords } from '../../domain/layout/wording/photoWords'
import { type MarkId, markOf, marksOf, type Photo, type PicturePoint } from '../../domain/measure/photo/photo'
import { useActions } from '../../state/react'

/** A cross in hand: where it is while it moves, and by what. It becomes one undo step when it is let go. */
export interface HeldCross {
  readonly id: MarkId
  readonly at: PicturePoint
  readonly by: 'pointer' | 'keys'
}

export interface Crosses {
  /** The cross that the next tap on the picture puts; null when all are put and none was chosen. */
  readonly activeId: MarkId | null
  readonly choose: (id: MarkId | null) => void
  readonly held: HeldCross | null
  readonly hold: (held: HeldCross) => void
  /** Lets go of what is held: it stays where it is now, or goes back. */
  readonly release: (how: 'keep' | 'put-back') => void
  readonly put: (id: MarkId, at: PicturePoint) => void
  /** All crosses that the photo has or asks for, in the order in which they are put. */
  readonly ids: readonly MarkId[]
  /** Where a cross is now, held or put. */
  readonly where: (id: MarkId) => PicturePoint | undefined
}

const held = (photo: Photo, { xPx, yPx }: PicturePoint): PicturePoint => ({
  xPx: Math.min(photo.size.widthPx, Math.max(0, xPx)),
  yPx: Math.min(photo.size.heightPx, Math.max(0, yPx)),
})

/** A check length has crosses once somebody began it. */
const idsOf = (photo: Photo): readonly MarkId[] =>
  photo.check === undefined
    ? marksOf(photo.calibration.kind)
    : [...marksOf(photo.calibration.kind), 'checkFrom', 'checkTo']

/** The crosses of the photo that is looked at: which one is meant, and how they are put and moved. */
export const useCrosses = (photo: Photo): Crosses => {
  const { edit } = useActions()
  const [chosenId, setChosen] = useState<MarkId | null>(null)
  const [inHand, setInHand] = useState<HeldCross | null>(null)
  const ids = idsOf(photo)
  const nextMissing = ids.find((id) => markOf(photo, id) === undefined) ?? null
  const chosen = chosenId !== null && ids.includes(chosenId) ? chosenId : null
  const put = (id: MarkId, at: PicturePoint): void => {
    edit(`Put the ${markWords(photo, id)}`, (layout) => withMark(layout, photo.id, id, at))
    // The next tap is for the next cross; one that was moved stays in hand for the keys.
    if (markOf(photo, id) === undefined) setChosen(null)
  }
  return {
    activeId: photo.locked ? null : (chosen ?? nextMissing),
    choose: setChosen,
    held: inHand,
    hold: (next) => setInHand({ ...next, at: held(photo, next.at) }),
    release: (how) => {
      if (inHand !== null && how === 'keep') put(inHand.id, inHand.at)
      setInHand(null)
    },
    put,
    ids,
    where: (id) => (inHand?.id === id ? inHand.at : markOf(photo, id)),
  }
}

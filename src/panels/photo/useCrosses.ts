import { useState } from 'react'
import { withMark } from '../../domain/layout/edit/changePhotos'
import { markWords } from '../../domain/layout/wording/photoWords'
import { type MarkId, markOf, marksOf, type Photo, type PicturePoint } from '../../domain/measure/photo/photo'
import { useActions } from '../../state/react'

/** A cross in hand: where it is while it moves, and by what. It becomes one undo step when it is let go. */
interface HeldCross {
  readonly id: MarkId
  readonly at: PicturePoint
  readonly by: 'pointer' | 'keys'
}

export interface Crosses {
  /** The cross in hand, for steps and keys: one that was chosen, or the next that is to be put; null when there is neither. */
  readonly activeId: MarkId | null
  /** The cross that a tap on the picture puts. While some are missing that is the next of them, unless another was chosen by name. */
  readonly tapId: MarkId | null
  readonly choose: (id: MarkId, how: 'by-name' | 'taken-hold-of') => void
  readonly held: HeldCross | null
  readonly hold: (held: HeldCross) => void
  /** Lets go of what is held: it stays where it is now, or goes back. */
  readonly release: (how: 'keep' | 'put-back') => void
  readonly put: (id: MarkId, at: PicturePoint) => void
  /** Puts a cross in the middle of the picture and takes it in hand, for those who do not point. */
  readonly putInMiddle: (id: MarkId) => void
  /** A cross that has just been put for the keys and takes the focus. */
  readonly forKeysId: MarkId | null
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

interface Chosen {
  readonly id: MarkId
  readonly how: 'by-name' | 'taken-hold-of'
}

/** Which cross is in hand, and which one a tap puts. */
const useChosen = (photo: Photo, ids: readonly MarkId[]) => {
  const [choice, setChosen] = useState<Chosen | null>(null)
  const nextMissing = ids.find((id) => markOf(photo, id) === undefined) ?? null
  const chosen = choice !== null && ids.includes(choice.id) && !photo.locked ? choice : null
  const next = photo.locked ? null : nextMissing
  const tapId = chosen?.how === 'by-name' ? chosen.id : (next ?? chosen?.id ?? null)
  return { activeId: chosen?.id ?? next, tapId, setChosen }
}

/** The crosses of the photo that is looked at: which one is meant, and how they are put and moved. */
export const useCrosses = (photo: Photo): Crosses => {
  const { edit } = useActions()
  const [inHand, setInHand] = useState<HeldCross | null>(null)
  const [forKeysId, setForKeys] = useState<MarkId | null>(null)
  const ids = idsOf(photo)
  const { activeId, tapId, setChosen } = useChosen(photo, ids)
  const put = (id: MarkId, at: PicturePoint): void => {
    edit(`Put the ${markWords(photo, id)}`, (layout) => withMark(layout, photo.id, id, at))
    // The next tap is for the next cross; one that was moved stays in hand.
    if (markOf(photo, id) === undefined) setChosen(null)
  }
  return {
    activeId,
    tapId,
    choose: (id, how) => setChosen({ id, how }),
    held: inHand,
    hold: (next) => setInHand({ ...next, at: held(photo, next.at) }),
    release: (how) => {
      if (inHand !== null && how === 'keep') put(inHand.id, inHand.at)
      setInHand(null)
    },
    put,
    putInMiddle: (id) => {
      put(id, { xPx: photo.size.widthPx / 2, yPx: photo.size.heightPx / 2 })
      setForKeys(id)
    },
    forKeysId,
    ids,
    where: (id) => (inHand?.id === id ? inHand.at : markOf(photo, id)),
  }
}

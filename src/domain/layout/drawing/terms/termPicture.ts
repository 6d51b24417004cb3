import type { TermId } from '../../wording/terms'
import { BELT_PICTURES } from './beltPictures'
import { FIXING_PICTURES } from './hardwarePictures'
import { OUR_PICTURES } from './ourPictures'
import type { Picture } from './picture'
import { CAR_PICTURES } from './wordPictures'

const PICTURES: Readonly<Record<TermId, () => Picture>> = {
  ...CAR_PICTURES,
  ...BELT_PICTURES,
  ...FIXING_PICTURES,
  ...OUR_PICTURES,
}

/** The drawing that goes with a word. */
export const termPicture = (id: TermId): Picture => PICTURES[id]()

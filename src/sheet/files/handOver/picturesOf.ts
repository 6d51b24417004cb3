import type { Photo } from '../../../domain/measure/photo/photo'
import type { HandOverPicture } from './handOverPart'

/** The pictures of photos as they are kept; one that cannot be read is as good as missing, and takes nothing else with it. */
export const picturesOf = async (
  photos: readonly Photo[],
  read: (pictureId: string) => Promise<Blob | undefined>,
): Promise<readonly HandOverPicture[]> => {
  const pictures: HandOverPicture[] = []
  // One after the other: together they may be tens of megabytes.
  for (const photo of photos) {
    const picture = await read(photo.pictureId).catch(() => undefined)
    const bytes = picture === undefined ? null : new Uint8Array(await picture.arrayBuffer())
    pictures.push({ photo, bytes })
  }
  return pictures
}

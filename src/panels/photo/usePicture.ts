import { useEffect } from 'react'
import { pagePictures } from '../../state/photos/pagePictures'
import type { KeptPicture } from '../../state/photos/pictures'
import { useKept } from '../../state/react'

const LOOKING: KeptPicture = { kind: 'looking' }

/** The picture of a photo as far as this device has it; it is looked for once. */
export const usePicture = (pictureId: string): KeptPicture => {
  const all = useKept(pagePictures.state)
  useEffect(() => pagePictures.want(pictureId), [pictureId])
  return all[pictureId] ?? LOOKING
}

const addresses = new WeakMap<Blob, string>()

/** An address of a picture, made once: pictures stay with the page anyhow. */
export const pictureAddress = (picture: Blob): string => {
  const address = addresses.get(picture) ?? URL.createObjectURL(picture)
  addresses.set(picture, address)
  return address
}

import { createStore } from 'zustand/vanilla'

/** A picture that was dropped or pasted and waits to be told what it shows; null when there is none. */
export const pendingPicture = createStore<{ readonly file: File | null }>(() => ({ file: null }))

/** Whether a file is taken for a picture by what the system says of it. */
export const isPictureFile = ({ type, name }: File): boolean =>
  type.startsWith('image/') || /\.hei[cf]$/i.test(name)

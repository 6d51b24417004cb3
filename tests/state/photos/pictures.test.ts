import { describe, expect, it } from 'vitest'
import type { AskPictures } from '../../../src/state/photos/askPictures'
import { heicBrand } from '../../../src/state/photos/heicBrand'
import type { PictureAnswer } from '../../../src/state/photos/pictureMessages'
import { createPictures } from '../../../src/state/photos/pictures'
import type { PictureStorage } from '../../../src/state/photos/pictureStorage'
import { keptSize, MOST_SIDE_PX } from '../../../src/state/photos/pictureWork'

const inMemory = (): PictureStorage & { readonly kept: Map<string, Blob> } => {
  const kept = new Map<string, Blob>()
  return {
    kept,
    read: (id) => Promise.resolve(kept.get(id)),
    write: (id, picture) => {
      kept.set(id, picture)
      return Promise.resolve()
    },
    remove: (id) => {
      kept.delete(id)
      return Promise.resolve()
    },
    ids: () => Promise.resolve([...kept.keys()]),
  }
}

const FILE = new File(['whatever'], 'car.jpg', { type: 'image/jpeg' })
const CODED = new Blob(['coded anew'])

const answering =
  (answer: PictureAnswer): AskPictures =>
  () =>
    Promise.resolve(answer)

const taken = (from: { widthPx: number; heightPx: number }): PictureAnswer => ({
  kind: 'taken',
  picture: CODED,
  size: { widthPx: 4096, heightPx: 3072 },
  from,
})

describe('takeIn', () => {
  it('keeps what was coded anew, says how it was shrunk and that the place it was taken at is gone', async () => {
    const storage = inMemory()
    const pictures = createPictures(storage, answering(taken({ widthPx: 8000, heightPx: 6000 })))
    const result = await pictures.takeIn(FILE)
    if (!result.ok) throw new Error(result.error)
    const { picture, said } = result.value
    expect(picture).toMatchObject({ name: 'car.jpg', size: { widthPx: 4096, heightPx: 3072 } })
    expect(storage.kept.get(picture.pictureId)).toBe(CODED)
    expect(said).toContain('8000 by 6000 to 4096 by 3072')
    expect(said).toContain('where it was taken, was left out')
  })

  it('says nothing of shrinking where nothing was shrunk', async () => {
    const pictures = createPictures(inMemory(), answering(taken({ widthPx: 4096, heightPx: 3072 })))
    const result = await pictures.takeIn(FILE)
    expect(result.ok && result.value.said).not.toContain('smaller')
  })

  it('still gives a picture that the browser cannot keep, and says that it will be gone', async () => {
    const storage = { ...inMemory(), write: () => Promise.reject(new Error('full')) }
    const pictures = createPictures(storage, answering(taken({ widthPx: 4096, heightPx: 3072 })))
    const result = await pictures.takeIn(FILE)
    if (!result.ok) throw new Error(result.error)
    expect(result.value.said).toContain('could not keep it')
    expect(await pictures.read(result.value.picture.pictureId)).toBe(CODED)
  })

  it.each([
    { problem: 'heic', says: 'HEIC' },
    { problem: 'unreadable', says: 'damaged or no picture' },
    { problem: 'too-small', says: '60 by 40 pixels' },
  ] as const)('refuses a file that is $problem in words, and keeps nothing', async ({ problem, says }) => {
    const storage = inMemory()
    const ask = answering({ kind: 'refused', problem, from: { widthPx: 60, heightPx: 40 } })
    const result = await createPictures(storage, ask).takeIn(FILE)
    expect(!result.ok && result.error).toContain(says)
    expect(!result.ok && result.error).toContain('car.jpg')
    expect(storage.kept.size).toBe(0)
  })

  it('says so when the worker dies, as of a picture that is too much for the device', async () => {
    const result = await createPictures(inMemory(), () => Promise.reject(new Error('no memory'))).takeIn(FILE)
    expect(!result.ok && result.error).toContain('no memory')
  })
})

describe('want', () => {
  it('finds a kept picture again, in a page that has just been loaded', async () => {
    const storage = inMemory()
    storage.kept.set('p1', CODED)
    const pictures = createPictures(storage, answering(taken({ widthPx: 1, heightPx: 1 })))
    pictures.want('p1')
    expect(pictures.state.getState()['p1']).toEqual({ kind: 'looking' })
    await expect.poll(() => pictures.state.getState()['p1']).toEqual({ kind: 'here', picture: CODED })
  })

  it('says what is not there, and what could not be looked for', async () => {
    const ask = answering(taken({ widthPx: 1, heightPx: 1 }))
    const pictures = createPictures(inMemory(), ask)
    pictures.want('p1')
    await expect.poll(() => pictures.state.getState()['p1']).toEqual({ kind: 'missing' })
    const barred = createPictures({ ...inMemory(), read: () => Promise.reject(new Error('barred')) }, ask)
    barred.want('p1')
    await expect.poll(() => barred.state.getState()['p1']).toEqual({ kind: 'failed', message: 'barred' })
  })
})

describe('remove', () => {
  it('takes pictures off the device, and what is shown of them becomes missing', async () => {
    const storage = inMemory()
    const pictures = createPictures(storage, answering(taken({ widthPx: 4096, heightPx: 3072 })))
    const result = await pictures.takeIn(FILE)
    if (!result.ok) throw new Error(result.error)
    const { pictureId } = result.value.picture
    expect(await pictures.ids()).toEqual([pictureId])
    await pictures.remove([pictureId])
    expect(await pictures.ids()).toEqual([])
    expect(pictures.state.getState()[pictureId]).toEqual({ kind: 'missing' })
    expect(await pictures.read(pictureId)).toBeUndefined()
  })
})

describe('keptSize', () => {
  // 48 megapixels of a phone are 8,064 by 6,048: 4,096 by 3,072.
  it.each([
    [8064, 6048, 4096, 3072],
    [6048, 8064, 3072, 4096],
    [4096, 4096, 4096, 4096],
    [1200, 800, 1200, 800],
    [100_000, 3, 4096, 1],
  ])('%d by %d is kept as %d by %d', (widthPx, heightPx, keptWidthPx, keptHeightPx) => {
    expect(keptSize({ widthPx, heightPx })).toEqual({ widthPx: keptWidthPx, heightPx: keptHeightPx })
    expect(MOST_SIDE_PX).toBe(4096)
  })
})

describe('heicBrand', () => {
  const file = (text: string): Uint8Array =>
    Uint8Array.from({ length: text.length }, (_, index) => text.charCodeAt(index))

  it('knows a file of the newer phones by its first bytes', () => {
    expect(heicBrand(file('\0\0\0\u0018ftypheic\0\0\0\0'))).toBe('heic')
    expect(heicBrand(file('\0\0\0\u0018ftypmif1\0\0\0\0'))).toBe('mif1')
  })

  it('knows nothing in a film, a JPEG or a few bytes', () => {
    expect(heicBrand(file('\0\0\0\u0018ftypisom\0\0\0\0'))).toBeNull()
    expect(heicBrand(file('\u00ff\u00d8\u00ff\u00e0\0\u0010JFIF\0'))).toBeNull()
    expect(heicBrand(file('ft'))).toBeNull()
  })
})

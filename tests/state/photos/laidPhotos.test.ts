import { describe, expect, it } from 'vitest'
import type { Photo } from '../../../src/domain/measure/photo/photo'
import type { AskPictures } from '../../../src/state/photos/askPictures'
import { createLaidPhotos } from '../../../src/state/photos/laidPhotos'
import type { PictureAnswer, PictureQuestion } from '../../../src/state/photos/pictureMessages'
import type { Pictures } from '../../../src/state/photos/pictures'
import { px, rectanglePhoto, squarePhoto } from '../../domain/measure/photo/photos'

const PICTURE = new Blob(['picture'])

/** Pictures that are all here, and a worker whose answers a test gives when it wants to. */
const bench = (read: Pictures['read'] = () => Promise.resolve(PICTURE)) => {
  const asked: {
    readonly question: PictureQuestion
    readonly answer: (answer: PictureAnswer) => void
    readonly fail: (error: Error) => void
  }[] = []
  const ask: AskPictures = (question) =>
    new Promise((resolve, reject) => asked.push({ question, answer: resolve, fail: reject }))
  const pictures: Pictures = {
    state: { getState: () => ({}), getInitialState: () => ({}), subscribe: () => () => undefined },
    want: () => undefined,
    takeIn: () => Promise.reject(new Error('not here')),
    read,
    ids: () => Promise.resolve([]),
    remove: () => Promise.resolve(),
  }
  return { asked, laid: createLaidPhotos(pictures, ask) }
}

const bitmap = (): ImageBitmap & { readonly isClosed: () => boolean } => {
  let closed = false
  return { width: 10, height: 10, close: () => (closed = true), isClosed: () => closed } as never
}

const RECTANGLE = [px(1000, 2000), px(3000, 2000), px(3000, 1000), px(1000, 1000)] as const

describe('laid photos', () => {
  it('a picture that was looked at squarely is made ready once, and follows its numbers from then on', async () => {
    const { asked, laid } = bench()
    const photo = squarePhoto()
    laid.show([photo])
    await expect.poll(() => asked.length).toBe(1)
    expect(asked[0]?.question).toEqual({ kind: 'lay', picture: PICTURE, straighten: null })
    expect(laid.of(photo, laid.state.getState())).toBeNull()
    asked[0]?.answer({ kind: 'laid', levels: [bitmap()] })
    await expect.poll(() => laid.of(photo, laid.state.getState())?.laid.a).toBeCloseTo(0.5, 9)
    const larger = squarePhoto({ lengthMm: 2000 })
    laid.show([larger])
    expect(laid.of(larger, laid.state.getState())?.laid.a).toBeCloseTo(1, 9)
    expect(asked).toHaveLength(1)
  })

  it('a picture with perspective is straightened anew when a cross moves; what came too late is let go', async () => {
    const { asked, laid } = bench()
    const before = rectanglePhoto(RECTANGLE)
    const after = rectanglePhoto([RECTANGLE[0], px(3000, 2100), RECTANGLE[2], RECTANGLE[3]])
    laid.show([before])
    await expect.poll(() => asked.length).toBe(1)
    laid.show([after])
    await expect.poll(() => asked.length).toBe(2)
    const [late, right] = [bitmap(), bitmap()]
    asked[1]?.answer({ kind: 'laid', levels: [right] })
    await expect.poll(() => laid.of(after, laid.state.getState())?.levels).toEqual([right])
    asked[0]?.answer({ kind: 'laid', levels: [late] })
    await expect.poll(() => late.isClosed()).toBe(true)
    expect(right.isClosed()).toBe(false)
    expect(laid.of(before, laid.state.getState())).toBeNull()
  })

  it('what is no longer shown is let go', async () => {
    const { asked, laid } = bench()
    const photo = squarePhoto()
    laid.show([photo])
    await expect.poll(() => asked.length).toBe(1)
    const level = bitmap()
    asked[0]?.answer({ kind: 'laid', levels: [level] })
    await expect.poll(() => laid.of(photo, laid.state.getState())).not.toBeNull()
    laid.show([])
    expect(level.isClosed()).toBe(true)
    expect(laid.of(photo, laid.state.getState())).toBeNull()
  })

  it('a photo without a scale, or whose picture is not on the device, asks for nothing', async () => {
    const { lengthMm: _, ...unfinished } = squarePhoto().calibration as Extract<
      Photo['calibration'],
      { kind: 'known-length' }
    >
    const none = bench()
    none.laid.show([{ ...squarePhoto(), calibration: unfinished }])
    const away = bench(() => Promise.resolve(undefined))
    away.laid.show([squarePhoto()])
    await Promise.resolve()
    await Promise.resolve()
    expect(none.asked).toEqual([])
    expect(away.asked).toEqual([])
  })

  it('what went wrong is said, and tried again when it is shown again', async () => {
    const { asked, laid } = bench()
    laid.show([squarePhoto()])
    await expect.poll(() => asked.length).toBe(1)
    asked[0]?.fail(new Error('no memory'))
    await expect.poll(() => laid.state.getState().failures['photo']).toBe('no memory')
    laid.show([squarePhoto()])
    await expect.poll(() => asked.length).toBe(2)
  })
})

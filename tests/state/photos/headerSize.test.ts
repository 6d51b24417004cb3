import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { createPictures } from '../../../src/state/photos/pictures'
import { headerSize, tooLargeSize } from '../../../src/state/photos/headerSize'

const bytesOf = (hex: string): Uint8Array =>
  Uint8Array.from(hex.match(/../g) ?? [], (pair) => parseInt(pair, 16))
const icon = (name: string): Uint8Array =>
  readFileSync(new URL(`../../../public/icons/${name}`, import.meta.url))

/*
 * Outside: the first bytes of python.jpg, python.webp and python.gif of CPython's test data (imghdrdata), pictures of 16 by 16 pixels as file(1)
 * says too; the icons, whose names say their size, were written by a browser.
 */
const JPEG =
  'ffd8ffe000104a46494600010101000100010000ffdb004300030202020202030202020303030304060404040404080606050609080a0a090809090a0c0f0c0a0b0e0b09090d110d0e0f101011100a0c12131210130f101010ffdb00430103030304030408040408100b090b1010101010101010101010101010101010101010101010101010101010101010101010101010101010101010101010101010ffc00011080010001003012200021101031101ffc4'
const WEBP = '52494646a801000057454250565038580a000000100000000f00000f0000414c'
const GIF = '47494638396110001000'

/** A PNG's beginning; W3C PNG specification, 5.2 and 11.2.1. */
const png = (widthPx: number, heightPx: number): Uint8Array => {
  const bytes = new Uint8Array(33)
  bytes.set(bytesOf('89504e470d0a1a0a0000000d49484452'))
  new DataView(bytes.buffer).setUint32(16, widthPx)
  new DataView(bytes.buffer).setUint32(20, heightPx)
  return bytes
}

describe('headerSize', () => {
  it.each([
    ['JPEG', bytesOf(JPEG), 16],
    ['WebP', bytesOf(WEBP), 16],
    ['GIF', bytesOf(GIF), 16],
    ['PNG', icon('icon-192.png'), 192],
    ['PNG', icon('touch-180.png'), 180],
  ])('reads the size of a %s off its first bytes', (_kind, bytes, sidePx) => {
    expect(headerSize(bytes)).toEqual({ widthPx: sidePx, heightPx: sidePx })
  })

  it('tells width from height', () => {
    expect(headerSize(png(3, 2))).toEqual({ widthPx: 3, heightPx: 2 })
    // SOF0 names the height first (ITU-T T.81, B.2.2).
    expect(headerSize(bytesOf('ffd8ffc0001108000200030301220002110103110100'))).toEqual({
      widthPx: 3,
      heightPx: 2,
    })
  })

  it('says nothing of other files and of those that are cut, and never runs on for ever', () => {
    for (const bytes of [bytesOf(JPEG), bytesOf(WEBP), bytesOf(GIF), png(3, 2)])
      for (let length = 0; length < bytes.length; length += 1) {
        const size = headerSize(bytes.subarray(0, length))
        expect(size === null || (size.widthPx > 0 && size.heightPx > 0)).toBe(true)
      }
    expect(headerSize(new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg"/>'))).toBeNull()
    expect(headerSize(bytesOf(`ffd8${'ff'.repeat(5_000)}`))).toBeNull()
    expect(headerSize(bytesOf(`ffd8${'ffe00000'.repeat(2_000)}`))).toBeNull()
  })
})

describe('tooLargeSize', () => {
  it('lets the largest camera of a phone pass and stops what would unfold to gigabytes', () => {
    expect(tooLargeSize(png(16_320, 12_240))).toBeNull()
    expect(tooLargeSize(png(20_000, 20_000))).toEqual({ widthPx: 20_000, heightPx: 20_000 })
  })

  it('is said with both numbers', async () => {
    const pictures = createPictures(
      { read: async () => undefined, write: async () => {}, remove: async () => {}, ids: async () => [] },
      () =>
        Promise.resolve({
          kind: 'refused',
          problem: 'too-large',
          from: { widthPx: 20_000, heightPx: 30_000 },
        }),
    )
    const taken = await pictures.takeIn(new File(['x'], 'bomb.png'))
    expect(taken.ok ? '' : taken.error).toMatch(/^bomb\.png says that it has 20000 by 30000 pixels/)
  })
})

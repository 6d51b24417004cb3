import { readFileSync } from 'node:fs'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { emptyLayout } from '../../../../src/domain/layout/document/empty'
import { layoutText } from '../../../../src/domain/layout/document/layoutText'
import { parseLayout, parseLayoutText } from '../../../../src/domain/layout/document/parseLayout'
import type { Photo } from '../../../../src/domain/measure/photo/photo'
import { px, rectanglePhoto, squarePhoto } from '../../measure/photo/photos'

const withPhotos = (...photos: readonly unknown[]) => ({ ...emptyLayout(), photos })

const FULL: readonly Photo[] = [
  squarePhoto({}, { check: { marks: { checkFrom: px(1, 2), checkTo: px(3, 4.5) }, lengthMm: 400 } }),
  rectanglePhoto(
    [px(1000, 2000), px(3000, 2000), px(3000, 1000), px(1000, 1000)],
    { turnDeg: -3 },
    { id: 'photo-2', elevation: 'top', mirrored: true, cameraDistanceMm: 3200, locked: true, shown: false },
  ),
]

// Outside check: a general JSON Schema validator reads the published file.
const published = JSON.parse(
  readFileSync(new URL('../../../../public/layout.schema.json', import.meta.url), 'utf8'),
) as Record<string, unknown>
const isValid = new Ajv2020({ strict: true, allErrors: true }).compile(published)

describe('photos in a layout file', () => {
  it('are read back as they were saved, whole or with crosses and numbers still missing', () => {
    const begun = { ...squarePhoto(), calibration: { kind: 'known-length', marks: {}, runs: 'plumb' } }
    for (const layout of [withPhotos(...FULL), withPhotos(begun)]) {
      const read = parseLayout(layout)
      if (!read.ok) throw new Error(JSON.stringify(read.error))
      expect(read.value).toEqual(layout)
      expect(parseLayoutText(layoutText(read.value))).toEqual(read)
      expect(isValid(layout)).toBe(true)
    }
  })

  it('hold no picture: pixels in a file are refused', () => {
    const layout = withPhotos({ ...FULL[0], pixels: 'data:image/jpeg;base64,AAAA' })
    const read = parseLayout(layout)
    expect(!read.ok && read.error[0]?.path).toBe('photos[0].pixels')
    expect(isValid(layout)).toBe(false)
  })

  it.each([
    {
      what: 'a cross beside its picture',
      photo: squarePhoto({ marks: { known: px(4000.5, 10) } }),
      path: 'photos[0].calibration.marks.known',
      says: '4000 by 3000 px',
    },
    {
      what: 'an end of the check length below it',
      photo: squarePhoto({}, { check: { marks: { checkTo: px(1, 3001) } } }),
      path: 'photos[0].check.marks.checkTo',
      says: 'not on its picture',
    },
    {
      what: 'a length of nothing',
      photo: squarePhoto({ lengthMm: 0 }),
      path: 'photos[0].calibration.lengthMm',
      says: '',
    },
    {
      what: 'crosses of the other kind',
      photo: { ...squarePhoto(), calibration: { ...squarePhoto().calibration, kind: 'rectangle' } },
      path: 'photos[0].calibration.marks.lengthFrom',
      says: '',
    },
  ])('refuse $what', ({ photo, path, says }) => {
    const read = parseLayout(withPhotos(photo))
    const found = read.ok ? [] : read.error
    expect(found.map((problem) => problem.path)).toContain(path)
    expect(found.map(({ message }) => message).join(' ')).toContain(says)
  })

  it('refuse two of one id', () => {
    const read = parseLayout(withPhotos(FULL[0], FULL[0]))
    expect(!read.ok && read.error[0]?.path).toBe('photos[1].id')
  })

  it('a cross on the very edge is on the picture', () => {
    expect(parseLayout(withPhotos(squarePhoto({ marks: { known: px(4000, 3000) } }))).ok).toBe(true)
  })
})

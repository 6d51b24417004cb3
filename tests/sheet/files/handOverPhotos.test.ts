import { strFromU8, unzipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { archive } from '../../../src/sheet/files/handOver/archive'
import { handOverFiles } from '../../../src/sheet/files/handOver/handOverFiles'
import { picturesOf } from '../../../src/sheet/files/handOver/picturesOf'
import { squarePhoto } from '../../domain/measure/photo/photos'
import { exampleLayout } from '../../support/exampleLayouts'
import { requestOf } from '../../support/handOver'

// Outside: the archive is opened by its package's reading half.
const PICTURE = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0, 1, 2, 3, 0xff, 0xd9])

const here = squarePhoto({}, { id: 'photo-1', pictureId: 'here', name: 'left side.JPG' })
const away = squarePhoto({}, { id: 'photo-2', pictureId: 'away', name: 'from above.png', elevation: 'top' })

const filesWith = async (photos: readonly (typeof here)[]) => {
  const layout = { ...exampleLayout('rock-buggy.layout.json'), photos }
  const pictures = await picturesOf(photos, (id) =>
    id === 'broken'
      ? Promise.reject(new Error('damaged'))
      : Promise.resolve(id === 'here' ? new Blob([PICTURE]) : undefined),
  )
  return handOverFiles({ ...requestOf(layout), pictures })
}

describe('photos in the hand-over folder', () => {
  it('are there byte for byte, named in READ-ME-FIRST with what they are for', async () => {
    const files = await filesWith([here, away])
    const entries = unzipSync(archive('folder', files, '2026-05-01'))
    const path = 'photos/side-left-side.jpg'
    expect(entries[`folder/${path}`]).toEqual(PICTURE)
    const readMe = strFromU8(entries['folder/READ-ME-FIRST.txt'] ?? new Uint8Array()).replaceAll(/\s+/g, ' ')
    expect(readMe).toContain(`${path} (side elevation)`)
    expect(readMe).toContain('go to Photo and choose the picture again')
    expect(readMe).toContain('The photo from above.png: its picture is not on the device')
    expect(files.some((file) => file.path.startsWith('photos/top'))).toBe(false)
  })

  it('of one name are told apart', async () => {
    const files = await filesWith([here, { ...here, id: 'photo-3' }])
    const paths = files.map(({ path }) => path).filter((path) => path.startsWith('photos/'))
    expect(paths).toEqual(['photos/side-left-side.jpg', 'photos/side-left-side-2.jpg'])
  })

  it('that cannot be read are said to be missing, and cost nothing else', async () => {
    const files = await filesWith([{ ...here, pictureId: 'broken' }])
    expect((files[0]?.text ?? '').replaceAll(/\s+/g, ' ')).toContain('The photo left side.JPG: its picture')
    expect(files.length).toBeGreaterThan(5)
  })

  it('are not missed where there are none', async () => {
    const files = await filesWith([])
    expect(files[0]?.text).toContain('No photo lies under the drawing')
    expect(files[0]?.text).not.toContain('Photos (.jpg)')
  })
})

import { describe, expect, it } from 'vitest'
import { emptyLayout } from '../../../src/domain/layout/document/empty'
import { layoutText } from '../../../src/domain/layout/document/layoutText'
import { addPhoto, removePhoto } from '../../../src/domain/layout/edit/changePhotos'
import { removeUnused, unusedPictures } from '../../../src/state/photos/unusedPictures'
import { createAppStore } from '../../../src/state/store'

const withPicture = (pictureId: string) =>
  addPhoto(emptyLayout(), 'side', { pictureId, name: 'a.jpg', size: { widthPx: 800, heightPx: 600 } })

const kept =
  (...pictureIds: readonly string[]) =>
  () =>
    Promise.resolve(pictureIds.map((id) => ({ text: layoutText(withPicture(id)) })))

describe('unusedPictures', () => {
  it('are those that neither a kept layout nor this page names', async () => {
    const store = createAppStore(withPicture('present'))
    const ids = ['kept', 'present', 'nobodys']
    expect(await unusedPictures(store, ids, kept('kept'))).toEqual(['nobodys'])
  })

  it('are not those that undo or redo would bring back', async () => {
    const store = createAppStore(withPicture('undone'))
    store.actions.edit('Remove', (layout) => removePhoto(layout, 'photo-1'))
    expect(await unusedPictures(store, ['undone'], kept())).toEqual([])
    const other = createAppStore(emptyLayout())
    other.actions.edit('Add', () => withPicture('redone'))
    other.actions.undo()
    expect(await unusedPictures(other, ['redone'], kept())).toEqual([])
  })

  it('are not known where the browser does not say what it keeps', async () => {
    expect(await unusedPictures(createAppStore(emptyLayout()), ['a'], () => Promise.resolve(null))).toBeNull()
  })
})

describe('removeUnused', () => {
  const removing = () => {
    const gone: string[] = []
    const remove = (ids: readonly string[]): Promise<void> => {
      gone.push(...ids)
      return Promise.resolve()
    }
    return { gone, remove }
  }

  it('spares a picture that a layout has come to name since somebody looked', async () => {
    const store = createAppStore(emptyLayout())
    const found = await unusedPictures(store, ['a', 'b'], kept())
    expect(found).toEqual(['a', 'b'])
    store.actions.openLayout(withPicture('b'), 'Open a file')
    const pictures = removing()
    expect(await removeUnused(store, found ?? [], pictures, kept())).toEqual(['a'])
    expect(pictures.gone).toEqual(['a'])
  })

  it('removes nothing where the browser does not say what it keeps', async () => {
    const pictures = removing()
    const store = createAppStore(emptyLayout())
    expect(await removeUnused(store, ['a'], pictures, () => Promise.resolve(null))).toBeNull()
    expect(pictures.gone).toEqual([])
  })
})

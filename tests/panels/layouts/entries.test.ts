import { describe, expect, it } from 'vitest'
import { emptyLayout } from '../../../src/domain/layout/document/empty'
import { layoutText } from '../../../src/domain/layout/document/layoutText'
import {
  byFolder,
  type Entry,
  entryOf,
  foldersOf,
  inBin,
  matching,
  ordered,
  outOfBin,
} from '../../../src/panels/layouts/entries'
import type { KeptLayout } from '../../../src/state/keeping/shelf'

const entry = (
  id: string,
  job: Partial<ReturnType<typeof emptyLayout>['job']> = {},
  kept: Partial<KeptLayout> = {},
): Entry =>
  entryOf({
    id,
    text: layoutText({ ...emptyLayout(), job: { ...emptyLayout().job, ...job } }),
    jobName: job.name ?? '',
    savedAtMs: 0,
    folder: '',
    removedAtMs: null,
    isOpenHere: false,
    isOpenElsewhere: false,
    isOnlyInPage: false,
    ...kept,
  })
const ids = (entries: readonly Entry[]): readonly string[] => entries.map(({ id }) => id)

const dune10 = entry('a', { name: 'Dune car 10', car: 'Sand rail', customer: 'J. Öberg' })
const dune9 = entry('b', { name: 'Dune car 9', notes: 'bars moved twice' }, { folder: 'Club' })
const crawler = entry('c', { name: '', car: 'Rock crawler' }, { folder: 'club' })
const shelf = [dune10, dune9, crawler]

describe('matching', () => {
  it.each([
    ['', ['a', 'b', 'c']],
    ['  ', ['a', 'b', 'c']],
    ['dune', ['a', 'b']],
    ['DUNE sand', ['a']],
    ['oberg', ['a']],
    ['twice', ['b']],
    ['club', ['b', 'c']],
    ['driver', ['a', 'b', 'c']],
    ['dune crawler', []],
    ['.*', []],
  ])('finds for "%s" %j', (words, found) => {
    expect(ids(matching(shelf, words))).toEqual(found)
  })

  it('finds a damaged one by the name that was noted beside it', () => {
    const damaged = entry('d', {}, { text: '{"version": 1, "job": {"na', jobName: 'Wash car' })
    expect(ids(matching([...shelf, damaged], 'wash'))).toEqual(['d'])
  })

  it('reads nothing of what is no layout', () => {
    for (const text of [
      '',
      'null',
      '[]',
      '{"job": 3, "places": {"length": 9}}',
      '{"job": {"name": 7}, "places": [null, 4]}',
    ])
      expect(entryOf({ ...dune10, text, jobName: 'noted' }).job).toEqual({
        name: 'noted',
        car: '',
        customer: '',
        notes: '',
        places: [],
      })
  })
})

describe('ordered', () => {
  it('counts numbers in names as numbers and puts those without a name last', () => {
    expect(ids(ordered([crawler, dune10, dune9], 'name'))).toEqual(['b', 'a', 'c'])
    expect(ids(ordered(shelf, 'changed'))).toEqual(['a', 'b', 'c'])
  })
})

describe('folders', () => {
  it('are there as long as something is in them, in no folder first', () => {
    expect(byFolder(shelf).map(({ folder, entries }) => [folder, ids(entries)])).toEqual([
      ['', ['a']],
      ['Club', ['b']],
      ['club', ['c']],
    ])
    expect(foldersOf([dune10])).toEqual([])
  })
})

describe('the bin', () => {
  it('has what was removed, the last first, and nothing else', () => {
    const removed = [entry('x', {}, { removedAtMs: 5 }), entry('y', {}, { removedAtMs: 9 })]
    expect(ids(inBin([...shelf, ...removed]))).toEqual(['y', 'x'])
    expect(ids(outOfBin([...shelf, ...removed]))).toEqual(['a', 'b', 'c'])
  })
})

import { jobOf, type KeptJob } from './keptJob'
import type { KeptLayout } from '../../state/keeping/shelf'

/** A kept layout with what it is found and sorted by. */
export interface Entry extends KeptLayout {
  readonly job: KeptJob
}

export const entryOf = (kept: KeptLayout): Entry => ({ ...kept, job: jobOf(kept) })

export type Order = 'changed' | 'name'

const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()

/** Those in which every one of the words stands somewhere: job, car, customer, notes, places or folder. All where there are no words. */
export const matching = (entries: readonly Entry[], words: string): readonly Entry[] => {
  const wanted = plain(words)
    .split(/\s+/)
    .filter((word) => word !== '')
  if (wanted.length === 0) return entries
  return entries.filter(({ job, folder }) => {
    const text = plain([job.name, job.car, job.customer, job.notes, ...job.places, folder].join('\n'))
    return wanted.every((word) => text.includes(word))
  })
}

const NAMES = new Intl.Collator(undefined, { numeric: true, sensitivity: 'base' })

/** By name, those without one last, or newest first as they come. */
export const ordered = (entries: readonly Entry[], order: Order): readonly Entry[] =>
  order === 'changed'
    ? entries
    : entries.toSorted(
        (a, b) =>
          Number(a.job.name === '') - Number(b.job.name === '') || NAMES.compare(a.job.name, b.job.name),
      )

export const inBin = (entries: readonly Entry[]): readonly Entry[] =>
  entries
    .filter(({ removedAtMs }) => removedAtMs !== null)
    .toSorted((a, b) => (b.removedAtMs ?? 0) - (a.removedAtMs ?? 0))

export const outOfBin = (entries: readonly Entry[]): readonly Entry[] =>
  entries.filter(({ removedAtMs }) => removedAtMs === null)

/** The folders that have something in them, by name. */
export const foldersOf = (entries: readonly Entry[]): readonly string[] =>
  [...new Set(entries.map(({ folder }) => folder))].filter((folder) => folder !== '').toSorted(NAMES.compare)

interface FolderOfEntries {
  /** Empty: what lies in none. */
  readonly folder: string
  readonly entries: readonly Entry[]
}

/** What lies in no folder first, then each folder by name; none without anything in it. */
export const byFolder = (entries: readonly Entry[]): readonly FolderOfEntries[] =>
  ['', ...foldersOf(entries)]
    .map((folder) => ({ folder, entries: entries.filter((entry) => entry.folder === folder) }))
    .filter((group) => group.entries.length > 0)

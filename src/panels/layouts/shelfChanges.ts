import { pageKeeping } from '../../state/keeping/pageKeeping'
import { countText, entryName } from './cardWords'
import type { Entry } from './entries'

/** What came of a change, in words, and what can be put back of it. */
export interface Outcome {
  readonly words: string
  readonly binnedIds: readonly string[]
}

export const NO_OUTCOME: Outcome = { words: '', binnedIds: [] }

const said = (words: string): Outcome => ({ words, binnedIds: [] })

const ofEntries = (entries: readonly Entry[]): string => {
  const [only] = entries
  return entries.length === 1 && only !== undefined ? entryName(only) : countText(entries.length)
}

const idsOf = (entries: readonly Entry[]): readonly string[] => entries.map(({ id }) => id)

export const duplicate = async (entries: readonly Entry[]): Promise<Outcome> => {
  const copies: (string | null)[] = []
  for (const id of idsOf(entries)) copies.push(await pageKeeping.duplicate(id))
  return said(
    copies.includes(null)
      ? 'Not everything could be duplicated: it is damaged, or the browser refused.'
      : `${ofEntries(entries)}: the copy stands beside it.`,
  )
}

export const rename = async (entry: Entry, name: string): Promise<Outcome> =>
  said(
    (await pageKeeping.rename(entry.id, name))
      ? `${entryName(entry)} is called ${name === '' ? 'nothing' : name} now.`
      : `${entryName(entry)} keeps its name: another tab is working on it, or the browser refused.`,
  )

export const moveToFolder = async (entries: readonly Entry[], folder: string): Promise<Outcome> => {
  const where = folder === '' ? 'in no folder now' : `in the folder “${folder}” now`
  return said(
    (await pageKeeping.moveToFolder(idsOf(entries), folder))
      ? `${ofEntries(entries)}: ${where}.`
      : `${ofEntries(entries)}: not moved, because the browser refused.`,
  )
}

export const putIntoBin = async (entries: readonly Entry[]): Promise<Outcome> => {
  const binnedIds = await pageKeeping.putIntoBin(idsOf(entries))
  const left = entries.filter(({ id }) => !binnedIds.includes(id))
  const words =
    left.length === 0
      ? `${ofEntries(entries)}: in the bin below.`
      : `${ofEntries(left)}: not removed, because another tab is working on it or the browser refused.`
  return { words, binnedIds }
}

export const putBack = async (ids: readonly string[]): Promise<Outcome> =>
  said(
    (await pageKeeping.putBack(ids))
      ? `${countText(ids.length)} put back.`
      : `${countText(ids.length)} not put back, because the browser refused.`,
  )

export const removeForGood = async (entries: readonly Entry[]): Promise<Outcome> => {
  const gone = await pageKeeping.removeForGood(idsOf(entries))
  return said(
    gone.length === entries.length
      ? `${countText(gone.length)} removed for good.`
      : `${countText(gone.length)} removed for good; the rest is being worked on, or the browser refused.`,
  )
}

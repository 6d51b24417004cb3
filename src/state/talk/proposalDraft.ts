import { parseAnswer, answerText } from '../../domain/layout/agreement/answer'
import type { AnswerEntry } from '../../domain/layout/document/review'

/** What a customer has said about a proposal and is typing; kept on the customer's own device. */
export interface ProposalDraft {
  readonly entries: readonly AnswerEntry[]
  /** Ids of the entries that were handed over: those stay. */
  readonly sentIds: readonly string[]
  readonly name: string
  /** What is typed and not added yet, by what it is about. */
  readonly typed: Readonly<Record<string, string>>
}

export const EMPTY_DRAFT: ProposalDraft = { entries: [], sentIds: [], name: '', typed: {} }

const keyOf = (shownId: string): string => `tabwright-proposal-${shownId}`

const texts = (value: unknown): readonly string[] =>
  Array.isArray(value) ? value.filter((item): item is string => typeof item === 'string') : []

const typedIn = (value: unknown): Readonly<Record<string, string>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
    ? Object.fromEntries(
        Object.entries(value).filter((entry): entry is [string, string] => typeof entry[1] === 'string'),
      )
    : {}

/** The entries that were kept, as far as they can still be read as answers to this proposal. */
const entriesIn = (value: unknown, shownId: string): readonly AnswerEntry[] => {
  if (typeof value !== 'string') return []
  const parsed = parseAnswer(value)
  return parsed.ok && parsed.value.shownId === shownId ? parsed.value.entries : []
}

/** What was kept of an earlier visit; empty where nothing was, where it is damaged, or the browser forbids storage. */
export const keptDraft = (shownId: string, storage: Pick<Storage, 'getItem'>): ProposalDraft => {
  try {
    const kept: unknown = JSON.parse(storage.getItem(keyOf(shownId)) ?? 'null')
    if (typeof kept !== 'object' || kept === null) return EMPTY_DRAFT
    const { said, sentIds, name, typed } = kept as Readonly<Record<string, unknown>>
    return {
      entries: entriesIn(said, shownId),
      sentIds: texts(sentIds),
      name: typeof name === 'string' ? name : '',
      typed: typedIn(typed),
    }
  } catch {
    return EMPTY_DRAFT
  }
}

/** Keeps a draft for the next visit; false when the browser does not. */
export const keepDraft = (
  shownId: string,
  { entries, ...draft }: ProposalDraft,
  storage: Pick<Storage, 'setItem'>,
): boolean => {
  const said = entries.length === 0 ? null : answerText({ shownId, jobName: '', entries })
  try {
    storage.setItem(keyOf(shownId), JSON.stringify({ ...draft, said }))
    return true
  } catch {
    return false
  }
}

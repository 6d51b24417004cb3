import { answerText, parseAnswer } from '../../domain/layout/agreement/answer'
import type { AnswerEntry, ShownEntry } from '../../domain/layout/document/review'

/** What a customer has said about a proposal and is typing; kept on the customer's own device. */
export interface ProposalDraft {
  readonly entries: readonly AnswerEntry[]
  /** Ids of the entries that were handed over: those stay. */
  readonly sentIds: readonly string[]
  /** Ids of the entries that were taken back, so that another tab does not bring them again. */
  readonly takenBackIds: readonly string[]
  readonly name: string
  /** What is typed and not added yet, by what it is about. */
  readonly typed: Readonly<Record<string, string>>
}

export const EMPTY_DRAFT: ProposalDraft = { entries: [], sentIds: [], takenBackIds: [], name: '', typed: {} }

/** Where to keep it. A function, because a browser that forbids storage throws already when it is asked for it. */
export type DraftStorage = () => Pick<Storage, 'getItem' | 'setItem'>

export const draftKey = (shown: ShownEntry): string => `tabwright-proposal-${shown.id}`

const texts = (value: unknown): readonly string[] =>
  Array.isArray(value) ? value.filter((item): item is string => typeof item === 'string') : []

const typedIn = (value: unknown): Readonly<Record<string, string>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
    ? Object.fromEntries(
        Object.entries(value).filter((entry): entry is [string, string] => typeof entry[1] === 'string'),
      )
    : {}

/** The entries that were kept, as far as they can still be read as answers to this proposal. */
const entriesIn = (value: unknown, shown: ShownEntry): readonly AnswerEntry[] => {
  if (typeof value !== 'string') return []
  const parsed = parseAnswer(value)
  return parsed.ok && parsed.value.shown.id === shown.id ? parsed.value.entries : []
}

/** What was kept of an earlier visit; empty where nothing was, where it is damaged, or the browser forbids storage. */
export const keptDraft = (shown: ShownEntry, storage: DraftStorage): ProposalDraft => {
  try {
    const kept: unknown = JSON.parse(storage().getItem(draftKey(shown)) ?? 'null')
    if (typeof kept !== 'object' || kept === null) return EMPTY_DRAFT
    const { said, sentIds, takenBackIds, name, typed } = kept as Readonly<Record<string, unknown>>
    return {
      entries: entriesIn(said, shown),
      sentIds: texts(sentIds),
      takenBackIds: texts(takenBackIds),
      name: typeof name === 'string' ? name : '',
      typed: typedIn(typed),
    }
  } catch {
    return EMPTY_DRAFT
  }
}

const union = (a: readonly string[], b: readonly string[]): readonly string[] => [...new Set([...a, ...b])]

/** What two tabs have said together: nothing is lost that neither has taken back. What is being typed here stays as it is here. */
export const mergedDraft = (kept: ProposalDraft, own: ProposalDraft): ProposalDraft => {
  const takenBackIds = union(kept.takenBackIds, own.takenBackIds)
  const keptIds = new Set(kept.entries.map(({ id }) => id))
  return {
    entries: [...kept.entries, ...own.entries.filter(({ id }) => !keptIds.has(id))].filter(
      ({ id }) => !takenBackIds.includes(id),
    ),
    sentIds: union(kept.sentIds, own.sentIds),
    takenBackIds,
    name: own.name === '' ? kept.name : own.name,
    typed: { ...kept.typed, ...own.typed },
  }
}

/** Keeps a draft for the next visit, with what another tab has kept meanwhile; `isKept` false when the browser does not. */
export const keepDraft = (
  shown: ShownEntry,
  own: ProposalDraft,
  storage: DraftStorage,
): { readonly draft: ProposalDraft; readonly isKept: boolean } => {
  const draft = mergedDraft(keptDraft(shown, storage), own)
  const { entries, ...rest } = draft
  const said = entries.length === 0 ? null : answerText({ shown, jobName: '', entries })
  try {
    storage().setItem(draftKey(shown), JSON.stringify({ ...rest, said }))
    return { draft, isKept: true }
  } catch {
    return { draft, isKept: false }
  }
}

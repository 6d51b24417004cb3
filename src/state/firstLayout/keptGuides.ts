import { parseLayout } from '../../domain/layout/document/parseLayout'
import { type Answer, QUESTION_IDS, type QuestionId } from '../../domain/layout/firstLayout/question'
import type { Guide } from './guide'

/*
 * How far the questions of the last few layouts have got, kept by the browser, so that a reload or another day loses nothing. What is
 * read back is outside data: whatever is not as written here counts as not kept.
 */

const KEY = 'tabwright-first-layouts'

/** Questions of so many layouts are kept; our judgement: more than anybody has half answered. */
const AT_MOST = 8

interface KeptGuide {
  readonly documentId: string
  readonly guide: Guide
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

const answersIn = (value: unknown): Readonly<Record<string, Answer>> | null => {
  if (!isRecord(value)) return null
  const entries = Object.entries(value).filter(
    (entry): entry is [string, Answer] =>
      typeof entry[1] === 'string' || (typeof entry[1] === 'number' && Number.isFinite(entry[1])),
  )
  return Object.fromEntries(entries)
}

const idsIn = (value: unknown): readonly QuestionId[] =>
  Array.isArray(value) ? QUESTION_IDS.filter((id) => value.includes(id)) : []

const guideIn = (value: unknown): Guide | null => {
  if (!isRecord(value) || !isRecord(value['progress']) || !isRecord(value['progress']['begun'])) return null
  const { begun, answers, left } = value['progress']
  const base = isRecord(begun) ? parseLayout(begun['base']) : null
  const given = answersIn(answers)
  const read = answersIn(left)
  if (base === null || !base.ok || given === null || read === null || !isRecord(begun)) return null
  return {
    progress: {
      begun: { isFresh: begun['isFresh'] === true, base: base.value },
      answers: given,
      left: read,
    },
    confirmed: idsIn(value['confirmed']),
    skipped: idsIn(value['skipped']),
    at: QUESTION_IDS.find((id) => id === value['at']) ?? (value['at'] === 'end' ? 'end' : 'job'),
  }
}

const readText = (): string | null => {
  try {
    return localStorage.getItem(KEY)
  } catch {
    return null
  }
}

const keptList = (): readonly unknown[] => {
  const text = readText()
  if (text === null) return []
  try {
    const list: unknown = JSON.parse(text)
    return Array.isArray(list) ? list : []
  } catch {
    return []
  }
}

/** What was kept for a document; null where nothing usable was, or the browser keeps nothing. */
export const keptGuide = (documentId: string): Guide | null => {
  const kept = keptList().find((each) => isRecord(each) && each['documentId'] === documentId)
  return isRecord(kept) ? guideIn(kept['guide']) : null
}

/** Keeps the questions of a document before those of the others; the oldest go. */
export const keepGuide = (documentId: string, guide: Guide): void => {
  const others = keptList().filter((each) => isRecord(each) && each['documentId'] !== documentId)
  const kept: KeptGuide = { documentId, guide }
  try {
    localStorage.setItem(KEY, JSON.stringify([kept, ...others].slice(0, AT_MOST)))
  } catch {
    // Not kept for the next visit; the layout itself is.
  }
}

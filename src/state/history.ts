import { isSameValue } from './sameValue'

/** One step back or forward: the document on the far side of it and what was done, in words. */
interface HistoryStep<Document> {
  readonly label: string
  readonly document: Document
}

/** Undo and redo as plain snapshots; the nearest step is last in both lists. Nothing is ever dropped. */
export interface History<Document> {
  readonly past: readonly HistoryStep<Document>[]
  readonly present: Document
  readonly future: readonly HistoryStep<Document>[]
}

export const historyOf = <Document>(present: Document): History<Document> => ({
  past: [],
  present,
  future: [],
})

/** `document` as the new present and one step in the past; the same history when nothing changed. */
export const committed = <Document>(
  history: History<Document>,
  label: string,
  document: Document,
): History<Document> => {
  if (isSameValue(history.present, document)) return history
  return { past: [...history.past, { label, document: history.present }], present: document, future: [] }
}

/** One step back; the same history when there is none. */
export const undone = <Document>(history: History<Document>): History<Document> => {
  const step = history.past.at(-1)
  if (step === undefined) return history
  return {
    past: history.past.slice(0, -1),
    present: step.document,
    future: [...history.future, { label: step.label, document: history.present }],
  }
}

/** One step forward again; the same history when there is none. */
export const redone = <Document>(history: History<Document>): History<Document> => {
  const step = history.future.at(-1)
  if (step === undefined) return history
  return {
    past: [...history.past, { label: step.label, document: history.present }],
    present: step.document,
    future: history.future.slice(0, -1),
  }
}

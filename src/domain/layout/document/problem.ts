import { fieldBelow, fieldNode, type FieldNode } from './fieldNode'
import { type FieldIssue, LAYOUT_FIELDS } from './schema'

/** One reason why a file cannot be used, in words for the person who opened it. */
export interface LayoutProblem {
  /** Where in the file, for example `places[0].seat.reclineDeg`; empty for the file as a whole. */
  readonly path: string
  /** What was found there, as text. */
  readonly received: string
  /** What is wrong and where, one sentence. */
  readonly message: string
  /** How to mend it, one sentence. */
  readonly remedy: string
}

export type FieldPath = readonly (string | number)[]

const LAYOUT_NODE: FieldNode = fieldNode(LAYOUT_FIELDS)

/** `places[0].seat.reclineDeg` */
const pathText = (path: FieldPath): string =>
  path.map((key, index) => (typeof key === 'number' ? `[${key}]` : index === 0 ? key : `.${key}`)).join('')

/** What was found, short enough for a message. */
export const receivedText = (value: unknown): string => {
  if (value === undefined) return 'nothing'
  if (typeof value === 'number') return String(value)
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'object' && value !== null) return 'a group of fields'
  const text = JSON.stringify(value) ?? typeof value
  return text.length > 60 ? `${text.slice(0, 57)}…` : text
}

/** The path in words, for example `place 1 "Driver", seat, hip point, x`. */
const fieldWords = (path: FieldPath, input: unknown): string => {
  const words: string[] = []
  let field: FieldNode | null = LAYOUT_NODE
  let value: unknown = input
  for (const key of path) {
    field = fieldBelow(field, key, value)
    value = typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[key] : undefined
    if (typeof key !== 'number') words.push(nonEmpty(field?.title) ?? `"${key}"`)
    // An item is named by itself: "places, place 1" says the same twice.
    else words.splice(-1, 1, `${nonEmpty(field?.title) ?? 'item'} ${key + 1}${ownName(value)}`)
  }
  return words.length === 0 ? 'the file' : words.join(', ')
}

const nonEmpty = (words: string | undefined): string | undefined => (words === '' ? undefined : words)

const ownName = (value: unknown): string => {
  if (typeof value !== 'object' || value === null) return ''
  const named = value as { name?: unknown; strap?: unknown; id?: unknown }
  const name = [named.name, named.strap, named.id].find((text) => typeof text === 'string' && text !== '')
  return typeof name === 'string' ? ` "${name.slice(0, 40)}"` : ''
}

/** A problem at a place in the file; `says` continues the words of that place. */
export const problemAt = (
  path: FieldPath,
  input: unknown,
  problem: { readonly received: unknown; readonly says: string; readonly remedy: string },
): LayoutProblem => ({
  path: pathText(path),
  received: receivedText(problem.received),
  message: sentence(`${fieldWords(path, input)}: ${problem.says}`),
  remedy: problem.remedy,
})

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`

/** A field that does not fit the description, in words. */
export const fieldProblem = (issue: FieldIssue, input: unknown): LayoutProblem => {
  const { path, received } = issue
  if (issue.kind === 'unknown-field') return unknownField(path, input, received)
  const field = fieldAt(path, input)
  const wanted = field === null ? 'something else' : wantedWords(field)
  if (issue.kind === 'missing' || received === undefined) {
    return problemAt(path, input, { received, says: 'missing', remedy: `Add "${path.at(-1)}": ${wanted}.` })
  }
  const found = `${receivedText(received)}${typeof received === 'number' ? unitWords(field) : ''}`
  return problemAt(path, input, { received, says: `found ${found}`, remedy: `Put ${wanted} there.` })
}

const unitWords = (field: FieldNode | null): string => {
  const unit = field?.unit ?? ''
  return unit === '' || unit === '°' ? unit : ` ${unit}`
}

const unknownField = (path: FieldPath, input: unknown, received: unknown): LayoutProblem => {
  const key = String(path.at(-1) ?? '')
  const parent = path.slice(0, -1)
  const field = fieldAt(parent, input)
  const entries = field?.options ? field.options.flatMap(entryNames) : field ? entryNames(field) : []
  return {
    path: pathText(path),
    received: receivedText(received),
    message: sentence(`${fieldWords(parent, input)}: there is no field called "${key}"`),
    remedy: `Correct its spelling or take it out; the fields here are ${[...new Set(entries)].join(', ')}.`,
  }
}

const entryNames = (field: FieldNode): readonly string[] => Object.keys(field.entries ?? {})

const fieldAt = (path: FieldPath, input: unknown): FieldNode | null => {
  let field: FieldNode | null = LAYOUT_NODE
  let value: unknown = input
  for (const key of path) {
    field = fieldBelow(field, key, value)
    value = typeof value === 'object' && value !== null ? (value as Record<string, unknown>)[key] : undefined
  }
  return field
}

/** What belongs in a field, for example "a number from 30 to 250 kg". */
const wantedWords = (field: FieldNode): string => {
  const or = field.nullable ? ' or null' : ''
  if (field.values !== null) {
    const values = field.values.map((value) => JSON.stringify(value)).join(', ')
    return `${field.values.length > 1 ? 'one of ' : ''}${values}${or}`
  }
  switch (field.type) {
    case 'number':
      return `a number from ${field.min ?? '−∞'} to ${field.max ?? '∞'}${unitWords(field)}${or}`
    case 'boolean':
      return `true or false${or}`
    case 'array':
      return `a list of ${field.min ?? 0} to ${field.max ?? 'any number of'} items${or}`
    case 'string':
      return field.wanted === ''
        ? `text of at most ${field.max ?? 'any number of'} characters${or}`
        : `${field.wanted}${or}`
    default:
      return `a group with the fields ${[...new Set(field.options?.flatMap(entryNames) ?? entryNames(field))].join(', ')}${or}`
  }
}

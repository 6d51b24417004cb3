import { err, ok, type Result } from '../../result'
import { layoutContradictions } from './contradictions'
import { jsonDamageOffset } from './jsonDamage'
import { type Layout, LAYOUT_VERSION } from './layout'
import { fieldProblem, type LayoutProblem, receivedText } from './problem'
import { readFields } from './schema'

/** More than anybody mends one by one; a file from anywhere may have hundreds of thousands. Our judgement. */
const MOST_PROBLEMS = 1_000

/**
 * A layout from anything at all: a file, storage, a link. The version is looked at first; then every field; then whether the
 * fields agree with each other. Fails with every problem found, of more than a thousand the first thousand; never with a half-read layout.
 */
export const parseLayout = (input: unknown): Result<Layout, readonly LayoutProblem[]> => {
  const version = versionProblem(input)
  if (version !== null) return err([version])
  const read = readFields(input)
  if ('issues' in read)
    return err(withoutTwins(read.issues.slice(0, MOST_PROBLEMS).map((issue) => fieldProblem(issue, input))))
  const contradictions = layoutContradictions(read.layout)
  return contradictions.length > 0 ? err(contradictions) : ok(read.layout)
}

/** A layout from the text of a file. A byte-order mark at the start is passed over. */
export const parseLayoutText = (text: string): Result<Layout, readonly LayoutProblem[]> => {
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text
  if (body.trim() === '') return err([fileProblem('nothing', 'The file is empty.')])
  let input: unknown
  try {
    input = JSON.parse(body)
  } catch {
    return err([fileProblem(`${body.length} characters`, brokenJsonWords(body))])
  }
  return parseLayout(input)
}

/** Each problem once, where it came first. */
const withoutTwins = (problems: readonly LayoutProblem[]): readonly LayoutProblem[] => {
  const seen = new Set<string>()
  return problems.filter(({ path, message }) => {
    const key = JSON.stringify([path, message])
    return !seen.has(key) && seen.add(key)
  })
}

const fileProblem = (received: string, message: string): LayoutProblem => ({
  path: '',
  received,
  message,
  remedy: 'Open a layout file (*.layout.json) that was saved whole.',
})

/** Where the text stops being JSON, as the line and column that an editor shows. */
const brokenJsonWords = (body: string): string => {
  const before = body.slice(0, jsonDamageOffset(body) ?? body.length)
  const line = before.split('\n').length
  const column = before.length - before.lastIndexOf('\n')
  const how = before.length === body.length ? 'it breaks off there' : 'it is damaged there'
  return `The file is not readable as JSON from line ${line}, column ${column} on: ${how}.`
}

const versionProblem = (input: unknown): LayoutProblem | null => {
  if (typeof input !== 'object' || input === null || Array.isArray(input)) {
    return fileProblem(receivedText(input), 'This is not a layout: the file must hold one group of fields.')
  }
  const version: unknown = 'version' in input ? input.version : undefined
  if (version === LAYOUT_VERSION) return null
  const received = receivedText(version)
  if (version === undefined) {
    return {
      path: 'version',
      received,
      message: 'This is not a layout: the field "version" is missing.',
      remedy: `Open a layout file; those begin with "version": ${LAYOUT_VERSION}.`,
    }
  }
  return {
    path: 'version',
    received,
    message:
      typeof version === 'number' && version > LAYOUT_VERSION
        ? `The layout is of version ${received}, newer than this program, which reads version ${LAYOUT_VERSION}.`
        : `The layout says version ${received}; this program reads version ${LAYOUT_VERSION}.`,
    remedy: `Open it with the program that wrote it, or use a file of version ${LAYOUT_VERSION}.`,
  }
}

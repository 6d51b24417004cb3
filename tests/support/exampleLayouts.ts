import { readFileSync } from 'node:fs'

import type { Layout } from '../../src/domain/layout/document/layout'
import { parseLayoutText } from '../../src/domain/layout/document/parseLayout'

const EXAMPLES = new URL('../../public/examples/', import.meta.url)

interface ExampleEntry {
  readonly file: string
  readonly title: string
  readonly about: string
}

/** The published list of examples. */
export const exampleIndex = JSON.parse(
  readFileSync(new URL('index.json', EXAMPLES), 'utf8'),
) as readonly ExampleEntry[]

export const exampleText = (file: string): string => readFileSync(new URL(file, EXAMPLES), 'utf8')

/** A published example, read as any file is. */
export const exampleLayout = (file: string): Layout => {
  const parsed = parseLayoutText(exampleText(file))
  if (!parsed.ok) throw new Error(`${file}: ${JSON.stringify(parsed.error)}`)
  return parsed.value
}

export type Path = readonly (string | number)[]

/** A plain copy of the rock buggy with one field set (or taken out, for undefined). */
export const rockBuggyWith = (path: Path, value: unknown): unknown => {
  const copy: unknown = structuredClone(exampleLayout('rock-buggy.layout.json'))
  let parent = copy as Record<string | number, unknown>
  for (const key of path.slice(0, -1)) parent = parent[key] as Record<string | number, unknown>
  const last = path.at(-1) ?? ''
  if (value === undefined) delete parent[last]
  else parent[last] = value
  return copy
}

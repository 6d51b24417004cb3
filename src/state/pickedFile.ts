import type { LayoutProblem } from '../domain/layout/document/problem'
import type { Result } from '../domain/result'
import type { AppStore } from './store'

const MOST_LINES = 12

const problemLine = (problem: LayoutProblem): string => `${problem.message} ${problem.remedy}`

/** What is wrong with a layout or a file as sentences for people; a long list is cut and says how much is left. */
export const problemLines = (problems: readonly LayoutProblem[]): readonly string[] => {
  const lines = problems.slice(0, MOST_LINES).map(problemLine)
  const left = problems.length - lines.length
  return left > 0 ? [...lines, `… and ${left} more.`] : lines
}

/** What was read; null where it could not be: then a notice says that nothing was changed, and why. */
export const readOrSaid = <Value>(
  store: AppStore,
  read: Result<Value, readonly LayoutProblem[]>,
  refusal: string,
): Value | null => {
  if (read.ok) return read.value
  store.actions.notify('problem', `${refusal}. Nothing was changed.`, problemLines(read.error))
  return null
}

/** The text of a file that the builder picked; null when it is too large to be what it is to be, or cannot be read: then a notice says so. */
export const pickedText = async (
  store: AppStore,
  file: File,
  { what, largestBytes }: { readonly what: string; readonly largestBytes: number },
): Promise<string | null> => {
  if (file.size > largestBytes) {
    store.actions.notify('problem', `${file.name} is too large to be ${what}. Nothing was changed.`)
    return null
  }
  try {
    return await file.text()
  } catch {
    store.actions.notify('problem', `${file.name} could not be read from the disk. Nothing was changed.`)
    return null
  }
}

import type { FieldPath } from './problem'

/** What is wrong at a place in the layout; `says` continues the words of that place. */
export interface Contradiction {
  readonly path: FieldPath
  readonly received: unknown
  readonly says: string
  readonly remedy: string
}

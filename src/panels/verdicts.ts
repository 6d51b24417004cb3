import type { Verdict } from '../domain/rules/finding'

/** What needs a person first comes first. */
export const VERDICT_ORDER: readonly Verdict[] = ['broken', 'unchecked', 'tight', 'clear']

/** A verdict’s mark; a word always stands beside it. */
export const MARKS = { broken: '✕', unchecked: '?', tight: '!', clear: '✓' } as const satisfies Record<
  Verdict,
  string
>

import type { ShownVerdict } from '../domain/rules/finding'

/** What needs a person first comes first. */
export const VERDICT_ORDER: readonly ShownVerdict[] = ['broken', 'unchecked', 'tight', 'kept', 'clear']

/** A verdict’s mark; a word always stands beside it. */
export const MARKS = {
  broken: '✕',
  unchecked: '?',
  tight: '!',
  kept: '…',
  clear: '✓',
} as const satisfies Record<ShownVerdict, string>

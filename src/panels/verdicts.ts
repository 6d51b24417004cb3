import type { Verdict } from '../domain/rules/finding'

/** What needs a person first comes first. */
export const VERDICT_ORDER: readonly Verdict[] = ['broken', 'unchecked', 'tight', 'clear']

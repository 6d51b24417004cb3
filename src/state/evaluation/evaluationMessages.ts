import type { Layout } from '../../domain/layout/document/layout'
import type { Finding } from '../../domain/rules/finding'

/** What the page asks of the worker. The number comes back with the answer, so that a late one is known for what it is. */
export interface EvaluationQuestion {
  readonly id: number
  readonly layout: Layout
}

/**
 * What the worker says to one question. Sittings and zones are left out: the page has them already, and they are by far the
 * largest part.
 */
export type EvaluationAnswer =
  /** The findings of each place with remedies and what weld errors can do, in the order of the layout's places. */
  | { readonly kind: 'done'; readonly id: number; readonly findings: readonly (readonly Finding[])[] }
  | { readonly kind: 'failed'; readonly id: number; readonly message: string }

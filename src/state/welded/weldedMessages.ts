import type { Layout } from '../../domain/layout/document/layout'
import type { Result } from '../../domain/result'
import type { Finding } from '../../domain/rules/finding'

/** What the page asks of the worker. */
export interface WeldedQuestion {
  /** With the anchors where they were measured. */
  readonly layout: Layout
}

/** The findings of each place, in the order of the layout's places, without remedies: what is welded is not moved any more. */
export type WeldedFindings = readonly (readonly Finding[])[]

export type WeldedAnswer = Result<WeldedFindings, never>

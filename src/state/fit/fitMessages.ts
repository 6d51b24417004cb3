import type { Layout } from '../../domain/layout/document/layout'
import type { WhoFits } from '../../domain/layout/fit/whoFits'
import type { Result } from '../../domain/result'

/** What the page asks of the worker. */
export interface FitQuestion {
  readonly layout: Layout
  readonly placeId: string
}

/** The layout has no such place, or not the rule set that it names. */
export interface NothingToCount {
  readonly kind: 'nothing-to-count'
  readonly placeId: string
}

export type FitAnswer = Result<WhoFits, NothingToCount>

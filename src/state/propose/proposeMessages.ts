import type { Layout } from '../../domain/layout/document/layout'
import type { Proposals } from '../../domain/layout/propose/proposal'
import type { ProposalWish, WishProblem } from '../../domain/layout/propose/wish'
import type { Result } from '../../domain/result'

/** What the page asks of the worker. */
export interface ProposeQuestion {
  readonly layout: Layout
  readonly wish: ProposalWish
}

export type ProposeAnswer = Result<Proposals, WishProblem>

import type { Layout } from '../../domain/layout/document/layout'
import type { Proposals } from '../../domain/layout/propose/proposal'
import type { ProposalWish, WishProblem } from '../../domain/layout/propose/wish'

/** What the page asks of the worker. A worker answers one question and is then stopped. */
export interface ProposeQuestion {
  readonly layout: Layout
  readonly wish: ProposalWish
}

/** What the worker says; all but `progress` are its last words. */
export type ProposeAnswer =
  | { readonly kind: 'progress'; readonly done: number; readonly total: number }
  | { readonly kind: 'done'; readonly result: Proposals }
  /** The wish itself cannot be looked for. */
  | { readonly kind: 'refused'; readonly problem: WishProblem }
  | { readonly kind: 'failed'; readonly message: string }

import type { Elevation } from '../../domain/geometry/plane'
import type { Region } from '../../domain/geometry/polygon'
import type { Layout } from '../../domain/layout/document/layout'
import type { Finding } from '../../domain/rules/finding'

/** One anchor's zone in one elevation. */
export interface WantedZone {
  readonly placeId: string
  readonly anchorId: string
  readonly elevation: Elevation
}

/** What there is to work out for one layout. */
export type EvaluationWork =
  /** How much room every finding has, without remedies. */
  | { readonly kind: 'rooms'; readonly layout: Layout }
  | { readonly kind: 'zone'; readonly layout: Layout; readonly wanted: WantedZone }
  /** Everything about findings: remedies and what weld errors can do as well. */
  | { readonly kind: 'complete'; readonly layout: Layout }

/**
 * What the page asks of a worker. The number comes back with the answer, so that a late one is known for what it is; the layout's
 * own number lets the worker see that it has it already.
 */
export type EvaluationQuestion = EvaluationWork & { readonly id: number; readonly layoutNumber: number }

/** What a worker says to one question. Sittings are left out: the page has them already, and they are large. */
export type EvaluationAnswer =
  /** The findings of each place, in the order of the layout's places. */
  | { readonly kind: 'findings'; readonly id: number; readonly findings: readonly (readonly Finding[])[] }
  | { readonly kind: 'zone'; readonly id: number; readonly region: Region }
  | { readonly kind: 'failed'; readonly id: number; readonly message: string }

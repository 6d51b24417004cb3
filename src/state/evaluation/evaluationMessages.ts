import type { Elevation } from '../../domain/geometry/plane'
import type { Region } from '../../domain/geometry/polygon'
import type { Layout } from '../../domain/layout/document/layout'
import type { Finding } from '../../domain/rules/finding'
import type { OpenWorker } from '../worker/workerRunner'
import type { RoomsPart } from './roomsPart'

/** One anchor's zone in one elevation. */
export interface WantedZone {
  readonly placeId: string
  readonly anchorId: string
  readonly elevation: Elevation
}

/** What there is to work out for one layout. */
export type EvaluationWork =
  /** How much room every finding of a place has, or of a part of the rules there, without remedies. */
  | { readonly kind: 'rooms'; readonly layout: Layout; readonly placeId: string; readonly part: RoomsPart }
  | { readonly kind: 'zone'; readonly layout: Layout; readonly wanted: WantedZone }
  /** Everything about findings: remedies and what weld errors can do as well. */
  | { readonly kind: 'complete'; readonly layout: Layout }

/** What the page asks of a worker. The layout's own number lets the worker see that it has it already. */
export type EvaluationQuestion = EvaluationWork & { readonly layoutNumber: number }

/** What a worker answers. Sittings are left out: the page has them already, and they are large. */
export type EvaluationAnswer =
  /** The findings of the place that was asked for, or of each place, in the order of the layout's places. */
  | { readonly kind: 'findings'; readonly findings: readonly (readonly Finding[])[] }
  | { readonly kind: 'zone'; readonly region: Region }

export type OpenEvaluationWorker = OpenWorker<EvaluationQuestion, EvaluationAnswer>

const numbers = new WeakMap<Layout, number>()
let lastNumber = 0

/** The number of a layout object, the same whenever it is asked for. */
const layoutNumberOf = (layout: Layout): number => {
  const known = numbers.get(layout)
  if (known !== undefined) return known
  lastNumber += 1
  numbers.set(layout, lastNumber)
  return lastNumber
}

export const evaluationQuestion = (work: EvaluationWork): EvaluationQuestion => ({
  ...work,
  layoutNumber: layoutNumberOf(work.layout),
})

import type { PointMm } from '../../domain/geometry/point'
import type { OfferedPoint } from '../../domain/layout/asWelded/knownPoints'
import type { Layout } from '../../domain/layout/document/layout'
import { TEXT_LENGTHS } from '../../domain/layout/document/limits'
import { offeredName } from '../../domain/layout/wording/weldedWords'
import type { KnownPoint, Measurement } from '../../domain/measure/measurement'
import type { Choice } from '../fields/ChoiceField'

/** A measurement of one way with nothing read. A string starts from the first point offered and runs as it would to the plan. */
export const emptyMeasurement = (
  kind: Measurement['kind'],
  first: KnownPoint,
  planned: PointMm,
): Measurement => {
  switch (kind) {
    case 'coordinates':
      return { kind, xMm: [], yMm: [], zMm: [] }
    case 'tapes':
      return { kind, tapes: [], coordinate: null, side: null }
    case 'angle':
      return {
        kind,
        from: first,
        stringDeg: [],
        lengthMm: [],
        runs: planned.xMm < first.point.xMm ? 'forward' : 'rearward',
        aside: { kind: 'y', readingsMm: [] },
      }
  }
}

export const knownPointOf = (offered: OfferedPoint, layout: Layout): KnownPoint => ({
  name: offeredName(offered, layout).slice(0, TEXT_LENGTHS.name),
  point: offered.point,
})

const groupOf = (offered: OfferedPoint): string => {
  if (offered.sort === 'measured') return 'Measured already'
  switch (offered.place.source.kind) {
    case 'datum':
    case 'datum-mark':
    case 'named':
      return 'Datum and named points'
    case 'tube-end':
      return 'Marks on tubes'
  }
}

const GROUPS = ['Datum and named points', 'Measured already', 'Marks on tubes'] as const

/** Offered points as a list to pick from; the value counts them from 0. */
export const pointChoices = (offered: readonly OfferedPoint[], layout: Layout): readonly Choice<string>[] =>
  GROUPS.flatMap((group) =>
    offered.flatMap((each, index) =>
      groupOf(each) === group ? [{ value: String(index), words: offeredName(each, layout), group }] : [],
    ),
  )

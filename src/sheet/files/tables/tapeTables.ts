import type { Layout } from '../../../domain/layout/document/layout'
import { anchorName, placeName } from '../../../domain/layout/wording/names'
import { heldAtText, tapePlaceName, toldText } from '../../../domain/layout/wording/tapeWords'
import {
  type AnchorRef,
  type LetteredPlace,
  tapeChecks,
  type TapeCheckTable,
} from '../../../domain/shop/tape/tapeChecks'
import type { TapePoint } from '../../../domain/shop/tape/tapePoint'
import type { CsvTable } from '../csv'
import { column, lengthColumns, pointColumns, tableOf } from './columns'

const checksOf = (layout: Layout): TapeCheckTable =>
  tapeChecks({ tapePoints: layout.tapePoints ?? [], tubes: layout.tubes, places: layout.places })

/** Every point that the builder named, whether or not a check starts from it. */
export const tapePointsTable = (layout: Layout): CsvTable =>
  tableOf(
    [
      ...column<TapePoint>('tape point', ({ name }) => name),
      ...pointColumns<TapePoint>('', ({ point }) => point),
    ],
    layout.tapePoints ?? [],
  )

/** Every place that a tape check starts from, with its letter on the mount sheet. */
export const tapePlacesTable = (layout: Layout): CsvTable =>
  tableOf(
    [
      ...column<LetteredPlace>('letter', ({ letter }) => letter),
      ...column<LetteredPlace>('tape is held to', (place) => tapePlaceName(place, layout)),
      ...pointColumns<LetteredPlace>('', ({ point }) => point),
    ],
    checksOf(layout).places,
  )

interface TapeCheck {
  readonly kind: 'mark to mark' | 'mark to anchor' | 'across' | 'diagonal'
  readonly from: string
  readonly to: string
  readonly lengthMm: number
  readonly remark: string | null
}

/** Every straight distance of the mount sheet's tape checks: between marks, from marks to anchors, between anchors. */
export const tapeChecksTable = (layout: Layout): CsvTable => {
  const { placePairs, rows, pairs } = checksOf(layout)
  const named = (ref: AnchorRef): string => anchorWords(ref, layout)
  const checks: readonly TapeCheck[] = [
    ...placePairs.map(({ from, to, lengthMm }): TapeCheck => ({
      kind: 'mark to mark',
      from,
      to,
      lengthMm,
      remark: null,
    })),
    ...rows.flatMap((row) =>
      row.distances.map(({ letter, lengthMm }): TapeCheck => ({
        kind: 'mark to anchor',
        from: letter,
        to: `${named(row)}: ${heldAtText(row.heldAt)}`,
        lengthMm,
        remark: toldText(row),
      })),
    ),
    ...pairs.map(({ kind, from, to, lengthMm }): TapeCheck => ({
      kind,
      from: named(from),
      to: named(to),
      lengthMm,
      remark: null,
    })),
  ]
  return tableOf(
    [
      ...column<TapeCheck>('check', ({ kind }) => kind),
      ...column<TapeCheck>('from', ({ from }) => from),
      ...column<TapeCheck>('to', ({ to }) => to),
      ...lengthColumns<TapeCheck>('straight distance', ({ lengthMm }) => lengthMm),
      ...column<TapeCheck>('remark', ({ remark }) => remark),
    ],
    checks,
  )
}

const anchorWords = ({ placeId, anchorId, strap }: AnchorRef, layout: Layout): string => {
  const anchor = layout.places
    .find(({ id }) => id === placeId)
    ?.anchors.find((each) => each.id === anchorId && each.strap === strap)
  if (anchor === undefined) throw new Error(`no anchor "${anchorId}"`)
  return layout.places.length > 1
    ? `${placeName(placeId, layout)}, ${anchorName(anchor)}`
    : anchorName(anchor)
}

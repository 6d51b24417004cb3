import type { Layout } from '../../domain/layout/document/layout'
import { anchorName, placeName, strapName } from '../../domain/layout/wording/names'
import { heldAtText, tapePlaceName } from '../../domain/layout/wording/tapeWords'
import { jobWords } from '../../domain/layout/wording/variantWords'
import { capitalised } from '../../domain/layout/wording/words'
import { type AnchorChecks, type TapeCheckTable, tapeChecks } from '../../domain/shop/tape/tapeChecks'
import type { Anchor } from '../../domain/straps/anchor'
import { plainPlane } from '../../domain/straps/tabPlane'
import { angleText } from '../../domain/units/angle'
import { bothUnits } from '../mount/table/anchorCells'
import type { FlowRow } from '../page/flow'
import type { PaperName } from '../page/paper'
import { entryRows, keptTogether, sectionRows, textRows, type BareRow } from '../page/section'
import type { SheetPage } from '../page/sheetPage'
import type { Typography } from '../page/typography'
import { blankRow, formHeader } from './formRows'
import { recordPages, type RecordSheet } from './recordPages'

/** No record holds anything that was read on the car. */
export const isNothingMeasured = ({ asWelded = [] }: Pick<Layout, 'asWelded'>): boolean =>
  asWelded.every(({ anchors }) => anchors.every(({ measurement }) => measurement === null))

/** A form to take to the car and fill in while nothing was measured yet; none for a layout without anchors. */
export const measuringFormPages = (layout: Layout, paperName: PaperName): readonly SheetPage[] => {
  const { tapePoints = [], tubes, places } = layout
  const table = tapeChecks({ tapePoints, tubes, places })
  return table.rows.length === 0 ? [] : recordPages([formOf(layout, table)], paperName)
}

const formOf = (layout: Layout, table: TapeCheckTable): RecordSheet => ({
  title: 'Measuring form',
  header: (widthMm, type) =>
    formHeader(
      'Measuring form',
      [
        { label: 'Car', value: layout.job.car },
        { label: 'Job', value: jobWords(layout) },
        { label: 'Welded from revision', value: layout.job.revision },
      ],
      `Datum: ${layout.datum.trim() === '' ? 'NOT NAMED' : layout.datum.trim()}. Nothing was measured yet: fill this in on the car and type it in under “As welded”.`,
      widthMm,
      type,
    ),
  sections: ({ widthMm, type }) => [
    howSection(widthMm, type),
    placesSection(layout, table, widthMm, type),
    ...layout.places.map(({ id }) => anchorsSection(layout, table, id, widthMm, type)),
  ],
  signedFor: 'Measured by',
})

const howSection = (widthMm: number, type: Typography): readonly FlowRow[] => {
  const section = 'How to measure'
  return sectionRows(
    section,
    widthMm,
    type,
    textRows(
      'For each anchor either x, y and z from the datum, or at least three tapes from the letters; four tell more. Read each twice and write both down. Measure what is there: the planned figures are for finding the place, not for copying.',
      widthMm,
      type.body,
      section,
    ),
  )
}

const placesSection = (
  layout: Layout,
  { places }: TapeCheckTable,
  widthMm: number,
  type: Typography,
): readonly FlowRow[] => {
  const section = 'Where the letters are'
  return sectionRows(
    section,
    widthMm,
    type,
    places.flatMap((place) =>
      textRows(`${place.letter}: ${tapePlaceName(place, layout)}`, widthMm, type.body, section),
    ),
  )
}

const anchorsSection = (
  layout: Layout,
  { rows }: TapeCheckTable,
  placeId: string,
  widthMm: number,
  type: Typography,
): readonly FlowRow[] => {
  const section = `Anchors, ${placeName(placeId, layout)}`
  return sectionRows(
    section,
    widthMm,
    type,
    rows
      .filter((row) => row.placeId === placeId)
      .flatMap((row) =>
        keptTogether(entryRows(anchorRows(layout, row, section, widthMm, type), widthMm, section)),
      ),
  )
}

const anchorRows = (
  layout: Layout,
  row: AnchorChecks,
  section: string,
  widthMm: number,
  type: Typography,
): readonly BareRow[] => {
  const unit = layout.units.length
  const anchor = layout.places
    .find(({ id }) => id === row.placeId)
    ?.anchors.find(({ id }) => id === row.anchorId)
  const name = capitalised(anchor === undefined ? strapName(row.strap) : anchorName(anchor))
  const shared = row.sameAs.map(({ strap }) => `, with the ${strapName(strap)}`).join('')
  const { xMm, yMm, zMm } = row.held
  const planned = [
    ['x', xMm],
    ['y', yMm],
    ['z', zMm],
  ] as const
  const blanks = (name: string, known: string): BareRow => blankRow({ name, known }, widthMm, type, section)
  return [
    ...textRows(`${name}${shared}`, widthMm, type.strong, section),
    ...textRows(`Tape held to: ${heldAtText(row.heldAt)}.`, widthMm, type.small, section),
    ...planned.map(([axis, mm]) => blanks(axis, `planned ${bothUnits(mm, unit)}`)),
    ...row.distances.map(({ letter, lengthMm }) => blanks(letter, `planned ${bothUnits(lengthMm, unit)}`)),
    ...(anchor === undefined ? [] : tabWords(anchor).map(([words, known]) => blanks(words, known))),
  ]
}

const tabWords = ({ mount }: Anchor): readonly (readonly [name: string, known: string])[] => {
  if (mount.kind !== 'tab') return []
  const { planDeg, leanDeg } = plainPlane(mount)
  return [
    ['turn in plan', `planned ${angleText(planDeg)}; + turns the rear edge to the right`],
    ['lean', `planned ${angleText(leanDeg)}; + turns the right face up`],
  ]
}

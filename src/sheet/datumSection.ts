import type { Layout } from '../domain/layout/document/layout'
import type { FlowRow } from './flow'
import { sectionRows, textRows } from './section'
import type { Typography } from './typography'

const SECTION = 'Datum and how to read the numbers'

const EXPLAINED: readonly string[] = [
  'Right and left are the occupant’s. Every distance is from the datum: to the middle of a tab’s hole in the middle of its plate, or to the bar’s centre line in the middle of a wrapped strap.',
  'Pull, side: seen squarely from the side, from level; the way it runs from the anchor. String: what an angle finder reads on a string stretched along the strap. Pull, plan: seen from above, from fore and aft.',
  'Tab plane: turn from fore and aft seen from above, and lean from upright.',
]

/** Where the datum is and what the columns of the table mean. */
export const datumSection = (
  layout: Layout,
  { widthMm, type }: { readonly widthMm: number; readonly type: Typography },
): readonly FlowRow[] => {
  const datum = layout.datum.trim()
  const where =
    datum === ''
      ? 'Datum: not named. Name a point that a tape can reach before measuring.'
      : `Datum: ${datum}`
  return sectionRows(SECTION, widthMm, type, [
    ...textRows(where, widthMm, type.strong, SECTION),
    ...EXPLAINED.flatMap((text) => textRows(text, widthMm, type.small, SECTION)),
  ])
}

import { BELT_FACTS } from '../../domain/care/beltRecord'
import { beltCondition } from '../../domain/care/condition'
import type { Layout, Place } from '../../domain/layout/document/layout'
import { chosenRuleSet } from '../../domain/layout/document/ruleSetOf'
import { factName } from '../../domain/layout/wording/careWords'
import { placeName } from '../../domain/layout/wording/names'
import { capitalised } from '../../domain/layout/wording/words'
import type { FlowRow } from '../page/flow'
import { sectionRows, textRows } from '../page/section'
import type { Typography } from '../page/typography'
import { cleaningSection } from './beltSections'
import { blankRow, formHeader } from './formRows'
import { handSection } from './historySection'
import { inspectionSection } from './inspectionSection'
import type { RecordSheet } from './recordPages'

/** The places that no belt in use is recorded for: their record begins on paper. */
export const placesWithoutBelt = ({ places, belts = [] }: Layout): readonly Place[] =>
  places.filter(({ id }) =>
    belts.every((belt) => belt.placeId !== id || beltCondition(belt).kind === 'retired'),
  )

/** A belt record to fill in by hand beside the car and to type in later. */
export const beltForm = (layout: Layout, place: Place): RecordSheet => ({
  title: `Belt record to fill in, ${placeName(place.id, layout)}`,
  header: (widthMm, type) =>
    formHeader(
      'Belt record, to fill in',
      [
        { label: 'Car', value: layout.job.car },
        { label: 'Place', value: placeName(place.id, layout) },
        { label: 'Rule set', value: chosenRuleSet(layout).name },
      ],
      'No belt is recorded here yet. Fill this in with the belt in hand and type it in under “Belt care”, which then says how old it may get.',
      widthMm,
      type,
    ),
  sections: ({ widthMm, type }, handLines) => [
    labelBlanks(widthMm, type),
    inspectionSection({ entries: [] }, widthMm, type),
    cleaningSection(widthMm, type),
    handSection(handLines, widthMm, type),
  ],
  signedFor: 'Filled in with the belt in hand by',
})

const labelBlanks = (widthMm: number, type: Typography): readonly FlowRow[] => {
  const section = 'Label and fitting'
  return sectionRows(section, widthMm, type, [
    ...BELT_FACTS.map((fact) =>
      blankRow({ name: capitalised(factName(fact)), known: '' }, widthMm, type, section),
    ),
    ...textRows(
      'Copy the label as it stands, all of it, and photograph it. What cannot be read is written down as unreadable, never guessed.',
      widthMm,
      type.small,
      section,
    ),
  ])
}

import type { Layout } from '../../domain/layout/document/layout'
import type { CheckedEvaluation } from '../../domain/layout/evaluate/evaluation'
import type { TapeCheckTable } from '../../domain/shop/tape/tapeChecks'
import type { FlowRow } from '../page/flow'
import type { Typography } from '../page/typography'
import { jobInFull, notesSection } from './jobHeader'
import { detailSection } from './sections/detailSection'
import { findingSection, statedSection } from './sections/findingSection'
import { hardwareSections } from './sections/hardwareSection'
import { tubeSection } from './sections/partSections'
import { rearSection } from './sections/rearSection'
import { revisionSection } from './sections/revisionSection'
import { tapeSection } from './sections/tapeSection'
import type { SheetOptions } from './sheetOptions'
import type { PlaceAnchors } from './table/anchorTable'

/** What the sections are made from. */
export interface SectionInput {
  readonly layout: Layout
  readonly evaluation: CheckedEvaluation
  readonly anchors: readonly PlaceAnchors[]
  readonly tape: TapeCheckTable
  readonly options: SheetOptions
  readonly type: Typography
  /** Width of the strip across the first page, where long entries were cut. */
  readonly stripWidthMm: number
}

export type Section = readonly FlowRow[]

const filled = (sections: readonly Section[]): readonly Section[] =>
  sections.filter((rows) => rows.length > 0)

/** What only says something: it fills the room that the first page has left, and goes on after the rest. The same list for any width. */
export const readSections = (input: SectionInput, widthMm: number): readonly Section[] => {
  const { layout, evaluation, type } = input
  const setting = { layout, widthMm, type }
  return filled([
    findingSection(layout, evaluation, widthMm, type),
    revisionSection(setting),
    ...hardwareSections(evaluation, setting),
    tubeSection(setting),
    statedSection(evaluation, widthMm, type),
    jobInFull(layout, evaluation, { widthMm: input.stripWidthMm }, setting),
    notesSection(setting),
  ])
}

/** What is worked by on the car: on pages of its own, before what only says something. */
export const workSections = (input: SectionInput, widthMm: number): readonly Section[] => {
  const { layout, evaluation, anchors, options, type } = input
  const setting = { layout, widthMm, type }
  return filled([
    tapeSection(input.tape, anchors, setting),
    detailSection(anchors, setting),
    options.hasRearView ? rearSection(evaluation, anchors, setting) : [],
  ])
}

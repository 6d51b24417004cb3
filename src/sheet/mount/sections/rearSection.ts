import type { CheckedEvaluation } from '../../../domain/layout/evaluate/evaluation'
import { rearFigure } from '../figure/rearFigure'
import type { FlowRow } from '../../page/flow'
import { sectionRows, textRows, type BareRow } from '../../page/section'
import type { PlaceAnchors } from '../table/anchorTable'
import type { Setting } from './partSections'

const SECTION = 'Harness bar from behind'

/** The bars seen from behind, with the spacings of what hangs on them; nothing for a car without a harness bar. */
export const rearSection = (
  evaluation: CheckedEvaluation,
  anchors: readonly PlaceAnchors[],
  setting: Setting,
): readonly FlowRow[] => {
  const { layout, widthMm, type } = setting
  const figure = rearFigure(layout, evaluation, anchors, widthMm)
  if (figure === null) return []
  const drawing: BareRow = {
    heightMm: figure.heightMm,
    keepWithNext: true,
    section: SECTION,
    draw: figure.itemsAt,
  }
  const words = `Looking forward, occupant’s left at the left, scale 1:${figure.scale}. Below: y from the datum; at the left: z; above: spacings square across the car.`
  const lines = textRows(words, widthMm, type.small, SECTION)
  return sectionRows(SECTION, widthMm, type, [
    drawing,
    ...lines.map((row, index) => ({ ...row, keepWithNext: index + 1 < lines.length })),
  ])
}

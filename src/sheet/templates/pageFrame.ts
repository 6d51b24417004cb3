import type { Layout } from '../../domain/layout/document/layout'
import {
  CHECK_BAR_HEIGHT_MM,
  CHECK_BAR_WIDTH_MM,
  checkBarItems,
  uprightCheckBarItems,
} from '../page/checkBar'
import { printedBox } from '../page/footLine'
import type { Box, SheetItem } from '../page/item'
import { drawnVariantWords } from '../../domain/layout/wording/variantWords'
import type { Paper } from '../page/paper'
import { cell, type BareRow } from '../page/section'
import { tableRow } from '../page/table'
import type { Typography } from '../page/typography'

const GAP_MM = 2.5

/** The line at the top of every page of templates. */
const header = (layout: Layout, widthMm: number, type: Typography): BareRow => {
  const { car, name, revision, date } = layout.job
  // First, so that it is never cut off: a tab of another variant must not be cut.
  const variant = drawnVariantWords(layout)
  const job = [variant, car, name, revision === '' ? '' : `revision ${revision}`, date].filter(
    (word) => word !== '',
  )
  return tableRow(
    [
      { widthMm: widthMm * 0.68, align: 'left' },
      { widthMm: widthMm * 0.32, align: 'right' },
    ],
    [
      [cell(['Full-size templates', ...job].join(' · '), type.heading, 1)],
      [cell('True size: print at 100 %, never “fit to page”', type.heading, 1)],
    ],
    { section: 'Job', rule: 'heavy' },
  )
}

/** What every page of templates has round its figures, and the room that it leaves for them. */
export interface PageFrame {
  readonly room: Box
  readonly items: readonly SheetItem[]
}

export const pageFrame = (layout: Layout, paper: Paper, type: Typography): PageFrame => {
  const printed = printedBox(paper)
  const head = header(layout, printed.rightMm - printed.leftMm, type)
  const room: Box = {
    leftMm: printed.leftMm + CHECK_BAR_HEIGHT_MM + GAP_MM,
    topMm: printed.topMm + head.heightMm + GAP_MM,
    rightMm: printed.rightMm,
    bottomMm: printed.bottomMm - CHECK_BAR_HEIGHT_MM - GAP_MM,
  }
  return {
    room,
    items: [
      ...head.draw({ xMm: printed.leftMm, yMm: printed.topMm }),
      ...checkBarItems({ xMm: room.leftMm, yMm: printed.bottomMm - CHECK_BAR_HEIGHT_MM }),
      ...uprightCheckBarItems({ xMm: printed.leftMm, yMm: room.bottomMm - CHECK_BAR_WIDTH_MM }),
    ],
  }
}

import { anchorName } from '../../domain/layout/wording/names'
import { clockText, fromMarkText } from '../../domain/layout/wording/tabText'
import { capitalised } from '../../domain/layout/wording/words'
import type { InsertCope } from '../../domain/shop/tab/insertCope'
import { tabSize } from '../../domain/straps/tabSize'
import { bothUnits } from '../mount/table/anchorCells'
import type { TabTask } from './tabTemplate'
import { at, line, loop, type Template, writing } from './template'

/** The coped end of a threaded insert as a strip to wrap round it. */
export const insertTemplate = (task: TabTask, cope: InsertCope): Template => {
  const { layout, itemNumber, anchor, mount, on } = task
  const unit = layout.units.length
  const isShort = cope.drawnMm < cope.longestMm
  const clock = on.clock === null ? '' : `, ${clockText(on.clock)}`
  return {
    kind: 'insert',
    figure: {
      id: `insert-${itemNumber}`,
      title: `${itemNumber}  ${capitalised(anchorName(anchor))}${task.placeWords}`,
      shapes: [
        loop('CUT', [at(cope.circumferenceMm, 0), at(0, 0), ...cope.edge]),
        line('MARK', [at(cope.alongMm, 0), at(cope.alongMm, -cope.shortestMm)]),
        writing(at(cope.alongMm - 1, -cope.shortestMm + 3), `toward the ${cope.alongWay}`, {
          upward: true,
        }),
        writing(at(2, -4), `${itemNumber}: face`),
      ],
    },
    words: [
      `Insert Ø ${bothUnits(cope.diameterMm, unit)}${tabSize(mount).chosen.length > 0 ? ' (chosen: twice its thread, no source)' : ''}, thread Ø ${bothUnits(mount.holeDiameterMm, unit)}.`,
      `Coped for a Ø ${bothUnits(on.tube.outsideDiameterMm, unit)} tube: ${bothUnits(cope.shortestMm, unit)} to ${bothUnits(cope.longestMm, unit)} long from the face.`,
      ...(isShort
        ? [`The layout has it ${bothUnits(cope.drawnMm, unit)} long: that does not reach the tube all round.`]
        : []),
      'Wrap it round with the print outside and the straight edge on the face that the fitting lies on; the marked line faces along the tube.',
      `Face ${on.nearest === null ? `on ${on.tube.name}` : fromMarkText(on.nearest, layout)}${clock}.`,
    ],
  }
}

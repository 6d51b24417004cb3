import type { Layout } from '../../domain/layout/document/layout'
import { anchorName } from '../../domain/layout/wording/names'
import { capitalised } from '../../domain/layout/wording/words'
import type { FlatPoint } from '../../domain/shop/flat/flatFigure'
import type { Anchor, TabMount } from '../../domain/straps/anchor'
import { tabSize } from '../../domain/straps/tabSize'
import { cosDeg, sinDeg } from '../../domain/units/angle'
import { bothUnits } from '../mount/table/anchorCells'
import { at, line, loop, type Template, writing } from './template'

/** Plate left below the hole of a tab whose foot nobody knows, mm: to be trimmed on the car. Our judgement. */
const TO_TRIM_MM = 60

/**
 * A tab on the floor or another structure: its head and its hole are known, its foot is not. The plate is long and is trimmed on the car.
 * Null when the hole reaches the plate's edge.
 */
export const blankTemplate = (task: {
  readonly layout: Layout
  readonly itemNumber: number
  readonly placeWords: string
  readonly anchor: Anchor
  readonly mount: TabMount
}): Template | null => {
  const { layout, itemNumber, anchor, mount } = task
  const unit = layout.units.length
  const { widthMm, edgeDistanceMm, chosen } = tabSize(mount)
  const holeMm = mount.holeDiameterMm / 2
  const roundMm = Math.min(widthMm / 2, edgeDistanceMm)
  if (roundMm <= holeMm) return null
  const footMm = -TO_TRIM_MM
  const head = (sideX: 1 | -1): readonly FlatPoint[] =>
    Array.from({ length: ARC_STEPS + 1 }, (_, step) => {
      const deg = (90 * step) / ARC_STEPS
      return at(
        sideX * (widthMm / 2 - roundMm + roundMm * cosDeg(deg)),
        edgeDistanceMm - roundMm + roundMm * sinDeg(deg),
      )
    })
  return {
    kind: 'tab',
    figure: {
      id: `tab-${itemNumber}`,
      title: `${itemNumber}  ${capitalised(anchorName(anchor))}${task.placeWords}`,
      shapes: [
        loop('CUT', [
          at(-widthMm / 2, footMm),
          at(widthMm / 2, footMm),
          ...head(1),
          ...head(-1).toReversed(),
        ]),
        { kind: 'circle', layer: 'DRILL', centre: at(0, 0), radiusMm: holeMm },
        line('MARK', [at(-holeMm - 2, 0), at(holeMm + 2, 0)]),
        line('MARK', [at(0, -holeMm - 2), at(0, holeMm + 2)]),
        writing(at(0, footMm + 3), 'trim to fit', { align: 'centre' }),
        writing(at(0, footMm - 4.5), String(itemNumber), { align: 'centre' }),
      ],
    },
    words: [
      `Plate ${bothUnits(mount.thicknessMm, unit)}, hole Ø ${bothUnits(mount.holeDiameterMm, unit)}.`,
      `Width ${bothUnits(widthMm, unit)}, hole to end ${bothUnits(edgeDistanceMm, unit)}${chosen.length > 0 ? ' (chosen)' : ''}.`,
      'On the floor or another structure: its foot is not known. Cut it long, set the hole by its coordinates and trim.',
    ],
  }
}

/** 3° each. */
const ARC_STEPS = 30

import { CAUTIONS } from '../../domain/layout/wording/cautions'
import type { Box, PagePoint, SheetItem } from './item'
import { textRows, type BareRow } from './section'
import type { Typography } from './typography'

export const widthOf = (box: Box): number => box.rightMm - box.leftMm

export const heightOf = (rows: readonly BareRow[]): number =>
  rows.reduce((sumMm, row) => sumMm + row.heightMm, 0)

/** Strips one below the other from a corner down. */
export const stacked = (rows: readonly BareRow[], { xMm, yMm }: PagePoint): readonly SheetItem[] =>
  rows.flatMap((row, index) => row.draw({ xMm, yMm: yMm + heightOf(rows.slice(0, index)) }))

/** All cautions but the first, which stands on the foot line of every page. */
export const cautionRows = (widthMm: number, type: Typography): readonly BareRow[] =>
  textRows(`CAUTIONS: ${CAUTIONS.slice(1).join(' ')}`, widthMm, type.small, 'Cautions')

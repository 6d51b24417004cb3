import { itemBox, straightItem, type SheetItem } from '../page/item'
import type { BareRow } from '../page/section'

/** Height of the line over the base line as a share of the lettering: through the middle of small letters. Our judgement. */
const STRIKE_SHARE = 0.26

const strike = (item: SheetItem): readonly SheetItem[] => {
  if (item.kind !== 'text') return [item]
  const { leftMm, rightMm } = itemBox(item)
  const yMm = item.at.yMm - item.sizeMm * STRIKE_SHARE
  return [item, straightItem({ xMm: leftMm, yMm }, { xMm: rightMm, yMm }, { widthMm: 0.2 })]
}

/** A strip with a line through every text in it, which stays readable. */
export const struckThrough = (row: BareRow): BareRow => ({
  ...row,
  draw: (at) => row.draw(at).flatMap(strike),
})

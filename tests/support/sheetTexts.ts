import {
  areOverlapping,
  type Box,
  isInside,
  itemBox,
  type SheetItem,
  type SheetText,
} from '../../src/sheet/page/item'

export const textsOf = (items: readonly SheetItem[]): readonly SheetText[] =>
  items.flatMap((item) => (item.kind === 'text' ? [item] : []))

/** Every pair of texts whose rectangles share area, in words. */
export const overlappingTexts = (texts: readonly SheetText[]): readonly string[] => {
  const boxes = texts.map((text): readonly [SheetText, Box] => [text, itemBox(text)])
  return boxes.flatMap(([text, box], index) =>
    boxes
      .slice(index + 1)
      .flatMap(([other, otherBox]) =>
        areOverlapping(box, otherBox) ? [`"${text.text}" over "${other.text}"`] : [],
      ),
  )
}

/** Balloons are the closed lines filled with white. */
const balloonBoxes = (items: readonly SheetItem[]): readonly Box[] =>
  items.flatMap((item) =>
    item.kind === 'line' && item.closed && item.fill === 'white' ? [itemBox(item)] : [],
  )

/** Every text that lies partly on a balloon, and every balloon with more or less than its one number in it. */
export const spoiledBalloons = (items: readonly SheetItem[]): readonly string[] =>
  balloonBoxes(items).flatMap((balloon) => {
    const touching = textsOf(items).filter((text) => areOverlapping(itemBox(text), balloon))
    const inside = touching.filter((text) => isInside(itemBox(text), balloon))
    return touching.length === 1 && inside.length === 1 ? [] : [touching.map(({ text }) => text).join(' | ')]
  })

import type { FlatShape } from '../../domain/shop/flat/flatFigure'
import { areOverlapping, type Box, itemBox, type SheetItem } from '../page/item'
import { textOnPage } from './figureItems'

type Writing = readonly FlatShape[]

const ORIGIN = { xMm: 0, yMm: 0 }

const boxesOf = (writing: Writing): readonly Box[] =>
  writing
    .flatMap((shape): readonly SheetItem[] => (shape.kind === 'text' ? [textOnPage(shape, ORIGIN)] : []))
    .map(itemBox)

/**
 * Lettering placed one after the other, each where it was wanted first or, where it would run into what is written already, at the
 * next place that it may have. Where every place is taken it stands at its first.
 */
export const placedWriting = (wanted: readonly (readonly Writing[])[]): readonly FlatShape[] => {
  const taken: Box[] = []
  return wanted.flatMap((places): Writing => {
    const isFree = (writing: Writing): boolean =>
      boxesOf(writing).every((box) => !taken.some((other) => areOverlapping(box, other)))
    const chosen = places.find(isFree) ?? places[0] ?? []
    taken.push(...boxesOf(chosen))
    return chosen
  })
}

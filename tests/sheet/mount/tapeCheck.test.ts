import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { evaluateLayout } from '../../../src/domain/layout/evaluate/evaluateLayout'
import { sheetPages } from '../../../src/sheet/mount/sheetPages'
import { exampleIndex, exampleLayout } from '../../support/exampleLayouts'
import { readSheet } from './printedSheet'
import { away, spheresOf, toldByTapes, trilaterated } from './trilateration'

/** The unit changes what is printed, not what is computed: evaluated once for both. */
const examples = exampleIndex.map(({ file }) => {
  const example = exampleLayout(file)
  return { file, example, evaluation: evaluateLayout(example) }
})

const anchorCount = ({ places }: Layout): number =>
  places.reduce((sum, { anchors }) => sum + anchors.length, 0)

/** Each unit on one of the papers; the printed files of both papers are read back in the browser. */
const cases = examples
  .filter(({ example }) => anchorCount(example) > 0)
  .flatMap(({ file, example, evaluation }) =>
    (
      [
        ['mm', 'a4'],
        ['in', 'letter'],
      ] as const
    ).map(([length, paper]) => ({
      name: `${file} in ${length} on ${paper}`,
      layout: { ...example, units: { ...example.units, length } },
      evaluation,
      paper,
    })),
  )

describe('the tape check as printed', () => {
  it.each(cases)('gives every anchor back within 1 mm: $name', ({ layout, evaluation, paper }) => {
    const told = toldByTapes(readSheet(sheetPages(layout, evaluation, paper)))
    expect(told).toHaveLength(anchorCount(layout))
    // Four tapes each; what is left over of distances that belong together and are printed to 0.1 mm; and the 1 mm.
    const off = told.filter(
      ({ tapeCount, residualMm, told: at, point }) =>
        tapeCount < 4 || residualMm >= 0.5 || away(at, point) >= 1,
    )
    expect(off).toEqual([])
  })

  it('has no tape check where there is no anchor', () => {
    const empty = exampleLayout('nearly-empty.layout.json')
    const texts = sheetPages(empty, evaluateLayout(empty), 'a4').flatMap(({ items }) => items)
    expect(texts).not.toContainEqual(expect.objectContaining({ text: 'Tape check' }))
  })

  it('is not fooled: an anchor printed 2 mm off is found out', () => {
    const layout = exampleLayout('rock-buggy.layout.json')
    const sheet = readSheet(sheetPages(layout, evaluateLayout(layout), 'a4'))
    const { at } = trilaterated(spheresOf('3', sheet))
    const point = sheet.anchors.get('3')?.point ?? [0, 0, 0]
    expect(away(at, [point[0], point[1] + 2, point[2]])).toBeGreaterThan(1)
  })
})

import { describe, expect, it } from 'vitest'

import type { Layout } from '../../../../src/domain/layout/document/layout'
import { COUNTS } from '../../../../src/domain/layout/document/limits'
import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import {
  addTapePoint,
  removeTapePoint,
  withTapePoint,
} from '../../../../src/domain/layout/edit/changeTapePoints'
import { tapePlaces } from '../../../../src/domain/shop/tape/tapePlace'
import { exampleLayout } from '../../../support/exampleLayouts'

const { tapePoints: _named, ...bare } = exampleLayout('rock-buggy.layout.json')

describe('tape points', () => {
  it('start at the datum, where they tell no distance of their own until they are placed', () => {
    const added = addTapePoint(addTapePoint(bare))
    expect(added.tapePoints?.map(({ id }) => id)).toEqual(['tape-point-1', 'tape-point-2'])
    expect(parseLayout(added).ok).toBe(true)
    const named = (layout: Layout): number =>
      tapePlaces({ tapePoints: layout.tapePoints ?? [], tubes: layout.tubes }).filter(
        ({ source }) => source.kind === 'named',
      ).length
    expect(named(added)).toBe(0)
    const point = { xMm: 1_300, yMm: 200, zMm: 20 }
    const placed = withTapePoint(added, 'tape-point-2', { name: 'Rear left seat bolt', point })
    expect(named(placed)).toBe(1)
    expect(placed.tapePoints?.[1]).toEqual({ id: 'tape-point-2', name: 'Rear left seat bolt', point })
  })

  it('leave the layout without a list when the last one is removed, as it was before', () => {
    const added = addTapePoint(bare)
    expect(removeTapePoint(added, 'tape-point-1')).toEqual(bare)
    expect('tapePoints' in removeTapePoint(added, 'tape-point-1')).toBe(false)
    expect(removeTapePoint(addTapePoint(added), 'tape-point-1').tapePoints?.map(({ id }) => id)).toEqual([
      'tape-point-2',
    ])
  })

  it('that do not exist change nothing, and no more are added than a layout holds', () => {
    const added = addTapePoint(bare)
    expect(withTapePoint(added, 'nowhere', { name: 'x' })).toBe(added)
    expect(removeTapePoint(added, 'nowhere')).toBe(added)
    let full: Layout = bare
    for (let count = 0; count < COUNTS.tapePoints.max; count += 1) full = addTapePoint(full)
    expect(full.tapePoints).toHaveLength(COUNTS.tapePoints.max)
    expect(addTapePoint(full)).toBe(full)
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fittedWhole } from '../../../src/sheet/page/firstFit'
import type { FlowRow } from '../../../src/sheet/page/flow'
import { keptTogether } from '../../../src/sheet/page/section'

const row = (heightMm: number, section: string): FlowRow => ({
  heightMm,
  keepWithNext: false,
  section,
  continuation: [],
  draw: () => [],
})

const frame = (pageIndex: number, heightMm: number) => ({
  pageIndex,
  box: { leftMm: 10 * pageIndex, topMm: 5, rightMm: 10 * pageIndex + 8, bottomMm: 5 + heightMm },
})

describe('fittedWhole', () => {
  it('puts lists one below the other, the next frame where one is full, and leaves over what fits nowhere', () => {
    const lists = [[row(4, 'a'), row(4, 'a')], [row(7, 'b')], [row(30, 'c')], [row(3, 'd')]]
    const { placed, left } = fittedWhole(lists, [frame(0, 14), frame(1, 10)], 2)
    expect(placed.map((each) => [each.row.section, each.pageIndex, each.at.yMm])).toEqual([
      ['a', 0, 5],
      ['a', 0, 9],
      ['b', 1, 5],
      // 5 + 8 + 2 of gap.
      ['d', 0, 15],
    ])
    expect(left).toEqual([2])
  })

  it('never parts a list, overlaps two or leaves its frame, and loses none', () => {
    const height = fc.integer({ min: 1, max: 30 })
    fc.assert(
      fc.property(
        fc.array(fc.array(height, { minLength: 1, maxLength: 6 }), { maxLength: 8 }),
        fc.array(height, { maxLength: 4 }),
        (heights, rooms) => {
          const lists = heights.map((each, index) => each.map((mm) => row(mm, String(index))))
          const frames = rooms.map((mm, index) => frame(index, mm))
          const { placed, left } = fittedWhole(lists, frames, 1)
          const whole = lists.filter((_, index) => !left.includes(index)).flat()
          expect(placed.map((each) => each.row)).toEqual(whole)
          const pages = new Map<string, Set<number>>()
          for (const each of placed) {
            const known = pages.get(each.row.section) ?? new Set()
            pages.set(each.row.section, known.add(each.pageIndex))
            expect(each.at.yMm + each.row.heightMm).toBeLessThanOrEqual(
              frames[each.pageIndex]?.box.bottomMm ?? 0,
            )
          }
          expect([...pages.values()].every(({ size }) => size === 1)).toBe(true)
          for (const page of frames.keys()) {
            const on = placed
              .filter((each) => each.pageIndex === page)
              .toSorted((a, b) => a.at.yMm - b.at.yMm)
            on.slice(1).forEach((each, index) => {
              const before = on[index] ?? each
              expect(each.at.yMm).toBeGreaterThanOrEqual(before.at.yMm + before.row.heightMm)
            })
          }
        },
      ),
    )
  })
})

describe('keptTogether', () => {
  it('keeps every strip but the last with the next one', () => {
    expect(
      keptTogether([row(5, 'a'), row(5, 'a'), row(5, 'a')]).map(({ keepWithNext }) => keepWithNext),
    ).toEqual([true, true, false])
  })

  it('lets a text part that no column could hold', () => {
    const long = Array.from({ length: 60 }, () => row(5, 'a'))
    expect(keptTogether(long).some(({ keepWithNext }) => keepWithNext)).toBe(false)
  })
})

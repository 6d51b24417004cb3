import { describe, expect, it } from 'vitest'
import { flowed, type Frame, type FlowRow } from '../../../src/sheet/page/flow'

const row = (section: string, heightMm: number, more: Partial<FlowRow> = {}): FlowRow => ({
  heightMm,
  section,
  keepWithNext: false,
  continuation: [],
  draw: () => [],
  ...more,
})

/** Frames of 10 mm height, one on each page. */
const frameAt = (index: number): Frame => ({
  pageIndex: index,
  box: { leftMm: 0, rightMm: 50, topMm: 100, bottomMm: 110 },
})

const places = (rows: readonly FlowRow[]): readonly (readonly [string, number, number])[] =>
  flowed(rows, frameAt).placed.map(({ row: placed, pageIndex, at }) => [placed.section, pageIndex, at.yMm])

describe('flowed', () => {
  it('fills a frame to its last millimetre before it starts the next', () => {
    expect(places([row('a', 4), row('b', 6), row('c', 1)])).toEqual([
      ['a', 0, 100],
      ['b', 0, 104],
      ['c', 1, 100],
    ])
  })

  it('never leaves a title alone at the end of a frame', () => {
    const title = row('title', 3, { keepWithNext: true })
    expect(places([row('a', 5), title, row('b', 4)])).toEqual([
      ['a', 0, 100],
      ['title', 1, 100],
      ['b', 1, 103],
    ])
  })

  it('repeats the heading where something goes on', () => {
    const again = row('again', 2)
    const line = (name: string): FlowRow => row(name, 6, { continuation: [again] })
    expect(places([row('title', 2), line('a'), line('b')])).toEqual([
      ['title', 0, 100],
      ['a', 0, 102],
      ['again', 1, 100],
      ['b', 1, 102],
    ])
  })

  it('counts the repeated heading when it looks for room', () => {
    const again = row('again', 5)
    const high = row('b', 6, { continuation: [again] })
    const frames = (index: number): Frame => ({
      ...frameAt(index),
      box: { ...frameAt(index).box, bottomMm: index < 2 ? 110 : 120 },
    })
    const { placed } = flowed([row('a', 9), high], frames)
    expect(placed.map(({ row: each, pageIndex }) => [each.section, pageIndex])).toEqual([
      ['a', 0],
      ['again', 2],
      ['b', 2],
    ])
  })

  it('refuses a strip that no frame can hold instead of looking for ever', () => {
    expect(() => flowed([row('giant', 11)], frameAt)).toThrow(/giant/)
  })
})

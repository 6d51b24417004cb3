import { describe, expect, it } from 'vitest'
import { balloonItems } from '../../../../src/sheet/mount/figure/balloons'
import { areOverlapping, isInside, itemBox } from '../../../../src/sheet/page/item'

const room = { leftMm: 0, topMm: 0, rightMm: 100, bottomMm: 80 }

const balloons = (targets: Parameters<typeof balloonItems>[0]) => {
  const items = balloonItems(targets, { room, obstacles: [], straps: [] })
  return {
    texts: items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])),
    boxes: items.filter((item) => item.kind === 'line' && item.closed).map(itemBox),
  }
}

describe('balloonItems', () => {
  it('gives anchors that fall together one balloon with all their numbers', () => {
    const at = { xMm: 40, yMm: 40 }
    const near = { xMm: 41, yMm: 40 }
    const apart = { xMm: 45, yMm: 40 }
    expect(
      balloons([
        { itemNumber: 1, at },
        { itemNumber: 2, at: near },
        { itemNumber: 3, at: apart },
      ]).texts,
    ).toEqual(['1, 2', '3'])
  })

  it('hides no balloon behind another and keeps all inside the room, in the corners too', () => {
    const targets = [0, 2, 4, 6, 8, 50, 52, 54, 96, 98, 100].map((xMm, index) => ({
      itemNumber: index + 1,
      at: { xMm, yMm: index % 2 === 0 ? 0 : 80 },
    }))
    const { boxes } = balloons(targets)
    expect(boxes).toHaveLength(targets.length)
    const outer = { leftMm: -0.2, topMm: -0.2, rightMm: 100.2, bottomMm: 80.2 }
    expect(boxes.filter((box) => !isInside(box, outer))).toEqual([])
    const hidden = boxes.filter((box, index) =>
      boxes.slice(index + 1).some((other) => areOverlapping(box, other)),
    )
    expect(hidden).toEqual([])
  })

  it('goes as far as it must to cover nothing that is in its way', () => {
    // All but the rightmost 12 mm of the room are taken.
    const obstacles = [{ ...room, rightMm: 88 }]
    const items = balloonItems([{ itemNumber: 1, at: { xMm: 10, yMm: 40 } }], { room, obstacles, straps: [] })
    const bodies = items.filter((item) => item.kind === 'line' && item.closed).map(itemBox)
    expect(bodies).toHaveLength(1)
    expect(bodies[0]?.leftMm).toBeGreaterThanOrEqual(87.8)
  })

  it('draws every leader below every balloon, so that no line crosses a number', () => {
    const targets = [10, 12, 14, 16].map((xMm, index) => ({ itemNumber: index + 1, at: { xMm, yMm: 40 } }))
    const items = balloonItems(targets, { room, obstacles: [], straps: [] })
    const firstBody = items.findIndex((item) => item.kind === 'line' && item.closed)
    expect(items.slice(firstBody).some((item) => item.kind === 'line' && !item.closed)).toBe(false)
  })
})

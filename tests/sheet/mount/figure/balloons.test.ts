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
})

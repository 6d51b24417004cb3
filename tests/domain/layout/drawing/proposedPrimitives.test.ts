import { describe, expect, it } from 'vitest'

import { pointMm } from '../../../../src/domain/geometry/point'
import { proposedPrimitives } from '../../../../src/domain/layout/drawing/proposedPrimitives'

const marks = (name: string, isShown: boolean) => ({
  name,
  isShown,
  anchors: [{ anchorId: 'lap-left', from: pointMm(100, -230, -150), to: pointMm(150, -240, -200) }],
})

describe('proposedPrimitives', () => {
  it('marks every proposal where each elevation sees it', () => {
    const [ring] = proposedPrimitives([marks('Position 1', false)], 'side', 20)
    expect(ring).toMatchObject({ kind: 'circle', centre: { uMm: 150, vMm: -200 }, style: 'ghost' })
    const [fromAbove] = proposedPrimitives([marks('Position 1', false)], 'top', 20)
    expect(fromAbove).toMatchObject({ centre: { uMm: 150, vMm: -240 } })
  })

  it('draws the one picked out last, with the way from where the anchor is now and its name', () => {
    const drawn = proposedPrimitives([marks('Position 1', true), marks('Position 2', false)], 'side', 20)
    expect(drawn.map(({ key }) => key)).toEqual([
      'proposed/Position 2/lap-left',
      'proposed/Position 1/lap-left/way',
      'proposed/Position 1/lap-left',
      'proposed/Position 1/lap-left/name',
    ])
    expect(drawn[1]).toMatchObject({
      points: [
        { uMm: 100, vMm: -150 },
        { uMm: 150, vMm: -200 },
      ],
    })
    expect(drawn[2]).toMatchObject({ style: 'focus' })
    expect(drawn[3]).toMatchObject({ text: 'Position 1', weight: 'strong' })
  })

  it('keeps rings the size of a line of text at every scale', () => {
    const radius = (textHeightMm: number): unknown =>
      proposedPrimitives([marks('Position 1', false)], 'side', textHeightMm)[0]
    expect(radius(20)).toMatchObject({ radiusMm: 9 })
    expect(radius(40)).toMatchObject({ radiusMm: 18 })
  })
})

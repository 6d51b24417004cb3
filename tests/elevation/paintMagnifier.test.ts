import { describe, expect, it } from 'vitest'
import { paintMagnifier } from '../../src/elevation/magnifier/paintMagnifier'
import type { Palette } from '../../src/elevation/paint/palette'

const PALETTE = { paper: 'paper', accent: 'accent' } as Palette

/** A canvas that only writes down what is copied into it, and to where its px are scaled. */
const inset = () => {
  const copied: (readonly unknown[])[] = []
  const scales: number[] = []
  const context = {
    setTransform: (scale: number) => scales.push(scale),
    drawImage: (...what: readonly unknown[]) => copied.push(what),
    fillRect: () => undefined,
    beginPath: () => undefined,
    moveTo: () => undefined,
    lineTo: () => undefined,
    stroke: () => undefined,
  }
  const canvas = { getContext: () => context } as unknown as HTMLCanvasElement
  return { canvas, copied, scales }
}

describe('paintMagnifier', () => {
  it('copies a third of its width about the point, enlarged three times, whatever px the device has', () => {
    const { canvas, copied, scales } = inset()
    const photo = { width: 1 } as HTMLCanvasElement
    const drawing = { width: 2 } as HTMLCanvasElement
    paintMagnifier(
      { canvas, ratio: 2 },
      [
        { canvas: photo, ratio: 1 },
        { canvas: drawing, ratio: 2 },
      ],
      { xPx: 100, yPx: 80 },
      120,
      PALETTE,
    )
    // 120 px show 40 px: from 20 px left of the point and 20 above it; in px of the device that is twice as much.
    expect(copied).toEqual([
      [photo, 80, 60, 40, 40, 0, 0, 120, 120],
      [drawing, 160, 120, 80, 80, 0, 0, 120, 120],
    ])
    expect(scales).toEqual([2])
  })
})

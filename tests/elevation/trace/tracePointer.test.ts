import { describe, expect, it } from 'vitest'
import { TracePointer } from '../../../src/elevation/trace/tracePointer'

const px = (xPx: number, yPx: number) => ({ xPx, yPx })

const bench = () => {
  const heard: (readonly unknown[])[] = []
  const pointer = new TracePointer({
    aim: (at) => heard.push(['aim', at]),
    place: (at) => heard.push(['place', at]),
    pan: (by) => heard.push(['pan', by]),
    beginPinch: (fingers) => heard.push(['begin', fingers]),
    pinch: (fingers) => heard.push(['pinch', fingers]),
  })
  return { heard, pointer }
}

describe('TracePointer', () => {
  it('a click places where the button went down, a hand that trembles by 3 px too', () => {
    const { heard, pointer } = bench()
    pointer.down(1, 'mouse', px(10, 10))
    pointer.move(1, px(13, 10))
    pointer.up(1)
    expect(heard).toEqual([['place', px(10, 10)]])
  })

  it('a mouse that moves with its button down pans and places nothing', () => {
    const { heard, pointer } = bench()
    pointer.down(1, 'mouse', px(10, 10))
    pointer.move(1, px(20, 10))
    pointer.move(1, px(21, 12))
    pointer.up(1)
    expect(heard).toEqual([
      ['pan', px(10, 0)],
      ['pan', px(1, 2)],
    ])
  })

  it.each(['touch', 'pen'] as const)('a %s aims while it is down and places where it is lifted', (kind) => {
    const { heard, pointer } = bench()
    pointer.down(1, kind, px(10, 10))
    pointer.move(1, px(60, 40))
    pointer.up(1)
    expect(heard).toEqual([
      ['aim', px(10, 10)],
      ['aim', px(60, 40)],
      ['aim', null],
      ['place', px(60, 40)],
    ])
  })

  it('a second finger calls the aim off and pinches; the finger that stays places nothing', () => {
    const { heard, pointer } = bench()
    pointer.down(1, 'touch', px(10, 10))
    pointer.down(2, 'touch', px(50, 10))
    pointer.move(2, px(60, 10))
    pointer.up(2)
    pointer.move(1, px(30, 30))
    pointer.up(1)
    expect(heard).toEqual([
      ['aim', px(10, 10)],
      ['aim', null],
      ['begin', [px(10, 10), px(50, 10)]],
      ['pinch', [px(10, 10), px(60, 10)]],
    ])
  })

  it('a pointer that is taken away places nothing, and the next one starts afresh', () => {
    const { heard, pointer } = bench()
    pointer.down(1, 'touch', px(10, 10))
    pointer.cancel(1)
    pointer.up(1)
    pointer.move(1, px(5, 5))
    pointer.down(2, 'mouse', px(1, 1))
    pointer.up(2)
    expect(heard).toEqual([
      ['aim', px(10, 10)],
      ['aim', null],
      ['place', px(1, 1)],
    ])
  })
})

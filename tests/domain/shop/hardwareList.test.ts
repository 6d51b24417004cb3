import { describe, expect, it } from 'vitest'
import { pointMm } from '../../../src/domain/geometry/point'
import { hardwareList } from '../../../src/domain/shop/hardwareList'
import { longestOrderLengths } from '../../../src/domain/shop/orderLengths'
import type { Anchor } from '../../../src/domain/straps/anchor'
import type { Belt, StrapId } from '../../../src/domain/straps/strap'

const belt: Belt = {
  arrangement: 5,
  webbingMm: { shoulder: 76, lap: 75, sub: 51 },
  material: 'polyester',
  buckle: 'latch-and-link',
  lapAdjuster: 'pull-up',
  headAndNeckRestraint: true,
  adjusterTailMm: 200,
  wrapReturnMm: 200,
}

const tab = (strap: StrapId, thicknessMm: number): Anchor => ({
  id: strap,
  strap,
  mount: {
    kind: 'tab',
    point: pointMm(0, 0, 0),
    planDeg: 0,
    leanDeg: 0,
    thicknessMm,
    holeDiameterMm: 12.7,
    shear: 'double',
    tubeId: null,
  },
})

const wrap = (strap: StrapId, guideHoops: boolean): Anchor => ({
  id: strap,
  strap,
  mount: { kind: 'wrap', tubeId: 'bar', point: pointMm(0, 0, 0), over: 'over', guideHoops },
})

const anchors = [
  wrap('shoulder-left', true),
  wrap('shoulder-right', false),
  tab('lap-left', 5),
  tab('lap-right', 5),
  tab('sub-centre', 6),
]

describe('hardwareList', () => {
  const items = hardwareList({ belt, anchors, orderLengthMm: new Map([['lap-left', 812.5]]) })

  it('counts tabs that are cut alike together, one bolt for each tab and one slide for each wrap', () => {
    expect(items.filter((item) => item.kind !== 'belt' && item.kind !== 'webbing')).toEqual([
      { kind: 'tab', count: 2, thicknessMm: 5, holeDiameterMm: 12.7, shear: 'double' },
      { kind: 'tab', count: 1, thicknessMm: 6, holeDiameterMm: 12.7, shear: 'double' },
      { kind: 'tab-bolt', count: 3 },
      { kind: 'three-bar-slide', count: 2 },
      { kind: 'guide-hoops', wraps: 1 },
    ])
  })

  it('lists every strap of the arrangement in its width, with a length only where one is known', () => {
    const webbing = items.flatMap((item) => (item.kind === 'webbing' ? [item] : []))
    expect(webbing.map(({ strap, widthMm, orderLengthMm }) => [strap, widthMm, orderLengthMm])).toEqual([
      ['shoulder-left', 76, null],
      ['shoulder-right', 76, null],
      ['lap-left', 75, 812.5],
      ['lap-right', 75, null],
      ['sub-centre', 51, null],
    ])
  })

  it('leaves out what there is none of', () => {
    const bare = hardwareList({ belt, anchors: [], orderLengthMm: new Map() })
    expect(bare.map((item) => item.kind)).toEqual(['belt', ...Array.from({ length: 5 }, () => 'webbing')])
  })
})

describe('longestOrderLengths', () => {
  it('takes the longest of all sittings and nothing but strap lengths', () => {
    const lengths = longestOrderLengths([
      [
        { id: 'strap-length', subject: 'lap-left', value: 700 },
        { id: 'lap-spacing', subject: 'lap-pair', value: 990 },
      ],
      [
        { id: 'strap-length', subject: 'lap-left', value: 760 },
        { id: 'lap-angle', subject: 'lap-right', value: 52 },
      ],
      [{ id: 'strap-length', subject: 'lap-left', value: 731 }],
    ])
    expect([...lengths]).toEqual([['lap-left', 760]])
  })
})

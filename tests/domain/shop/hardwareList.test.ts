import { describe, expect, it } from 'vitest'
import { pointMm } from '../../../src/domain/geometry/point'
import type { Tube } from '../../../src/domain/geometry/tube'
import { hardwareList } from '../../../src/domain/shop/hardwareList'
import { longestOrderLengths } from '../../../src/domain/shop/orderLengths'
import { type Anchor, formShear, type Mount, type TabForm } from '../../../src/domain/straps/anchor'
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
  const items = hardwareList({ belt, anchors, tubes: [], orderLengthMm: new Map([['lap-left', 812.5]]) })

  it('counts tabs that are cut alike together, one bolt for each tab and one slide for each wrap', () => {
    expect(items.filter((item) => item.kind !== 'belt' && item.kind !== 'webbing')).toEqual([
      { kind: 'tab', form: 'plate', count: 2, thicknessMm: 5, holeDiameterMm: 12.7, shear: 'double' },
      { kind: 'tab', form: 'plate', count: 1, thicknessMm: 6, holeDiameterMm: 12.7, shear: 'double' },
      { kind: 'tab-bolt', count: 3 },
      { kind: 'bolts', family: 'lap', count: 2, bolt: null },
      { kind: 'bolts', family: 'sub', count: 1, bolt: null },
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

  it('hands on what was typed of the bolts of a family, and nothing of one that is only wrapped', () => {
    const lap = { boltDiameterMm: 11.1, torqueNm: 40, source: 'Instruction card' }
    const typed = { ...belt, hardware: { lap, shoulder: { torqueNm: 20 } } }
    const bolts = hardwareList({ belt: typed, anchors, tubes: [], orderLengthMm: new Map() }).filter(
      ({ kind }) => kind === 'bolts',
    )
    expect(bolts).toEqual([
      { kind: 'bolts', family: 'lap', count: 2, bolt: lap },
      { kind: 'bolts', family: 'sub', count: 1, bolt: null },
    ])
  })

  it('leaves out what there is none of', () => {
    const bare = hardwareList({ belt, anchors: [], tubes: [], orderLengthMm: new Map() })
    expect(bare.map((item) => item.kind)).toEqual(['belt', ...Array.from({ length: 5 }, () => 'webbing')])
  })
})

describe('hardwareList of other ways to fix a strap', () => {
  const formed = (strap: StrapId, form: TabForm): Anchor => {
    const anchor = tab(strap, 6)
    return { ...anchor, mount: { ...anchor.mount, form, shear: formShear(form) ?? 'double' } as Mount }
  }
  const eye = (strap: StrapId, threadDiameterMm: number): Anchor => ({
    id: strap,
    strap,
    mount: {
      kind: 'eye',
      point: pointMm(0, 0, 0),
      planDeg: 180,
      riseDeg: 40,
      threadDiameterMm,
      eyeDiameterMm: 25,
      tubeId: null,
    },
  })

  it('counts clevises, inserts and plates apart though they have the same sizes, each with its bolt', () => {
    const items = hardwareList({
      belt,
      tubes: [],
      orderLengthMm: new Map(),
      anchors: [
        formed('shoulder-left', 'insert'),
        formed('shoulder-right', 'insert'),
        formed('lap-left', 'clevis'),
        tab('lap-right', 6),
        eye('sub-centre', 12),
      ],
    })
    expect(items.filter((item) => item.kind !== 'belt' && item.kind !== 'webbing')).toEqual([
      { kind: 'tab', form: 'insert', count: 2, thicknessMm: 6, holeDiameterMm: 12.7, shear: 'single' },
      { kind: 'tab', form: 'clevis', count: 1, thicknessMm: 6, holeDiameterMm: 12.7, shear: 'double' },
      { kind: 'tab', form: 'plate', count: 1, thicknessMm: 6, holeDiameterMm: 12.7, shear: 'double' },
      { kind: 'tab-bolt', count: 4 },
      { kind: 'eye-bolt', count: 1, threadDiameterMm: 12, eyeDiameterMm: 25 },
      { kind: 'bolts', family: 'shoulder', count: 2, bolt: null },
      { kind: 'bolts', family: 'lap', count: 2, bolt: null },
      { kind: 'bolts', family: 'sub', count: 1, bolt: null },
    ])
  })

  it('lists the adjusters whose place is known, two to a pair and one to a diagonal', () => {
    const adjusters = {
      shoulder: { fromAnchorMm: 320, lengthMm: 60 },
      lap: { fromAnchorMm: 140, lengthMm: 70 },
    }
    const of = (arrangement: 3 | 6) =>
      hardwareList({
        belt: { ...belt, arrangement, adjusters },
        anchors: [],
        tubes: [],
        orderLengthMm: new Map(),
      }).filter((item) => item.kind === 'adjuster')
    expect(of(6)).toEqual([
      { kind: 'adjuster', family: 'shoulder', count: 2, fromAnchorMm: 320, lengthMm: 60 },
      { kind: 'adjuster', family: 'lap', count: 2, fromAnchorMm: 140, lengthMm: 70 },
    ])
    expect(of(3).map((item) => item.kind === 'adjuster' && item.count)).toEqual([1, 2])
  })

  it('orders joined shoulder straps as one tail and two straps from the junction on, on one anchor', () => {
    const joined = { ...belt, shoulderTailMm: 160 }
    const lengths = new Map<StrapId, number>([
      ['shoulder-left', 1200],
      ['shoulder-right', 1210],
      ['lap-left', 800],
    ])
    const items = hardwareList({
      belt: joined,
      anchors: [tab('shoulder-left', 5), tab('shoulder-right', 5)],
      tubes: [],
      orderLengthMm: lengths,
    })
    expect(items.filter(({ kind }) => kind === 'shoulder-tail')).toEqual([
      { kind: 'shoulder-tail', widthMm: 76, orderLengthMm: 160 },
    ])
    const webbing = items.flatMap((item) => (item.kind === 'webbing' ? [item] : []))
    // 1200 − 160 and 1210 − 160; the lap strap has no part of the tail.
    expect(webbing.slice(0, 3).map(({ orderLengthMm }) => orderLengthMm)).toEqual([1040, 1050, 800])
    expect(items.find(({ kind }) => kind === 'tab')).toMatchObject({ count: 1 })
  })

  it('gives the loop and the return of a wrapped tail to the tail', () => {
    const bar: Tube = {
      id: 'bar',
      name: 'Bar',
      role: 'harness-bar',
      points: [pointMm(0, -500, 0), pointMm(0, 500, 0)],
      outsideDiameterMm: 38,
      wallMm: 2.5,
    }
    const items = hardwareList({
      belt: { ...belt, shoulderTailMm: 160 },
      anchors: [wrap('shoulder-left', true), wrap('shoulder-right', true)],
      tubes: [bar],
      orderLengthMm: new Map([['shoulder-left', 1600]]),
    })
    // Once round a tube of 38 mm and 200 mm woven back: 160 + 38 π + 200 mm.
    const tailMm = 160 + 38 * Math.PI + 200
    expect(items.find(({ kind }) => kind === 'shoulder-tail')).toMatchObject({ orderLengthMm: tailMm })
    expect(items.find((item) => item.kind === 'webbing')).toMatchObject({ orderLengthMm: 1600 - tailMm })
    expect(items.find(({ kind }) => kind === 'three-bar-slide')).toMatchObject({ count: 1 })
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

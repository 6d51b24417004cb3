import { describe, expect, it } from 'vitest'
import type { Tube } from '../../../src/domain/geometry/tube'
import { propertyValues, type PropertyScene } from '../../../src/domain/rules/properties'
import { PROPERTY_IDS } from '../../../src/domain/rules/rule'
import type { Anchor } from '../../../src/domain/straps/anchor'
import type { Belt, StrapId } from '../../../src/domain/straps/strap'

const belt: Belt = {
  arrangement: 5,
  webbingMm: { shoulder: 75, lap: 50, sub: 45 },
  material: 'nylon',
  buckle: 'rotary-cam',
  lapAdjuster: 'pull-down',
  headAndNeckRestraint: true,
  adjusterTailMm: 200,
  wrapReturnMm: 150,
}
const tube = (id: string, role: Tube['role'], outsideDiameterMm: number): Tube => ({
  id,
  name: id,
  role,
  points: [
    { xMm: 1500, yMm: -500, zMm: 900 },
    { xMm: 1500, yMm: 500, zMm: 900 },
  ],
  outsideDiameterMm,
  wallMm: 1.6,
})
const tab = (strap: StrapId, tubeId: string | null): Anchor => ({
  id: `${strap}-tab`,
  strap,
  mount: {
    kind: 'tab',
    point: { xMm: 1500, yMm: 0, zMm: 900 },
    planDeg: 0,
    leanDeg: 0,
    thicknessMm: 5,
    holeDiameterMm: 12,
    shear: 'single',
    tubeId,
  },
})
const wrap = (strap: StrapId, tubeId: string): Anchor => ({
  id: `${strap}-wrap`,
  strap,
  mount: {
    kind: 'wrap',
    tubeId,
    point: { xMm: 1500, yMm: 0, zMm: 900 },
    over: 'over',
    guideHoops: false,
  },
})
const slot = (strap: StrapId) => ({
  id: `${strap}-slot`,
  straps: [strap],
  face: 'side' as const,
  centre: { xMm: 50, yMm: -200, zMm: 40 },
  lengthMm: 90,
  heightMm: 40,
  turnDeg: 0,
})
const scene: PropertyScene = {
  belt,
  anchors: [wrap('shoulder-left', 'hoop'), tab('shoulder-right', null), tab('lap-left', 'rail')],
  tubes: [tube('hoop', 'cage', 40), tube('bar', 'harness-bar', 25.4), tube('rail', 'floor', 30)],
  seat: { slots: [slot('lap-left')] },
}

describe('propertyValues', () => {
  it('reads the belt', () => {
    expect(propertyValues('belt-points', null, scene)).toEqual([{ subject: 'belt', value: 5 }])
    expect(propertyValues('belt-buckle', null, scene)).toEqual([{ subject: 'belt', value: 'rotary-cam' }])
    expect(propertyValues('belt-material', null, scene)).toEqual([{ subject: 'belt', value: 'nylon' }])
    expect(propertyValues('belt-lap-adjuster', null, scene)).toEqual([
      { subject: 'belt', value: 'pull-down' },
    ])
    expect(propertyValues('belt-head-and-neck', null, scene)).toEqual([{ subject: 'belt', value: 'yes' }])
  })

  it('says of each strap whether it has a slot, and of a wrap what kind of tube it is round', () => {
    expect(propertyValues('strap-slot', 'lap', scene)).toEqual([
      { subject: 'lap-left', value: 'yes' },
      { subject: 'lap-right', value: 'no' },
    ])
    expect(propertyValues('strap-slot', 'sub', scene)).toEqual([{ subject: 'sub-centre', value: 'no' }])
    expect(propertyValues('wrap-tube-role', null, scene)).toEqual([
      { subject: 'shoulder-left', value: 'cage' },
    ])
  })

  it('gives each family its webbing width, and the lone centre strap in place of a pair', () => {
    expect(propertyValues('webbing-width', null, scene)).toEqual([
      { subject: 'shoulder-pair', value: 75 },
      { subject: 'lap-pair', value: 50 },
      { subject: 'sub-centre', value: 45 },
    ])
    expect(propertyValues('webbing-width', 'lap', scene)).toEqual([{ subject: 'lap-pair', value: 50 }])
    const fourPoint = { ...scene, belt: { ...belt, arrangement: 4 as const } }
    expect(propertyValues('webbing-width', 'sub', fourPoint)).toEqual([])
  })

  it('reads tabs from tabs and wraps from wraps', () => {
    expect(propertyValues('tab-thickness', null, scene)).toEqual([
      { subject: 'shoulder-right', value: 5 },
      { subject: 'lap-left', value: 5 },
    ])
    expect(propertyValues('tab-shear', 'lap', scene)).toEqual([{ subject: 'lap-left', value: 'single' }])
    expect(propertyValues('wrap-guide-hoops', null, scene)).toEqual([
      { subject: 'shoulder-left', value: 'no' },
    ])
    expect(propertyValues('wrap-bar-diameter', null, scene)).toEqual([
      { subject: 'shoulder-left', value: 40 },
    ])
  })

  it('takes the tube that carries a shoulder strap as the shoulder bar, whatever it is called', () => {
    expect(propertyValues('bar-diameter', null, scene)).toEqual([{ subject: 'tube:hoop', value: 40 }])
  })

  it('takes the drawn harness bar while no shoulder strap is on a tube', () => {
    const bare = { ...scene, anchors: [tab('lap-left', 'rail')] }
    expect(propertyValues('bar-wall', null, bare)).toEqual([{ subject: 'tube:bar', value: 1.6 }])
    // Formula SAE 2026 F.6 gives 25.4 × 1.6 mm as an example of size B, ≥ 114 mm²: π/4·(25.4² − 22.2²) = 119.63 mm².
    expect(propertyValues('bar-area', null, bare)[0]?.value).toBeCloseTo(119.63, 2)
    // π/64·(25.4⁴ − 22.2⁴) = 8 508.82 mm⁴.
    expect(propertyValues('bar-second-moment', null, bare)[0]?.value).toBeCloseTo(8508.82, 2)
  })

  it('leaves out anchors of straps that the belt does not have', () => {
    const extra = { ...scene, anchors: [...scene.anchors, tab('sub-left', null)] }
    expect(propertyValues('tab-thickness', 'sub', extra)).toEqual([])
  })

  it('measures a slot against the webbing, along its longer side, also where the webbing does not go through', () => {
    // 90 mm slot, 50 mm lap webbing; 76 mm webbing (3 in) in a slot of 60 × 30 mm.
    expect(propertyValues('slot-spare', null, scene)).toEqual([{ subject: 'lap-left', value: 40 }])
    expect(propertyValues('slot-spare', 'sub', scene)).toEqual([])
    const upright = { ...slot('lap-left'), lengthMm: 30, heightMm: 60 }
    const wide = { ...belt, webbingMm: { ...belt.webbingMm, lap: 76 } }
    expect(propertyValues('slot-spare', 'lap', { ...scene, belt: wide, seat: { slots: [upright] } })).toEqual(
      [{ subject: 'lap-left', value: -16 }],
    )
  })

  it('measures how far a tab lies from the outside of its tube, negative inside it, and an insert in it as no distance', () => {
    const placed = (xMm: number, zMm: number, change: Partial<Anchor['mount']> = {}): Anchor => {
      const anchor = tab('lap-left', 'bar')
      return {
        ...anchor,
        mount: { ...anchor.mount, point: { xMm, yMm: 100, zMm }, ...change } as Anchor['mount'],
      }
    }
    const valueOf = (anchor: Anchor) =>
      propertyValues('tab-to-tube', null, {
        ...scene,
        anchors: [anchor],
        tubes: [tube('bar', 'cage', 40)],
      })
    // The tube's middle runs across at (1500, 900): 30-40-50 away, less its radius of 20 mm.
    expect(valueOf(placed(1530, 860))).toEqual([{ subject: 'lap-left', value: 30 }])
    expect(valueOf(placed(1505, 900))).toEqual([{ subject: 'lap-left', value: -15 }])
    expect(valueOf(placed(1505, 900, { form: 'insert' }))).toEqual([{ subject: 'lap-left', value: 0 }])
    expect(valueOf(placed(1530, 860, { form: 'insert' }))).toEqual([{ subject: 'lap-left', value: 30 }])
    // Past the end of the tube, at y = −500: 30-40 beside it and 120 beyond is 130.
    expect(valueOf(placed(1530, 860, { point: { xMm: 1530, yMm: -620, zMm: 860 } }))).toEqual([
      { subject: 'lap-left', value: 110 },
    ])
    expect(valueOf(placed(1530, 860, { tubeId: null }))).toEqual([])
    expect(valueOf(wrap('lap-left', 'bar'))).toEqual([])
  })

  const at = (strap: StrapId, xMm: number, yMm: number, zMm: number): Anchor => {
    const anchor = tab(strap, null)
    return { ...anchor, mount: { ...anchor.mount, point: { xMm, yMm, zMm } } }
  }

  it('takes how far a thigh strap’s anchor is from the lap strap’s on its side, in space', () => {
    const six = { ...belt, arrangement: 6 as const }
    const anchors = [
      at('lap-left', 100, -200, 0),
      at('lap-right', 100, 200, 0),
      at('sub-left', 130, -200, -40), // 3-4-5: 50 mm
      at('sub-right', 100, 200, 0),
    ]
    expect(propertyValues('sub-to-lap', 'sub', { ...scene, belt: six, anchors })).toEqual([
      { subject: 'sub-left', value: 50 },
      { subject: 'sub-right', value: 0 },
    ])
    expect(propertyValues('sub-to-lap', 'sub', { ...scene, anchors })).toEqual([]) // five points: no thigh straps
    expect(propertyValues('sub-to-lap', 'sub', { ...scene, belt: six, anchors: anchors.slice(2) })).toEqual(
      [],
    )
  })

  it('calls shoulder straps at one point or on one tail shared', () => {
    const apart = (mm: number, change: Partial<Belt> = {}) =>
      propertyValues('shoulder-anchorages', 'shoulder', {
        ...scene,
        belt: { ...belt, ...change },
        anchors: [at('shoulder-left', 0, -mm / 2, 0), at('shoulder-right', 0, mm / 2, 0)],
      })
    expect(apart(0)).toEqual([{ subject: 'shoulder-pair', value: 'shared' }])
    expect(apart(9.9)).toEqual([{ subject: 'shoulder-pair', value: 'shared' }])
    expect(apart(10)).toEqual([{ subject: 'shoulder-pair', value: 'separate' }])
    expect(apart(200, { shoulderTailMm: 300 })).toEqual([{ subject: 'shoulder-pair', value: 'shared' }])
    expect(apart(200, { arrangement: 3 })).toEqual([])
  })

  it('says whether the shoulder straps are joined, which one strap alone cannot be', () => {
    const joined = { ...scene, belt: { ...belt, shoulderTailMm: 150 } }
    expect(propertyValues('belt-joined', null, scene)).toEqual([{ subject: 'belt', value: 'no' }])
    expect(propertyValues('belt-joined', null, joined)).toEqual([{ subject: 'belt', value: 'yes' }])
    expect(propertyValues('belt-joined', null, { ...scene, belt: { ...belt, arrangement: 3 } })).toEqual([])
  })

  it('calls shoulder straps crossed when the left one is anchored to the right of the right one', () => {
    const at = (leftMm: number, rightMm: number): PropertyScene => ({
      ...scene,
      anchors: (
        [
          ['shoulder-left', leftMm],
          ['shoulder-right', rightMm],
        ] as const
      ).map(([strap, yMm]) => {
        const anchor = tab(strap, null)
        return { ...anchor, mount: { ...anchor.mount, point: { xMm: 1500, yMm, zMm: 900 } } }
      }),
    })
    const crossed = (given: PropertyScene) => propertyValues('straps-crossed', 'shoulder', given)
    expect(crossed(at(-90, 90))).toEqual([{ subject: 'shoulder-pair', value: 'no' }])
    expect(crossed(at(90, -90))).toEqual([{ subject: 'shoulder-pair', value: 'yes' }])
    // Nor do two straps on one point or joined into one tail cross.
    expect(crossed(at(0, 0))).toEqual([{ subject: 'shoulder-pair', value: 'no' }])
    const joined = { ...at(90, -90), belt: { ...belt, shoulderTailMm: 150 } }
    expect(crossed(joined)).toEqual([{ subject: 'shoulder-pair', value: 'no' }])
    expect(crossed({ ...at(90, -90), anchors: [] })).toEqual([])
  })

  it('names how every strap is fixed, and the thread of eye bolts alone', () => {
    const lap = tab('lap-right', null)
    const eye: Anchor = {
      id: 'eye',
      strap: 'lap-left',
      mount: {
        kind: 'eye',
        point: { xMm: 1300, yMm: -240, zMm: 80 },
        planDeg: 170,
        riseDeg: 45,
        threadDiameterMm: 11.1,
        eyeDiameterMm: 25,
        tubeId: null,
      },
    }
    const clevis = { ...lap, mount: { ...lap.mount, form: 'clevis', shear: 'double' } } as Anchor
    const mixed = {
      ...scene,
      anchors: [wrap('shoulder-left', 'hoop'), tab('shoulder-right', null), eye, clevis],
    }
    expect(propertyValues('anchor-form', null, mixed)).toEqual([
      { subject: 'shoulder-left', value: 'wrap' },
      { subject: 'shoulder-right', value: 'plate' },
      { subject: 'lap-left', value: 'eye' },
      { subject: 'lap-right', value: 'clevis' },
    ])
    expect(propertyValues('anchor-form', 'lap', mixed)).toHaveLength(2)
    expect(propertyValues('eye-thread', null, mixed)).toEqual([{ subject: 'lap-left', value: 11.1 }])
    // An eye has neither plate nor shear.
    expect(propertyValues('tab-shear', 'lap', mixed)).toEqual([{ subject: 'lap-right', value: 'double' }])
    expect(propertyValues('tab-thickness', 'lap', mixed)).toEqual([{ subject: 'lap-right', value: 5 }])
  })

  it('says of lap and thigh straps too whether left and right are mixed up', () => {
    const six = { ...belt, arrangement: 6 as const }
    const pairs = (lapLeftMm: number, subLeftMm: number) =>
      propertyValues('straps-crossed', null, {
        ...scene,
        belt: six,
        anchors: [
          at('lap-left', 0, lapLeftMm, 0),
          at('lap-right', 0, -lapLeftMm, 0),
          at('sub-left', 0, subLeftMm, 0),
          at('sub-right', 0, -subLeftMm, 0),
        ],
      })
    expect(pairs(-200, -50)).toEqual([
      { subject: 'lap-pair', value: 'no' },
      { subject: 'sub-pair', value: 'no' },
    ])
    expect(pairs(200, 50)).toEqual([
      { subject: 'lap-pair', value: 'yes' },
      { subject: 'sub-pair', value: 'yes' },
    ])
    expect(
      propertyValues('straps-crossed', 'sub', { ...scene, anchors: [at('sub-left', 0, 50, 0)] }),
    ).toEqual([])
  })

  it('has an answer for every property, and an empty one for a place with nothing', () => {
    for (const id of PROPERTY_IDS) {
      for (const { value } of propertyValues(id, null, scene)) {
        expect(typeof value === 'string' || Number.isFinite(value)).toBe(true)
      }
    }
    expect(
      propertyValues('bar-diameter', null, { belt, anchors: [], tubes: [], seat: { slots: [] } }),
    ).toEqual([])
  })
})

import { describe, expect, it } from 'vitest'

import type { Layout } from '../../../../src/domain/layout/document/layout'
import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import { ruleSetOf } from '../../../../src/domain/layout/document/ruleSetOf'
import { appliedRemedy } from '../../../../src/domain/layout/edit/remedy'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import type { Finding, Remedy } from '../../../../src/domain/rules/finding'
import type { Mount } from '../../../../src/domain/straps/anchor'
import { exampleIndex, exampleLayout } from '../../../support/exampleLayouts'

const rock = exampleLayout('rock-buggy.layout.json')
const trail = exampleLayout('trail-car-two-seat.layout.json')

const findingsOf = (layout: Layout): readonly Finding[] =>
  evaluateLayout(layout).places.flatMap((place) => place.findings)

/** The finding again after a change: of its place and its rule alone, so that nothing else is worked out. */
const findingAfter = (layout: Layout, { id, placeId, ruleId }: Finding): Finding | undefined => {
  const places = layout.places.filter((place) => place.id === placeId)
  const ruleSet = ruleSetOf(layout)
  if (ruleSet === null) throw new Error('no rule set')
  const alone = { ...ruleSet, id: 'alone', rules: ruleSet.rules.filter((rule) => rule.id === ruleId) }
  return evaluateLayout(
    { ...layout, places, ruleSetId: 'alone', ownRuleSets: [alone] },
    { extent: 'what-moves' },
  ).places[0]?.findings.find((finding) => finding.id === id)
}

/** Any finding of the layout, with another remedy put in. */
const findingWith = (layout: Layout, remedy: Remedy | null, patch: Partial<Finding> = {}): Finding => {
  const finding = findingsOf(layout)[0]
  if (finding === undefined) throw new Error('no finding')
  return { ...finding, ...patch, remedy }
}

const anchorPoints = (layout: Layout, placeIndex = 0) =>
  layout.places[placeIndex]?.anchors.map((anchor) => anchor.mount.point) ?? []

describe('appliedRemedy', () => {
  it('clears the finding it belongs to, for every remedy that the examples offer', () => {
    const applied = exampleIndex.flatMap(({ file }) => {
      const layout = exampleLayout(file)
      return findingsOf(layout)
        .filter(({ remedy }) => remedy !== null && remedy.kind !== 'none')
        .map((finding) => {
          const mended = appliedRemedy(layout, finding)
          const after = findingAfter(mended, finding)
          // A new anchor clears that it was missing; where it lies is another finding's business.
          const isCleared =
            finding.remedy?.kind === 'add-anchor'
              ? after?.problem?.kind !== 'anchor-missing'
              : after?.verdict === 'clear' || after?.verdict === 'tight'
          return { file, id: finding.id, isLayout: parseLayout(mended).ok, isCleared }
        })
    })
    expect(applied.length).toBeGreaterThan(10)
    expect(applied.filter(({ isLayout, isCleared }) => !isLayout || !isCleared)).toEqual([])
  })

  it('changes nothing where there is no remedy', () => {
    expect(appliedRemedy(rock, findingWith(rock, null))).toBe(rock)
    expect(appliedRemedy(rock, findingWith(rock, { kind: 'none', reason: 'No move clears it.' }))).toBe(rock)
    const elsewhere = findingWith(rock, { kind: 'add-anchor', strap: 'sub-centre' }, { placeId: 'nobody' })
    expect(appliedRemedy(rock, elsewhere)).toBe(rock)
  })

  it('moves exactly the named anchors: outward is away from the seat’s centre line on both sides', () => {
    const mended = appliedRemedy(
      rock,
      findingWith(rock, {
        kind: 'move-anchors',
        anchorIds: ['driver-lap-left', 'driver-lap-right'],
        direction: 'outward',
        byMm: 12,
      }),
    )
    // From y = 70 and 650 about the centre line at 360.
    expect(anchorPoints(mended)[2]?.yMm).toBe(58)
    expect(anchorPoints(mended)[3]?.yMm).toBe(662)
    expect(anchorPoints(mended)[0]).toEqual(anchorPoints(rock)[0])
  })

  it('moves a bar with the wraps of every place on it', () => {
    const mended = appliedRemedy(
      trail,
      findingWith(trail, { kind: 'move-tube', tubeId: 'harness-bar', direction: 'up', byMm: 22 }),
    )
    expect(mended.tubes.find((tube) => tube.id === 'harness-bar')?.points.map(({ zMm }) => zMm)).toEqual([
      722, 722,
    ])
    expect(anchorPoints(mended, 0)[0]?.zMm).toBeCloseTo(722, 9)
    expect(anchorPoints(mended, 1)[1]?.zMm).toBeCloseTo(722, 9)
    expect(anchorPoints(mended, 1)[2]).toEqual(anchorPoints(trail, 1)[2])
  })

  it('keeps a wrap on its bar when the anchor alone is moved', () => {
    const mended = appliedRemedy(
      trail,
      findingWith(trail, {
        kind: 'move-anchors',
        anchorIds: ['driver-shoulder-left'],
        direction: 'inward',
        byMm: 5,
      }),
    )
    expect(anchorPoints(mended)[0]).toEqual({ xMm: 1690, yMm: 225, zMm: 700 })
  })

  it('turns a tab', () => {
    const remedy = { kind: 'turn-tab', anchorId: 'driver-lap-left', planDeg: -12, leanDeg: 3 } as const
    const mended = appliedRemedy(rock, findingWith(rock, remedy))
    expect(mended.places[0]?.anchors[2]?.mount).toMatchObject({ planDeg: -12, leanDeg: 3 })
    expect(mended.places[0]?.anchors[3]).toEqual(rock.places[0]?.anchors[3])
  })

  it('holds a bolt from both sides in a clevis instead of an insert, and gives an eye bolt its thread', () => {
    const lapLeft = (layout: Layout): Mount | undefined =>
      layout.places[0]?.anchors.find(({ strap }) => strap === 'lap-left')?.mount
    const withLap = (mount: Mount): Layout => ({
      ...rock,
      places: rock.places.map((place) => ({
        ...place,
        anchors: place.anchors.map((anchor) => (anchor.strap === 'lap-left' ? { ...anchor, mount } : anchor)),
      })),
    })
    const before = lapLeft(rock)
    if (before?.kind !== 'tab') throw new Error('the rock buggy has lap tabs')
    const doubled = (mount: Mount): Mount | undefined => {
      const layout = withLap(mount)
      const remedy = { kind: 'change-property', property: 'tab-shear', to: 'double' } as const
      return lapLeft(appliedRemedy(layout, findingWith(layout, remedy, { subject: 'lap-left' })))
    }
    const insert = { ...before, form: 'insert', shear: 'single' } as const
    expect(doubled(insert)).toEqual({ ...before, form: 'clevis', shear: 'double' })
    expect(doubled({ ...before, shear: 'single' })).toEqual({ ...before, shear: 'double' })
    expect(doubled({ ...before, form: 'plate', shear: 'single' })).toEqual({
      ...before,
      form: 'plate',
      shear: 'double',
    })
    const eye: Mount = {
      kind: 'eye',
      point: before.point,
      planDeg: 175,
      riseDeg: 50,
      threadDiameterMm: 10,
      eyeDiameterMm: 25,
      tubeId: null,
    }
    const layout = withLap(eye)
    const remedy = { kind: 'change-property', property: 'eye-thread', to: '11.1' } as const
    const applied = appliedRemedy(layout, findingWith(layout, remedy, { subject: 'lap-left' }))
    expect(lapLeft(applied)).toEqual({ ...eye, threadDiameterMm: 11.1 })
  })

  it.each([
    { property: 'belt-points', to: '7', belt: { arrangement: 7 } },
    { property: 'belt-buckle', to: 'rotary-cam', belt: { buckle: 'rotary-cam' } },
    { property: 'belt-material', to: 'nylon', belt: { material: 'nylon' } },
    { property: 'belt-lap-adjuster', to: 'pull-down', belt: { lapAdjuster: 'pull-down' } },
    { property: 'belt-head-and-neck', to: 'no', belt: { headAndNeckRestraint: false } },
    { property: 'belt-points', to: '9', belt: rock.places[0]?.belt },
  ] as const)('sets $property to $to, if there is such a value', ({ property, to, belt }) => {
    const mended = appliedRemedy(
      rock,
      findingWith(rock, { kind: 'change-property', property, to }, { subject: 'belt' }),
    )
    expect(mended.places[0]?.belt).toMatchObject(belt ?? {})
  })

  it('sets a width, a plate or a hoop on exactly the straps that the finding is about', () => {
    const width = appliedRemedy(
      rock,
      findingWith(
        rock,
        { kind: 'change-property', property: 'webbing-width', to: '50' },
        { subject: 'shoulder-pair' },
      ),
    )
    expect(width.places[0]?.belt.webbingMm).toEqual({ shoulder: 50, lap: 76, sub: 51 })
    const plate = appliedRemedy(
      rock,
      findingWith(
        rock,
        { kind: 'change-property', property: 'tab-thickness', to: '6' },
        { subject: 'lap-left' },
      ),
    )
    const thicknesses = plate.places[0]?.anchors.map(({ mount }) => mount.kind === 'tab' && mount.thicknessMm)
    expect(thicknesses).toEqual([4.8, 4.8, 6, 4.8, 4.8, 4.8])
    const hoops = appliedRemedy(
      trail,
      findingWith(
        trail,
        { kind: 'change-property', property: 'wrap-guide-hoops', to: 'no' },
        { subject: 'shoulder-right' },
      ),
    )
    expect(hoops.places[0]?.anchors[1]?.mount).toMatchObject({ guideHoops: false })
    const bar = appliedRemedy(
      trail,
      findingWith(
        trail,
        { kind: 'change-property', property: 'wrap-bar-diameter', to: '42.4' },
        { subject: 'shoulder-right' },
      ),
    )
    expect(bar.tubes.find((tube) => tube.id === 'harness-bar')?.outsideDiameterMm).toBe(42.4)
  })
})

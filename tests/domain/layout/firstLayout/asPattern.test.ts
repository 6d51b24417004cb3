import { describe, expect, it } from 'vitest'
import { layoutText } from '../../../../src/domain/layout/document/layoutText'
import { parseLayoutText } from '../../../../src/domain/layout/document/parseLayout'
import { begunFresh, begunFrom, withAnswer } from '../../../../src/domain/layout/firstLayout/answer'
import { askedPlace } from '../../../../src/domain/layout/firstLayout/askedPlace'
import { asPattern } from '../../../../src/domain/layout/firstLayout/asPattern'
import { barOf, frontMm } from '../../../../src/domain/layout/firstLayout/tubeTape'
import { anchorOf } from '../../../../src/domain/straps/mount'
import { strapsOf } from '../../../../src/domain/straps/strap'
import { exampleIndex, exampleLayout } from '../../../support/exampleLayouts'

const FILES = exampleIndex.map(({ file }) => file)

/** A layout with something in every field that a pattern leaves behind. */
const full = () => {
  const layout = exampleLayout('rock-buggy.layout.json')
  const [place, ...others] = layout.places
  if (place === undefined) throw new Error('the example has a place')
  return {
    ...layout,
    tolerance: { positionMm: 2, angleDeg: 1 } as unknown as NonNullable<typeof layout.tolerance>,
    places: [
      { ...place, belt: { ...place.belt, hardware: { lap: { boltDiameterMm: 11.1, torqueNm: 45 } } } },
      ...others,
    ],
  }
}

describe('asPattern', () => {
  it('keeps the car, its seats, belts, anchors, rules and tolerance', () => {
    const from = full()
    const pattern = asPattern(from)
    expect(Object.keys(pattern).toSorted()).toEqual(
      [
        'version',
        'job',
        'datum',
        'units',
        'dustyOrMuddyUse',
        'ruleSetId',
        'tolerance',
        'tubes',
        'places',
        ...(['ownRuleSets', 'confirmedDocuments', 'tapePoints'] as const).filter((key) => key in from),
      ].toSorted(),
    )
    for (const key of ['datum', 'units', 'dustyOrMuddyUse', 'ruleSetId', 'tolerance', 'tubes'] as const)
      expect(pattern[key]).toEqual(from[key])
    pattern.places.forEach((place, index) => {
      const was = from.places[index]
      expect({ ...place, occupants: [], belt: null }).toEqual({ ...was, occupants: [], belt: null })
    })
  })

  it('leaves job, people’s names and measurements, bolts, belts, welded records, revisions, variants and talks behind', () => {
    const pattern = asPattern(full())
    expect(Object.values(pattern.job).join('')).toBe('')
    expect(pattern.job.revisions).toBeUndefined()
    for (const { occupants, belt } of pattern.places) {
      expect(occupants.map(({ name }) => name)).toEqual(occupants.map((_, index) => `Occupant ${index + 1}`))
      expect(occupants.every(({ measured }) => Object.keys(measured).length === 0)).toBe(true)
      expect(belt.hardware).toBeUndefined()
    }
    for (const key of ['asWelded', 'belts', 'variants', 'reviews', 'photos'])
      expect(pattern).not.toHaveProperty(key)
  })

  it.each(FILES)('%s as a pattern begins sound, with an anchor for every strap', (file) => {
    const { layout } = begunFrom(asPattern(exampleLayout(file)))
    const parsed = parseLayoutText(layoutText(layout))
    expect(parsed.ok ? [] : parsed.error).toEqual([])
    const place = askedPlace(layout)
    expect(place.anchors.map(({ strap }) => strap).toSorted()).toEqual([...strapsOf(place.belt)].toSorted())
  })

  it('starts as the pattern is, its tabs going with the seat and its bar staying on the car', () => {
    const pattern = asPattern(exampleLayout('rock-buggy.layout.json'))
    const start = begunFrom(pattern)
    expect(start.layout.places[0]?.anchors).toEqual(pattern.places[0]?.anchors)
    const seat = askedPlace(pattern).seat.hipPoint
    const { layout } = withAnswer(start, 'seat.cushion', 300)
    const upMm = askedPlace(layout).seat.hipPoint.zMm - seat.zMm
    expect(upMm).not.toBe(0)
    for (const [index, { mount }] of askedPlace(layout).anchors.entries()) {
      const was = askedPlace(pattern).anchors[index]?.mount
      const expected = mount.tubeId === null ? upMm : 0
      expect(mount.point.zMm - (was?.point.zMm ?? 0)).toBeCloseTo(expected, 6)
    }
    const [bar, wasBar] = [barOf(layout), barOf(pattern)]
    expect(bar).toEqual(wasBar)
  })

  it.each([
    ['shoulder.kind', 'tab', 'bar-tab', 'shoulder-left'],
    ['bar.has', 'no', 'bar-tab', 'shoulder-left'],
    ['lap.tube', 'floor-or-plate', 'wrap', 'lap-left'],
    ['tubes.kind', 'none', 'wrap', 'lap-left'],
  ] as const)('leaves a tab where it was beside the seat when %s is %s', (id, answer, kind, strap) => {
    const own = withAnswer(withAnswer(begunFresh(), 'shoulder.kind', kind), 'tubes.kind', 'cross').layout
    const start = begunFrom(asPattern(own))
    const at = (layout: typeof own) => anchorOf(askedPlace(layout).anchors, strap)?.mount
    const before = at(start.layout)
    const after = at(withAnswer(start, id, answer).layout)
    expect(before?.tubeId).not.toBeNull()
    expect(after?.tubeId).toBeNull()
    expect(after?.point).toEqual(before?.point)
  })

  it('reads a bent bar where the tape is held to it, at the middle of the seat', () => {
    const car = withAnswer(begunFresh(), 'shoulder.kind', 'tab').layout
    const [bar] = car.tubes
    if (bar === undefined) throw new Error('there is a bar')
    const points = [-500, -300, 300, 500].map((yMm) => ({
      xMm: Math.abs(yMm) < 400 ? 1400 : 1300,
      yMm,
      zMm: 560,
    }))
    const bent = { ...car, tubes: [{ ...bar, points }] }
    // Half of 38.1 mm ahead of the piece behind the seat, not of the ends.
    expect(frontMm(bent, { ...bar, points })).toBeCloseTo(1400 - 19.05, 9)
    const { layout } = withAnswer(begunFrom(asPattern(bent)), 'bar.front', 1390.95)
    expect(layout.tubes[0]?.points.map(({ xMm }) => xMm)).toEqual([1310, 1410, 1410, 1310])
  })

  it('comes back to the pattern when another belt is chosen and chosen back', () => {
    const start = begunFrom(asPattern(exampleLayout('rock-buggy.layout.json')))
    const { arrangement } = askedPlace(start.layout).belt
    const other = withAnswer(start, 'belt.arrangement', arrangement === 4 ? '6' : '4')
    const back = withAnswer(other, 'belt.arrangement', String(arrangement))
    expect(askedPlace(back.layout).anchors.map(({ strap, mount }) => [strap, mount.point])).toEqual(
      askedPlace(start.layout).anchors.map(({ strap, mount }) => [strap, mount.point]),
    )
  })
})

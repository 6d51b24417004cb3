import { describe, expect, it } from 'vitest'
import type { Layout, Place } from '../../../../src/domain/layout/document/layout'
import { withAnchorMoved } from '../../../../src/domain/layout/edit/anchorMove'
import { carriedOver } from '../../../../src/domain/layout/evaluate/carriedOver'
import { evaluateLayout, layoutNumbers } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { solvedSittings } from '../../../../src/domain/layout/evaluate/solvedSittings'
import type { ShownEvaluation } from '../../../../src/domain/layout/evaluate/evaluation'
import { crossTube, flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'

const place = flatPlace({
  anchors: [
    ...tabPair('shoulder', { xMm: 400, yMm: 100, zMm: 420 }),
    ...tabPair('lap', { xMm: 150, yMm: 260, zMm: -190 }),
  ],
})
const car = flatLayout([place], { tubes: [crossTube('rear', 900, 500)] })
const evaluation = evaluateLayout(car)
const inMirror = (mirrored: boolean): Layout =>
  changed({ mirrored: { shoulder: mirrored, lap: mirrored, sub: mirrored } })

const changed = (change: Partial<Place>): Layout => ({ ...car, places: [{ ...place, ...change }] })

/** What of the car's zones is still shown for another layout, by anchor: "side top", one of them, or nothing. */
const shownZones = (after: Layout, before = car): Readonly<Record<string, string>> => {
  // Every zone known, and each different from the others.
  const known: ShownEvaluation = {
    ...evaluation,
    places: evaluation.places.map((each) => ({
      ...each,
      sittings: layoutNumbers(before).places[0]?.sittings ?? [],
      zones: each.zones.map(({ anchorId }, index) => ({
        anchorId,
        side: [[{ uMm: index, vMm: 0 }]],
        top: [[{ uMm: index, vMm: 1 }]],
      })),
    })),
  }
  const shown = carriedOver(after, layoutNumbers(after), { layout: before, evaluation: known })
  return Object.fromEntries(
    (shown.places[0]?.zones ?? []).map(({ anchorId, side, top }) => [
      anchorId.replace('-anchor', ''),
      [side === 'pending' ? [] : ['side'], top === 'pending' ? [] : ['top']].flat().join(' '),
    ]),
  )
}

const ALL = {
  'shoulder-left': 'side top',
  'shoulder-right': 'side top',
  'lap-left': 'side top',
  'lap-right': 'side top',
}
const NONE = { 'shoulder-left': '', 'shoulder-right': '', 'lap-left': '', 'lap-right': '' }

describe('layoutNumbers', () => {
  it('says of every finding what the whole evaluation says, but for room and how near the limit is', () => {
    const numbers = layoutNumbers(car)
    const whole = new Map(evaluation.places[0]?.findings.map((finding) => [finding.id, finding]))
    expect(numbers.places[0]?.findings).toHaveLength(whole.size)
    expect(numbers.places[0]?.sittings).toEqual(evaluation.places[0]?.sittings)
    const unlike = (numbers.places[0]?.findings ?? []).filter((finding) => {
      const { verdict, value, roomMm, worstSitting } = whole.get(finding.id) ?? finding
      if (finding.value !== value || finding.worstSitting !== worstSitting) return true
      if (finding.roomMm !== 'pending') return finding.verdict !== verdict || finding.roomMm !== roomMm
      return finding.verdict === 'kept' ? verdict !== 'clear' && verdict !== 'tight' : verdict !== 'broken'
    })
    expect(unlike).toEqual([])
    expect(numbers.places[0]?.findings.some(({ roomMm }) => roomMm === 'pending')).toBe(true)
    expect(numbers.places[0]?.zones.every(({ side, top }) => side === 'pending' && top === 'pending')).toBe(
      true,
    )
  })
})

describe('carriedOver', () => {
  it('gives the whole answer back where nothing changed but words', () => {
    const renamed: Layout = { ...car, job: { ...car.job, notes: 'Ring back' } }
    const shown = carriedOver(renamed, layoutNumbers(renamed), { layout: car, evaluation })
    const bare = evaluation.places[0]?.findings.map((finding) => ({ ...finding, remedy: null }))
    expect(shown.places[0]?.findings).toEqual(bare)
    expect(shownZones(renamed)).toEqual(ALL)
  })

  it.each([
    ['the seat', changed({ seat: { ...place.seat, reclineDeg: 21 } })],
    ['the belt', changed({ belt: { ...place.belt, adjusterTailMm: 210 } })],
    ['a person', changed({ occupants: place.occupants.map((each) => ({ ...each, massKg: 90 })) })],
    ['a tube', { ...car, tubes: [crossTube('rear', 901, 500)] }],
    ['the rule set', { ...car, ruleSetId: 'us-road-anchorages-571-210' }],
    ['what documents are there', { ...car, confirmedDocuments: ['A, 1'] }],
    ['dust', { ...car, dustyOrMuddyUse: !car.dustyOrMuddyUse }],
    ['what moves as one', changed({ mirrored: { ...place.mirrored, sub: !place.mirrored.sub } })],
  ])('shows nothing worked out before %s changed', (_what, after) => {
    expect(shownZones(after as Layout)).toEqual(NONE)
    const shown = carriedOver(after as Layout, layoutNumbers(after as Layout), { layout: car, evaluation })
    expect(shown.places[0]?.findings).toEqual(layoutNumbers(after as Layout).places[0]?.findings)
  })

  it('keeps the zone of a mirrored pair in the plane it is moved in, and no zone that hangs on the buckle', () => {
    const mirrored = inMirror(true)
    const lapUp = withAnchorMoved(mirrored, 'driver', 'lap-left-anchor', { zMm: -200 })
    expect(shownZones(lapUp, mirrored)).toEqual({ ...NONE, 'lap-left': 'side', 'lap-right': 'side' })
    const lapBack = withAnchorMoved(mirrored, 'driver', 'lap-left-anchor', { xMm: 170 })
    expect(shownZones(lapBack, mirrored)).toEqual({
      ...NONE,
      'lap-left': 'side top',
      'lap-right': 'side top',
    })
    const shoulderOut = withAnchorMoved(mirrored, 'driver', 'shoulder-left-anchor', { yMm: -120 })
    expect(shownZones(shoulderOut, mirrored)).toEqual({
      ...ALL,
      'shoulder-left': 'top',
      'shoulder-right': 'top',
    })
  })

  it('keeps no zone of the other side of a split pair, nor of a mirrored one whose adjuster is measured to the buckle', () => {
    const split = inMirror(false)
    const back = (layout: Layout) => withAnchorMoved(layout, 'driver', 'lap-left-anchor', { xMm: 170 })
    expect(shownZones(back(split), split)).toEqual({ ...NONE, 'lap-left': 'side top' })
    const adjusted = changed({
      mirrored: { shoulder: true, lap: true, sub: true },
      belt: { ...place.belt, adjusters: { lap: { fromAnchorMm: 70, lengthMm: 60 } } },
    })
    expect(shownZones(back(adjusted), adjusted)).toEqual(NONE)
  })

  it('keeps nothing where another position between the ends of the travel decides', () => {
    const seat = { ...place.seat, slide: { forwardMm: 0, rearwardMm: 60 } }
    const sliding: Place = { ...place, seat }
    // A rod in the middle of the left shoulder strap when the seat has slid 20 mm, and nowhere near it when the tabs are lower.
    const slid: Place = { ...place, seat: { ...place.seat, hipPoint: { ...place.seat.hipPoint, xMm: 20 } } }
    const path = solvedSittings({ ...car, places: [slid] }, slid)[0]?.solved.paths[0]
    if (path === undefined) throw new Error('no strap')
    const { effectiveAnchor: from, bodyContact: to } = path
    const rod = {
      ...crossTube('rod', (from.xMm + to.xMm) / 2, (from.zMm + to.zMm) / 2, 'cage'),
      outsideDiameterMm: 4,
      wallMm: 1,
    }
    const before = { ...car, tubes: [...car.tubes, rod], places: [sliding] }
    const lowered = (of: Layout): Layout =>
      withAnchorMoved(of, 'driver', 'shoulder-left-anchor', { zMm: 360 })
    const after = lowered(before)
    const sittings = (of: Layout) =>
      layoutNumbers(of).places[0]?.sittings.map(({ sitting }) => sitting.slideMm)
    expect(sittings(before)).toContain(20)
    expect(sittings(after)).toEqual([0, 60])
    expect(shownZones(after, before)).toEqual(NONE)
    const open = { ...before, tubes: car.tubes }
    expect(shownZones(lowered(open), open)).toMatchObject({ 'lap-left': 'side top', 'lap-right': 'side top' })
  })

  it('keeps no zone of a tab that was made otherwise', () => {
    const turned = changed({
      anchors: place.anchors.map((anchor) =>
        anchor.strap === 'shoulder-left' && anchor.mount.kind === 'tab'
          ? { ...anchor, mount: { ...anchor.mount, planDeg: 10 } }
          : anchor,
      ),
    })
    expect(shownZones(turned)).toMatchObject({ 'shoulder-left': '', 'lap-left': 'side top' })
  })

  it('keeps the room only of findings whose straps end where they did', () => {
    const after = withAnchorMoved(inMirror(true), 'driver', 'shoulder-left-anchor', { xMm: 410 })
    const before = { layout: inMirror(true), evaluation: evaluateLayout(inMirror(true)) }
    const shown = carriedOver(after, layoutNumbers(after), before)
    const pending = (shown.places[0]?.findings ?? []).filter(({ roomMm }) => roomMm === 'pending')
    expect(pending.length).toBeGreaterThan(0)
    expect(pending.filter(({ subject }) => !subject.startsWith('shoulder'))).toEqual([])
    const lap = (findings: ShownEvaluation['places'][number]['findings'] = []) =>
      findings.filter(({ subject }) => subject.startsWith('lap')).map(({ id, roomMm }) => [id, roomMm])
    expect(lap(shown.places[0]?.findings)).toEqual(lap(evaluateLayout(after).places[0]?.findings))
  })
})

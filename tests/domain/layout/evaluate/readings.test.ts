import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { ruleSetsOf } from '../../../../src/domain/layout/document/ruleSetOf'
import { valuesOf } from '../../../../src/domain/layout/evaluate/placeNumbers'
import { ruleContext } from '../../../../src/domain/layout/evaluate/ruleContexts'
import { quantityIn, solvedSittings } from '../../../../src/domain/layout/evaluate/solvedSittings'
import { speaksIn } from '../../../../src/domain/layout/evaluate/speaking'
import { ruleApplies } from '../../../../src/domain/rules/applies'
import { ruleSubjects } from '../../../../src/domain/rules/subjects'
import { exampleLayout } from '../../../support/exampleLayouts'

const EXAMPLES = [
  'rock-buggy.layout.json',
  'trail-car-two-seat.layout.json',
  'road-fixed-seat.layout.json',
  'everything-wrong.layout.json',
  'nearly-empty.layout.json',
]

/** With a back that reclines past every limit that rules speak of, so that rules speak in some sittings and not in others. */
const reclining = (layout: Layout): Layout => ({
  ...layout,
  places: layout.places.map((place) => ({
    ...place,
    seat: { ...place.seat, reclineRange: { uprightDeg: 5, reclinedDeg: 45 } },
  })),
})

describe('speaksIn', () => {
  it('says of every sitting what asking it alone says, under every rule set', () => {
    let spoken = 0
    let silent = 0
    for (const file of EXAMPLES) {
      const layout = reclining(exampleLayout(file))
      for (const place of layout.places) {
        const sittings = solvedSittings(layout, place).map(({ sitting }) => sitting)
        const scene = { belt: place.belt, anchors: place.anchors, tubes: layout.tubes, seat: place.seat }
        for (const rule of ruleSetsOf(layout).flatMap(({ rules }) => rules)) {
          const subjects = rule.kind === 'quantity' ? ruleSubjects(rule, scene) : ['belt' as const]
          for (const subject of subjects) {
            const speaks = speaksIn(layout, place, rule, subject)
            const all = sittings.map(speaks)
            expect(all).toEqual(
              sittings.map((sitting) => ruleApplies(rule, ruleContext(layout, place, sitting, subject))),
            )
            spoken += all.filter(Boolean).length
            silent += all.filter((each) => !each).length
          }
        }
      }
    }
    expect(Math.min(spoken, silent)).toBeGreaterThan(100)
  })
})

describe('valuesOf', () => {
  it('gives every number of every sitting, and null where there is none', () => {
    let missing = 0
    for (const file of EXAMPLES) {
      const layout = exampleLayout(file)
      for (const place of layout.places) {
        const sittings = solvedSittings(layout, place)
        const scene = { belt: place.belt, anchors: place.anchors, tubes: layout.tubes, seat: place.seat }
        for (const rule of ruleSetsOf(layout).flatMap(({ rules }) => rules)) {
          if (rule.kind !== 'quantity') continue
          for (const subject of ruleSubjects(rule, scene)) {
            const values = valuesOf(sittings, rule.quantity, subject)
            expect(values).toEqual(sittings.map((solved) => quantityIn(solved, rule.quantity, subject)))
            missing += values.filter((value) => value === null).length
          }
        }
      }
    }
    expect(missing).toBeGreaterThan(0)
  })
})

describe('solvedSittings', () => {
  it('seats everybody in every position as the sitting says', () => {
    const layout = reclining(exampleLayout('trail-car-two-seat.layout.json'))
    for (const place of layout.places) {
      const sittings = solvedSittings(layout, place)
      expect(new Set(sittings.map(({ sitting }) => sitting.reclineDeg)).size).toBeGreaterThan(2)
      for (const { sitting, scene } of sittings) {
        expect(scene.pose.reclineDeg).toBe(sitting.reclineDeg)
        expect(scene.body.reclineDeg).toBe(sitting.reclineDeg)
        expect(scene.pose.hip.xMm).toBe(place.seat.hipPoint.xMm + sitting.slideMm)
      }
    }
  })

  it('makes the outlines to draw a body by once, when somebody asks', () => {
    const layout = exampleLayout('rock-buggy.layout.json')
    const [first] = layout.places.flatMap((place) => solvedSittings(layout, place))
    if (first === undefined) throw new Error('nobody sits there')
    const { body } = first.scene
    expect(body.outlines.side.length).toBeGreaterThan(0)
    expect(body.outlines).toBe(body.outlines)
    expect(structuredClone(body).outlines).toEqual(body.outlines)
  })

  it('keeps everybody as the same objects while only anchors and tubes change, and not when the seat or a person does', () => {
    const layout = exampleLayout('rock-buggy.layout.json')
    const [place] = layout.places
    if (place === undefined) throw new Error('the example has no place')
    const bodies = (now: Layout, at = place) => solvedSittings(now, at).map(({ scene }) => scene.body)
    const before = bodies(layout)
    const moved = { ...place, anchors: place.anchors.slice(1) }
    bodies({ ...layout, tubes: [], places: [moved] }, moved).forEach((body, index) =>
      expect(body).toBe(before[index]),
    )
    const seat = { ...place.seat, hipPoint: { ...place.seat.hipPoint, zMm: place.seat.hipPoint.zMm + 10 } }
    expect(bodies(layout, { ...place, seat })[0]?.hip.zMm).toBeCloseTo((before[0]?.hip.zMm ?? 0) + 10, 9)
    const [person, ...others] = place.occupants
    if (person === undefined) throw new Error('the example has nobody')
    const taller = { ...person, statureMm: person.statureMm + 100 }
    const grown = bodies(layout, { ...place, occupants: [taller, ...others] })
    expect(grown[0]?.shoulderPoint.left.zMm).toBeGreaterThan(before[0]?.shoulderPoint.left.zMm ?? 0)
  })
})

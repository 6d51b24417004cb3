import { describe, expect, it } from 'vitest'
import { answerFit } from '../../../src/state/fit/answerFit'
import type { FitQuestion } from '../../../src/state/fit/fitMessages'
import { isSameCount } from '../../../src/state/fit/staleFit'
import { exampleLayout } from '../../support/exampleLayouts'

const layout = exampleLayout('rock-buggy.layout.json')
const placeId = layout.places[0]?.id ?? ''
const question: FitQuestion = { layout, placeId }

/** The answer, and the progress that was reported on the way. */
const answered = (asked: FitQuestion) => {
  const progress: [number, number][] = []
  const answer = answerFit(asked, (done, total) => progress.push([done, total]))
  return { answer, progress }
}

describe('answering who fits', () => {
  it('reports progress from 0 on, rising, and ends with all 1,200 people', () => {
    const { answer, progress } = answered(question)
    const done = progress.map(([each]) => each)
    expect(done[0]).toBe(0)
    expect(done.length).toBeGreaterThan(10)
    expect(done).toEqual(done.toSorted((a, b) => a - b))
    expect(new Set(progress.map(([, total]) => total))).toEqual(new Set([1200]))
    expect(answer.ok && answer.value.people).toHaveLength(1200)
    // The way to another thread changes nothing.
    expect(structuredClone(answer)).toEqual(answer)
  })

  it('says so when the place is gone', () => {
    expect(answered({ layout, placeId: 'nowhere' })).toEqual({
      answer: { ok: false, error: { kind: 'nothing-to-count', placeId: 'nowhere' } },
      progress: [],
    })
  })
})

describe('a count', () => {
  const withPlace = (change: object): FitQuestion => ({
    placeId,
    layout: {
      ...layout,
      places: layout.places.map((place) => (place.id === placeId ? { ...place, ...change } : place)),
    },
  })

  it('still holds when the job, the units, names or the occupants change', () => {
    const renamed = { ...layout, job: { ...layout.job, name: 'another' }, datum: 'elsewhere' }
    expect(isSameCount(question, { layout: renamed, placeId })).toBe(true)
    const inches = { ...layout, units: { ...layout.units, length: 'in' as const } }
    expect(isSameCount(question, { layout: inches, placeId })).toBe(true)
    expect(isSameCount(question, withPlace({ name: 'x', occupants: [] }))).toBe(true)
    expect(isSameCount(question, structuredClone(question))).toBe(true)
    const drawn = { id: 'a', name: 'A', index: 0 }
    const others = [{ id: 'b', name: 'B', tubes: layout.tubes, places: layout.places }]
    expect(isSameCount(question, { layout: { ...layout, variants: { drawn, others } }, placeId })).toBe(true)
  })

  it('is stale when seat, belt, anchors, tubes, use or rule set change, or another place is looked at', () => {
    const [place] = layout.places
    if (place === undefined) throw new Error('no place')
    const stale: readonly FitQuestion[] = [
      withPlace({ seat: { ...place.seat, reclineDeg: place.seat.reclineDeg + 1 } }),
      withPlace({ belt: { ...place.belt, headAndNeckRestraint: !place.belt.headAndNeckRestraint } }),
      withPlace({ anchors: place.anchors.slice(1) }),
      { placeId, layout: { ...layout, tubes: layout.tubes.slice(1) } },
      { placeId, layout: { ...layout, dustyOrMuddyUse: !layout.dustyOrMuddyUse } },
      { placeId, layout: { ...layout, ruleSetId: 'us-road-210' } },
      { ...question, placeId: 'other' },
    ]
    for (const other of stale) expect(isSameCount(question, other)).toBe(false)
  })
})

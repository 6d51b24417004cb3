import { Ajv2020 } from 'ajv/dist/2020.js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { reviewedVariantsOf } from '../../../../src/domain/layout/agreement/fingerprint'
import { layoutJsonSchema } from '../../../../src/domain/layout/document/jsonSchema'
import { layoutText } from '../../../../src/domain/layout/document/layoutText'
import { parseLayout, parseLayoutText } from '../../../../src/domain/layout/document/parseLayout'
import type { AnswerEntry, ReviewEntry } from '../../../../src/domain/layout/document/review'
import {
  reviewsLost,
  withAnswersTaken,
  withComment,
  withDecision,
  withShown,
} from '../../../../src/domain/layout/edit/reviews'
import { flatLayout, flatPlace } from '../../../support/flatLayout'
import { answersArb, comment, decision, shownLayout } from '../../../support/reviews'

const plain = flatLayout([flatPlace()])
const shown = shownLayout(plain)
const idsOf = (layout: { readonly reviews?: readonly ReviewEntry[] }): readonly string[] =>
  (layout.reviews ?? []).map(({ id }) => id)

const taken = (layout: typeof shown, entries: readonly AnswerEntry[]): typeof shown => {
  const result = withAnswersTaken(layout, entries)
  if (!result.ok) throw new Error(JSON.stringify(result.error))
  return result.value.layout
}

const isValid = new Ajv2020({ strict: true, allErrors: true }).compile(layoutJsonSchema())

describe('withShown', () => {
  it('adds one entry with the fingerprint of the drawing and leaves everything else alone', () => {
    expect(idsOf(shown)).toEqual(['shown-1'])
    expect({ ...shown, reviews: undefined }).toEqual({ ...plain, reviews: undefined })
  })

  it.each([
    { what: 'nobody', said: { by: ' ' } },
    { what: 'no day of the calendar', said: { date: '2026-02-30' } },
    { what: 'an id that is taken', said: { id: 'shown-1' } },
  ])('changes nothing for $what', ({ said }) => {
    const entry = {
      id: 'shown-2',
      date: '2026-06-05',
      by: 'Kit',
      to: '',
      variants: reviewedVariantsOf(plain),
      ...said,
    }
    expect(withShown(shown, entry)).toBe(shown)
  })
})

describe('withComment and withDecision', () => {
  it('put what was said behind the rest', () => {
    const layout = withDecision(withComment(shown, comment()), decision(plain))
    expect(idsOf(layout)).toEqual(['shown-1', 'comment-1', 'decision-1'])
  })

  it('change nothing for an answer to what was never shown, or without words', () => {
    expect(withComment(shown, comment({ shownId: 'shown-9' }))).toBe(shown)
    expect(withComment(shown, comment({ text: '  ' }))).toBe(shown)
    expect(withDecision(shown, decision(plain, { by: '' }))).toBe(shown)
  })
})

describe('withAnswersTaken', () => {
  it.each([
    { what: 'an unknown shown', entry: comment({ shownId: 'shown-9' }), kind: 'never-shown' },
    { what: 'an unknown variant', entry: comment({ variantId: 'b' }), kind: 'unknown-variant' },
    { what: 'a blank comment', entry: comment({ text: '\n' }), kind: 'says-nothing' },
    { what: 'a day that does not exist', entry: comment({ date: '2026-13-01' }), kind: 'says-nothing' },
  ])('refuses $what, and the good entries beside it with it', ({ entry, kind }) => {
    const result = withAnswersTaken(shown, [comment({ id: 'good' }), entry])
    expect(result).toMatchObject({ ok: false, error: { kind } })
  })

  it('refuses an entry that says something else under the id of one that is here', () => {
    const layout = taken(shown, [comment()])
    expect(withAnswersTaken(layout, [comment({ text: 'No, it is fine.' })])).toEqual({
      ok: false,
      error: { kind: 'said-otherwise', entryId: 'comment-1' },
    })
    expect(withAnswersTaken(layout, [comment({ id: 'shown-1' })]).ok).toBe(false)
  })

  it('gives the very same layout when everything is here already, also with fields in another order', () => {
    const layout = taken(shown, [comment()])
    const { text, ...rest } = comment()
    expect(taken(layout, [{ text, ...rest }])).toBe(layout)
  })

  it('never drops, changes or doubles anything, however answers are split, repeated and ordered', () => {
    fc.assert(
      fc.property(
        answersArb.chain((all) =>
          fc.record({
            all: fc.constant(all),
            parcels: fc.array(fc.shuffledSubarray([...all]), { maxLength: 5 }),
          }),
        ),
        ({ all, parcels }) => {
          let layout = shown
          for (const parcel of [...parcels, all, ...parcels]) {
            const next = taken(layout, parcel)
            expect(reviewsLost(layout, next)).toBe(0)
            layout = next
          }
          expect(new Set(idsOf(layout))).toEqual(new Set(['shown-1', ...all.map(({ id }) => id)]))
          expect(idsOf(layout)).toHaveLength(1 + all.length)
          for (const entry of all) expect(layout.reviews).toContainEqual(entry)
        },
      ),
    )
  })

  it('leaves a layout that its file gives back and that the published schema accepts', () => {
    fc.assert(
      fc.property(answersArb, (all) => {
        const layout = taken(shown, all)
        const parsed = parseLayoutText(layoutText(layout))
        expect(parsed).toEqual({ ok: true, value: layout })
        expect(isValid(JSON.parse(layoutText(layout)))).toBe(true)
      }),
    )
  })
})

describe('reviewsLost', () => {
  const long = taken(shown, [comment(), comment({ id: 'comment-2', text: 'And this?' })])

  it('counts nothing where entries were only added', () => {
    expect(reviewsLost(plain, long)).toBe(0)
    expect(reviewsLost(shown, long)).toBe(0)
  })

  it('counts what is gone, changed or moved', () => {
    const [a, b, c] = long.reviews ?? []
    if (a === undefined || b === undefined || c === undefined) throw new Error('three entries were said')
    expect(reviewsLost(long, plain)).toBe(3)
    expect(reviewsLost(long, { ...long, reviews: [a, b] })).toBe(1)
    expect(reviewsLost(long, { ...long, reviews: [a, c, b] })).toBe(2)
    expect(reviewsLost(long, { ...long, reviews: [a, { ...b, by: 'Kit' }, c] })).toBe(1)
  })
})

describe('what a layout file may hold of it', () => {
  const withReviews = (reviews: readonly unknown[]): unknown => ({ ...plain, reviews })
  const entries = [...(shown.reviews ?? []), comment(), decision(plain)]

  it('accepts it whole', () => {
    expect(parseLayout(withReviews(entries)).ok).toBe(true)
  })

  it.each<{ what: string; reviews: readonly unknown[]; path: string; says: RegExp }>([
    {
      what: 'an answer before what it answers to',
      reviews: [comment(), ...(shown.reviews ?? [])],
      path: 'reviews[0].shownId',
      says: /nothing with the id "shown-1" was shown before/,
    },
    {
      what: 'an id twice',
      reviews: [...entries, comment()],
      path: 'reviews[3].id',
      says: /already used by item 2/,
    },
    {
      what: 'a day that does not exist',
      reviews: [...(shown.reviews ?? []), comment({ date: '2026-02-31' })],
      path: 'reviews[1].date',
      says: /there is no day 2026-02-31/,
    },
    {
      what: 'a variant that was not shown',
      reviews: [...(shown.reviews ?? []), comment({ variantId: 'b' })],
      path: 'reviews[1].variantId',
      says: /was not among those shown/,
    },
    {
      what: 'a decision by nobody',
      reviews: [...(shown.reviews ?? []), decision(plain, { by: ' ' })],
      path: 'reviews[1].by',
      says: /said by nobody/,
    },
    {
      what: 'a fingerprint that is none',
      reviews: [...(shown.reviews ?? []), decision(plain, { fingerprint: 'ABC' })],
      path: 'reviews[1].fingerprint',
      says: /found "ABC"/,
    },
    {
      what: 'a part that no drawing can have',
      reviews: [...(shown.reviews ?? []), comment({ partId: '<b>' })],
      path: 'reviews[1].partId',
      says: /found "<b>"/,
    },
    {
      what: 'a kind that does not exist',
      reviews: [...(shown.reviews ?? []), { ...comment(), kind: 'liked' }],
      path: 'reviews[1].kind',
      says: /found "liked"/,
    },
  ])('refuses $what', ({ reviews, path, says }) => {
    const parsed = parseLayout(withReviews(reviews))
    if (parsed.ok) throw new Error('it was accepted')
    const problem = parsed.error.find((each) => each.path === path)
    expect(problem?.message).toMatch(says)
  })
})

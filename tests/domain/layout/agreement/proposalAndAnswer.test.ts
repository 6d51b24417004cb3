import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { agreementOf } from '../../../../src/domain/layout/agreement/agreement'
import { type Answer, answerText, parseAnswer } from '../../../../src/domain/layout/agreement/answer'
import {
  holdsShown,
  layoutFingerprint,
  withPartsOf,
} from '../../../../src/domain/layout/agreement/fingerprint'
import { parseProposal, proposalText } from '../../../../src/domain/layout/agreement/proposal'
import { COUNTS } from '../../../../src/domain/layout/document/limits'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { withVariantAdded } from '../../../../src/domain/layout/edit/changeVariants'
import { withAnswersTaken, withShown } from '../../../../src/domain/layout/edit/reviews'
import { exampleIndex, exampleLayout } from '../../../support/exampleLayouts'
import { answersArb, comment, decision, shownEntry, shownLayout } from '../../../support/reviews'

const examples = exampleIndex.map(({ file }) => exampleLayout(file))

const sent = (layout: Layout) => {
  const text = proposalText(shownLayout(layout), 'shown-1')
  if (text === null) throw new Error('nothing was shown')
  const parsed = parseProposal(text)
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.error))
  return { text, ...parsed.value }
}

describe('a proposal on its way', () => {
  it('arrives with the same fingerprint, of every example and of a second variant', () => {
    for (const layout of examples) {
      const { shown, layout: arrived } = sent(layout)
      expect(layoutFingerprint(arrived)).toBe(layoutFingerprint(layout))
      expect(shown.variants[0]?.fingerprint).toBe(layoutFingerprint(arrived))
    }
    const two = withVariantAdded(examples[0] as Layout)
    expect(sent(two).layout.variants).toEqual(two.variants)
  })

  it('carries nothing that is the shop’s own', () => {
    const [example] = examples
    if (example === undefined) throw new Error('no example')
    const secret = 'between ourselves'
    const layout: Layout = {
      ...example,
      job: {
        ...example.job,
        notes: secret,
        revisions: [{ revision: 'A', date: '', by: '', change: secret }],
      },
      tapePoints: [{ id: 'tape-1', name: secret, point: { xMm: 0, yMm: 0, zMm: 0 } }],
    }
    const withTalk = withAnswersTaken(shownLayout(layout), [comment({ text: secret })])
    if (!withTalk.ok) throw new Error('the comment was refused')
    const text = proposalText(withTalk.value.layout, 'shown-1') ?? ''
    expect(text).not.toContain(secret)
    const arrived = JSON.parse(text) as { readonly layout: object }
    for (const field of ['asWelded', 'belts', 'tolerance', 'tapePoints', 'photos'])
      expect(arrived.layout).not.toHaveProperty(field)
  })

  it('tells the customer what nobody has measured', () => {
    const layout = { ...exampleLayout('rock-buggy.layout.json'), notMeasured: ['seat'] }
    expect(sent(layout).layout.notMeasured).toEqual(['seat'])
  })

  it('that was altered shows in the answer', () => {
    const layout = exampleLayout('rock-buggy.layout.json')
    const { text } = sent(layout)
    const altered = JSON.parse(text) as { layout: { places: { seat: { hipPoint: { zMm: number } } }[] } }
    const place = altered.layout.places[0]
    if (place === undefined) throw new Error('no place')
    place.seat.hipPoint.zMm += 30
    const seen = parseProposal(JSON.stringify(altered))
    if (!seen.ok) throw new Error('it does not open')
    const taken = withAnswersTaken(shownLayout(layout), [decision(seen.value.layout)])
    expect(taken.ok && agreementOf(taken.value.layout)).toMatchObject({ kind: 'agreed', to: 'not-as-shown' })
  })

  it.each([
    { what: 'nothing', text: '' },
    { what: 'no JSON', text: '{"proposal":1' },
    { what: 'a list', text: '[1]' },
    { what: 'another version', text: '{"proposal":2,"layout":{}}' },
    { what: 'no layout', text: '{"proposal":1}' },
    { what: 'a layout that nobody shows', text: JSON.stringify({ proposal: 1, layout: examples[0] }) },
  ])('is refused with words when it is $what', ({ text }) => {
    const parsed = parseProposal(text)
    expect(parsed.ok ? '' : parsed.error[0]?.message).not.toBe('')
    expect(parsed.ok).toBe(false)
  })

  it('is refused wherever it is cut off', () => {
    const { text } = sent(examples[0] as Layout)
    fc.assert(
      // Without the line end it is still whole.
      fc.property(fc.nat({ max: text.length - 2 }), (length) => {
        expect(parseProposal(text.slice(0, length)).ok).toBe(false)
      }),
    )
  })
})

describe('an answer on its way', () => {
  const shown = shownEntry(exampleLayout('nearly-empty.layout.json'))
  const answer = (entries: Answer['entries']): Answer => ({ shown, jobName: 'Dune', entries })

  it('arrives as it was sent', () => {
    fc.assert(
      fc.property(answersArb, (entries) => {
        expect(parseAnswer(answerText(answer(entries)))).toEqual({ ok: true, value: answer(entries) })
      }),
    )
  })

  const good = comment()

  it.each<{ what: string; entries: unknown; path: string }>([
    { what: 'no list', entries: 'all fine', path: 'reviews' },
    { what: 'an empty list', entries: [], path: 'reviews' },
    { what: 'nothing said', entries: [shown], path: 'reviews' },
    { what: 'nothing shown', entries: [good, { ...good, id: 'c-2' }], path: 'reviews[0].shownId' },
    { what: 'something shown twice', entries: [shown, { ...shown, id: 'shown-2' }, good], path: '' },
    { what: 'an unknown field', entries: [shown, { ...good, html: '<b>' }], path: 'reviews[1].html' },
    {
      what: 'a text as long as a book',
      entries: [shown, { ...good, text: 'x'.repeat(2_001) }],
      path: 'reviews[1].text',
    },
    {
      what: 'a text that is none',
      entries: [shown, { ...good, text: { toString: 1 } }],
      path: 'reviews[1].text',
    },
    { what: 'an id with a path in it', entries: [shown, { ...good, id: '../x' }], path: 'reviews[1].id' },
    { what: 'a blank comment', entries: [shown, { ...good, text: ' ' }], path: 'reviews[1].text' },
    { what: 'the same id twice', entries: [shown, good, good], path: 'reviews[2].id' },
    {
      what: 'an answer to another proposal',
      entries: [shown, good, { ...good, id: 'c-2', shownId: 'shown-2' }],
      path: 'reviews[2].shownId',
    },
    {
      what: 'more entries than an answer holds',
      entries: [shown, ...Array.from({ length: 201 }, (_, index) => ({ ...good, id: `c-${index}` }))],
      path: 'reviews',
    },
  ])('is refused with $what', ({ entries, path }) => {
    const parsed = parseAnswer(JSON.stringify({ answer: 1, job: '', entries }))
    expect(parsed.ok ? [] : parsed.error.map((problem) => problem.path)).toContain(path)
  })

  it('holds as many entries as the customer’s page lets be said', () => {
    const entries = Array.from({ length: COUNTS.answerEntries.max - 1 }, (_, index) => ({
      ...good,
      id: `c-${index}`,
    }))
    expect(parseAnswer(answerText(answer(entries))).ok).toBe(true)
  })

  it('never throws, whatever JSON it is given', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (entries) => {
        expect(parseAnswer(JSON.stringify({ answer: 1, job: '', entries })).ok).toBe(false)
      }),
    )
  })

  it('is refused as a whole by anything that is not an answer', () => {
    for (const text of ['', 'null', '[]', '{"answer":2}', '{"answer":1,"job":7,"entries":[]}'])
      expect(parseAnswer(text).ok).toBe(false)
  })
})

describe('holdsShown and withPartsOf', () => {
  const layout = exampleLayout('rock-buggy.layout.json')

  it('know a layout by the drawing that was shown, whatever became of the record, and give back its parts', () => {
    const shown = shownEntry(layout)
    expect(holdsShown(layout, shown)).toBe(true)
    expect(holdsShown(exampleLayout('nearly-empty.layout.json'), shown)).toBe(false)
    expect(withPartsOf(shown, layout)).toEqual(shownLayout(layout).reviews?.[0])
    expect(withPartsOf(shown, exampleLayout('nearly-empty.layout.json'))).toEqual(shown)
  })

  it('let an answer be taken though the showing was undone', () => {
    const shown = shownEntry(layout)
    const again = withShown(layout, withPartsOf(shown, layout))
    const taken = withAnswersTaken(again, [decision(layout)])
    expect(taken.ok && agreementOf(taken.value.layout)).toMatchObject({ kind: 'agreed', to: 'as-drawn' })
  })
})

import fc from 'fast-check'
import { beforeEach, describe, expect, it } from 'vitest'

import { answerText } from '../../../src/domain/layout/agreement/answer'
import { layoutText } from '../../../src/domain/layout/document/layoutText'
import { withComment } from '../../../src/domain/layout/edit/reviews'
import { createAppStore } from '../../../src/state/store'
import { arrivedAnswer, putAside } from '../../../src/state/talk/arrivedAnswer'
import { layoutsShown } from '../../../src/state/talk/layoutsOfAnswer'
import { answerOpener, proposalOpener } from '../../../src/state/talk/openers'
import {
  type DraftStorage,
  EMPTY_DRAFT,
  keepDraft,
  keptDraft,
  type ProposalDraft,
} from '../../../src/state/talk/proposalDraft'
import { soundStep } from '../../../src/state/talk/soundStep'
import { flatLayout, flatPlace } from '../../support/flatLayout'
import { answersArb, comment, shownEntry, shownLayout } from '../../support/reviews'

const plain = flatLayout([flatPlace()])
const shown = shownLayout(plain)

describe('soundStep', () => {
  it('refuses an edit that would drop or change what was said, and says so', () => {
    const store = createAppStore(withComment(shown, comment()), { check: soundStep })
    const before = store.state.getState().layout
    store.actions.edit('Forget the comment', (layout) => ({
      ...layout,
      reviews: (layout.reviews ?? []).slice(0, 1),
    }))
    const { layout, notice } = store.state.getState()
    expect(layout).toBe(before)
    expect(notice).toMatchObject({
      kind: 'problem',
      text: 'Not done: Forget the comment. Nothing was changed.',
    })
    expect(notice?.details.join(' ')).toMatch(/One entry .* would be lost or changed/)
  })

  it('lets entries be added, undone and done again', () => {
    const store = createAppStore(shown, { check: soundStep })
    store.actions.edit('Add a comment', (layout) => withComment(layout, comment()))
    expect(store.state.getState().layout.reviews).toHaveLength(2)
    store.actions.undo()
    expect(store.state.getState().layout.reviews).toHaveLength(1)
    store.actions.redo()
    expect(store.state.getState().layout.reviews).toHaveLength(2)
  })

  it('lets another document be opened that has nothing of it', () => {
    const store = createAppStore(shown, { check: soundStep })
    store.actions.openLayout(plain, 'Open another')
    expect(store.state.getState().layout.reviews).toBeUndefined()
  })
})

describe('answerOpener', () => {
  beforeEach(putAside)
  const text = answerText({ shown: shownEntry(plain), jobName: 'Dune', entries: [comment()] })

  it('knows answers from layouts and proposals', () => {
    expect(answerOpener.recognises(JSON.parse(text))).toBe(true)
    expect(proposalOpener.recognises(JSON.parse(text))).toBe(false)
    for (const value of [plain, null, 'answer', 7, []]) expect(answerOpener.recognises(value)).toBe(false)
  })

  it('puts the answer where the builder can look at it, and leaves the layout alone', () => {
    const store = createAppStore(shown, { check: soundStep })
    expect(answerOpener.open(store, text, 'answer.json')).toBe(true)
    expect(arrivedAnswer.getState().answer?.entries).toEqual([comment()])
    expect(store.state.getState().layout).toBe(shown)
    expect(store.state.getState().view.screen).toBe('customer')
  })

  it('says what is wrong with one that cannot be read', () => {
    const store = createAppStore(shown, { check: soundStep })
    expect(answerOpener.open(store, text.slice(0, -20), 'answer.json')).toBe(false)
    expect(arrivedAnswer.getState().answer).toBeNull()
    expect(store.state.getState().notice?.kind).toBe('problem')
  })
})

describe('proposalOpener', () => {
  it('opens nothing that is no proposal', () => {
    const store = createAppStore(shown, { check: soundStep })
    expect(proposalOpener.open(store, '{"proposal":1}', 'x.proposal.json')).toBe(false)
    expect(store.state.getState().notice?.text).toMatch(/x\.proposal\.json cannot be opened/)
  })
})

describe('layoutsShown', () => {
  it('finds the kept layouts that something was shown from, and no other', () => {
    const kept = [
      {
        id: 'a',
        jobName: 'Dune',
        text: layoutText(shown),
        isOpenHere: true,
        isOpenElsewhere: false,
        removedAtMs: null,
      },
      {
        id: 'b',
        jobName: 'Other',
        text: layoutText(plain),
        isOpenHere: false,
        isOpenElsewhere: false,
        removedAtMs: null,
      },
      {
        id: 'c',
        jobName: 'Damaged',
        text: '{"shown-1',
        isOpenHere: false,
        isOpenElsewhere: false,
        removedAtMs: null,
      },
      {
        id: 'e',
        jobName: 'In the bin',
        text: layoutText(shown),
        isOpenHere: false,
        isOpenElsewhere: false,
        removedAtMs: 1,
      },
      {
        id: 'd',
        jobName: 'Mentions it',
        text: layoutText({ ...plain, datum: 'shown-1' }),
        isOpenHere: false,
        isOpenElsewhere: false,
        removedAtMs: null,
      },
    ]
    expect(layoutsShown(kept, shownEntry(plain))).toEqual([
      { id: 'a', jobName: 'Dune', isOpenHere: true, isOpenElsewhere: false },
    ])
    // The record is nowhere, but two layouts hold the drawing; the one with another datum is another drawing.
    const undone = { ...shownEntry(plain), id: 'shown-2' }
    expect(layoutsShown(kept, undone).map(({ id }) => id)).toEqual(['a', 'b'])
    const other = undone.variants.map((variant) => ({ ...variant, fingerprint: 'f'.repeat(20) }))
    expect(layoutsShown(kept, { ...undone, variants: other })).toEqual([])
  })
})

describe('keptDraft', () => {
  const entry = shownEntry(plain)
  const browser = (): DraftStorage => {
    const items = new Map<string, string>()
    const storage = {
      getItem: (key: string) => items.get(key) ?? null,
      setItem: (key: string, value: string) => {
        items.set(key, value)
      },
    }
    return () => storage
  }

  it('gives back what was said and what is being typed', () => {
    fc.assert(
      fc.property(
        answersArb,
        fc.dictionary(fc.string(), fc.string()),
        fc.string(),
        (entries, typed, name) => {
          const place = browser()
          const sentIds = entries.slice(0, 1).map(({ id }) => id)
          const draft = { entries, sentIds, takenBackIds: [], name, typed: { ...typed } }
          expect(keepDraft(entry, draft, place)).toEqual({ draft, isKept: true })
          expect(keptDraft(entry, place)).toEqual(draft)
          expect(keptDraft({ ...entry, id: 'shown-2' }, place)).toEqual(EMPTY_DRAFT)
        },
      ),
    )
  })

  it('loses nothing of two tabs that say things in turn, and brings back nothing that was taken back', () => {
    fc.assert(
      fc.property(answersArb, fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }), (entries, turns) => {
        const place = browser()
        const tabs = [keptDraft(entry, place), keptDraft(entry, place)]
        for (const [index, said] of entries.entries()) {
          const tab = turns[index] === true ? 1 : 0
          const own = tabs[tab] ?? EMPTY_DRAFT
          tabs[tab] = keepDraft(entry, { ...own, entries: [...own.entries, said] }, place).draft
        }
        const ids = (draft: ProposalDraft): readonly string[] => draft.entries.map(({ id }) => id).sort()
        expect(ids(keptDraft(entry, place))).toEqual(entries.map(({ id }) => id).sort())
        const [first] = entries
        if (first === undefined) return
        const own = tabs[0] ?? EMPTY_DRAFT
        keepDraft(entry, { ...own, takenBackIds: [first.id] }, place)
        keepDraft(entry, tabs[1] ?? EMPTY_DRAFT, place)
        expect(ids(keptDraft(entry, place))).not.toContain(first.id)
      }),
    )
  })

  it('begins empty where the browser forbids storage or what was kept is damaged', () => {
    const forbidden: DraftStorage = () => {
      throw new Error('forbidden')
    }
    expect(keptDraft(entry, forbidden)).toEqual(EMPTY_DRAFT)
    const draft = { ...EMPTY_DRAFT, name: 'Ines' }
    expect(keepDraft(entry, draft, forbidden)).toEqual({ draft, isKept: false })
    const place = browser()
    for (const text of ['', '{', '7', 'null', '{"said":{},"typed":[1],"sentIds":"x","name":4}']) {
      place().setItem('tabwright-proposal-shown-1', text)
      expect(keptDraft(entry, place)).toEqual(EMPTY_DRAFT)
    }
  })
})

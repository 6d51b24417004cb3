import { describe, expect, it } from 'vitest'

import { fingerprintCode, layoutFingerprint } from '../../../src/domain/layout/agreement/fingerprint'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { withDecision } from '../../../src/domain/layout/edit/reviews'
import { evaluateLayout } from '../../../src/domain/layout/evaluate/evaluateLayout'
import { notMeasuredTitles } from '../../../src/domain/layout/firstLayout/notMeasured'
import { HAND_OVER_TITLE, readMeFirst } from '../../../src/sheet/files/handOver/readMeFirst'
import { sheetPages } from '../../../src/sheet/mount/sheetPages'
import { agreementLine } from '../../../src/sheet/mount/sections/agreementRows'
import { exampleLayout } from '../../support/exampleLayouts'
import { requestOf } from '../../support/handOver'
import { decision, shownLayout } from '../../support/reviews'
import { textsOf } from '../../support/sheetTexts'

const rock = exampleLayout('rock-buggy.layout.json')
const evaluation = evaluateLayout(rock)
const shown = shownLayout(rock)
const agreed = withDecision(shown, decision(rock))
const code = fingerprintCode(layoutFingerprint(rock))
const bar = rock.tubes.find(({ role }) => role === 'harness-bar')
if (bar === undefined) throw new Error('the rock buggy has a harness bar')

/** The harness bar a little thicker; everything else as it was. */
const changed: Layout = {
  ...agreed,
  tubes: agreed.tubes.map((tube) => (tube.id === bar.id ? { ...tube, wallMm: tube.wallMm + 0.5 } : tube)),
}

const printed = (layout: Layout): string =>
  sheetPages(layout, evaluation, 'a4')
    .flatMap(({ items }) => textsOf(items).map(({ text }) => text))
    .join(' ')

describe('what the mount sheet says of the agreement', () => {
  it.each([
    { what: 'not shown', layout: rock, says: 'Customer: Not agreed yet: not shown to the customer.' },
    {
      what: 'shown and not answered',
      layout: shown,
      says: 'Customer: Not agreed yet: shown to Ines on 2026-06-01, no answer taken.',
    },
    {
      what: 'agreed',
      layout: agreed,
      says: `Customer: Agreed by Ines on 2026-06-03: as drawn, code ${code}.`,
    },
    {
      what: 'agreed to a drawing that has changed',
      layout: changed,
      says: `Customer: Agreed by Ines on 2026-06-03 to an earlier drawing, code ${code}. Changed since: ${bar.name}.`,
    },
    {
      what: 'a change asked for',
      layout: withDecision(shown, decision(rock, { kind: 'change-asked', text: 'Lower, please' })),
      says: 'Customer: Not agreed: Ines asked for a change on 2026-06-03: “Lower, please”.',
    },
    {
      what: 'agreed to something else than was shown',
      layout: withDecision(shown, decision(rock, { fingerprint: '0123456789abcdef0123' })),
      says: 'Customer: Agreed by Ines on 2026-06-03, but to a drawing that was not the one shown, code 0123-4567. Show it again.',
    },
  ])('$what', ({ layout, says }) => {
    const own = fingerprintCode(layoutFingerprint(layout))
    expect(printed(layout)).toContain(`${says} This drawing has the code ${own}.`)
    expect(agreementLine(layout)).toBe(`${says} This drawing has the code ${own}.`)
  })

  it('stands in the READ-ME of the hand-over folder too', () => {
    for (const layout of [rock, agreed, changed]) {
      const text = readMeFirst({ ...requestOf(layout), evaluation }, [], HAND_OVER_TITLE)
      // Set in lines of a terminal's width.
      expect(text.replaceAll(/\s+/g, ' ')).toContain(agreementLine(layout))
    }
  })

  it('does not keep from the READ-ME what nobody has measured', () => {
    const readMe = (layout: Layout): string =>
      readMeFirst({ ...requestOf(layout), evaluation }, [], HAND_OVER_TITLE).replaceAll(/\s+/g, ' ')
    const [title = 'no title'] = notMeasuredTitles({ ...rock, notMeasured: ['seat'] })
    expect(readMe({ ...rock, notMeasured: ['seat'] })).toContain(title)
    expect(readMe({ ...rock, notMeasured: [] })).not.toContain('NOT MEASURED')
  })

  it('gives a changed drawing another code than the one agreed to', () => {
    expect(layoutFingerprint(changed)).not.toBe(layoutFingerprint(rock))
  })
})

import { describe, expect, it } from 'vitest'

import type { Proposal, Proposals, StayingBroken } from '../../../../src/domain/layout/propose/proposal'
import type { WishProblem } from '../../../../src/domain/layout/propose/wish'
import {
  answerText,
  gainText,
  limitingRuleText,
  positionTexts,
  standingText,
  stayingText,
  unmeasuredText,
  wishProblemText,
} from '../../../../src/domain/layout/wording/proposalText'
import { crossTube, flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'

const anchors = tabPair('lap', { xMm: 150, yMm: 230, zMm: -200 }, 'bar')
const layout = flatLayout([flatPlace({ anchors })], { tubes: [crossTube('bar', 150, -200)] })
const inches = { ...layout, units: { ...layout.units, length: 'in' as const } }
const NONE = { must: 0, should: 0, advice: 0 }

const proposal: Proposal = {
  id: 'proposal-1',
  mounts: anchors.map(({ id, mount }) => ({ anchorId: id, mount })),
  movedMm: 12,
  turnedTabs: ['lap-left-anchor'],
  roomMm: 31.27,
  limiting: {
    ruleId: 'workshop-lap-angle',
    quantity: 'lap-angle',
    subject: 'lap-left',
    sittingId: 'driver/marla/0/20',
    side: 'min',
    anchorId: 'lap-left-anchor',
    towards: ['up', 'rearward'],
  },
  broken: NONE,
  findings: [],
  staying: [],
  unmeasured: [],
}

describe('proposal wording', () => {
  it('says the room rounded down, and what is not kept', () => {
    expect(standingText(proposal, layout)).toBe('31.2 mm of room')
    expect(standingText({ ...proposal, broken: { must: 1, should: 0, advice: 2 } }, layout)).toBe(
      '31.2 mm of room, not kept: 1 must, 2 advice',
    )
    expect(standingText({ ...proposal, roomMm: null }, layout)).toBe('no room known')
    // 31.2 mm is 1.228 in: 1 3/16 in rounded down.
    expect(standingText(proposal, inches)).toBe('1 3/16 in (31.2 mm) of room')
  })

  it('names the rule, the person and the way of the limit', () => {
    const text = limitingRuleText(proposal, layout)
    expect(text).toMatch(
      /^Limited by lap angle of the left lap strap, at least \d+° \(Marla, seat as drawn\)/,
    )
    expect(text).toMatch(/; the limit is nearest up and rearward\.$/)
    expect(limitingRuleText({ limiting: null }, layout)).toBe('No rule with a room limits it.')
  })

  it('compares with the position as drawn, never rounding a gain up', () => {
    const present = { roomMm: 10.99, limiting: null, broken: NONE }
    expect(gainText(proposal, present, layout)).toBe('20.2 mm more room than as drawn (10.9 mm).')
    expect(gainText({ ...proposal, roomMm: 10.99 }, present, layout)).toBe('The same room as drawn.')
    expect(gainText({ ...proposal, roomMm: 5 }, present, layout)).toBe('Less room than as drawn (10.9 mm).')
    expect(gainText(proposal, { ...present, broken: { ...NONE, must: 2 } }, layout)).toBe(
      '2 fewer rules not kept than as drawn, 20.2 mm more room than as drawn (10.9 mm).',
    )
    expect(gainText({ ...proposal, roomMm: null }, present, layout)).toBe('No room to compare with.')
  })

  it('gives every coordinate and the tube, and says when a tab is turned', () => {
    expect(positionTexts(proposal, layout)).toEqual([
      'Left lap tab: x 150 mm, y −230 mm, z −200 mm, on Test bar, turned along its strap.',
      'Right lap tab: x 150 mm, y 230 mm, z −200 mm, on Test bar.',
    ])
  })

  it('says why a rule stays broken', () => {
    const staying = (why: StayingBroken['why']): StayingBroken => ({
      finding: {
        findingId: 'driver/workshop-lap-angle/lap-left',
        ruleId: 'workshop-lap-angle',
        quantity: 'lap-angle',
        subject: 'lap-left',
        level: 'should',
        verdict: why.kind === 'no-path' ? 'unchecked' : 'broken',
        value: why.kind === 'no-path' ? null : 33.7,
        roomMm: null,
      },
      why,
    })
    expect(stayingText(staying({ kind: 'not-among-allowed' }), layout)).toBe(
      'Stays broken (should): lap angle of the left lap strap 33.7°: no place among those allowed was found that keeps it together with the others.',
    )
    expect(stayingText(staying({ kind: 'not-of-position' }), layout)).toContain('no position decides it')
    expect(
      stayingText(
        staying({ kind: 'no-path', problem: { kind: 'anchor-missing', strap: 'lap-left' } }),
        layout,
      ),
    ).toBe(
      'Not checked (should): lap angle of the left lap strap: it cannot be checked, because the left lap strap has no anchor.',
    )
    const contradiction = {
      anchorId: 'lap-left-anchor',
      rules: [{ ruleId: 'workshop-lap-angle', sittingId: 'driver/marla/0/20' }],
    }
    expect(stayingText(staying({ kind: 'contradiction', contradiction }), layout)).toContain(
      'No place for the left lap tab, with everything else as drawn, gives this',
    )
  })

  it('names what was only watched, each once', () => {
    const watched = { ruleId: 'x', quantity: 'tab-twist', subject: 'lap-left' } as const
    expect(unmeasuredText([])).toBeNull()
    expect(unmeasuredText([watched, { ...watched, subject: 'lap-right' }])).toBe(
      'Kept, but without a room in mm, so only watched: pull out of the tab’s plane.',
    )
  })

  it('sums an answer up', () => {
    const answer: Proposals = {
      placeId: 'driver',
      ruleSetId: 'workshop-practice',
      anchorIds: [],
      present: { roomMm: 5, limiting: null, broken: NONE },
      proposals: [proposal, proposal],
    }
    expect(answerText(answer)).toBe('2 positions, most room first.')
    const broken = { ...proposal, broken: { ...NONE, must: 1 } }
    expect(answerText({ ...answer, proposals: [broken] })).toMatch(
      /^No place among those allowed keeps every rule/,
    )
    expect(answerText({ ...answer, proposals: [{ ...proposal, movedMm: 0 }] })).toBe(
      'Nothing better was found than the position as drawn.',
    )
  })

  it.each<WishProblem>([
    { kind: 'place-unknown', placeId: 'x' },
    { kind: 'anchor-unknown', anchorId: 'lap-left-anchor' },
    { kind: 'no-anchors' },
    { kind: 'no-tubes' },
    { kind: 'box-turned-round', axis: 'z' },
    { kind: 'no-spot', anchorId: 'lap-left-anchor' },
  ])('says what is wrong with a wish and how to mend it: $kind', (problem) => {
    // What is wrong, then what to do about it.
    expect(wishProblemText(problem, layout)).toMatch(/[.:] .*(Pick|Add|Tick|Exchange|Allow) .*\.$/)
  })
})

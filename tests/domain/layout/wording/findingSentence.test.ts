import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { findingSentence, type FindingSentence } from '../../../../src/domain/layout/wording/findingSentence'
import type { Finding } from '../../../../src/domain/rules/finding'
import { RULE_SETS } from '../../../../src/domain/rules/ruleSets'
import { crossTube, flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'

const findingsOf = (layout: Layout): readonly Finding[] =>
  evaluateLayout(layout).places.flatMap(({ findings }) => findings)

const findingOf = (layout: Layout, ruleId: string, subject: string): Finding => {
  const found = findingsOf(layout).find((each) => each.ruleId === ruleId && each.subject === subject)
  if (found === undefined) throw new Error(`no finding of ${ruleId} on ${subject}`)
  return found
}

const withLapTabs = (aftMm: number, belowMm: number): Layout =>
  flatLayout([flatPlace({ anchors: tabPair('lap', { xMm: aftMm, yMm: 230, zMm: -belowMm }) })])
const inInches = (layout: Layout): Layout => ({ ...layout, units: { ...layout.units, length: 'in' } })

const sentenceOf = (layout: Layout, ruleId: string, subject: string): FindingSentence =>
  findingSentence(findingOf(layout, ruleId, subject), layout)

describe('findingSentence', () => {
  it('says what is wrong with value, limit and for whom, why, and that the rule has no source', () => {
    // atan(200/300) = 33.690°
    const sentence = sentenceOf(withLapTabs(300, 200), 'workshop-lap-angle', 'lap-left')
    expect(sentence.what).toBe(
      'Left lap strap is too flat: lap angle 33.7°, where 45° to 60° is asked for (worst: Marla, seat as drawn).',
    )
    expect(sentence.why).toContain('belly')
    expect(sentence.caveat).toContain('45–65°')
    expect(sentence.source).toBe('common practice, no source (lap tab wedge)')
  })

  it('says on which side of the limits the value is', () => {
    // atan(300/100) = 71.565°
    expect(sentenceOf(withLapTabs(100, 300), 'workshop-lap-angle', 'lap-right').what).toMatch(
      /^Right lap strap is too steep: lap angle 71\.6°/,
    )
  })

  it('never shows a broken value as if it were on the limit', () => {
    // atan(199.9/200) = 44.9857°: at one decimal it would read 45°.
    expect(sentenceOf(withLapTabs(200, 199.9), 'workshop-lap-angle', 'lap-left').what).toContain(
      'lap angle 44.99°, where 45° to 60°',
    )
  })

  it('says how far the limit is in both elevations, and which is nearer where that is tight', () => {
    // Tab 300 mm behind and 200 mm below: to the 45° line (300 − 200)·cos 45° = 70.71 mm in the side elevation, along x 100 mm in the
    // top one. A way back is rounded up.
    expect(sentenceOf(withLapTabs(300, 200), 'workshop-lap-angle', 'lap-left').rooms).toBe(
      'Back within the limit: 70.8 mm in the side elevation, 100 mm in the top elevation.',
    )
    const kept = findingOf(withLapTabs(200, 250), 'workshop-lap-angle', 'lap-left')
    const tight: Finding = {
      ...kept,
      verdict: 'tight',
      roomMm: 12,
      otherRoom: { elevation: 'top', mm: 3.19 },
    }
    const sentence = findingSentence(tight, withLapTabs(200, 250))
    expect(sentence.what).toContain('but only 3.1 mm from the limit in the top elevation')
    expect(sentence.rooms).toBe(
      'Room to the limit: 12 mm in the side elevation, 3.1 mm in the top elevation.',
    )
  })

  it('names the place when the car has more than one', () => {
    const layout = flatLayout([flatPlace(), flatPlace({ id: 'second', name: 'Co-driver' })])
    expect(sentenceOf(layout, 'workshop-five-points', 'belt').what).toBe(
      'Driver: belt: number of points 4, where at least 5 is asked for.',
    )
  })

  it('says why something could not be checked and what would make it so', () => {
    const sentence = sentenceOf(flatLayout([flatPlace()]), 'workshop-lap-angle', 'lap-left')
    expect(sentence.what).toBe(
      'Left lap strap: lap angle not checked, because the left lap strap has no anchor (Marla, seat as drawn).',
    )
    expect(sentence.remedy).toBe('Place an anchor for the left lap strap.')
  })

  it('quotes the words that were read', () => {
    const road = { ...withLapTabs(300, 200), ruleSetId: 'us-road-anchorages-571-210' }
    expect(sentenceOf(road, 'us-210-lap-spacing', 'lap-pair').source).toBe(
      '49 CFR 571.210, electronic text as stored, date not recorded, S4.3.1.4, “at least 165 mm apart laterally” (read in the document)',
    )
  })

  it('keeps mm beside inches, because rules are written in mm', () => {
    const road = { ...withLapTabs(300, 200), ruleSetId: 'us-road-anchorages-571-210' }
    // 460 / 25.4 = 18.110 in, nearest 1/16: 18 1/8; 165 / 25.4 = 6.496 in: 6 1/2.
    expect(sentenceOf(inInches(road), 'us-210-lap-spacing', 'lap-pair').what).toContain(
      'lap anchor spacing 18 1/8 in (460 mm), and at least 6 1/2 in (165 mm) is asked for',
    )
  })

  it('throws for a finding of a rule that no set has', () => {
    const layout = flatLayout([flatPlace()])
    const finding = { ...findingOf(layout, 'workshop-five-points', 'belt'), ruleId: 'gone' }
    expect(() => findingSentence(finding, layout)).toThrow('gone')
  })

  it('has plain words for every finding of every rule set, in mm and in inches', () => {
    const bar = crossTube('bar', 330, 520)
    const place = flatPlace({
      anchors: [
        ...tabPair('shoulder', { xMm: 330, yMm: 90, zMm: 520 }, 'bar'),
        ...tabPair('lap', { xMm: 190, yMm: 230, zMm: -200 }),
        ...tabPair('sub', { xMm: 60, yMm: 50, zMm: -220 }),
      ],
    })
    const six = { ...place, belt: { ...place.belt, arrangement: 6 as const } }
    const sliding = { ...six, seat: { ...six.seat, slide: { forwardMm: 40, rearwardMm: 0 } } }
    for (const each of [place, six, sliding]) {
      for (const { id: ruleSetId } of RULE_SETS) {
        const layout = flatLayout([each], { tubes: [bar], ruleSetId, dustyOrMuddyUse: true })
        for (const shown of [layout, inInches(layout)]) {
          for (const finding of findingsOf(shown)) {
            const { what, why, remedy, caveat, source } = findingSentence(finding, shown)
            const all = [what, why, remedy ?? 'Nothing.', caveat ?? 'Nothing.', `${source}.`]
            for (const text of all) {
              expect(text).not.toMatch(/undefined|NaN|Infinity|null|\[object| -\d/)
              expect(text).toMatch(/\.$/)
            }
          }
        }
      }
    }
  })
})

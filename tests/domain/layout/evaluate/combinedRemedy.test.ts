import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import type { Layout } from '../../../../src/domain/layout/document/layout'
import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import { appliedRemedy } from '../../../../src/domain/layout/edit/remedy'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { findingSentence } from '../../../../src/domain/layout/wording/findingSentence'
import type { Finding, Remedy } from '../../../../src/domain/rules/finding'
import { plausibleLayout } from '../../../support/plausibleLayouts'

const findingsOf = (layout: Layout, extent: 'everything' | 'what-moves'): readonly Finding[] =>
  evaluateLayout(layout, { extent }).places.flatMap(({ findings }) => findings)

const isKept = ({ verdict }: Finding): boolean => verdict === 'clear' || verdict === 'tight'

const claimsToBreakNothing = (remedy: Remedy): boolean =>
  remedy.kind === 'combined' ||
  ((remedy.kind === 'move-anchors' || remedy.kind === 'move-tube') && remedy.breaks === undefined)

const isMove = ({ kind }: Remedy): boolean =>
  kind === 'combined' || kind === 'move-anchors' || kind === 'move-tube' || kind === 'turn-tab'

describe('a remedy, carried out and evaluated anew', () => {
  it('clears its finding, and breaks nothing when it claims so, in random cars', () => {
    const seen = { moves: 0, combined: 0, none: 0, contradictions: 0 }
    fc.assert(
      fc.property(plausibleLayout, (layout) => {
        const before = findingsOf(layout, 'everything')
        const wrong: string[] = []
        for (const finding of before) {
          const { remedy } = finding
          if (remedy?.kind === 'none') {
            seen.none += 1
            if (remedy.contradiction !== undefined) seen.contradictions += 1
          }
          if (remedy === null || !isMove(remedy)) continue
          seen.moves += 1
          if (remedy.kind === 'combined') seen.combined += 1
          const mended = appliedRemedy(layout, finding)
          if (!parseLayout(mended).ok) wrong.push(`${finding.id}: no layout`)
          const after = new Map(findingsOf(mended, 'what-moves').map((each) => [each.id, each]))
          const now = after.get(finding.id)
          if (now === undefined || !isKept(now))
            wrong.push(`${finding.id}: not cleared by ${JSON.stringify(remedy)}`)
          if (!claimsToBreakNothing(remedy)) continue
          for (const each of before) {
            const then = after.get(each.id)
            if (isKept(each) && (then === undefined || !isKept(then)))
              wrong.push(`${finding.id}: breaks ${each.id} by ${JSON.stringify(remedy)}`)
          }
        }
        expect(wrong).toEqual([])
      }),
      { numRuns: 40 },
    )
    // Each kind was really met.
    expect(seen.moves).toBeGreaterThan(100)
    expect(seen.combined).toBeGreaterThan(10)
    expect(seen.contradictions).toBeGreaterThan(0)
  }, 240_000)

  it('has plain words for what it combines and for what contradicts', () => {
    const texts: string[] = []
    fc.assert(
      fc.property(plausibleLayout, (layout) => {
        for (const finding of findingsOf(layout, 'everything')) {
          const { remedy } = finding
          if (remedy?.kind === 'combined' || (remedy?.kind === 'none' && remedy.contradiction !== undefined))
            texts.push(findingSentence(finding, layout).remedy ?? '')
        }
      }),
      { numRuns: 8 },
    )
    expect(texts.length).toBeGreaterThan(0)
    for (const text of texts) expect(text).toMatch(/^(All of this together: .+; .+|No place for the .+)\.$/)
  }, 60_000)
})

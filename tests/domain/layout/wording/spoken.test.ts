import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { handleById } from '../../../../src/domain/layout/edit/handles'
import { evaluateLayout, layoutNumbers } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { findingsOfPart, worstFinding } from '../../../../src/domain/layout/wording/partFindings'
import { spokenChanges, spokenPart, spokenTight } from '../../../../src/domain/layout/wording/spoken'
import type { ShownFinding } from '../../../../src/domain/rules/finding'
import { exampleLayout } from '../../../support/exampleLayouts'
import { flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'

/** Lap tabs behind and below the hip, as a builder would lay them out with a square: the lap angle is atan(below / aft). */
const withLapTabs = (aftMm: number, belowMm: number): Layout =>
  flatLayout([flatPlace({ anchors: tabPair('lap', { xMm: aftMm, yMm: 230, zMm: -belowMm }) })])

const findingsAtOnce = (layout: Layout): readonly ShownFinding[] =>
  layoutNumbers(layout).places[0]?.findings ?? []

const lapTab = (layout: Layout) => {
  const placeId = layout.places[0]?.id ?? ''
  const anchorId = layout.places[0]?.anchors.find(({ strap }) => strap === 'lap-left')?.id ?? ''
  const handle = handleById(layout, `anchor:${placeId}:${anchorId}`)
  if (handle === null) throw new Error('no left lap tab')
  return handle
}

const said = (layout: Layout): string => spokenPart(layout, lapTab(layout), findingsAtOnce(layout))

describe('spokenPart', () => {
  it('says name, place and the worst finding of the part with its number and limit', () => {
    // atan(200/300) = 33.690°
    const text = said(withLapTabs(300, 200))
    expect(text).toContain('left lap tab: x 300, y −230, z −200 mm.')
    expect(text).toContain('Worst finding, broken,')
    expect(text).toContain('lap angle 33.7°, where 45° to 60° is asked for')
  })

  it('gives the place in the unit of the shop', () => {
    // 304.8 mm = 12 in, 203.2 mm = 8 in.
    const layout = withLapTabs(304.8, 203.2)
    expect(said({ ...layout, units: { ...layout.units, length: 'in' } })).toContain('x 12, ')
    expect(said({ ...layout, units: { ...layout.units, length: 'in' } })).toContain('z −8 in.')
  })

  it('does not blame a part for what hangs on others', () => {
    const layout = exampleLayout('everything-wrong.layout.json')
    const findings = findingsAtOnce(layout)
    const own = findingsOfPart(layout, lapTab(layout).ref, findings)
    expect(own.length).toBeGreaterThan(0)
    expect(new Set(own.map(({ subject }) => subject))).toEqual(new Set(['lap-left', 'lap-pair']))
  })
})

describe('worstFinding', () => {
  const finding = (verdict: ShownFinding['verdict'], level: ShownFinding['level']): ShownFinding =>
    ({ verdict, level }) as ShownFinding

  it('puts broken before unchecked before tight, and a must before a should', () => {
    const worst = (...findings: readonly ShownFinding[]) => worstFinding(findings)
    expect(worst(finding('tight', 'must'), finding('broken', 'advice'))?.verdict).toBe('broken')
    expect(worst(finding('tight', 'must'), finding('unchecked', 'advice'))?.verdict).toBe('unchecked')
    expect(worst(finding('broken', 'should'), finding('broken', 'must'))?.level).toBe('must')
    expect(worst()).toBeNull()
  })
})

describe('spokenChanges', () => {
  // atan(200/300) = 33.7° is under 45°; atan(300/200) = 56.3° is within 45° to 60°.
  const flat = withLapTabs(300, 200)
  const steep = withLapTabs(200, 300)

  it('says what a change broke, with the number and the limit', () => {
    const text = spokenChanges(flat, findingsAtOnce(steep), findingsAtOnce(flat))
    expect(text).toMatch(/^Now broken: /)
    expect(text).toContain('lap angle 33.7°, where 45° to 60° is asked for')
  })

  it('says what a change mended, with the number it has now', () => {
    const text = spokenChanges(steep, findingsAtOnce(flat), findingsAtOnce(steep))
    expect(text).toMatch(/^No longer broken: /)
    expect(text).toContain('lap angle 56.3°')
    expect(text).not.toContain('Now broken')
  })

  it('says nothing where no verdict changed, though numbers did', () => {
    const more = withLapTabs(300, 190)
    expect(spokenChanges(more, findingsAtOnce(flat), findingsAtOnce(more))).toBe('')
  })

  it('says three of many and how many more there are', () => {
    const layout = exampleLayout('everything-wrong.layout.json')
    const findings = findingsAtOnce(layout)
    const broken = findings.filter(({ verdict }) => verdict === 'broken')
    const text = spokenChanges(layout, [], findings)
    expect(text).toContain(`And ${broken.length - 3} more broken.`)
  })
})

describe('spokenTight', () => {
  it('says what became tight and nothing that was so before', () => {
    const layout = exampleLayout('rock-buggy.layout.json')
    const findings = evaluateLayout(layout).places[0]?.findings ?? []
    const tight = findings.filter(({ verdict }) => verdict === 'clear').slice(0, 1)
    const after = findings.map((finding) =>
      tight.includes(finding) ? ({ ...finding, verdict: 'tight', roomMm: 4 } as const) : finding,
    )
    expect(spokenTight(layout, findings, after)).toMatch(/^Now tight: .*but only 4 mm from the limit/)
    expect(spokenTight(layout, after, after)).toBe('')
  })
})

import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { withStrapBolt } from '../../../src/domain/layout/edit/changeBelt'
import { withRevision, withRevisionAdded } from '../../../src/domain/layout/edit/changeRevisions'
import { evaluateLayout } from '../../../src/domain/layout/evaluate/evaluateLayout'
import { notMeasuredTitles } from '../../../src/domain/layout/firstLayout/notMeasured'
import { projectionSymbol } from '../../../src/sheet/mount/figure/projectionSymbol'
import { sheetPages } from '../../../src/sheet/mount/sheetPages'
import type { SheetPage } from '../../../src/sheet/page/sheetPage'
import { exampleLayout } from '../../support/exampleLayouts'
import { textsOf } from '../../support/sheetTexts'

const rock = exampleLayout('rock-buggy.layout.json')
const evaluation = evaluateLayout(rock)

/** Only words change in these layouts, so that one evaluation serves them all. */
const pagesOf = (layout: Layout): readonly SheetPage[] => sheetPages(layout, evaluation, 'a4')

const wordsOf = (pages: readonly SheetPage[]): string =>
  pages.flatMap(({ items }) => textsOf(items).map(({ text }) => text)).join(' ')

describe('title block', () => {
  it('says scale, sheet n of m, projection, units and that nobody typed a tolerance', () => {
    const pages = pagesOf(rock)
    const first = wordsOf(pages.slice(0, 1))
    const scale = /scale (1:[\d.]+)/.exec(first)?.[1] ?? 'none'
    expect(first).toContain(`Scale ${scale}`)
    expect(first).toContain(`Sheet 1 of ${pages.length}`)
    expect(first).toContain('Projection third angle')
    expect(first).toContain('Lengths millimetres; inches in small')
    expect(first).toContain('General tolerances Nobody has typed any: agree them before anything is welded.')
    pages
      .slice(1)
      .forEach((page, index) => expect(wordsOf([page])).toContain(`sheet ${index + 2} of ${pages.length}`))
  })

  it('prints the tolerance that was typed, and asks no more of a tape', () => {
    const tolerance = { xMm: 3, yMm: 2, zMm: 3, tabDeg: 1, reclineDeg: 1, spread: 'worst-case' } as const
    const words = wordsOf(pagesOf({ ...rock, tolerance }))
    expect(words).toContain('± 3 mm in x, ± 2 mm in y, ± 3 mm in z, tabs ± 1°')
    expect(words).not.toContain('Nobody has typed any')
    expect(words).toContain('off by more than the tolerance, 2 mm')
  })

  it('shouts on every page while the datum has no name', () => {
    for (const page of pagesOf({ ...rock, datum: '  ' })) expect(wordsOf([page])).toContain('DATUM NOT NAMED')
    expect(wordsOf(pagesOf(rock))).not.toContain('DATUM NOT NAMED')
  })

  it('says on every page what nobody has measured, as it is asked, and nothing where all is measured', () => {
    const pages = pagesOf({ ...rock, notMeasured: ['seat', 'lap'] })
    expect(pages.length).toBeGreaterThan(1)
    const [seat = '', lap = ''] = notMeasuredTitles({ ...rock, notMeasured: ['seat', 'lap'] })
    for (const page of pages) {
      expect(wordsOf([page])).toContain('NOT MEASURED YET: weld nothing from this sheet')
      expect(wordsOf([page])).toContain(`${seat} ${lap}`)
    }
    expect(wordsOf(pagesOf({ ...rock, notMeasured: [] }))).not.toContain('NOT MEASURED')
    expect(wordsOf(pagesOf(rock))).not.toContain('NOT MEASURED')
  })
})

describe('projectionSymbol', () => {
  it('has the end view at the left, seen from the left, where the small end of the cone is', () => {
    // Third angle: what is seen from the left stands at the left. Source: the rule itself; ISO 5456-2 (from memory).
    const items = projectionSymbol({ xMm: 0, yMm: 0 })
    const circles = items.flatMap((item) => (item.kind === 'circle' ? [item] : []))
    const cone = items.find((item) => item.kind === 'line' && item.closed)
    const corners = cone?.kind === 'line' ? cone.points : []
    expect(circles).toHaveLength(2)
    const leftMm = Math.min(...corners.map(({ xMm }) => xMm))
    for (const { centre, radiusMm } of circles) expect(centre.xMm + radiusMm).toBeLessThan(leftMm)
    const heightAt = (xMm: number): number => {
      const ys = corners.filter((corner) => corner.xMm === xMm).map(({ yMm }) => yMm)
      return Math.max(...ys) - Math.min(...ys)
    }
    const rightMm = Math.max(...corners.map(({ xMm }) => xMm))
    const [large, small] = circles.map(({ radiusMm }) => 2 * radiusMm).toSorted((a, b) => b - a)
    expect([heightAt(leftMm), heightAt(rightMm)]).toEqual([small, large])
  })
})

describe('revisions', () => {
  it('says that no history was typed, and which revision this is', () => {
    expect(wordsOf(pagesOf(rock))).toContain('No history of changes has been typed')
  })

  it('prints every line of the history', () => {
    const two = withRevisionAdded(withRevision(withRevisionAdded(rock), 0, { change: 'First issue' }))
    const layout = withRevision(two, 1, {
      revision: 'B',
      date: '2026-11-20',
      by: 'Night shift',
      change: 'Bar up 22 mm',
    })
    const words = wordsOf(pagesOf(layout))
    expect(words).toContain('First issue')
    expect(words).toContain('B 2026-11-20 Night shift Bar up 22 mm')
    expect(words).not.toContain('No history of changes')
  })
})

describe('bolts and torque', () => {
  it('leaves blanks for what nobody typed, and never a number', () => {
    const words = wordsOf(pagesOf(rock))
    expect(words).toMatch(
      /Lap straps, 2 bolts: Ø _+, grade _+, torque _+\. To be taken from the belt maker’s/,
    )
    expect(words).not.toMatch(/\d N·m/)
  })

  it('prints what was typed in both units, with where it is from and blanks for the rest', () => {
    const layout = withStrapBolt(rock, 'driver', 'lap', { torqueNm: 40, source: 'instruction card, page 6' })
    const words = wordsOf(pagesOf(layout))
    // 40 N·m / 1.355 818 = 29.5 lbf·ft.
    expect(words).toMatch(
      /Ø _+, grade _+, torque 40 N·m \(29\.5 lbf·ft\)\. As typed by the builder from: instruction/,
    )
    const unsourced = withStrapBolt(rock, 'driver', 'lap', { torqueNm: 40 })
    expect(wordsOf(pagesOf(unsourced))).toMatch(/As typed by the builder from: _+/)
  })
})

describe('the bar from behind', () => {
  it('can be left out, and takes nothing else with it', () => {
    const whole = wordsOf(pagesOf(rock))
    const without = wordsOf(sheetPages(rock, evaluation, 'a4', { hasRearView: false }))
    expect(whole).toContain('Harness bar from behind')
    expect(whole).toContain('Looking forward, occupant’s left at the left')
    expect(without).not.toContain('Harness bar from behind')
    for (const title of ['Tape check', 'How each anchor sits', 'Belt and hardware', 'Revisions'])
      expect(without).toContain(title)
  })
})

describe('not computed', () => {
  it('stays in one column', () => {
    for (const file of ['student-racer-under-thighs.layout.json', 'rally-buggy-crossed-straps.layout.json']) {
      const layout = exampleLayout(file)
      for (const paper of ['a4', 'letter'] as const)
        expect(wordsOf(sheetPages(layout, evaluateLayout(layout), paper))).not.toContain(
          'Not computed: see to it on the car (continued)',
        )
    }
  })
})

import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { evaluateLayout } from '../../../src/domain/layout/evaluate/evaluateLayout'
import { CAUTIONS } from '../../../src/domain/layout/wording/cautions'
import { isInside, itemBox, type SheetItem, type SheetText } from '../../../src/sheet/page/item'
import { lengthText } from '../../../src/domain/units/length'
import type { PaperName } from '../../../src/sheet/page/paper'
import { sheetPages } from '../../../src/sheet/mount/sheetPages'
import type { SheetPage } from '../../../src/sheet/page/sheetPage'
import { exampleIndex, exampleLayout } from '../../support/exampleLayouts'
import { overlappingTexts, spoiledBalloons } from '../../support/sheetTexts'

const PAPERS: readonly PaperName[] = ['a4', 'letter']
const examples = exampleIndex.map(({ file }) => ({ file, layout: exampleLayout(file) }))
const pagesOf = (layout: Layout, paper: PaperName): readonly SheetPage[] =>
  sheetPages(layout, evaluateLayout(layout), paper)

/** The unit changes what is printed, not what is computed: evaluated once for both. */
const cases = examples.flatMap(({ file, layout }) => {
  const evaluation = evaluateLayout(layout)
  return (['mm', 'in'] as const).flatMap((unit) => {
    const inUnit = { ...layout, units: { ...layout.units, length: unit } }
    return PAPERS.map((paper) => ({
      name: `${file} on ${paper} in ${unit}`,
      layout: inUnit,
      pages: sheetPages(inUnit, evaluation, paper),
    }))
  })
})

const texts = (page: SheetPage): readonly SheetText[] =>
  page.items.flatMap((item) => (item.kind === 'text' ? [item] : []))

const allText = (pages: readonly SheetPage[]): string =>
  pages
    .flatMap(texts)
    .map((item) => item.text)
    .join('\n')

/** The words of tables and headings: level, without the halo that words on the drawing have. */
const tableTexts = (page: SheetPage): readonly SheetText[] =>
  texts(page).filter((item) => !item.halo && !item.upward)

/** The strip across the top of a page ends before this. */
const STRIP_END_MM = 32

describe('sheetPages', () => {
  it.each(cases)('puts nothing outside the paper: $name', ({ pages }) => {
    for (const page of pages) {
      // The outermost 5 mm stay free of ink: less than any border of ours, more than any rounding.
      const free = { leftMm: 5, topMm: 5, rightMm: page.widthMm - 5, bottomMm: page.heightMm - 5 }
      const outside = page.items.filter((item) => !isInside(itemBox(item), free))
      expect(outside).toEqual([])
    }
  })

  it.each(cases)('lets no words run into one another, and none into a balloon: $name', ({ pages }) => {
    for (const page of pages) {
      expect(overlappingTexts(texts(page))).toEqual([])
      expect(spoiledBalloons(page.items)).toEqual([])
    }
  })

  it.each(cases)('fits a few pages: $name', ({ layout, pages }) => {
    const anchors = layout.places.flatMap((place) => place.anchors).length
    // One with the drawing and the anchor table, then one for up to seven anchors and one for each seven more. Our judgement.
    expect(pages.length).toBeLessThanOrEqual(anchors === 0 ? 1 : 2 + Math.ceil(anchors / 7))
  })

  it.each(cases)('numbers its pages and says where it goes on: $name', ({ pages }) => {
    for (const [index, page] of pages.entries()) {
      const isLast = index === pages.length - 1
      expect(allText([page])).toContain(`Page ${index + 1} of ${pages.length}`)
      expect(allText([page]).includes(`continued on page ${index + 2}`)).toBe(!isLast)
      expect(allText([page])).toContain(CAUTIONS[0])
    }
  })

  it.each(cases)('cuts no number short: $name', ({ pages }) => {
    const cut = pages.flatMap(texts).filter((item) => /\d[^ ]*…/.test(item.text))
    expect(cut.map((item) => item.text)).toEqual([])
  })

  it('shows every anchor of the rock buggy with its numbers, on the first page', () => {
    const layout = exampleLayout('rock-buggy.layout.json')
    for (const paper of PAPERS) {
      const [first] = pagesOf(layout, paper)
      const words = first === undefined ? [] : tableTexts(first).map((item) => item.text)
      for (const { mount } of layout.places.flatMap((place) => place.anchors)) {
        for (const valueMm of [mount.point.xMm, mount.point.yMm, mount.point.zMm])
          expect(words).toContain(String(valueMm).replace('-', '−'))
      }
    }
  })

  it.each(cases)(
    'shows the numbers of every anchor in one table on the first page: $name',
    ({ layout, pages }) => {
      const [first] = pages
      const words = first === undefined ? [] : tableTexts(first).map((item) => item.text)
      for (const { mount } of layout.places.flatMap((place) => place.anchors)) {
        for (const valueMm of [mount.point.xMm, mount.point.yMm, mount.point.zMm])
          expect(words).toContain(lengthText(valueMm, layout.units.length))
      }
      expect(allText(pages)).not.toContain('Anchors (continued)')
    },
  )

  it.each(cases)(
    'sets nothing smaller than 6.5 point and the numbers of the table in 8 at least: $name',
    ({ pages }) => {
      // 72 point to the inch of 25.4 mm. The limits are our judgement.
      const points = (item: SheetText): number => (item.sizeMm / 25.4) * 72
      const all = pages.flatMap(texts)
      expect(all.filter((item) => points(item) < 6.5).map((item) => item.text)).toEqual([])
      const numbers = pages
        .flatMap(tableTexts)
        .filter((item) => item.weight === 'bold' && /^−?[\d./ ]+°?$/.test(item.text))
        // Numbers in balloons are drawn to be found, not read off.
        .filter((item) => item.align !== 'centre')
        // Nor is a year in the strip across the top.
        .filter((item) => item.at.yMm > STRIP_END_MM)
      expect(numbers.filter((item) => points(item) < 8).map((item) => item.text)).toEqual([])
    },
  )

  it('lists each tight finding with its limit and its room in millimetres, with the elevation where that is not its own', () => {
    const car = exampleLayout('trail-car-two-seat.layout.json')
    const layout = { ...car, units: { ...car.units, length: 'mm' as const } }
    const evaluation = evaluateLayout(layout)
    const tight = evaluation.places
      .flatMap((place) => place.findings)
      .filter((finding) => finding.verdict === 'tight')
    expect(tight.length).toBeGreaterThan(0)
    const text = allText(sheetPages(layout, evaluation, 'a4')).replaceAll('\n', ' ')
    const entries = [...text.matchAll(/TIGHT, (?:must|should|advice): ([^[]*)\[/g)].map(
      ([, entry]) => entry ?? '',
    )
    const alsoNamed = entries.flatMap((entry) => /The same: ([^.]*)\./.exec(entry)?.[1]?.split(', ') ?? [])
    expect(entries.length + alsoNamed.length).toBe(tight.length)
    for (const entry of entries)
      expect(entry).toMatch(/, limit .*; room [\d.]+ mm(?: in the (?:side|top) elevation)?\./)
  })

  it('gives inches to a sixteenth with the millimetres beside them when the shop thinks in inches', () => {
    const layout = exampleLayout('rock-buggy.layout.json')
    const inches = { ...layout, units: { ...layout.units, length: 'in' as const } }
    const [anchor] = layout.places[0]?.anchors ?? []
    const words = allText(pagesOf(inches, 'letter')).split('\n')
    const sixteenths = Math.round(((anchor?.mount.point.xMm ?? 0) / 25.4) * 16)
    const whole = Math.floor(sixteenths / 16)
    expect(words.some((word) => word === `${whole}` || word.startsWith(`${whole} `))).toBe(true)
    expect(words).toContain(`${anchor?.mount.point.xMm} mm`)
  })

  it('lists each broken finding of the bad example with its value, and counts them in the head', () => {
    const layout = exampleLayout('everything-wrong.layout.json')
    const evaluation = evaluateLayout(layout)
    const broken = evaluation.places
      .flatMap((place) => place.findings)
      .filter((finding) => finding.verdict === 'broken')
    const text = allText(sheetPages(layout, evaluation, 'a4')).replaceAll('\n', ' ')
    expect(broken.length).toBeGreaterThanOrEqual(6)
    expect(text).toContain(`Broken ${broken.length}`)
    const unchecked = evaluation.places
      .flatMap((place) => place.findings)
      .filter((finding) => finding.verdict === 'unchecked')
    const named = [...text.matchAll(/(?:BROKEN|UNCHECKED), (?:must|should|advice)/g)].length
    const alsoNamed = [...text.matchAll(/The same: ([^.]*)\./g)].flatMap(
      (match) => match[1]?.split(', ') ?? [],
    )
    expect(named + alsoNamed.length).toBe(broken.length + unchecked.length)
    const values = broken.flatMap(({ value }) =>
      typeof value === 'number' && Math.abs(value) < 1000 ? [String(Number(Math.abs(value).toFixed(1)))] : [],
    )
    for (const value of values) expect(text).toContain(value)
  })

  it('has check bars of exactly 100 mm and 4 in', () => {
    const layout = exampleLayout('rock-buggy.layout.json')
    for (const paper of PAPERS) {
      const [first] = pagesOf(layout, paper)
      const lengths = (first?.items ?? []).flatMap((item) => levelLengths(item))
      expect(lengths).toContain(100)
      // 4 in × 25.4 mm.
      expect(lengths).toContain(101.6)
    }
  })

  it('moves what does not fit to further pages, heads repeated, and loses nothing', () => {
    const layout = exampleLayout('trail-car-two-seat.layout.json')
    const [place] = layout.places
    if (place === undefined) throw new Error('the example has a place')
    const many = {
      ...layout,
      job: { ...layout.job, notes: Array.from({ length: 400 }, (_, index) => `Note ${index}.`).join('\n') },
      places: Array.from({ length: 8 }, (_, index) => ({ ...place, id: `p${index}`, name: `Seat ${index}` })),
    }
    const pages = pagesOf(many, 'a4')
    expect(pages.length).toBeGreaterThan(2)
    const text = allText(pages)
    for (let index = 0; index < 8; index += 1) expect(text).toContain(`Seat ${index}`)
    for (const number of [0, 200, 399]) expect(text.split('\n')).toContain(`Note ${number}.`)
    expect(text).toContain('Anchors (continued)')
    for (const page of pages) {
      expect(overlappingTexts(tableTexts(page))).toEqual([])
      for (const item of page.items) expect(itemBox(item).bottomMm).toBeLessThanOrEqual(page.heightMm - 5)
    }
  })

  it('stands long and hostile names without leaving the paper or losing them', () => {
    const layout = exampleLayout('rock-buggy.layout.json')
    const long = `<b>&"'${'Langenname '.repeat(16)}`
    const hostile = {
      ...layout,
      job: { ...layout.job, car: long, customer: 'W'.repeat(200), name: long },
      datum: `${long}${long}`,
      tubes: layout.tubes.map((tube) => ({ ...tube, name: `${long}${tube.id}` })),
    }
    const pages = pagesOf(hostile, 'letter')
    for (const page of pages) {
      for (const item of page.items) {
        expect(itemBox(item).rightMm).toBeLessThanOrEqual(page.widthMm - 5)
        expect(itemBox(item).bottomMm).toBeLessThanOrEqual(page.heightMm - 5)
      }
      expect(overlappingTexts(tableTexts(page))).toEqual([])
    }
    const letters = allText(pages).replaceAll(/\s/g, '')
    expect(letters).toContain('W'.repeat(200))
    expect(letters).toContain(long.replaceAll(/\s/g, ''))
  })
})

const levelLengths = (item: SheetItem): readonly number[] => {
  if (item.kind !== 'line' || item.points.length !== 2) return []
  const [from, to] = item.points
  if (from === undefined || to === undefined || from.yMm !== to.yMm) return []
  return [Math.round((to.xMm - from.xMm) * 1e6) / 1e6]
}

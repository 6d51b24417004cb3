import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { evaluateLayout } from '../../../src/domain/layout/evaluate/evaluateLayout'
import { CAUTIONS } from '../../../src/domain/layout/wording/cautions'
import type { FlatShape } from '../../../src/domain/shop/flat/flatFigure'
import type { TabMount } from '../../../src/domain/straps/anchor'
import { areOverlapping, isInside, itemBox, type SheetItem } from '../../../src/sheet/page/item'
import { MARGIN_MM, PAPERS, type PaperName } from '../../../src/sheet/page/paper'
import type { SheetPage } from '../../../src/sheet/page/sheetPage'
import { templatePages } from '../../../src/sheet/templates/templatePages'
import { templateFigures, templateSet } from '../../../src/sheet/templates/templateSet'
import { layoutArb } from '../../support/arbitraries'
import { exampleIndex, exampleLayout } from '../../support/exampleLayouts'

const rock = exampleLayout('rock-buggy.layout.json')
const PAPER_NAMES = Object.keys(PAPERS) as PaperName[]
const cases = exampleIndex.flatMap(({ file }) => PAPER_NAMES.map((paper) => ({ file, paper })))

const textsOf = (page: SheetPage): readonly string[] =>
  page.items.flatMap((item) => (item.kind === 'text' ? [item.text] : []))

/** Lengths of the straight lines with two points that run level or upright on a page, mm. */
const straight = (items: readonly SheetItem[], way: 'level' | 'upright'): readonly number[] =>
  items.flatMap((item) => {
    if (item.kind !== 'line' || item.points.length !== 2) return []
    const [from, to] = item.points
    if (from === undefined || to === undefined) return []
    const [dx, dy] = [Math.abs(to.xMm - from.xMm), Math.abs(to.yMm - from.yMm)]
    return way === 'level' ? (dy < 1e-9 ? [dx] : []) : dx < 1e-9 ? [dy] : []
  })

const withLapTab = (changes: Partial<TabMount>): Layout => ({
  ...rock,
  places: rock.places.map((place) => ({
    ...place,
    anchors: place.anchors.map((anchor) =>
      anchor.strap === 'lap-left' && anchor.mount.kind === 'tab'
        ? { ...anchor, mount: { ...anchor.mount, ...changes } }
        : anchor,
    ),
  })),
})

describe('templatePages', () => {
  it.each(cases)(
    '$file on $paper: inside the margins, nothing written over anything, bars both ways',
    ({ file, paper }) => {
      const layout = exampleLayout(file)
      const pages = templatePages(layout, null, paper)
      const { widthMm, heightMm } = PAPERS[paper]
      // Rules that end on the margin reach over it by half a pen.
      const edgeMm = MARGIN_MM - 0.2
      const printed = {
        leftMm: edgeMm,
        topMm: edgeMm,
        rightMm: widthMm - edgeMm,
        bottomMm: heightMm - edgeMm,
      }
      for (const page of pages) {
        const boxes = page.items.map(itemBox)
        expect(boxes.filter((box) => !isInside(box, printed))).toEqual([])
        const texts = page.items.filter((item) => item.kind === 'text')
        const clashes = texts.flatMap((text, index) =>
          texts
            .slice(index + 1)
            .filter((other) => areOverlapping(itemBox(text), itemBox(other)))
            .map((other) => `${page.number}: ${text.text} × ${other.text}`),
        )
        expect(clashes).toEqual([])
        // 4 in are 101.6 mm exactly.
        for (const way of ['level', 'upright'] as const)
          for (const lengthMm of [100, 101.6])
            expect(straight(page.items, way).some((found) => Math.abs(found - lengthMm) < 1e-9)).toBe(true)
        const all = textsOf(page).join(' ')
        expect(all).toContain(CAUTIONS[0])
        expect(all).toContain(`Page ${page.number} of ${pages.length}`)
        expect(all).toContain(layout.job.car)
        expect(all).toContain(layout.job.revision === '' ? '' : `revision ${layout.job.revision}`)
      }
    },
  )

  it('lists every template with its page, says how to check the print and gives all cautions', () => {
    const pages = templatePages(rock, null, 'a4')
    const [first] = pages
    if (first === undefined) throw new Error('no pages')
    const words = textsOf(first).join(' ')
    expect(words).toContain('100 mm and 4 in')
    for (const caution of CAUTIONS) expect(words.replaceAll(/\s+/g, ' ')).toContain(caution.slice(0, 40))
    for (const { figure } of templateSet(rock, null).templates) {
      const index = textsOf(first).indexOf(figure.title.replaceAll(/ +/g, ' '))
      expect(index).toBeGreaterThan(-1)
      const number = Number(/\d+/.exec(textsOf(first)[index + 1] ?? '')?.[0])
      expect(textsOf(pages[number - 1] ?? first).join('|')).toContain(figure.title.replaceAll(/ +/g, ' '))
    }
  })

  it('makes whole pages of any layout: every number finite, nothing off the paper', () => {
    fc.assert(
      fc.property(layoutArb, fc.constantFrom(...PAPER_NAMES), (layout, paper) => {
        const { widthMm, heightMm } = PAPERS[paper]
        const whole = { leftMm: 0, topMm: 0, rightMm: widthMm, bottomMm: heightMm }
        for (const page of templatePages(layout, null, paper))
          expect(page.items.map(itemBox).filter((box) => !isInside(box, whole))).toEqual([])
      }),
      { numRuns: 40 },
    )
  })

  it('has no pages for a layout without anchors', () => {
    expect(templatePages(exampleLayout('nearly-empty.layout.json'), null, 'a4')).toEqual([])
  })

  it('spreads a tab larger than the paper over parts with names', () => {
    const mount = rock.places[0]?.anchors.find(({ strap }) => strap === 'lap-left')?.mount
    if (mount?.kind !== 'tab') throw new Error('no tab')
    const long = withLapTab({ point: { ...mount.point, zMm: mount.point.zMm + 200 } })
    const parts = templatePages(long, null, 'a4').filter((page) => page.title.includes('part'))
    expect(parts.map((page) => /part \S+/.exec(page.title)?.[0])).toEqual(['part 1A', 'part 2A'])
    expect(parts.map((page) => textsOf(page).find((text) => text.startsWith('join to')))).toEqual([
      'join to 2A: lay line on line',
      'join to 1A: lay line on line',
    ])
  })
})

describe('templateSet', () => {
  it.each(exampleIndex.map(({ file }) => ({ file })))(
    '$file: every anchor has a template, is on a strip, or is named with a reason',
    ({ file }) => {
      const layout = exampleLayout(file)
      const { templates, without } = templateSet(layout, null)
      const said = [...templates.map(({ figure }) => figure.title), ...without.map(({ name }) => name)]
      let itemNumber = 0
      for (const place of layout.places)
        for (const _ of place.anchors) {
          itemNumber += 1
          const isOwn = said.some((text) => new RegExp(`^${itemNumber}[ab]? `).test(text))
          const isOnStrip = said.some((text) => new RegExp(`^Strip for .*[ :]${itemNumber}(,|$)`).test(text))
          const isShared = place.belt.shoulderTailMm !== undefined && itemNumber === 2
          expect(isOwn || isOnStrip || isShared).toBe(true)
        }
    },
  )

  it('says why a tab has none, with the numbers', () => {
    const whyOf = (changes: Partial<TabMount>): string =>
      templateSet(withLapTab(changes), null)
        .without.map(({ why }) => why)
        .join()
    const mount = rock.places[0]?.anchors.find(({ strap }) => strap === 'lap-left')?.mount
    if (mount?.kind !== 'tab') throw new Error('no tab')
    expect(whyOf({})).toBe('')
    expect(whyOf({ edgeDistanceMm: 5 })).toMatch(/reaches the edge of the plate/)
    expect(whyOf({ holeDiameterMm: 36, widthMm: 80, edgeDistanceMm: 40 })).toMatch(
      /Between the edge of its hole and the tube/,
    )
    expect(whyOf({ point: { ...mount.point, zMm: mount.point.zMm - 38 } })).toMatch(
      /below the surface|bend|past/,
    )
    expect(whyOf({ form: 'insert', shear: 'single' })).toMatch(/passes beside the tube/)
    expect(whyOf({ form: 'insert', shear: 'single', planDeg: 0 })).toMatch(/lies along the tube/)
    expect(whyOf({ form: 'insert', shear: 'single', tubeId: null })).toMatch(/on no tube/)
  })

  it('gives an insert that points at its tube the strip for its end', () => {
    const mount = rock.places[0]?.anchors.find(({ strap }) => strap === 'lap-left')?.mount
    if (mount?.kind !== 'tab') throw new Error('no tab')
    const tube = rock.tubes.find(({ id }) => id === mount.tubeId)
    const [from, to] = [tube?.points[1], tube?.points[2]]
    if (from === undefined || to === undefined) throw new Error('no piece')
    // Straight above the middle of the cross tube, its face level: the axis is plumb.
    const point = {
      xMm: (from.xMm + to.xMm) / 2,
      yMm: (from.yMm + to.yMm) / 2,
      zMm: (from.zMm + to.zMm) / 2 + 60,
    }
    const { templates, without } = templateSet(
      withLapTab({ form: 'insert', shear: 'single', planDeg: 0, leanDeg: 90, point, widthMm: 24 }),
      null,
    )
    expect(without).toEqual([])
    const cut = templates.find(({ kind }) => kind === 'insert')?.figure.shapes[0]
    if (cut?.kind !== 'polyline') throw new Error('no cope')
    const xs = cut.points.map(({ xMm }) => xMm)
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(Math.PI * 24, 9)
    // 60 mm above the centre line of a 38.1 mm tube: shortest 60 − 19.05 at its crest.
    expect(Math.max(...cut.points.filter(({ yMm }) => yMm < 0).map(({ yMm }) => yMm))).toBeCloseTo(-40.95, 6)
  })

  it('makes a gauge for every angle of pull within an eighth of a degree, from the drawn sitting', () => {
    const layout = exampleLayout('dune-runner-three-point.layout.json')
    const evaluation = evaluateLayout(layout)
    const gauges = templateSet(layout, evaluation).templates.filter(({ kind }) => kind === 'gauge')
    const slopes = gauges.map(({ figure }) => slopeOf(figure.shapes))
    const [place] = evaluation.places
    for (const path of place?.sittings[0]?.paths ?? []) {
      const [from, to] = path.polyline
      if (from === undefined || to === undefined) continue
      const [dx, dy, dz] = [to.xMm - from.xMm, to.yMm - from.yMm, to.zMm - from.zMm]
      const side = (Math.atan2(Math.abs(dz), Math.abs(dx)) * 180) / Math.PI
      const string = (Math.atan2(Math.abs(dz), Math.hypot(dx, dy)) * 180) / Math.PI
      for (const deg of [side, string])
        expect(Math.min(...slopes.map((slope) => Math.abs(slope - deg)))).toBeLessThan(0.18)
    }
    expect(
      gauges.some(({ words }) => words.some((text) => text.includes('line of pull from the side'))),
    ).toBe(true)
  })
})

/** Angle from level of the one edge of a gauge that is neither level nor plumb. */
const slopeOf = (shapes: readonly FlatShape[]): number => {
  const [cut] = shapes
  if (cut?.kind !== 'polyline') return Number.NaN
  const sloping = cut.points.flatMap((from, index) => {
    const to = cut.points[(index + 1) % cut.points.length] ?? from
    const [dx, dy] = [Math.abs(to.xMm - from.xMm), Math.abs(to.yMm - from.yMm)]
    return dx < 1e-9 || dy < 1e-9 ? [] : [(Math.atan2(dy, dx) * 180) / Math.PI]
  })
  return sloping[0] ?? Number.NaN
}

describe('templateFigures', () => {
  it.each(exampleIndex.map(({ file }) => ({ file })))(
    '$file: ids are file names of their own, bars show the size',
    ({ file }) => {
      const figures = templateFigures(exampleLayout(file))
      const ids = figures.map(({ id }) => id)
      expect(new Set(ids).size).toBe(ids.length)
      for (const { id, shapes } of figures) {
        expect(id).toMatch(/^[a-z0-9-]+$/)
        expect(shapes.some(({ layer }) => layer === 'CUT')).toBe(true)
        const bars = shapes.flatMap((shape) => {
          if (shape.layer !== 'CHECK' || shape.kind !== 'polyline') return []
          const [from, to] = shape.points
          return from === undefined || to === undefined
            ? []
            : [[Math.abs(to.xMm - from.xMm), Math.abs(to.yMm - from.yMm)]]
        })
        for (const lengthMm of [100, 101.6]) {
          expect(bars.some(([dx = 0]) => Math.abs(dx - lengthMm) < 1e-9)).toBe(true)
          expect(bars.some(([, dy = 0]) => Math.abs(dy - lengthMm) < 1e-9)).toBe(true)
        }
        const points = shapes.flatMap((shape) => (shape.kind === 'polyline' ? shape.points : []))
        expect(points.every(({ xMm, yMm }) => Number.isFinite(xMm) && Number.isFinite(yMm))).toBe(true)
      }
    },
  )
})

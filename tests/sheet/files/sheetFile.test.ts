import { emptyLayout } from '../../../src/domain/layout/document/empty'
import { describe, expect, it } from 'vitest'
import { lineItem, textItem } from '../../../src/sheet/page/item'
import { withVariantAdded } from '../../../src/domain/layout/edit/changeVariants'
import { htmlFile, paperFileName, svgFile } from '../../../src/sheet/files/sheetFile'
import type { SheetPage } from '../../../src/sheet/page/sheetPage'
import { escaped, svgText } from '../../../src/sheet/page/svgText'
import { itemNode } from '../../../src/sheet/page/svgTree'

const page = (text: string): SheetPage => ({
  number: 1,
  of: 1,
  widthMm: 297,
  heightMm: 210,
  title: text,
  items: [
    textItem({ xMm: 10, yMm: 20 }, text, 3),
    lineItem([
      { xMm: 0, yMm: 0 },
      { xMm: 100, yMm: 0 },
    ]),
  ],
})

const HOSTILE = `<script>alert("x")</script> & 'b' ]]> -- \u0000`

describe('escaped', () => {
  it('leaves nothing that could end an element, an attribute or an entity', () => {
    // The five characters that XML 1.0 section 2.4 and HTML reserve (from memory).
    expect(escaped(`<b>&"'`)).toBe('&lt;b&gt;&amp;&quot;&#39;')
    expect(escaped('a\u0000b')).toBe('a b')
  })
})

describe('svgFile', () => {
  it('keeps hostile names as plain text', () => {
    const file = svgFile(page(HOSTILE), [])
    expect(file).not.toContain('<script')
    expect(file).toContain('&lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt; &amp; &#39;b&#39; ]]&gt;')
    expect(file).not.toContain('\u0000')
  })

  it('has the size of the paper in millimetres and one unit for each', () => {
    const file = svgFile(page('x'), [])
    expect(file).toContain('width="297mm" height="210mm" viewBox="0 0 297 210"')
  })

  it('carries its font when there is one', () => {
    const font = { weight: 400, dataUrl: 'data:font/woff2;base64,AAAA' }
    expect(svgFile(page('x'), [font])).toContain('url(data:font/woff2;base64,AAAA)')
    expect(svgFile(page('x'), [])).not.toContain('<style')
  })

  it('draws a straight line from point to point', () => {
    expect(svgText(itemNode(page('x').items[1] ?? lineItem([])))).toContain('d="M0 0L100 0"')
  })
})

describe('htmlFile', () => {
  it('prints every page on paper of its own size and escapes title and text', () => {
    const file = htmlFile([page(HOSTILE), page('two')], HOSTILE, [])
    expect(file).toContain('@page{size:297mm 210mm;margin:0}')
    expect(file.match(/<svg /g)).toHaveLength(2)
    expect(file).not.toContain('<script')
  })
})

describe('paperFileName', () => {
  it('says which variant it is of, where the car has several', () => {
    const two = withVariantAdded(emptyLayout(), 'Low bar')
    const job = { ...two.job, car: 'Trail car', revision: 'C' }
    expect(paperFileName('mount-sheet', { ...two, job }, 'svg')).toBe('mount-sheet-trail-car-low-bar-c.svg')
  })

  it.each([
    {
      car: 'Rock buggy "Pebble Thief"',
      revision: 'A',
      expected: 'mount-sheet-rock-buggy-pebble-thief-a.svg',
    },
    { car: 'Ü/../..\\x', revision: '', expected: 'mount-sheet-u-x.svg' },
    { car: '', revision: '', expected: 'mount-sheet.svg' },
  ])('of "$car" is $expected', ({ car, revision, expected }) => {
    expect(paperFileName('mount-sheet', { job: { ...emptyLayout().job, car, revision } }, 'svg')).toBe(
      expected,
    )
  })
})

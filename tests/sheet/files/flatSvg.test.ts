import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { flatSvg } from '../../../src/sheet/files/flatSvg'
import type { FlatFigure } from '../../../src/domain/shop/flat/flatFigure'
import { anyFigure } from '../../support/flatFigures'

const FIGURE: FlatFigure = {
  id: 'tab-1',
  title: 'Lap tab <left> & "right"',
  shapes: [
    {
      kind: 'polyline',
      layer: 'CUT',
      closed: true,
      points: [
        { xMm: 0, yMm: 0 },
        { xMm: 40, yMm: 0 },
        { xMm: 40, yMm: 30 },
      ],
    },
    // The upper right quarter: from (10, 0) anticlockwise to (0, 10).
    { kind: 'arc', layer: 'CUT', centre: { xMm: 0, yMm: 0 }, radiusMm: 10, fromDeg: 0, toDeg: 90 },
    { kind: 'arc', layer: 'MARK', centre: { xMm: 0, yMm: 0 }, radiusMm: 10, fromDeg: 90, toDeg: 0 },
    { kind: 'circle', layer: 'DRILL', centre: { xMm: 20, yMm: 12 }, radiusMm: 6.35 },
    {
      kind: 'text',
      layer: 'TEXT',
      at: { xMm: 5, yMm: 7 },
      text: '<script>',
      heightMm: 4,
      align: 'right',
      turnDeg: 90,
    },
  ],
}

const numberOf = (text: string, pattern: RegExp): number => Number(pattern.exec(text)?.[1])

describe('flatSvg', () => {
  const svg = flatSvg(FIGURE, ['Note'])

  it('is in true scale: as many millimetres as units in its view box', () => {
    // Source: SVG 1.1, 7.7: width and height set against the view box give the scale.
    const box = /viewBox="(\S+) (\S+) (\S+) (\S+)"/.exec(svg)?.slice(1).map(Number)
    expect(numberOf(svg, / width="([\d.]+)mm"/)).toBe(box?.[2])
    expect(numberOf(svg, / height="([\d.]+)mm"/)).toBe(box?.[3])
  })

  it('has y down where the figure has y up', () => {
    expect(svg).toContain('<path d="M0 0L40 0L40 -30Z"/>')
    expect(svg).toContain('<circle cx="20" cy="-12" r="6.35"/>')
    expect(svg).toContain('transform="rotate(-90 5 -7)"')
  })

  it('turns arcs the way that they run: sweep flag 0 is anticlockwise on a screen', () => {
    expect(svg).toContain('M10 0A10 10 0 0 0 0 -10')
    expect(svg).toContain('M0 -10A10 10 0 1 0 10 0')
  })

  it('has one group for each layer that is used', () => {
    expect([...svg.matchAll(/<g id="([A-Z]+)"/g)].map((match) => match[1])).toEqual([
      'CUT',
      'DRILL',
      'MARK',
      'TEXT',
    ])
  })

  it('shows what was typed and obeys none of it', () => {
    expect(svg).not.toContain('<script')
    expect(svg).toContain('&lt;script&gt;')
    expect(svg).toContain('<title>Lap tab &lt;left&gt; &amp; &quot;right&quot;</title>')
    expect(svg).toContain('>Note</text>')
  })

  it('always has every line inside its view box, and every tag closed', () => {
    fc.assert(
      fc.property(anyFigure, (figure) => {
        const text = flatSvg(figure, [])
        const [left = NaN, top = NaN, width = NaN, height = NaN] =
          /viewBox="(\S+) (\S+) (\S+) (\S+)"/.exec(text)?.slice(1).map(Number) ?? []
        const points = [...text.matchAll(/[ML"](-?[\d.]+) (-?[\d.]+)(?=[LZ"])/g)].map((match) => [
          Number(match[1]),
          Number(match[2]),
        ])
        for (const [x = NaN, y = NaN] of points) {
          if (!(x >= left && x <= left + width && y >= top && y <= top + height))
            throw new Error(`${x} ${y} is outside ${left} ${top} ${width} ${height}`)
        }
        const opened = text.match(/<[a-z]+[^>]*[^/]>|<[a-z]+>/g)?.length
        expect(opened).toBe(text.match(/<\/[a-z]+>/g)?.length)
      }),
    )
  })
})

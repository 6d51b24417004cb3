import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { FlatFigure, FlatShape } from '../../../src/domain/shop/flat/flatFigure'
import { dxfText, FLAT_LAYERS } from '../../../src/sheet/files/dxf'
import { dxfString } from '../../../src/sheet/files/dxfString'
import { readByDxf, readByDxfParser } from '../../support/dxfReader'
import { anyFigure, anyWords, expectSameShape } from '../../support/flatFigures'

/*
 * Outside: the packages dxf-parser and dxf read the files back; they share no code with each other or with the writer.
 * 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
 */

const PER_UNIT = { mm: 1, in: 25.4 } as const
const UNIT_CODES = { mm: 4, in: 1 } as const

const figureOf = (...shapes: readonly FlatShape[]): FlatFigure => ({ id: 'f', title: 'Plate', shapes })

/** What is drawn with lines: text that has no letters left is not written at all. */
const isWritten = (shape: FlatShape): boolean => shape.kind !== 'text' || dxfString(shape.text) !== ''

describe('dxfText', () => {
  it('gives two independent readers every coordinate back, in millimetres and in inches', () => {
    fc.assert(
      fc.property(anyFigure, fc.constantFrom('mm' as const, 'in' as const), (figure, unit) => {
        const text = dxfText(figure, { unit, notes: ['A note'] })
        const wanted = figure.shapes.filter(isWritten)
        for (const drawing of [readByDxfParser(text), readByDxf(text)]) {
          expect(drawing.unit).toBe(UNIT_CODES[unit])
          wanted.forEach((shape, index) => expectSameShape(drawing.shapes[index], shape, PER_UNIT[unit]))
          const notes = drawing.shapes.slice(wanted.length)
          expect(notes.every((note) => note.kind === 'text' && note.layer === 'TEXT')).toBe(true)
          expect(notes.at(-1)).toMatchObject({ text: 'A note' })
        }
      }),
    )
  })

  it('says its release, its unit and its six layers', () => {
    const text = dxfText(figureOf(), { unit: 'in', notes: [] })
    const drawing = readByDxfParser(text)
    expect(drawing.version).toBe('AC1009')
    expect(drawing.layers).toEqual(['0', ...FLAT_LAYERS])
    expect(readByDxf(text).layers).toEqual(['0', 'CUT', 'DRILL', 'MARK', 'CHECK', 'TEXT', 'OUTLINE'])
    expect(text).toContain('One drawing unit is one inch, scale 1:1')
    expect(dxfText(figureOf(), { unit: 'mm', notes: [] })).toContain(
      'One drawing unit is one millimetre, scale 1:1',
    )
  })

  it('writes an inch as 1.0 and an inch in millimetres as 25.4', () => {
    const inch = figureOf({
      kind: 'polyline',
      layer: 'CUT',
      closed: false,
      points: [
        { xMm: 0, yMm: 0 },
        { xMm: 25.4, yMm: -0.000_000_001 },
      ],
    })
    const line = (x: string): string =>
      ['LINE', '  8', 'CUT', ' 10', '0.0', ' 20', '0.0', ' 30', '0.0', ' 11', x, ' 21', '0.0'].join('\r\n')
    expect(dxfText(inch, { unit: 'in', notes: [] })).toContain(line('1.0'))
    expect(dxfText(inch, { unit: 'mm', notes: [] })).toContain(line('25.4'))
  })

  it('is lines of printable ASCII in pairs of code and value, whatever the names', () => {
    fc.assert(
      fc.property(anyFigure, anyWords, (figure, note) => {
        const text = dxfText(figure, { unit: 'mm', notes: [note] })
        expect(text).toMatch(/^[ -~\r\n]*$/)
        const lines = text.split('\r\n')
        expect(lines.pop()).toBe('')
        expect(lines.length % 2).toBe(0)
        // No line is broken, too long, or a code where a value belongs.
        const wrong = lines.filter(
          (line, index) =>
            line.length > 255 || /[\r\n]/.test(line) || (index % 2 === 0 && !/^ {0,2}\d{1,3}$/.test(line)),
        )
        expect(wrong).toEqual([])
        expect(lines.at(-1)).toBe('EOF')
      }),
    )
  })

  it('never writes a number that is none', () => {
    const broken = figureOf({ kind: 'circle', layer: 'CUT', centre: { xMm: 0, yMm: NaN }, radiusMm: 1 })
    expect(() => dxfText(broken, { unit: 'mm', notes: [] })).toThrow('NaN')
  })
})

describe('dxfString', () => {
  it.each([
    ['Ø12.7 ± 0.5', '%%c12.7 %%p 0.5'],
    ['45° − 3 × 2', '45%%d - 3 x 2'],
    ['Größe für Müller', 'Grosse fur Muller'],
    ['2½″', '2 1/2"'],
    // U+65E5 is the character's code point. Source: Unicode, CJK Unified Ideographs.
    ['日', '\\U+65E5'],
    // A pair of surrogates, as UTF-16 writes what lies beyond four digits: U+1F642 is D83D DE42.
    ['🙂', '\\U+D83D\\U+DE42'],
    ['one\ntwo\r\n  0\tthree', 'one two   0 three'],
    ['100%%u 5%°', '100% %u 5% %%d'],
    ['\\U+0041 ^J', '/U+0041  J'],
    ['   ', ''],
  ])('writes %j as %j', (text, written) => {
    expect(dxfString(text)).toBe(written)
  })

  it('says that it was cut, and cuts no code in two', () => {
    const cut = dxfString('日'.repeat(60))
    expect(cut.length).toBeLessThanOrEqual(250)
    expect(cut).toMatch(/^(\\U\+65E5)+\.\.\.$/)
    expect(dxfString('x'.repeat(250))).toBe('x'.repeat(250))
    expect(dxfString('x'.repeat(251))).toBe(`${'x'.repeat(247)}...`)
  })

  it('opens no control code but its own', () => {
    fc.assert(
      fc.property(anyWords, (text) => {
        // Source: after %% only d, c and p are written; a caret or a lone backslash never is.
        expect(dxfString(text).replaceAll(/%%[dcp]/g, '')).not.toMatch(/%%|\^/)
        expect(dxfString(text).replaceAll(/\\U\+[0-9A-F]{4}/g, '')).not.toContain('\\')
      }),
    )
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { cappedLines, printable, textWidthMm, wrappedLines } from '../../../src/sheet/page/textWidth'

describe('textWidthMm', () => {
  it('adds the advances of the bundled font', () => {
    // IBM Plex Sans Condensed, hmtx: digits 540, full stop 248, space 212 in regular; digits 540 in semi-bold.
    expect(textWidthMm('12.5', 10, 'regular')).toBeCloseTo((3 * 540 + 248) / 100, 9)
    expect(textWidthMm('1 2', 10, 'regular')).toBeCloseTo((2 * 540 + 212) / 100, 9)
    expect(textWidthMm('00', 3, 'bold')).toBeCloseTo(2 * 0.54 * 3, 9)
  })

  it('is generous with letters that the font does not have', () => {
    expect(textWidthMm('Ж', 10, 'regular')).toBeGreaterThan(9)
    expect(textWidthMm('棒', 10, 'regular')).toBe(10)
    expect(textWidthMm('🔧', 10, 'regular')).toBe(10)
  })
})

describe('wrappedLines', () => {
  const anyText = fc.string({ unit: 'grapheme', maxLength: 80 })

  it('breaks between words, and inside a word only when it is wider than the line', () => {
    // Digits are 5.4 mm wide at size 10, so four fit into 22 mm.
    expect(wrappedLines('1111 22 333', 22, 10, 'regular')).toEqual(['1111', '22', '333'])
    expect(wrappedLines('1111112', 22, 10, 'regular')).toEqual(['1111', '112'])
  })

  it('keeps a number with its fraction and its unit', () => {
    expect(wrappedLines('hole 12 5/16 in wide', 45, 10, 'regular')).toEqual(['hole', '12 5/16 in', 'wide'])
    expect(wrappedLines('at 12 5/16 in', 52, 10, 'regular')).toEqual(['at', '12 5/16 in'])
    expect(wrappedLines('pipe Ø 38.1 mm', 46, 10, 'regular')).toEqual(['pipe', 'Ø 38.1 mm'])
  })

  it('breaks a number that is too wide at its spaces, never between its digits', () => {
    expect(wrappedLines('12 5/16 in', 30, 10, 'regular')).toEqual(['12', '5/16 in'])
  })

  it('starts a new line at every line break and drops none', () => {
    expect(wrappedLines('a\n\nb', 50, 10, 'regular')).toEqual(['a', '', 'b'])
    expect(wrappedLines('', 50, 10, 'regular')).toEqual([''])
  })

  it('never makes a line wider than asked and never loses a letter', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const lines = wrappedLines(text, 40, 4, 'bold')
        for (const line of lines) expect(textWidthMm(line, 4, 'bold')).toBeLessThanOrEqual(40)
        const letters = (words: string): string => words.replaceAll(/\s/g, '')
        expect(letters(lines.join(''))).toBe(letters(printable(text)))
      }),
    )
  })
})

describe('cappedLines', () => {
  it('leaves a text that fits alone and marks one that was cut', () => {
    expect(cappedLines('11 22', 22, 10, 'regular', 2)).toEqual(['11', '22'])
    const cut = cappedLines('1111 2222 3333', 22, 10, 'regular', 2)
    // Three digits (16.2 mm) and … (7.29 mm) are too wide for 22 mm; two are not.
    expect(cut).toEqual(['1111', '22…'])
  })
})

describe('printable', () => {
  it('turns control characters and broken surrogates into spaces and keeps real letters', () => {
    expect(printable('a\u0000b\tc\u001Fd')).toBe('a b c d')
    expect(printable('x\uD800y')).toBe('x y')
    expect(printable('ä🔧\r\nb')).toBe('ä🔧\nb')
  })

  it('drops marks that turn the order of letters round, so that no number reads backward', () => {
    // Unicode Standard Annex 9: U+202E is RIGHT-TO-LEFT OVERRIDE, U+2067 RIGHT-TO-LEFT ISOLATE, U+200F RIGHT-TO-LEFT MARK.
    expect(printable('\u202Ebar 612 mm\u202C')).toBe('bar 612 mm')
    expect(printable('\u2067a\u2069\u200F\u061Cb')).toBe('ab')
    expect(printable('שלום \u200Dx')).toBe('שלום \u200Dx')
  })
})

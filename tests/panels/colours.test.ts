import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const CSS = readFileSync(new URL('../../src/panels/colours.css', import.meta.url), 'utf8')
const PALETTE = readFileSync(new URL('../../src/elevation/paint/palette.ts', import.meta.url), 'utf8')

type Colours = Readonly<Record<string, string>>

const coloursIn = (block: string): Colours =>
  Object.fromEntries(
    [...block.matchAll(/--([\w-]+): ([^;]+);/g)].map(([, name, value]) => [name ?? '', value ?? '']),
  )

/** What stands in the braces after a selector; the first one from `from` on. */
const blockOf = (selector: string, from = 0): Colours => {
  const start = CSS.indexOf(`${selector} {`, from)
  if (start < 0) throw new Error(`colours.css has no ${selector}`)
  return coloursIn(CSS.slice(start, CSS.indexOf('}', start)))
}

const DAY = blockOf(':root')
const NIGHT = { ...DAY, ...blockOf(":root[data-theme='dark']") }
const MORE = CSS.indexOf('@media (prefers-contrast: more)')
const SHEETS: readonly (readonly [string, Colours])[] = [
  ['by day', DAY],
  ['by night', NIGHT],
  ['by day with more contrast', { ...DAY, ...blockOf(':root', MORE) }],
  ['by night with more contrast', { ...NIGHT, ...blockOf(":root[data-theme='dark']", MORE) }],
]

/** Source: WCAG 2.2, definition of relative luminance (sRGB), in the text of 2023 with 0.04045; from memory. */
const luminance = (hex: string): number => {
  if (!/^#[0-9a-f]{6}$/.test(hex)) throw new Error(`${hex} is no colour of six digits`)
  const [red = 0, green = 0, blue = 0] = [1, 3, 5]
    .map((at) => parseInt(hex.slice(at, at + 2), 16) / 255)
    .map((share) => (share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4))
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/** Source: WCAG 2.2, definition of contrast ratio; from memory. */
const contrast = (one: string, other: string): number => {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].toSorted((a, b) => b - a)
  return (light + 0.05) / (dark + 0.05)
}

const of = (colours: Colours, name: string): string => {
  const value = colours[name]
  if (value === undefined) throw new Error(`no colour --${name}`)
  return value
}

const GROUNDS = ['paper', 'panel', 'field']
/** Written in on the page or the drawing. */
const WRITTEN = ['ink', 'ink-soft', 'dimension', 'accent', 'broken', 'tight', 'unchecked', 'clear', 'other']
/** Drawn with a meaning, on the paper. */
const LINES = ['tube', 'body-line', 'ghost', 'strap', 'hatch', 'handle']
/** Pairs that stand on each other the other way round. */
const ON_COLOUR = [
  ['accent-ink', 'accent'],
  ['paper', 'ink'],
]
/** Only part and rule; nothing is lost without them. */
const DECORATION = ['rule-line', 'grid', 'shadow', 'handle-fill']

describe('contrast', () => {
  it('is 21 between black and white and 1 between equals, as WCAG 2.2 says', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9)
    expect(contrast('#1d5a78', '#1d5a78')).toBe(1)
    // The darkest grey that 4.5 on white allows is #767676 (widely published; from memory).
    expect(contrast('#767676', '#ffffff')).toBeGreaterThanOrEqual(4.5)
    expect(contrast('#777777', '#ffffff')).toBeLessThan(4.5)
  })
})

describe('the colours of page and drawing', () => {
  for (const [name, colours] of SHEETS) {
    // WCAG 2.2, 1.4.6 Contrast (Enhanced): 7 (from memory); 4.5 would be enough indoors.
    it(`are written in at 7 or more ${name}`, () => {
      for (const ground of GROUNDS)
        for (const written of WRITTEN)
          expect(
            contrast(of(colours, written), of(colours, ground)),
            `--${written} on --${ground}`,
          ).toBeGreaterThanOrEqual(7)
      for (const [text = '', ground = ''] of ON_COLOUR)
        expect(
          contrast(of(colours, text), of(colours, ground)),
          `--${text} on --${ground}`,
        ).toBeGreaterThanOrEqual(7)
    })

    // WCAG 2.2, 1.4.11 Non-text Contrast: 3 (from memory).
    it(`are drawn with at 3 or more ${name}`, () => {
      for (const line of LINES)
        expect(contrast(of(colours, line), of(colours, 'paper')), `--${line}`).toBeGreaterThanOrEqual(3)
    })
  }

  it('are all looked at here', () => {
    const known = new Set([...GROUNDS, ...WRITTEN, ...LINES, ...DECORATION, ...ON_COLOUR.flat()])
    expect(Object.keys(DAY).filter((colour) => !known.has(colour))).toEqual([])
  })

  it('have a place of the night, of more contrast and of the device for every one that is not the same', () => {
    const own = blockOf(":root[data-theme='dark']")
    expect(Object.keys(own).toSorted()).toEqual(Object.keys(DAY).toSorted())
    const forced = coloursIn(CSS.slice(CSS.indexOf('@media (forced-colors: active)')))
    expect(Object.keys(forced).toSorted()).toEqual(Object.keys(DAY).toSorted())
    // The device's colours have names, no digits.
    expect(Object.values(forced).filter((value) => !/^[A-Za-z]+$/.test(value))).toEqual([])
  })

  it('hold every colour that the canvas asks for', () => {
    const asked = [...PALETTE.matchAll(/'--([\w-]+)'/g)].map(([, colour]) => colour)
    expect(asked.length).toBeGreaterThan(10)
    for (const colour of asked) expect(Object.keys(DAY)).toContain(colour)
  })
})

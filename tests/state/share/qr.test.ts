import jsQR from 'jsqr'
import { describe, expect, it } from 'vitest'
import { layoutText } from '../../../src/domain/layout/document/layoutText'
import { fragmentOf } from '../../../src/state/share/fragment'
import { MOST_QR_CHARACTERS, type QrModules, qrModules } from '../../../src/state/share/qr'
import { exampleLayout } from '../../support/exampleLayouts'

/** A picture of the code as a screen shows it, four pixels to a module, read by a general QR library. */
const readBack = ({ rows, size }: QrModules): string | null => {
  const scale = 4
  const side = size * scale
  const pixels = new Uint8ClampedArray(side * side * 4).fill(255)
  rows.forEach((row, y) =>
    row.forEach((isDark, x) => {
      if (!isDark) return
      for (let dy = 0; dy < scale; dy += 1)
        for (let dx = 0; dx < scale; dx += 1)
          pixels.fill(
            0,
            ((y * scale + dy) * side + x * scale + dx) * 4,
            ((y * scale + dy) * side + x * scale + dx) * 4 + 3,
          )
    }),
  )
  return jsQR(pixels, side, side)?.data ?? null
}

const modules = (text: string): QrModules => {
  const code = qrModules(text)
  if (!code.ok) throw new Error(code.error)
  return code.value
}

describe('qrModules', () => {
  it.each([
    'nearly-empty.layout.json',
    'rally-buggy-crossed-straps.layout.json',
    'dune-runner-three-point.layout.json',
  ])('is read back as the link of %s by another library', (file) => {
    const link = `https://example.org/tabwright/${fragmentOf({ kind: 'layout', text: layoutText(exampleLayout(file)) })}`
    expect(readBack(modules(link))).toBe(link)
  })

  it('holds a link of exactly the most characters, and refuses one more with both numbers', () => {
    const longest = `https://example.org/#layout1.${'aB3_-'.repeat(400)}`.slice(0, MOST_QR_CHARACTERS)
    expect(readBack(modules(longest))).toBe(longest)
    const refused = qrModules(`${longest}x`)
    expect(refused.ok ? '' : refused.error).toMatch(/1953 characters.*1952/)
  })

  it('has four modules of white on every side', () => {
    const { rows, size } = modules('https://example.org/')
    const isWhite = (row: readonly boolean[] | undefined): boolean => row?.every((isDark) => !isDark) === true
    for (let at = 0; at < 4; at += 1) {
      expect(isWhite(rows[at])).toBe(true)
      expect(isWhite(rows[size - 1 - at])).toBe(true)
      expect(isWhite(rows.map((row) => row[at] ?? true))).toBe(true)
      expect(isWhite(rows.map((row) => row[size - 1 - at] ?? true))).toBe(true)
    }
    // The finder pattern's corner begins right after them.
    expect(rows[4]?.[4]).toBe(true)
  })
})

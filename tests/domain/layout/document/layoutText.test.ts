import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { emptyLayout } from '../../../../src/domain/layout/document/empty'
import { layoutText } from '../../../../src/domain/layout/document/layoutText'
import { parseLayout, parseLayoutText } from '../../../../src/domain/layout/document/parseLayout'
import { exampleLayout, type Path } from '../../../support/exampleLayouts'

describe('parseLayoutText', () => {
  it('passes over a byte-order mark', () => {
    expect(parseLayoutText(`\uFEFF${layoutText(emptyLayout())}`).ok).toBe(true)
  })

  it('refuses an empty file and one of blanks', () => {
    for (const text of ['', ' \n\t']) {
      expect(parseLayoutText(text)).toMatchObject({ ok: false, error: [{ message: 'The file is empty.' }] })
    }
  })

  it('says in which line a damaged file stops being readable', () => {
    const lines = layoutText(emptyLayout()).split('\n')
    lines[4] = '    "car": oops,'
    const parsed = parseLayoutText(lines.join('\n'))
    expect(parsed.ok ? '' : parsed.error[0]?.message).toMatch(/from line 5, column 12 on: it is damaged/)
  })

  it('refuses a file that was cut off anywhere', () => {
    const text = layoutText(emptyLayout())
    fc.assert(
      // The last two characters are the closing brace and the line end; without the line end it is still whole.
      fc.property(fc.nat({ max: text.length - 2 }), (length) => {
        expect(parseLayoutText(text.slice(0, length)).ok).toBe(false)
      }),
    )
  })

  it('never throws and never half-reads, whatever JSON it is given', () => {
    fc.assert(
      fc.property(fc.json(), (text) => {
        const parsed = parseLayoutText(text)
        expect(parsed.ok ? [] : parsed.error).not.toEqual([])
      }),
    )
  })

  it('never accepts a layout with any one field replaced by something of another kind', () => {
    const layout = exampleLayout('trail-car-two-seat.layout.json')
    fc.assert(
      fc.property(fc.nat(), fc.constantFrom({}, 'x'.repeat(20_000), -1e9), (pick, foreign) => {
        const copy = structuredClone(layout) as unknown
        const paths = leafPaths(copy)
        const path = paths[pick % paths.length] ?? []
        setAt(copy, path, foreign)
        expect(parseLayout(copy).ok).toBe(false)
      }),
    )
  })
})

const leafPaths = (value: unknown, path: Path = []): readonly Path[] =>
  typeof value === 'object' && value !== null && Object.keys(value).length > 0
    ? Object.entries(value).flatMap(([key, item]) => leafPaths(item, [...path, key]))
    : typeof value === 'object'
      ? []
      : [path]

const setAt = (root: unknown, path: Path, value: unknown): void => {
  let parent = root as Record<string | number, unknown>
  for (const key of path.slice(0, -1)) parent = parent[key] as Record<string | number, unknown>
  parent[path.at(-1) ?? ''] = value
}

describe('layoutText', () => {
  it('is the same text for the same layout, whatever order its fields were made in', () => {
    const layout = exampleLayout('rock-buggy.layout.json')
    const turned = Object.fromEntries(Object.entries(layout).toReversed()) as unknown as typeof layout
    expect(layoutText(turned)).toBe(layoutText(layout))
  })

  it('begins with the version and ends with a line end', () => {
    expect(layoutText(emptyLayout())).toMatch(/^\{\n {2}"version": 1,\n[^]*\}\n$/)
  })
})

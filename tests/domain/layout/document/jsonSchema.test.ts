import { readFileSync } from 'node:fs'

import { Ajv2020 } from 'ajv/dist/2020.js'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { emptyLayout } from '../../../../src/domain/layout/document/empty'
import { layoutJsonSchema } from '../../../../src/domain/layout/document/jsonSchema'
import { layoutArb } from '../../../support/arbitraries'
import { exampleIndex, exampleLayout, type Path, rockBuggyWith } from '../../../support/exampleLayouts'

// Outside check: a general JSON Schema validator reads the published file.
const published = JSON.parse(
  readFileSync(new URL('../../../../public/layout.schema.json', import.meta.url), 'utf8'),
) as Record<string, unknown>
const isValid = new Ajv2020({ strict: true, allErrors: true }).compile(published)

const errorsOf = (layout: unknown): readonly unknown[] => (isValid(layout) ? [] : (isValid.errors ?? []))

describe('layoutJsonSchema', () => {
  it('is what public/layout.schema.json holds; `npm run schema` writes it again', () => {
    expect(published).toEqual(layoutJsonSchema())
  })

  it('accepts every published example and the starting layout', () => {
    for (const { file } of exampleIndex) {
      expect(errorsOf(exampleLayout(file))).toEqual([])
    }
    expect(isValid(emptyLayout())).toBe(true)
  })

  it('accepts whatever the reader accepts', () => {
    fc.assert(
      fc.property(layoutArb, (layout) => {
        expect(errorsOf(layout)).toEqual([])
      }),
    )
  })

  const anchorPath = (...rest: Path): Path => ['places', 0, 'anchors', 0, ...rest]

  it.each<{ what: string; path: Path; value: unknown }>([
    { what: 'a missing version', path: ['version'], value: undefined },
    { what: 'another version', path: ['version'], value: 2 },
    { what: 'a missing field', path: ['places', 0, 'seat', 'slide', 'rearwardMm'], value: undefined },
    { what: 'an unknown field', path: ['places', 0, 'seat', 'colour'], value: 'red' },
    { what: 'text for a number', path: ['places', 0, 'seat', 'reclineDeg'], value: '15' },
    { what: 'a number out of its limits', path: ['places', 0, 'occupants', 0, 'massKg'], value: 251 },
    { what: 'a word that is no choice', path: ['units', 'length'], value: 'ft' },
    { what: 'an arrangement that does not exist', path: ['places', 0, 'belt', 'arrangement'], value: 8 },
    { what: 'no place', path: ['places'], value: [] },
    { what: 'a tube of one point', path: ['tubes', 0, 'points'], value: [{ xMm: 0, yMm: 0, zMm: 0 }] },
    { what: 'an id with a colon', path: anchorPath('id'), value: 'a:b' },
    { what: 'a mount of an unknown kind', path: anchorPath('mount', 'kind'), value: 'bolt' },
    { what: 'a form of tab that does not exist', path: anchorPath('mount', 'form'), value: 'hook' },
    { what: 'a diagonal over neither shoulder', path: ['places', 0, 'belt', 'diagonal'], value: 'centre' },
    {
      what: 'an adjuster without its length',
      path: ['places', 0, 'belt', 'adjusters'],
      value: { lap: { fromAnchorMm: 90 } },
    },
    { what: 'a shell as thick as a wall', path: ['places', 0, 'seat', 'shellThicknessMm'], value: 61 },
    { what: 'a tab that is called a wrap', path: anchorPath('mount', 'kind'), value: 'wrap' },
    { what: 'a date in another order', path: ['job', 'date'], value: '14.3.2026' },
  ])('refuses $what', ({ path, value }) => {
    expect(isValid(rockBuggyWith(path, value))).toBe(false)
  })
})

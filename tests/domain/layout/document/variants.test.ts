import { describe, expect, it } from 'vitest'

import type { Variants } from '../../../../src/domain/layout/document/layout'
import { layoutText } from '../../../../src/domain/layout/document/layoutText'
import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import { withVariantAdded } from '../../../../src/domain/layout/edit/changeVariants'
import { exampleIndex, exampleLayout, type Path } from '../../../support/exampleLayouts'

const two = withVariantAdded(exampleLayout('rock-buggy.layout.json'))

const problemsAt = (path: Path, value: unknown) => {
  // As text and back, so that the variants share no part and only one of them is changed.
  const copy: unknown = JSON.parse(layoutText(two))
  let parent = copy as Record<string | number, unknown>
  for (const key of path.slice(0, -1)) parent = parent[key] as Record<string | number, unknown>
  parent[path.at(-1) ?? ''] = value
  const parsed = parseLayout(copy)
  return parsed.ok ? [] : parsed.error
}

const other = (...rest: Path): Path => ['variants', 'others', 0, ...rest]

describe('variants in a layout file', () => {
  it('are left out of a file that has none', () => {
    for (const { file } of exampleIndex) {
      expect(layoutText(exampleLayout(file))).not.toContain('"variants"')
    }
  })

  it.each<{ what: string; path: Path; value: unknown; at: string; message: RegExp }>([
    {
      what: 'an id twice',
      path: other('id'),
      value: 'variant-2',
      at: 'variants.others[0].id',
      message: /already used by the drawn variant/,
    },
    {
      what: 'a name twice, but for a capital and a blank',
      path: other('name'),
      value: 'variant  b',
      at: 'variants.others[0].name',
      message: /the drawn variant is called "Variant B" already/,
    },
    {
      what: 'no name',
      path: ['variants', 'drawn', 'name'],
      value: ' ',
      at: 'variants.drawn.name',
      message: /^Variants, drawn variant, name: it is empty/,
    },
    {
      what: 'a place in the row that there is not',
      path: ['variants', 'drawn', 'index'],
      value: 2,
      at: 'variants.drawn.index',
      message: /2 is no place in a row of 2/,
    },
    {
      what: 'half a place in the row',
      path: ['variants', 'drawn', 'index'],
      value: 0.5,
      at: 'variants.drawn.index',
      message: /0.5 is no place in a row of 2/,
    },
    {
      what: 'five variants',
      path: ['variants', 'others'],
      value: Array.from({ length: 4 }, (_, i) => ({
        ...two.variants?.others[0],
        id: `v${i}`,
        name: `v${i}`,
      })),
      at: 'variants.others',
      message: /found a list of 4/,
    },
    {
      what: 'an anchor on a tube that only the drawn variant has',
      path: other('tubes'),
      value: [],
      at: 'variants.others[0].places[0].anchors[0].mount.tubeId',
      message: /there is no tube/,
    },
    {
      what: 'a recline outside its range in another variant',
      path: other('places', 0, 'seat', 'reclineDeg'),
      value: 79,
      at: 'variants.others[0].places[0].seat.reclineDeg',
      message: /Variants, variant 1 "Variant A", place 1 .*79° is outside its range/,
    },
    {
      what: 'a field of another variant that does not exist',
      path: other('places', 0, 'seat', 'colour'),
      value: 'red',
      at: 'variants.others[0].places[0].seat.colour',
      message: /there is no field called "colour"/,
    },
  ])('refuses $what and says where', ({ path, value, at, message }) => {
    const problems = problemsAt(path, value)
    const found = problems.find((problem) => problem.path === at)
    expect(found?.message).toMatch(message)
    expect(found?.remedy).not.toBe('')
  })

  it('may use the same ids for what is the same in another variant', () => {
    const others: Variants['others'] = two.variants?.others ?? []
    expect(others[0]?.places[0]?.anchors[0]?.id).toBe(two.places[0]?.anchors[0]?.id)
    expect(parseLayout(two)).toEqual({ ok: true, value: two })
  })
})

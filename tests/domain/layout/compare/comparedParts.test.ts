import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import {
  type ComparedPart,
  doesPartDiffer,
  type PartDifference,
  partDifferences,
  shiftMm,
} from '../../../../src/domain/layout/compare/comparedPart'
import { comparedParts } from '../../../../src/domain/layout/compare/comparedParts'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { layoutText } from '../../../../src/domain/layout/document/layoutText'
import { layoutArb } from '../../../support/arbitraries'
import { exampleIndex, exampleLayout, type Path } from '../../../support/exampleLayouts'
import { crossTube, flatLayout, flatPlace, tabPair } from '../../../support/flatLayout'

const differences = (a: Layout, b: Layout): readonly PartDifference[] =>
  partDifferences(comparedParts([a, b]), 0, 1)

const fieldsOf = ({ fields }: PartDifference) =>
  fields.map(({ field, of, by }) => ({ field: of === null ? field : `${field} ${of}`, by }))

const bar = crossTube('bar', 300, 500)
const place = flatPlace({ anchors: [...tabPair('shoulder', { xMm: 300, yMm: 100, zMm: 500 }, 'bar')] })
const plan = flatLayout([place], { tubes: [bar] })

const withAnchor = (layout: Layout, index: number, change: object): Layout => ({
  ...layout,
  places: layout.places.map((one) => ({
    ...one,
    anchors: one.anchors.map((anchor, at) =>
      at === index ? { ...anchor, mount: { ...anchor.mount, ...change } } : anchor,
    ),
  })),
})

describe('partDifferences', () => {
  it('says by how much an anchor moved along each axis and straight, and what else is new about it', () => {
    // 30 rearward, 40 up: 50 mm straight, the 3-4-5 triangle.
    const moved = withAnchor(plan, 0, {
      point: { xMm: 330, yMm: -100, zMm: 540 },
      thicknessMm: 6,
      form: 'clevis',
    })
    const [only, ...rest] = differences(plan, moved)
    expect(rest).toEqual([])
    expect(only?.part.kind).toBe('anchor')
    expect(only?.shiftMm).toBeCloseTo(50, 9)
    expect(only === undefined ? [] : fieldsOf(only)).toEqual([
      { field: 'x', by: 30 },
      { field: 'z', by: 40 },
      { field: 'form', by: null },
      { field: 'thickness', by: 1 },
    ])
  })

  it('takes the anchor of a strap for the same one, whatever its id', () => {
    const [first] = place.anchors
    const renamed = {
      ...place,
      anchors: place.anchors.map((anchor) => (anchor === first ? { ...anchor, id: 'new' } : anchor)),
    }
    expect(differences(plan, flatLayout([renamed], { tubes: [bar] }))).toEqual([])
  })

  it('finds places, tubes, people and slots that another file calls by other ids by their names', () => {
    const other = flatLayout(
      [
        {
          ...place,
          id: 'seat-1',
          name: ' driver ',
          occupants: place.occupants.map((one) => ({ ...one, id: 'p1', statureMm: one.statureMm + 25 })),
          anchors: place.anchors.map((anchor) => ({ ...anchor, mount: { ...anchor.mount, tubeId: 't1' } })),
        },
      ],
      { tubes: [{ ...bar, id: 't1' }] },
    )
    const found = differences(plan, other)
    expect(found.map(({ part }) => part.kind)).toEqual(['occupant', 'place'])
    expect(found[0] === undefined ? [] : fieldsOf(found[0])).toEqual([{ field: 'stature', by: 25 }])
  })

  it('puts first what only one of them has, then the largest shift', () => {
    const changed: Layout = {
      ...withAnchor(plan, 1, { point: { xMm: 300, yMm: 110, zMm: 500 } }),
      tubes: [
        { ...bar, points: bar.points.map((point) => ({ ...point, zMm: point.zMm + 22 })) },
        crossTube('new', 0, 900),
      ],
    }
    expect(
      differences(plan, changed).map(({ part, presence, shiftMm: by }) => [part.kind, presence, by]),
    ).toEqual([
      ['tube', 'only-after', null],
      ['tube', 'both', 22],
      ['anchor', 'both', 10],
    ])
  })

  it('knows of no shift between tubes with other numbers of points', () => {
    const bent = { ...bar, points: [...bar.points, { xMm: 400, yMm: 700, zMm: 500 }] }
    const [only] = differences(plan, { ...plan, tubes: [bent] })
    expect(only?.shiftMm).toBeNull()
    expect(only === undefined ? [] : fieldsOf(only).map(({ field }) => field)).toEqual(['x 3', 'y 3', 'z 3'])
  })

  it('a tube by another name is still the one that its tabs are on', () => {
    const renamed = { ...plan, tubes: [{ ...bar, name: 'Main bar' }] }
    expect(differences(plan, renamed).map(({ part }) => part.kind)).toEqual(['tube'])
  })

  it('two tubes of one name are not taken for each other', () => {
    const twins = { ...plan, tubes: [bar, { ...crossTube('low', 300, 200), name: bar.name }] }
    const [only] = differences(twins, withAnchor(twins, 0, { tubeId: 'low' }))
    expect(only === undefined ? [] : fieldsOf(only)).toEqual([{ field: 'on-tube', by: null }])
  })

  it('takes a thing that nobody says for what it then is', () => {
    const said = {
      ...plan,
      places: [{ ...place, seat: { ...place.seat, shellThicknessMm: 0 } }],
    }
    expect(differences(plan, withAnchor(said, 0, { form: 'plate' }))).toEqual([])
    const three = flatLayout([{ ...place, belt: { ...place.belt, arrangement: 3 } }])
    const left = flatLayout([{ ...place, belt: { ...place.belt, arrangement: 3, diagonal: 'left' } }])
    expect(differences(three, left)).toEqual([])
  })

  it('never finds anything between a layout and its copy', () => {
    fc.assert(
      fc.property(layoutArb, (layout) => {
        const copy = JSON.parse(layoutText(layout)) as Layout
        const parts = comparedParts([layout, copy])
        expect(partDifferences(parts, 0, 1)).toEqual([])
        expect(parts.some(doesPartDiffer)).toBe(false)
      }),
    )
  })

  it('always finds the same the other way round, with the signs turned', () => {
    fc.assert(
      fc.property(layoutArb, layoutArb, (a, b) => {
        const parts = comparedParts([a, b])
        const there = partDifferences(parts, 0, 1)
        const back = partDifferences(parts, 1, 0)
        expect(there.length).toBe(back.length)
        for (const one of there) {
          const same = back.find(({ part }) => part === one.part)
          expect(same?.shiftMm).toBe(one.shiftMm)
          expect(same?.fields.map(({ by }) => by)).toEqual(
            one.fields.map(({ by }) => (by === null ? null : -by || 0)),
          )
          expect(same?.fields.map(({ before }) => before)).toEqual(one.fields.map(({ after }) => after))
        }
      }),
    )
  })

  it('always adds up over a variant between: from A to C is from A to B and from B to C', () => {
    fc.assert(
      fc.property(layoutArb, layoutArb, layoutArb, (a, b, c) => {
        const parts = comparedParts([a, b, c])
        const sums = parts.flatMap((part) =>
          [...part.fields.keys()].map((key) => ({
            ab: numberBy(part, 0, 1, key),
            bc: numberBy(part, 1, 2, key),
            ac: numberBy(part, 0, 2, key),
          })),
        )
        const off = sums.map(({ ab, bc, ac }) =>
          ab === null || bc === null ? 0 : Math.abs((ac ?? Number.NaN) - ab - bc),
        )
        expect(off.filter((each) => !(each <= 1e-6))).toEqual([])
        // A tube's largest shift is of one point each time, so the triangle holds for it too.
        const longer = parts.filter((part) => {
          const [ab, bc, ac] = [shiftMm(part, 0, 1), shiftMm(part, 1, 2), shiftMm(part, 0, 2)]
          return ab !== null && bc !== null && !((ac ?? Number.NaN) <= ab + bc + 1e-6)
        })
        expect(longer).toEqual([])
      }),
      { numRuns: 30 },
    )
  })

  // Whatever is built otherwise must be found: every single field of every example is changed in turn, and none may go unseen.
  it.each(exampleIndex.map(({ file }) => file))(
    'sees every single field of %s when it is changed',
    (file) => {
      const layout = exampleLayout(file)
      const unseen = leaves({ tubes: layout.tubes, places: layout.places })
        .filter((path) => !isNoField(path))
        .filter((path) => differences(layout, changedAt(layout, path)).length === 0)
      expect(unseen).toEqual([])
    },
  )
})

// Helpers

const numberBy = ({ fields }: ComparedPart, from: number, to: number, key: number): number | null => {
  const [before, after] = [fields[key]?.values[from], fields[key]?.values[to]]
  return before?.kind === 'number' && after?.kind === 'number' ? after.value - before.value : null
}

/** Ids are no property of what is built, and the kind of a mount cannot change alone. */
const isNoField = (path: Path): boolean => path.at(-1) === 'id' || path.at(-1) === 'kind'

const leaves = (value: unknown, path: Path = []): readonly Path[] =>
  typeof value === 'object' && value !== null
    ? Object.entries(value).flatMap(([key, inner]) =>
        leaves(inner, [...path, Array.isArray(value) ? Number(key) : key]),
      )
    : [path]

const another = (value: unknown): unknown => {
  if (typeof value === 'number') return value + 1
  if (typeof value === 'boolean') return !value
  return typeof value === 'string' ? `${value}-other` : 'rail-left'
}

/** The layout with one leaf changed; a strap of an anchor or slot becomes one that nothing else has. */
const changedAt = (layout: Layout, path: Path): Layout => {
  const copy: unknown = JSON.parse(layoutText(layout))
  let parent = copy as Record<string | number, unknown>
  for (const key of path.slice(0, -1)) parent = parent[key] as Record<string | number, unknown>
  const last = path.at(-1) ?? ''
  const strap = parent[last] === 'sub-centre' ? 'shoulder-left' : 'sub-centre'
  parent[last] = path.at(-2) === 'straps' ? strap : another(parent[last])
  return copy as Layout
}

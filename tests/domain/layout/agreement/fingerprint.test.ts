import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import {
  fingerprintCode,
  layoutFingerprint,
  partPrints,
  reviewedVariantsOf,
} from '../../../../src/domain/layout/agreement/fingerprint'
import { canonicalText } from '../../../../src/domain/layout/document/canonicalText'
import type { Layout, Place } from '../../../../src/domain/layout/document/layout'
import { layoutText } from '../../../../src/domain/layout/document/layoutText'
import { parseLayoutText } from '../../../../src/domain/layout/document/parseLayout'
import { withVariantAdded, withVariantDrawn } from '../../../../src/domain/layout/edit/changeVariants'
import { DEFAULT_RULE_SET_ID } from '../../../../src/domain/rules/ruleSets'
import { WORKSHOP_RULES } from '../../../../src/domain/rules/sets/workshop'
import { layoutArb } from '../../../support/arbitraries'
import { exampleIndex, exampleLayout } from '../../../support/exampleLayouts'

const examples = exampleIndex.map(({ file }) => exampleLayout(file))
const OTHER = 'un-r14-front'
const rockBuggy = exampleLayout('rock-buggy.layout.json')

type Path = readonly (string | number)[]

/** Where every number in a value stands. */
const numberPaths = (value: unknown, path: Path = []): readonly Path[] => {
  if (typeof value === 'number') return [path]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => numberPaths(inner, [...path, key]))
}

const withNumber = <Value>(value: Value, path: Path, change: (number: number) => number): Value => {
  const copy = structuredClone(value)
  let parent = copy as Record<string | number, unknown>
  for (const key of path.slice(0, -1)) parent = parent[key] as Record<string | number, unknown>
  const last = path.at(-1) ?? ''
  parent[last] = change(parent[last] as number)
  return copy
}

describe('canonicalText', () => {
  it('does not depend on the order of fields, nor on fields that are undefined', () => {
    expect(canonicalText({ b: [1, { d: 2, c: 3 }], a: 'x' })).toBe(
      canonicalText({ a: 'x', e: undefined, b: [1, { c: 3, d: 2 }] }),
    )
  })

  it('is printable ASCII and gives back what went in, whatever text that is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const canonical = canonicalText({ text })
        expect(canonical).toMatch(/^[ -~]*$/)
        expect(JSON.parse(canonical)).toEqual({ text })
      }),
    )
  })
})

describe('layoutFingerprint', () => {
  it('changes with every number that the strap solver sees, by however little', () => {
    for (const layout of examples) {
      const before = layoutFingerprint(layout)
      const seen: Pick<Layout, 'tubes' | 'places'> = { tubes: layout.tubes, places: layout.places }
      const paths = numberPaths(seen)
      const unseen: Path[] = []
      expect(paths.length).toBeGreaterThan(20)
      for (const path of paths) {
        const changed = withNumber(seen, path, (number) => number + 1e-3)
        if (layoutFingerprint({ ...layout, ...changed }) === before) unseen.push(path)
      }
      expect(unseen).toEqual([])
    }
  })

  it('changes with a limit of the chosen own rule set, and not with one that is not chosen', () => {
    const first = WORKSHOP_RULES.rules.find((rule) => rule.kind === 'quantity')
    if (first === undefined) throw new Error('no rule with a number')
    const withOwn = (max: number, ruleSetId: string): Layout => ({
      ...rockBuggy,
      ruleSetId,
      ownRuleSets: [
        { ...WORKSHOP_RULES, id: 'own-1', group: 'Own', rules: [{ ...first, id: 'own-rule', max }] },
      ],
    })
    expect(layoutFingerprint(withOwn(7, 'own-1'))).not.toBe(layoutFingerprint(withOwn(8, 'own-1')))
    expect(layoutFingerprint(withOwn(7, rockBuggy.ruleSetId))).toBe(layoutFingerprint(rockBuggy))
  })

  it('changes with the people, the rule set, the datum, and with dust and mud', () => {
    const own = exampleLayout('everything-wrong.layout.json')
    const before = layoutFingerprint(own)
    const place = own.places[0] as Place
    const renamed = {
      ...place,
      occupants: place.occupants.map((person) => ({ ...person, name: 'Somebody' })),
    }
    const others: readonly Layout[] = [
      { ...own, datum: `${own.datum} left` },
      { ...own, ruleSetId: own.ruleSetId === OTHER ? DEFAULT_RULE_SET_ID : OTHER },
      { ...own, dustyOrMuddyUse: !own.dustyOrMuddyUse },
      { ...own, places: [renamed, ...own.places.slice(1)] },
    ]
    for (const other of others) expect(layoutFingerprint(other)).not.toBe(before)
  })

  it('stays the same for what does not bear on the people who sit there', () => {
    fc.assert(
      fc.property(layoutArb, (layout) => {
        const before = layoutFingerprint(layout)
        const others: readonly Layout[] = [
          {
            ...layout,
            units: { length: layout.units.length === 'mm' ? 'in' : 'mm', force: 'lbf', mass: 'lb' },
          },
          { ...layout, job: { ...layout.job, notes: 'Paint it green', customer: 'Ines', revision: 'C' } },
          { ...layout, tubes: layout.tubes.map((tube) => ({ ...tube, name: 'Main bar' })) },
          {
            ...layout,
            places: layout.places.map((place) => ({
              ...place,
              name: 'Left',
              mirrored: { shoulder: !place.mirrored.shoulder, lap: false, sub: false },
            })),
          },
        ]
        for (const other of others) expect(layoutFingerprint(other)).toBe(before)
      }),
      { numRuns: 60 },
    )
  })

  it('stays the same when another variant is drawn and this one again; each variant has its own', () => {
    const two = withVariantAdded(rockBuggy)
    const changed = { ...two, datum: two.datum, tubes: two.tubes.slice(1) }
    const [a, b] = reviewedVariantsOf(changed)
    expect(a?.fingerprint).toBe(layoutFingerprint(rockBuggy))
    expect(b?.fingerprint).toBe(layoutFingerprint(changed))
    expect(b?.fingerprint).not.toBe(a?.fingerprint)
    const drawnA = withVariantDrawn(changed, a?.variantId ?? '')
    expect(layoutFingerprint(drawnA)).toBe(a?.fingerprint)
    expect(reviewedVariantsOf(drawnA)).toEqual([a, b])
    expect(layoutFingerprint(withVariantDrawn(drawnA, b?.variantId ?? ''))).toBe(b?.fingerprint)
  })

  it('stays the same through a file', () => {
    fc.assert(
      fc.property(layoutArb, (layout) => {
        const parsed = parseLayoutText(layoutText(layout))
        expect(parsed.ok && layoutFingerprint(parsed.value)).toBe(layoutFingerprint(layout))
      }),
      { numRuns: 60 },
    )
  })
})

describe('partPrints', () => {
  it('names exactly the part that was changed', () => {
    const [first, ...rest] = rockBuggy.tubes
    if (first === undefined) throw new Error('no tube')
    const changed = { ...rockBuggy, tubes: [{ ...first, wallMm: first.wallMm + 0.5 }, ...rest] }
    const before = new Map(partPrints(rockBuggy).map(({ partId, fingerprint }) => [partId, fingerprint]))
    const other = partPrints(changed).filter(({ partId, fingerprint }) => before.get(partId) !== fingerprint)
    expect(other.map(({ partId }) => partId)).toEqual([`tube:${first.id}`])
  })

  it('gives no part twice', () => {
    for (const layout of examples) {
      const ids = partPrints(layout).map(({ partId }) => partId)
      expect(new Set(ids).size).toBe(ids.length)
    }
  })
})

describe('fingerprintCode', () => {
  it('is two groups of four digits', () => {
    expect(fingerprintCode('3f07a91c00000000ffff')).toBe('3F07-A91C')
  })
})

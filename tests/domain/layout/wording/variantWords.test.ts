import { describe, expect, it } from 'vitest'

import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import { addRecord } from '../../../../src/domain/layout/edit/asWelded'
import { addPlace } from '../../../../src/domain/layout/edit/change'
import {
  drawnVariantId,
  variantLabels,
  variantsOf,
  withoutVariant,
  withVariantAdded,
  withVariantDrawn,
  withVariantRenamed,
} from '../../../../src/domain/layout/edit/changeVariants'
import {
  jobWords,
  otherPlaceWords,
  otherVariantText,
} from '../../../../src/domain/layout/wording/variantWords'
import { planOfExample } from '../../../support/asWelded'

const plain = planOfExample('rock-buggy.layout.json')
const two = withVariantAdded(plain, 'Low bar')

describe('jobWords', () => {
  it('are the job, and the variant where there are several', () => {
    expect(jobWords({ job: { ...plain.job, name: 'Spring' } })).toBe('Spring')
    expect(jobWords({ ...two, job: { ...two.job, name: ' Spring ' } })).toBe('Spring, variant Low bar')
    expect(jobWords({ ...two, job: { ...two.job, name: '' } })).toBe('variant Low bar')
    expect(jobWords({ ...withVariantAdded(plain), job: { ...plain.job, name: 'Spring' } })).toBe(
      'Spring, Variant B',
    )
  })
})

describe('a record of what was welded', () => {
  it('remembers which variant it is of, whichever is drawn or renamed later', () => {
    const recorded = addRecord(two)
    const [record] = recorded.asWelded ?? []
    expect(record?.plannedVariant).toEqual({ id: 'variant-2', name: 'Low bar' })
    expect(parseLayout(recorded)).toEqual({ ok: true, value: recorded })
    const renamed = withVariantRenamed(recorded, 'variant-2', 'Lower bar')
    expect(otherVariantText(record ?? {}, renamed)).toBeNull()
    const other = withVariantDrawn(recorded, 'variant-1')
    expect(otherVariantText(record ?? {}, other)).toMatch(
      /^This record is of Low bar, and Variant A is drawn now\./,
    )
    expect(variantsOf(other).map(({ layout }) => layout.asWelded)).toEqual([
      recorded.asWelded,
      recorded.asWelded,
    ])
  })

  it('is never taken to be of another variant that is made later', () => {
    const recorded = addRecord(two)
    const [record] = recorded.asWelded ?? []
    const without = withoutVariant(recorded, 'variant-2')
    expect(otherVariantText(record ?? {}, without)).toContain('which the layout does not have any more')
    const again = withVariantAdded(without, 'Newer bar')
    expect(drawnVariantId(again)).not.toBe('variant-2')
    expect(otherVariantText(record ?? {}, again)).toContain('which the layout does not have any more')
  })

  it('is still of the one that is left when all others are removed, and when others are added again', () => {
    const recorded = addRecord(two)
    const [record] = recorded.asWelded ?? []
    const alone = withoutVariant(recorded, 'variant-1')
    expect(alone.variants).toEqual({ drawn: { id: 'variant-2', name: 'Low bar', index: 0 }, others: [] })
    expect(parseLayout(alone)).toEqual({ ok: true, value: alone })
    expect(otherVariantText(record ?? {}, alone)).toBeNull()
    expect(withoutVariant(alone, 'variant-2')).toBe(alone)
    const more = withVariantAdded(alone, 'High bar')
    expect(variantLabels(more)).toEqual([
      { id: 'variant-2', name: 'Low bar' },
      { id: drawnVariantId(more), name: 'High bar' },
    ])
    expect(otherVariantText(record ?? {}, more)).toMatch(
      /^This record is of Low bar, and High bar is drawn now\./,
    )
    expect(otherVariantText(record ?? {}, withVariantDrawn(more, 'variant-2'))).toBeNull()
  })

  it('begun before there were variants says that nobody knows which', () => {
    const early = withVariantAdded(addRecord(plain))
    const [record] = early.asWelded ?? []
    expect(record !== undefined && 'plannedVariant' in record).toBe(false)
    expect(otherVariantText(record ?? {}, early)).toContain('which of them was welded is not written down')
    expect(otherVariantText(record ?? {}, addRecord(plain))).toBeNull()
  })
})

describe('otherPlaceWords', () => {
  it('say in which variant a place is that is not drawn', () => {
    const more = addPlace(two)
    const placeId = more.places.at(-1)?.id ?? ''
    expect(otherPlaceWords(placeId, withVariantDrawn(more, 'variant-1'))).toBe('Place 2, in Low bar only')
    expect(otherPlaceWords('nowhere', more)).toBe('no longer in the layout')
  })
})

import { describe, expect, it } from 'vitest'

import { evaluationReport } from '../../src/cli/evaluationReport'
import { variantWord, withVariantNamed } from '../../src/cli/variantChoice'
import { withSeat } from '../../src/domain/layout/edit/change'
import { drawnVariantName, withVariantAdded } from '../../src/domain/layout/edit/changeVariants'
import { exampleLayout } from '../support/exampleLayouts'

const plain = exampleLayout('rock-buggy.layout.json')
const two = withVariantAdded(plain, 'Low bar')

describe('--variant=NAME', () => {
  it('is read off the words, the last one counts, and a name may have blanks', () => {
    expect(variantWord(['--fit', 'a.layout.json'])).toBeNull()
    expect(variantWord(['--variant=Variant A', '--variant=Low bar'])).toBe('Low bar')
  })

  it('draws the variant of that name, however it is written', () => {
    const chosen = withVariantNamed(two, ' variant  A')
    expect(chosen.ok && drawnVariantName(chosen.value)).toBe('Variant A')
    expect(withVariantNamed(two, null)).toEqual({ ok: true, value: two })
  })

  it('fails with the names that there are, or says that there are none', () => {
    expect(withVariantNamed(two, 'High bar')).toMatchObject({
      ok: false,
      error: expect.stringContaining('"Variant A", "Low bar"') as string,
    })
    expect(withVariantNamed(plain, 'High bar')).toMatchObject({
      ok: false,
      error: expect.stringContaining('has no variants') as string,
    })
  })
})

describe('the report of a layout with variants', () => {
  it('names the variant that its numbers are of', () => {
    const [place] = plain.places
    const hipPoint = { xMm: 0, yMm: 0, zMm: 0, ...place?.seat.hipPoint }
    const moved = withSeat(two, place?.id ?? '', { hipPoint: { ...hipPoint, zMm: hipPoint.zMm + 20 } })
    expect(moved).not.toBe(two)
    const first = withVariantNamed(moved, 'Variant A')
    const report = evaluationReport('f', first.ok ? first.value : moved)
    expect(report).toMatchObject({ variant: 'Variant A', variants: ['Variant A', 'Low bar'] })
    expect(report.quantities).toEqual(evaluationReport('f', plain).quantities)
    expect(evaluationReport('f', moved).quantities).not.toEqual(report.quantities)
    expect('variant' in evaluationReport('f', plain)).toBe(false)
  })
})

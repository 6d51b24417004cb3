import { describe, expect, it } from 'vitest'

import type { Layout } from '../../../../src/domain/layout/document/layout'
import { variantsOf, withVariantAdded } from '../../../../src/domain/layout/edit/changeVariants'
import { evaluateLayout, layoutNumbers } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import {
  type CompareGroup,
  type Compared,
  findingGroups,
  numberGroups,
  partGroups,
} from '../../../../src/domain/layout/wording/compareRows'
import { flatLayout, flatPlace, tabAt, tabPair } from '../../../support/flatLayout'

const compared = (layout: Layout, change: Partial<Compared> = {}): Compared => {
  const variants = variantsOf(layout)
  return {
    variants,
    evaluated: variants.map((one) => ({ layout: one.layout, evaluation: layoutNumbers(one.layout) })),
    drawn: 1,
    onlyDifferences: true,
    ...change,
  }
}

const plan = flatLayout([
  flatPlace({ name: 'Driver', anchors: [...tabPair('lap', { xMm: 200, yMm: 220, zMm: -200 })] }),
])

/** Two variants: the plan, and one with other lap tabs, which is drawn. */
const twoWith = (left: { xMm: number; zMm: number }, right = left): Layout => {
  const [place] = plan.places
  const anchors = [tabAt('lap-left', { ...left, yMm: -220 }), tabAt('lap-right', { ...right, yMm: 220 })]
  return withVariantAdded(plan, 'Other', {
    ...plan,
    places: place === undefined ? [] : [{ ...place, anchors }],
  })
}

const titles = (groups: readonly CompareGroup[]): readonly string[] => groups.map(({ title }) => title)
const rowTitles = (groups: readonly CompareGroup[]): readonly string[] =>
  groups.flatMap(({ rows }) => rows.map(({ title }) => title))

describe('rows of comparisons', () => {
  it('stand once for both sides that are alike, twice where they are not', () => {
    expect(titles(partGroups(compared(twoWith({ xMm: 200, zMm: -260 }))))).toEqual(['Left and right lap tab'])
    const split = twoWith({ xMm: 200, zMm: -260 }, { xMm: 200, zMm: -250 })
    expect(titles(partGroups(compared(split)))).toEqual(['Left lap tab', 'Right lap tab'])
    const numbers = rowTitles(numberGroups(compared(twoWith({ xMm: 200, zMm: -260 }))))
    expect(numbers).toContain('Left and right lap strap: lap angle')
    expect(numbers.filter((title) => /^(Left|Right) lap strap/.test(title))).toEqual([])
  })

  it('say by how much, from the drawn one, which has no note itself', () => {
    const [group] = partGroups(compared(twoWith({ xMm: 200, zMm: -260 })))
    expect(
      group?.rows.map(({ title, cells }) => [title, ...cells.map(({ text, notes }) => [text, ...notes])]),
    ).toEqual([
      ['as a whole', ['lies 60 mm elsewhere'], ['there']],
      ['z, up', ['−200 mm', '60 mm up'], ['−260 mm']],
    ])
  })

  it('say of each of three variants whether it has a part', () => {
    const bare = { ...plan, places: plan.places.map((place) => ({ ...place, anchors: [] })) }
    const three = withVariantAdded(withVariantAdded(plan, 'Bare', bare), 'As first', plan)
    const evaluated = variantsOf(three).map(({ layout }) => ({ layout, evaluation: layoutNumbers(layout) }))
    const [group] = partGroups({ ...compared(three), evaluated })
    expect(group?.title).toBe('Left and right lap tab')
    expect(group?.rows.map(({ cells }) => cells.map(({ text, isOther }) => [text, isOther]))).toEqual([
      [
        ['there', true],
        ['not there', false],
        ['there', true],
      ],
    ])
  })

  it('leave out what is the same, and keep it when all is asked for', () => {
    const copy = withVariantAdded(plan, 'Copy')
    for (const groups of [partGroups, findingGroups, numberGroups]) {
      expect(rowTitles(groups(compared(copy)))).toEqual([])
      expect(rowTitles(groups(compared(copy, { onlyDifferences: false }))).length).toBeGreaterThan(3)
    }
  })

  it('leave out numbers that differ by less than is shown', () => {
    expect(rowTitles(numberGroups(compared(twoWith({ xMm: 200, zMm: -200.001 }))))).toEqual([])
  })

  it('say what became of a finding only of the variants that are not drawn', () => {
    // 300 behind and 100 below: 18°, too flat for every lap rule; the plan has 45°.
    const flat = compared(twoWith({ xMm: 300, zMm: -100 }))
    const [row] = findingGroups(flat)[0]?.rows ?? []
    expect(row?.title).toMatch(/^Left and right lap strap: .+ \((must|should|advice)\)$/)
    expect(row?.cells.map(({ verdict, notes }) => [verdict, ...notes])).toEqual([
      ['kept', '▲ better: broken in Other'],
      ['broken'],
    ])
  })

  it('say nothing of rooms that nobody works out, and say them where they are known', () => {
    const layout = twoWith({ xMm: 200, zMm: -205 })
    const all = { onlyDifferences: false } as const
    const notes = (change: Partial<Compared>): string =>
      findingGroups(compared(layout, { ...all, ...change }))
        .flatMap(({ rows }) => rows.flatMap(({ cells }) => cells.flatMap((cell) => cell.notes)))
        .join(' ')
    expect(notes({})).toContain('room is still being worked out')
    expect(notes({ withoutRooms: true })).not.toContain('worked out')
    const evaluated = variantsOf(layout).map((one) => ({
      layout: one.layout,
      evaluation: evaluateLayout(one.layout, { extent: 'what-moves' }),
    }))
    expect(notes({ evaluated })).toMatch(/mm to the limit/)
  })
})

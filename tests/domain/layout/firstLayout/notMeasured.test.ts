import { describe, expect, it } from 'vitest'
import { notMeasuredTitles, withNotMeasured } from '../../../../src/domain/layout/firstLayout/notMeasured'
import { exampleLayout } from '../../../support/exampleLayouts'

const rock = exampleLayout('rock-buggy.layout.json')

describe('what nobody has measured', () => {
  it('is said as it was asked, in the order of the questions', () => {
    const titles = notMeasuredTitles({ ...rock, notMeasured: ['bar', 'seat'] })
    expect(titles).toHaveLength(2)
    expect(titles).toEqual(notMeasuredTitles({ ...rock, notMeasured: ['seat', 'bar'] }))
    expect(titles.every((title) => title.endsWith('?'))).toBe(true)
  })

  it('is nothing where no account is kept, nor of a question that is not asked', () => {
    expect(notMeasuredTitles(rock)).toEqual([])
    expect(notMeasuredTitles({ ...rock, notMeasured: ['no-such-question'] })).toEqual([])
    expect(withNotMeasured(rock, ['seat'])).toBe(rock)
  })
})

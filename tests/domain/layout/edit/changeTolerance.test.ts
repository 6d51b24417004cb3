import { describe, expect, it } from 'vitest'

import { withTolerance, withToleranceGiven } from '../../../../src/domain/layout/edit/changeTolerance'
import { STARTING_TOLERANCE } from '../../../../src/domain/rules/tolerance'
import { exampleLayout } from '../../../support/exampleLayouts'

const rock = exampleLayout('rock-buggy.layout.json')

describe('withToleranceGiven', () => {
  it('gives an error and takes it away again without a trace', () => {
    const given = withToleranceGiven(rock, STARTING_TOLERANCE)
    expect(given.tolerance).toEqual(STARTING_TOLERANCE)
    expect(Object.keys(withToleranceGiven(given, null))).not.toContain('tolerance')
  })
})

describe('withTolerance', () => {
  it('changes one part of what is given, and nothing where none is', () => {
    const given = withToleranceGiven(rock, STARTING_TOLERANCE)
    expect(withTolerance(given, { xMm: 3 }).tolerance).toEqual({ ...STARTING_TOLERANCE, xMm: 3 })
    expect(withTolerance(withToleranceGiven(rock, null), { xMm: 3 }).tolerance).toBeUndefined()
  })
})

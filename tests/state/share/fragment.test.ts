import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type Carried, carriedIn, fragmentOf } from '../../../src/state/share/fragment'

const rockBuggy = readFileSync('public/examples/rock-buggy.layout.json', 'utf8')

describe('fragmentOf', () => {
  it.each(['layout', 'proposal', 'answer'] as const)('gives a %s back letter for letter', (kind) => {
    const carried: Carried = { kind, text: rockBuggy }
    expect(carriedIn(fragmentOf(carried))).toEqual({ ok: true, value: carried })
  })
})

import { describe, expect, it } from 'vitest'
import { nextPart } from '../../src/elevation/paneKeys'

describe('nextPart', () => {
  const ids = ['hip', 'left', 'right']

  it('goes on and back one by one, round and round', () => {
    expect(nextPart(ids, 'hip', 1)).toBe('left')
    expect(nextPart(ids, 'right', 1)).toBe('hip')
    expect(nextPart(ids, 'hip', -1)).toBe('right')
  })

  it('begins at the first or, backwards, at the last when nothing is in hand or something that is not here', () => {
    for (const selected of [null, 'gone']) {
      expect(nextPart(ids, selected, 1)).toBe('hip')
      expect(nextPart(ids, selected, -1)).toBe('right')
    }
    expect(nextPart([], null, 1)).toBeUndefined()
  })
})

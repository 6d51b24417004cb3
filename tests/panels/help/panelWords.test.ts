import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { TERM_IDS } from '../../../src/domain/layout/wording/terms'
import { INSTRUCTIONS } from '../../../src/elevation/paneKeys'
import { KEY_ROWS } from '../../../src/panels/help/keys'
import { PANEL_WORDS, QUANTITY_WORDS } from '../../../src/panels/help/panelWords'

const source = (path: string): string =>
  readFileSync(new URL(`../../../src/${path}`, import.meta.url), 'utf8')

describe('PANEL_WORDS', () => {
  it('is about panels that there are, and leaves out only those without words of the trade', () => {
    const ids = [...source('panels/SidePanels.tsx').matchAll(/\{ id: '([a-z-]+)', words:/g)].map(
      ([, id]) => id,
    )
    expect(ids.length).toBeGreaterThan(10)
    expect(ids.filter((id) => id === undefined || !(id in PANEL_WORDS))).toEqual(['care'])
    expect(Object.keys(PANEL_WORDS).filter((id) => !ids.includes(id))).toEqual([])
  })

  it('every explained word can be asked about beside the drawing', () => {
    const met = new Set([...Object.values(PANEL_WORDS), ...Object.values(QUANTITY_WORDS)].flat())
    expect(TERM_IDS.filter((id) => !met.has(id))).toEqual([])
  })
})

describe('KEY_ROWS', () => {
  it('names every letter and sign that the drawing’s own instructions name', () => {
    const written = KEY_ROWS.map(({ keys }) => keys).join(' ')
    for (const key of ['N', 'B', 'Shift', 'Enter', 'Escape', 'Plus', '1', '0']) {
      expect(INSTRUCTIONS).toContain(key)
      expect(written).toContain(key)
    }
  })
})

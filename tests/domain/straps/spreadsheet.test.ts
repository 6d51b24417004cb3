import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parseLayoutText } from '../../../src/domain/layout/document/parseLayout'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { solvedSittings } from '../../../src/domain/layout/evaluate/solvedSittings'
import { strapSheet } from '../../support/strapSheet'
import { sheetColumn } from '../../support/strapSheetCells'

// The formulas were written a second time from their definitions for a general-purpose spreadsheet engine (HyperFormula), which
// knows nothing of the strap code: two independent computations of the same definitions.

const parsed = parseLayoutText(readFileSync('public/examples/rock-buggy.layout.json', 'utf8'))
if (!parsed.ok) throw new Error('the example does not parse')
/** How far outside the seat's middle the lap tabs are put, so that the straps pass the slots in the side walls clean. */
const LAP_OUT_MM = 294

const layout: Layout = {
  ...parsed.value,
  places: parsed.value.places.map((place) => ({
    ...place,
    anchors: place.anchors.map((anchor) => {
      const out = anchor.strap === 'lap-left' ? -LAP_OUT_MM : anchor.strap === 'lap-right' ? LAP_OUT_MM : null
      if (out === null) return anchor
      const point = { ...anchor.mount.point, yMm: place.seat.hipPoint.yMm + out }
      return { ...anchor, mount: { ...anchor.mount, point } }
    }),
  })),
}

describe('solvePlace', () => {
  it('gives the same values as a spreadsheet for every quantity of a six-point place in every sitting', () => {
    const [place] = layout.places
    if (place === undefined) throw new Error('no place')
    const solved = solvedSittings(layout, place)
    const sheet = strapSheet(solved.map(({ scene }) => scene))
    let compared = 0
    for (const [row, sitting] of solved.entries()) {
      expect(sitting.solved.problems).toEqual([])
      for (const { id, subject, value } of sitting.solved.quantities) {
        // Distances of straps and of the person to tubes are held to a search of sampled points instead.
        if (id === 'tube-clearance' || id === 'body-clearance') continue
        expect(
          sheet.value(sheetColumn(id, subject), row),
          `${id} ${subject} ${sitting.sitting.id}`,
        ).toBeCloseTo(value, 6)
        compared += 1
      }
    }
    expect(compared).toBeGreaterThan(40 * solved.length)
  })
})

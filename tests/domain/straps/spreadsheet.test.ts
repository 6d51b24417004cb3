import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parseLayoutText } from '../../../src/domain/layout/document/parseLayout'
import { evaluateLayout } from '../../../src/domain/layout/evaluate/evaluateLayout'
import { sixPointScenes } from '../../support/sixPointScenes'
import { strapSheet } from '../../support/strapSheet'
import { sheetColumn } from '../../support/strapSheetCells'

// The formulas were written a second time from their definitions for a general-purpose spreadsheet engine (HyperFormula), which
// knows nothing of the strap code: two independent computations of the same definitions.

const parsed = parseLayoutText(readFileSync('public/examples/rock-buggy.layout.json', 'utf8'))
if (!parsed.ok) throw new Error('the example does not parse')
const layout = parsed.value

describe('solvePlace', () => {
  it('gives the same values as a spreadsheet for every quantity of a six-point place in every sitting', () => {
    const evaluation = evaluateLayout(layout)
    const [place] = evaluation.places
    if (place === undefined) throw new Error('no place')
    const sheet = strapSheet(sixPointScenes(layout, evaluation))
    let compared = 0
    for (const [row, sitting] of place.sittings.entries())
      for (const { id, subject, value } of sitting.quantities) {
        expect(
          sheet.value(sheetColumn(id, subject), row),
          `${id} ${subject} ${sitting.sitting.id}`,
        ).toBeCloseTo(value, 6)
        compared += 1
      }
    expect(compared).toBeGreaterThan(40 * place.sittings.length)
  })
})

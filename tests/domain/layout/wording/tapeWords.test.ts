import { describe, expect, it } from 'vitest'

import { pointMm, type PointMm } from '../../../../src/domain/geometry/point'
import { tapePlaceName, tapeTableText, toldText } from '../../../../src/domain/layout/wording/tapeWords'
import type { TapePlaceSource } from '../../../../src/domain/shop/tape/tapePlace'
import { tapeChecks } from '../../../../src/domain/shop/tape/tapeChecks'
import { exampleLayout } from '../../../support/exampleLayouts'

const layout = exampleLayout('rock-buggy.layout.json')

const nameOf = (source: TapePlaceSource): string => tapePlaceName({ source }, layout)

describe('tapePlaceName', () => {
  it('says where a welder finds the place', () => {
    expect(nameOf({ kind: 'datum' })).toBe(`Datum: ${layout.datum}`)
    expect(nameOf({ kind: 'datum-mark', tubeId: 'rail-left', side: 'top' })).toBe(
      'Punch mark on the top of Left floor rail, plumb above the datum, which lies inside the tube',
    )
    expect(nameOf({ kind: 'named', tapePointId: 'leg-left' })).toBe(
      'Left leg of the main hoop, punch mark on its front',
    )
    const end = { kind: 'tube-end', tubeId: 'rail-right', end: 'front', side: 'top' } as const
    expect(nameOf({ ...end, meets: 'cross-front' })).toBe(
      'Punch mark on the top of Right floor rail at its front end, plumb above the middle of Front cross tube',
    )
    expect(nameOf({ ...end, meets: null })).toBe('Punch mark on the top of Right floor rail at its front end')
  })

  it('falls back on ids where nothing was typed', () => {
    expect(tapePlaceName({ source: { kind: 'datum' } }, { ...layout, datum: ' ' })).toBe('Datum')
    expect(nameOf({ kind: 'named', tapePointId: 'gone' })).toBe('Tape point gone')
  })
})

describe('toldText', () => {
  const mirrored = (held: PointMm, mirror: PointMm): string | null =>
    toldText({ held, told: { kind: 'mirror-only', mirror } })

  it.each([
    { held: pointMm(0, 0, 300), mirror: pointMm(0, 0, -300), says: /right one is above .* wrong one below/ },
    { held: pointMm(0, 0, -300), mirror: pointMm(0, 0, 300), says: /right one is below .* wrong one above/ },
    { held: pointMm(500, 0, 0), mirror: pointMm(100, 0, 0), says: /right one is behind .* one ahead of/ },
    { held: pointMm(0, -9, 0), mirror: pointMm(0, 9, 0), says: /is to the left of .* to the right of/ },
  ])('says on which side of the points the anchor is: $held against $mirror', ({ held, mirror, says }) => {
    expect(mirrored(held, mirror)).toMatch(says)
  })

  it('says what to name where there is too little, and nothing where all is told', () => {
    const held = pointMm(0, 0, 0)
    const because = (reason: 'fewer-than-three' | 'in-line' | 'badly-placed'): string | null =>
      toldText({ held, told: { kind: 'not-enough-points', because: reason } })
    expect(because('fewer-than-three')).toMatch(/Name tape points/)
    expect(because('in-line')).toMatch(/off that line/)
    expect(because('badly-placed')).toMatch(/another direction/)
    expect(toldText({ held, told: { kind: 'determined' } })).toBeNull()
  })
})

describe('tapeTableText', () => {
  const table = (tapePoints: typeof layout.tapePoints) =>
    tapeChecks({ tapePoints: tapePoints ?? [], tubes: layout.tubes, places: layout.places })

  it('says whether every anchor is told, and what is not known of the way', () => {
    expect(tapeTableText(table(layout.tapePoints))).toMatch(/^Every anchor’s position can be told.*the seat/)
    expect(tapeTableText(table([]))).toMatch(/^6 of 6 anchors cannot be told/)
    expect(tapeTableText({ places: [], placePairs: [], rows: [], pairs: [] })).toMatch(/No anchors yet/)
  })
})

import { describe, expect, it } from 'vitest'

import { ARRANGEMENTS } from '../../../src/domain/straps/strap'
import { carOf, type Facets } from './onLimit/car'
import { driverOf } from './onLimit/driving'
import { facetsFor, findingsIn, type Row } from './onLimit/onLimit'
import { LIMIT_ROWS } from './onLimit/rows'

/** What a row's rule speaks of in a car with these facets, its numbers half way along what is driven. */
const subjectsOf = (row: Row, facets: Facets): readonly string[] => {
  const [set, , measured, family] = row
  const driver =
    measured === 'belt-points' ? driverOf('webbing-width', 'lap') : driverOf(measured, family ?? 'lap')
  const car = carOf(set, facets, driver.numbersAt((driver.from + driver.to) / 2))
  return findingsIn(car, row).map(({ subject }) => subject)
}

/** Everything that the rule says nothing about turned round. */
const contrary = (row: Row): Facets => {
  const [, , , family, , , , , , when] = row
  const base = facetsFor(row)
  const points = family === 'sub' ? 5 : 4
  return {
    reclineDeg: when.upTo === undefined && when.beyond === undefined ? 35 : base.reclineDeg,
    points: when.points?.at(-1) ?? points,
    restraint: when.restraint ?? true,
    thigh: when.thigh ?? 'under-thighs',
    diagonal: when.diagonal ?? 'right',
    adjustable: when.adjustable ?? true,
    mount: when.mount ?? 'wrap',
    tube: when.tube ?? 'cage',
    dusty: true,
  }
}

const changesThatKeep = ([, , , , , , , , , when]: Row): readonly Partial<Facets>[] => [
  ...(when.upTo === undefined ? [] : [{ reclineDeg: when.upTo }]),
  ...(when.beyond === undefined ? [] : [{ reclineDeg: when.beyond + 0.001 }]),
  ...(when.points ?? []).map((points) => ({ points })),
]

const changesThatSilence = ([, , , , , , , , , when]: Row): readonly Partial<Facets>[] => [
  ...(when.upTo === undefined ? [] : [{ reclineDeg: when.upTo + 0.001 }]),
  ...(when.beyond === undefined ? [] : [{ reclineDeg: when.beyond }]),
  ...(when.restraint === undefined ? [] : [{ restraint: !when.restraint }]),
  ...(when.points === undefined
    ? []
    : ARRANGEMENTS.filter((points) => when.points?.includes(points) === false).map((points) => ({ points }))),
  ...(when.thigh === undefined
    ? []
    : [{ thigh: when.thigh === 'rearward' ? ('under-thighs' as const) : ('rearward' as const) }]),
  ...(when.diagonal === undefined
    ? []
    : [{ diagonal: when.diagonal === 'left' ? ('right' as const) : ('left' as const) }]),
  ...(when.adjustable === undefined ? [] : [{ adjustable: !when.adjustable }]),
  ...(when.mount === undefined
    ? []
    : (['tab', 'wrap', 'eye'] as const).filter((mount) => mount !== when.mount).map((mount) => ({ mount }))),
  ...(when.tube === undefined ? [] : (['none', 'cage', 'floor'] as const).map((tube) => ({ tube }))),
]

describe.each(LIMIT_ROWS.map((row) => ({ ruleId: row[1], row })))('the rule $ruleId', ({ row }) => {
  const [, , , , , , , , , when] = row

  it('speaks where its document does, whatever else the car is like', () => {
    expect(subjectsOf(row, facetsFor(row))).not.toEqual([])
    expect(subjectsOf(row, contrary(row))).not.toEqual([])
    for (const change of changesThatKeep(row))
      expect(subjectsOf(row, { ...facetsFor(row), ...change })).not.toEqual([])
  })

  it('is silent elsewhere', () => {
    for (const change of changesThatSilence(row))
      expect(subjectsOf(row, { ...facetsFor(row), ...change })).toEqual([])
  })

  it('speaks of no other straps than its document', () => {
    for (const points of when.points ?? [])
      for (const subject of when.straps === undefined ? [] : subjectsOf(row, { ...facetsFor(row), points }))
        expect(when.straps).toContain(subject)
  })
})

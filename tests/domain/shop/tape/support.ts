import fc from 'fast-check'

import { directionBetween, pointMm, type PointMm } from '../../../../src/domain/geometry/point'
import type { Tube } from '../../../../src/domain/geometry/tube'
import { worstMoveMmPerMm } from '../../../../src/domain/shop/tape/dilution'
import {
  type AnchorChecks,
  type TapeCheckTable,
  tapeChecks,
} from '../../../../src/domain/shop/tape/tapeChecks'
import type { Anchor } from '../../../../src/domain/straps/anchor'
import type { StrapId } from '../../../../src/domain/straps/strap'

export const eye = (strap: StrapId, point: PointMm): Anchor => ({
  id: strap,
  strap,
  mount: {
    kind: 'eye',
    point,
    planDeg: 0,
    riseDeg: 0,
    threadDiameterMm: 11,
    eyeDiameterMm: 25,
    tubeId: null,
  },
})

export const tube = (id: string, points: readonly PointMm[]): Tube => ({
  id,
  name: id,
  role: 'cage',
  points,
  outsideDiameterMm: 40,
  wallMm: 2,
})

export const tableOf = (
  tapePoints: readonly PointMm[],
  anchors: readonly Anchor[],
  tubes: readonly Tube[] = [],
): TapeCheckTable =>
  tapeChecks({
    tapePoints: tapePoints.map((point, index) => ({ id: `p${index}`, name: `p${index}`, point })),
    tubes,
    places: [{ id: 'driver', anchors }],
  })

export const rowOf = (
  tapePoints: readonly PointMm[],
  held: PointMm,
  tubes: readonly Tube[] = [],
): AnchorChecks => {
  const [row] = tableOf(tapePoints, [eye('lap-left', held)], tubes).rows
  if (row === undefined) throw new Error('one anchor, one row')
  return row
}

/** A whole-millimetre point where a car is, every one as likely as any other. */
export const anyPoint = fc
  .tuple(
    fc.noBias(fc.integer({ min: 0, max: 2_400 })),
    fc.noBias(fc.integer({ min: -800, max: 800 })),
    fc.noBias(fc.integer({ min: -100, max: 1_400 })),
  )
  .map(([x, y, z]) => pointMm(x, y, z))

export const dilutionMmPerMm = (target: PointMm, from: readonly PointMm[]): number =>
  worstMoveMmPerMm(from.flatMap((point) => directionBetween(point, target) ?? []))

import { describe, expect, it } from 'vitest'

import { pointDistanceMm, pointMm } from '../../../../src/domain/geometry/point'
import { nearestOnPolyline } from '../../../../src/domain/geometry/segment'
import { measuredPoint } from '../../../../src/domain/measure/measuredPoint'
import { heldPoint } from '../../../../src/domain/shop/tape/heldPoint'
import { tapeChecks } from '../../../../src/domain/shop/tape/tapeChecks'
import { lengthText } from '../../../../src/domain/units/length'
import { exampleIndex, exampleLayout } from '../../../support/exampleLayouts'

/** What is printed at 0.1 mm, read as anybody reads it. */
const printedMm = (lengthMm: number): number => Number(lengthText(lengthMm, 'mm').replace('−', '-'))

const examples = exampleIndex
  .map(({ file }) => ({ file, layout: exampleLayout(file) }))
  .filter(({ layout }) => layout.places.some(({ anchors }) => anchors.length > 0))

describe.each(examples)('tape checks of $file', ({ layout }) => {
  const { tubes, tapePoints = [], places } = layout
  const table = tapeChecks({ tapePoints, tubes, places })

  it('have a row for every anchor, and every one can be told from its distances', () => {
    const named = table.rows.flatMap(({ anchorId, sameAs }) => [
      anchorId,
      ...sameAs.map((same) => same.anchorId),
    ])
    const anchors = places.flatMap((place) => place.anchors.map(({ id }) => id))
    expect(named.toSorted()).toEqual(anchors.toSorted())
    for (const { told, distances } of table.rows) {
      expect(told).toEqual({ kind: 'determined' })
      expect(distances).toHaveLength(4)
    }
  })

  it('give every anchor back within 1 mm from what is printed at 0.1 mm', () => {
    for (const row of table.rows) {
      const mount = places
        .find(({ id }) => id === row.placeId)
        ?.anchors.find(({ id }) => id === row.anchorId)?.mount
      if (mount === undefined) throw new Error(row.anchorId)
      const measured = measuredPoint({
        kind: 'tapes',
        tapes: row.distances.map(({ letter, lengthMm }) => {
          const { xMm, yMm, zMm } = table.places.find((place) => place.letter === letter)?.point ?? row.held
          return {
            from: { name: letter, point: pointMm(printedMm(xMm), printedMm(yMm), printedMm(zMm)) },
            lengthsMm: [printedMm(lengthMm)],
          }
        }),
        coordinate: null,
        side: null,
      })
      if (!measured.ok) throw new Error(`${row.anchorId}: ${JSON.stringify(measured.error)}`)
      expect(pointDistanceMm(measured.value.point, heldPoint(mount, tubes))).toBeLessThan(1)
    }
  })

  it('start from points that lie on a tube of the car, each of them used', () => {
    for (const { name, point } of tapePoints) {
      const offMm = tubes.map(({ points, outsideDiameterMm }) =>
        Math.abs(nearestOnPolyline(points, point).distanceMm - outsideDiameterMm / 2),
      )
      expect({ name, isOnTube: Math.min(...offMm) < 1 }).toEqual({ name, isOnTube: true })
    }
    const used = table.places.flatMap(({ source }) => (source.kind === 'named' ? [source.tapePointId] : []))
    expect(used).toEqual(tapePoints.map(({ id }) => id))
  })
})

import { describe, expect, it } from 'vitest'
import { type Elevation, projected } from '../../../../src/domain/geometry/plane'
import type { PointMm } from '../../../../src/domain/geometry/point'
import { drawnAngle } from '../../../../src/domain/layout/drawing/drawnAngle'
import { sittingEvaluation, solvedSittings } from '../../../../src/domain/layout/evaluate/solvedSittings'
import type { StrapPath } from '../../../../src/domain/straps/path'
import type { QuantityId } from '../../../../src/domain/straps/quantity'
import { atan2Deg, wrappedDeg } from '../../../../src/domain/units/angle'
import { EXAMPLES as AS_PUBLISHED, OUTFITTED } from './explain/explainedLayouts'

const EXAMPLES = [...AS_PUBLISHED, ...OUTFITTED].map((layout) => ({
  layout,
  places: layout.places.map((place) => ({
    placeId: place.id,
    sittings: solvedSittings(layout, place).map(sittingEvaluation),
  })),
}))

/** The next contact from the body toward the anchor: the far end of the free run. */
const beforeBody = (path: StrapPath): PointMm => path.effectiveAnchor

const directionDeg = (from: PointMm, to: PointMm, elevation: Elevation): number => {
  const a = projected(from, elevation)
  const b = projected(to, elevation)
  return atan2Deg(b.vMm - a.vMm, b.uMm - a.uMm)
}

describe('drawnAngle', () => {
  const checked: readonly {
    readonly id: QuantityId
    readonly elevation: Elevation
    readonly isFromAnchor: boolean
  }[] = [
    { id: 'shoulder-drop', elevation: 'side', isFromAnchor: false },
    { id: 'shoulder-to-spine', elevation: 'side', isFromAnchor: false },
    { id: 'shoulder-plan', elevation: 'top', isFromAnchor: false },
    { id: 'sub-to-chest', elevation: 'side', isFromAnchor: false },
    { id: 'lap-run-angle', elevation: 'side', isFromAnchor: true },
    { id: 'sub-to-vertical', elevation: 'side', isFromAnchor: true },
  ]

  it.each(checked)(
    'of $id lays the value along the strap that is drawn',
    ({ id, elevation, isFromAnchor }) => {
      let count = 0
      for (const { layout, places } of EXAMPLES) {
        for (const place of places) {
          const seat = layout.places.find((candidate) => candidate.id === place.placeId)?.seat
          for (const sitting of place.sittings) {
            for (const path of sitting.paths) {
              const quantity = sitting.quantities.find(
                (candidate) => candidate.id === id && candidate.subject === path.strap,
              )
              if (quantity === undefined || seat === undefined) continue
              const angle = drawnAngle(id, { path, sitting, seat }, elevation)
              if (angle === null) throw new Error(`${id} is not drawn`)
              const alongDeg = isFromAnchor
                ? directionDeg(beforeBody(path), path.bodyContact, elevation)
                : directionDeg(path.bodyContact, beforeBody(path), elevation)
              const offDeg = wrappedDeg(angle.zeroDeg + angle.turn * quantity.value - alongDeg)
              expect(Math.abs(offDeg)).toBeLessThan(1e-6)
              count += 1
            }
          }
        }
      }
      expect(count).toBeGreaterThan(0)
    },
  )

  it('of shoulder-rim-drop points from the slot or rim to where the strap meets its anchor', () => {
    let count = 0
    for (const { layout, places } of EXAMPLES) {
      for (const place of places) {
        const seat = layout.places.find((candidate) => candidate.id === place.placeId)?.seat
        for (const sitting of place.sittings) {
          for (const path of sitting.paths) {
            const value = sitting.quantities.find(
              (candidate) => candidate.id === 'shoulder-rim-drop' && candidate.subject === path.strap,
            )?.value
            const contact = path.contacts[0]
            const angle = seat && drawnAngle('shoulder-rim-drop', { path, sitting, seat }, 'side')
            if (value === undefined || !angle || contact === undefined) continue
            const end = projected(contact.point, 'side')
            const alongDeg = atan2Deg(end.vMm - angle.apex.vMm, end.uMm - angle.apex.uMm)
            expect(wrappedDeg(angle.zeroDeg + angle.turn * value - alongDeg)).toBeCloseTo(0, 6)
            count += 1
          }
        }
      }
    }
    expect(count).toBeGreaterThan(0)
  })

  it('of lap-angle points from the effective anchor to the hip point', () => {
    for (const { layout, places } of EXAMPLES) {
      for (const place of places) {
        const seat = layout.places.find((candidate) => candidate.id === place.placeId)?.seat
        for (const sitting of place.sittings) {
          for (const path of sitting.paths.filter(({ strap }) => strap.startsWith('lap'))) {
            const value = sitting.quantities.find(
              (candidate) => candidate.id === 'lap-angle' && candidate.subject === path.strap,
            )?.value
            const angle = seat && drawnAngle('lap-angle', { path, sitting, seat }, 'side')
            if (value === undefined || !angle) continue
            const alongDeg = directionDeg(path.effectiveAnchor, sitting.body.hip, 'side')
            expect(wrappedDeg(angle.zeroDeg + angle.turn * value - alongDeg)).toBeCloseTo(0, 6)
          }
        }
      }
    }
  })
})

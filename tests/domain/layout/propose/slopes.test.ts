import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { planePoint } from '../../../../src/domain/geometry/plane'
import { nearestZeroMm } from '../../../../src/domain/layout/propose/slopes'

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('nearestZeroMm', () => {
  it('is the distance to a line, + on its kept side', () => {
    // 3u + 4v ≤ 100: from (0, 0) the line is 100/5 = 20 away, from (20, 20) it is 40/5 = 8 away on the other side.
    const marginAt = ({ uMm, vMm }: { readonly uMm: number; readonly vMm: number }) => 100 - 3 * uMm - 4 * vMm
    expect(nearestZeroMm(marginAt, planePoint(0, 0))).toBeCloseTo(20, 6)
    expect(nearestZeroMm(marginAt, planePoint(20, 20))).toBeCloseTo(-8, 6)
  })

  it('is the distance to a circle from inside and outside', () => {
    fc.assert(
      fc.property(mm(50, 400), mm(0.1, 0.8), mm(0, 360), fc.boolean(), (radius, off, deg, isInside) => {
        const away = radius * (isInside ? 1 - off : 1 + off)
        const from = planePoint(away * Math.cos(deg), away * Math.sin(deg))
        const found = nearestZeroMm(({ uMm, vMm }) => radius - Math.hypot(uMm, vMm), from)
        expect(found).toBeCloseTo(radius - away, 2)
      }),
    )
  })

  it('is the distance to the line of an angle about a point', () => {
    // At 300 mm from the hip and 60° the 45° line is 300·sin 15° away.
    const angleAt = ({ uMm, vMm }: { readonly uMm: number; readonly vMm: number }) =>
      (Math.atan2(-vMm, uMm) * 180) / Math.PI - 45
    const from = planePoint(150, -150 * Math.sqrt(3))
    expect(nearestZeroMm(angleAt, from)).toBeCloseTo(300 * Math.sin(Math.PI / 12), 2)
  })

  it('says nothing where there is no number on the way or no slope', () => {
    expect(nearestZeroMm(({ uMm }) => (uMm > 5 ? null : 10 - uMm), planePoint(0, 0))).toBeNull()
    expect(nearestZeroMm(() => 1, planePoint(0, 0))).toBeNull()
  })
})

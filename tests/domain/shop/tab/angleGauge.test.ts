import { describe, expect, it } from 'vitest'
import { angleGauge } from '../../../../src/domain/shop/tab/angleGauge'

describe('angleGauge', () => {
  it.each([0.05, 0.1, 5, 12.3, 30, 45, 45.01, 52.5, 70, 89.9, 89.95])(
    'has %s° between its base and its slant, and stands up',
    (deg) => {
      const gauge = angleGauge(deg)
      if (gauge === null) throw new Error('no gauge')
      const [low, high] = gauge.slant
      const slant = { x: high.xMm - low.xMm, y: high.yMm - low.yMm }
      // Angle from the level edge by the cross product: sin a = |level × slant| / |slant|.
      expect(Math.asin(slant.y / Math.hypot(slant.x, slant.y)) * (180 / Math.PI)).toBeCloseTo(deg, 9)
      const base = gauge.base === 'level' ? { x: 1, y: 0 } : { x: 0, y: 1 }
      const cross = Math.abs(base.x * slant.y - base.y * slant.x) / Math.hypot(slant.x, slant.y)
      expect(Math.asin(cross) * (180 / Math.PI)).toBeCloseTo(gauge.base === 'level' ? deg : 90 - deg, 9)
      // Never larger than half a sheet.
      for (const { xMm, yMm } of gauge.points) {
        expect(xMm).toBeGreaterThanOrEqual(0)
        expect(yMm).toBeGreaterThanOrEqual(0)
        expect(Math.max(xMm, yMm)).toBeLessThanOrEqual(98 + 1e-9)
      }
      // Anticlockwise (shoelace) with both ends of the slant on it.
      const area = gauge.points.reduce((sum, { xMm, yMm }, index) => {
        const next = gauge.points[(index + 1) % gauge.points.length] ?? { xMm, yMm }
        return sum + xMm * next.yMm - next.xMm * yMm
      }, 0)
      expect(area).toBeGreaterThan(0)
      expect(gauge.points).toContain(low)
      expect(gauge.points).toContain(high)
    },
  )

  it('is not made where a level or a square does it', () => {
    for (const deg of [0, 0.049, 89.951, 90, -10, Number.NaN]) expect(angleGauge(deg)).toBeNull()
  })
})

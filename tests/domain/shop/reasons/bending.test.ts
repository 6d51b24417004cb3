import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  deflectionRatio,
  doubleShearArmMm,
  plateStressRatio,
  singleShearArmMm,
} from '../../../../src/domain/shop/reasons/bending'

const MM_PER_INCH = 25.4

describe('plateStressRatio', () => {
  /**
   * The edge stress of a section by adding up thin layers: the linear stress whose sum is the pull along the plate and whose moment
   * is the pull across it times the height. Found without the section modulus.
   */
  const layeredRatio = (heightMm: number, thicknessMm: number, offPlaneDeg: number): number => {
    const along = Math.cos((offPlaneDeg * Math.PI) / 180)
    const moment = Math.sin((offPlaneDeg * Math.PI) / 180) * heightMm
    const layers = 4000
    const layerMm = thicknessMm / layers
    let second = 0
    for (let index = 0; index < layers; index += 1) {
      const yMm = -thicknessMm / 2 + (index + 0.5) * layerMm
      second += yMm * yMm * layerMm
    }
    const bending = (moment / second) * (thicknessMm / 2)
    return (along / thicknessMm + bending) / (1 / thicknessMm)
  }

  it.each([
    { heightMm: 25, thicknessMm: 5, offPlaneDeg: 0 },
    { heightMm: 25, thicknessMm: 5, offPlaneDeg: 10 },
    { heightMm: 40, thicknessMm: 3, offPlaneDeg: 30 },
    { heightMm: 12, thicknessMm: 8, offPlaneDeg: 90 },
  ])('agrees with layers added up, $heightMm mm, $thicknessMm mm, $offPlaneDeg°', (row) => {
    const { heightMm, thicknessMm, offPlaneDeg } = row
    expect(plateStressRatio(row, offPlaneDeg)).toBeCloseTo(
      layeredRatio(heightMm, thicknessMm, offPlaneDeg),
      3,
    )
  })

  it('a straight pull is the whole measure', () => {
    expect(plateStressRatio({ heightMm: 25, thicknessMm: 5 }, 0)).toBe(1)
  })
})

describe('the arm that bends a bolt', () => {
  // Source: Niu, Airframe Stress Analysis and Sizing, ch. 9.8, example 1: outer plates 0.25 in, gap 0.02 in, lug 0.5 in, factor 0.43:
  // b = 0.25/2 + 0.02 + 0.43·0.5/4, printed as 0.2 in; with a pull of 15 kip the printed moment is 1.5 kip·in.
  const plates = { plateMm: 0.25 * MM_PER_INCH, fittingMm: 0.5 * MM_PER_INCH, gapMm: 0.02 * MM_PER_INCH }

  it('double shear is that of the handbook’s example', () => {
    const momentKipIn = (15 * doubleShearArmMm(plates, 0.43)) / MM_PER_INCH
    expect(momentKipIn).toBeCloseTo(1.5, 1)
    expect((2 * doubleShearArmMm(plates, 0.43)) / MM_PER_INCH).toBeCloseTo(0.2, 2)
  })

  it('single shear is from middle to middle', () => {
    expect(singleShearArmMm({ plateMm: 5, fittingMm: 4, gapMm: 0 })).toBe(4.5)
    expect(singleShearArmMm({ plateMm: 5, fittingMm: 4, gapMm: 3 })).toBe(7.5)
  })

  it('one plate always bends the bolt more than two', () => {
    const length = fc.double({ min: 0.1, max: 50, noNaN: true })
    fc.assert(
      fc.property(
        length,
        length,
        fc.double({ min: 0, max: 50, noNaN: true }),
        (plateMm, fittingMm, gapMm) => {
          const pin = { plateMm, fittingMm, gapMm }
          expect(singleShearArmMm(pin)).toBeGreaterThan(doubleShearArmMm(pin))
        },
      ),
    )
  })
})

describe('deflectionRatio', () => {
  /** The middle of a bar on two supports from its curvature M/(E·I), added up twice; load and stiffness 1. */
  const sag = (spanMm: number): number => {
    const steps = 2000
    const dx = spanMm / 2 / steps
    let moment = 0
    // Second theorem of Mohr: the deflection of the end against the tangent in the middle is the moment area's moment about it.
    for (let index = 0; index < steps; index += 1) {
      const x = (index + 0.5) * dx
      moment += (x / 2) * x * dx
    }
    return moment
  }

  it.each([400, 800, 1000, 1200])(
    'a span of %s mm against 800 mm agrees with the curvature added up',
    (spanMm) => {
      expect(deflectionRatio(spanMm, 800)).toBeCloseTo(sag(spanMm) / sag(800), 6)
    },
  )
})

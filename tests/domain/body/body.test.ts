import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bodyOf } from '../../../src/domain/body/body'
import { BODY_MEASURES, type BodyMeasure, type Occupant, type Sex } from '../../../src/domain/body/occupant'
import { hipHeightMm, predictedBody } from '../../../src/domain/body/predicted'
import { STUDENT_TEMPLATE_MEASURES } from '../../../src/domain/body/template'

const occupant = (measured: Occupant['measured'] = {}): Occupant => ({
  id: 'occupant-1',
  name: 'Test driver',
  sex: 'male',
  statureMm: 1755,
  massKg: 84.6,
  measured,
})

describe('predictedBody', () => {
  // Worked by hand from the lines rounded to four figures, ±1 mm; e.g. male sitting height
  // 216.7 + 0.3933·1755 + 0.128·84.6 = 918, female 215.3 + 0.3940·1525 − 0.006·51.3 = 816.
  it.each([
    ...(
      [
        ['sittingHeightMm', 918],
        ['midShoulderHeightMm', 634],
        ['kneeHeightMm', 554],
        ['hipBreadthMm', 378],
        ['frontHipBoneBreadthMm', 236],
      ] as const
    ).map(([measure, mm]) => ({ sex: 'male' as const, statureMm: 1755, massKg: 84.6, measure, mm })),
    ...(
      [
        ['sittingHeightMm', 816],
        ['midShoulderHeightMm', 550],
        ['hipBreadthMm', 361],
        ['thighClearanceMm', 152],
      ] as const
    ).map(([measure, mm]) => ({ sex: 'female' as const, statureMm: 1525, massKg: 51.3, measure, mm })),
    ...(
      [
        ['midShoulderHeightMm', 677],
        ['buttockKneeMm', 669],
        ['abdominalDepthMm', 300],
      ] as const
    ).map(([measure, mm]) => ({ sex: 'male' as const, statureMm: 1870, massKg: 110.7, measure, mm })),
  ])('$sex $statureMm mm $massKg kg: $measure is $mm', ({ sex, statureMm, massKg, measure, mm }) => {
    expect(Math.abs(predictedBody(sex, statureMm, massKg)[measure] - mm)).toBeLessThan(1)
  })

  it.each([
    // Erect mid-shoulder above the hip joint of people as large as the small-female and the large-male test dummy: 464 and 585 mm
    // (1988 survey lines; dummy sizes 1 511 mm/47 kg and 1 869 mm/102 kg from memory). Slumped: 0.95 of it.
    { sex: 'female' as const, statureMm: 1511, massKg: 47, erectMm: 464 },
    { sex: 'male' as const, statureMm: 1869, massKg: 102, erectMm: 585 },
  ])(
    'puts the shoulder of a $sex of $statureMm mm at 0.95 of $erectMm mm',
    ({ sex, statureMm, massKg, erectMm }) => {
      expect(Math.abs(predictedBody(sex, statureMm, massKg).hipToShoulderMm - 0.95 * erectMm)).toBeLessThan(
        1.5,
      )
    },
  )

  it('keeps the proportions of the published template in the shoulder', () => {
    // Formula SAE rules 2026, F.5.6: circle Ø200 with its centre 490 mm from the hip, so R : L = 100 : 590.
    const body = predictedBody('male', 1870, 110.7)
    expect(body.shoulderArcRadiusMm / body.hipToShoulderMm).toBeCloseTo(100 / 590, 12)
  })

  it('gives the mean man about the helmet of the published template', () => {
    // Ø300 in the same rule; mean male head length 200 mm in the 2012 survey.
    expect(Math.abs(predictedBody('male', 1755, 84.6).helmetRadiusMm - 150)).toBeLessThan(1)
  })

  it.each([
    // Top of the head above the hip joint in published models of the small-female and large-male frontal dummy: 692 and 834 mm
    // (dummy sizes from memory). Half a head below it is the head's centre; the helmet adds 50 mm to half a head.
    { sex: 'female' as const, statureMm: 1511, massKg: 47, topOfHeadMm: 692 },
    { sex: 'male' as const, statureMm: 1869, massKg: 102, topOfHeadMm: 834 },
  ])(
    'has the top of the head where a dummy of that size has it: $sex',
    ({ sex, statureMm, massKg, topOfHeadMm }) => {
      const body = predictedBody(sex, statureMm, massKg)
      expect(Math.abs(body.headCentreAboveHipMm + (body.helmetRadiusMm - 50) - topOfHeadMm)).toBeLessThan(5)
    },
  )

  it('lays the strap halfway between the neck and the shoulder end', () => {
    // By hand, male 1755 mm, 84.6 kg: biacromial 204.6 + 0.0917·1755 + 0.586·84.6 = 415.1; shoulder length 39.6 + 0.0627·1755 = 149.6.
    const spacingMm = predictedBody('male', 1755, 84.6).shoulderStrapSpacingMm
    expect(Math.abs(spacingMm - 2 * (415.1 / 2 - 149.6 / 2))).toBeLessThan(0.5)
  })

  it('is finite and above nothing for everybody', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<Sex>('female', 'male'),
        fc.double({ min: 1000, max: 2500, noNaN: true }),
        fc.double({ min: 20, max: 300, noNaN: true }),
        (sex, statureMm, massKg) => {
          const body = predictedBody(sex, statureMm, massKg)
          for (const measure of BODY_MEASURES) {
            expect(Number.isFinite(body[measure])).toBe(true)
            expect(body[measure]).toBeGreaterThan(0)
          }
        },
      ),
    )
  })
})

describe('hipHeightMm', () => {
  it.each([
    // Hip joints of the small-female and the large-male frontal dummy: 97 and 103 mm.
    { statureMm: 1511, mm: 97 },
    { statureMm: 1869, mm: 103 },
    { statureMm: 1690, mm: 100 }, // halfway
    { statureMm: 1200, mm: 92 }, // the line would give 91.8
    { statureMm: 1213, mm: 92.01 },
    { statureMm: 2048, mm: 106 }, // exactly there by the line
    { statureMm: 2300, mm: 106 },
  ])('of $statureMm mm is $mm mm', ({ statureMm, mm }) => {
    expect(Math.abs(hipHeightMm(statureMm) - mm)).toBeLessThan(0.01)
  })
})

describe('bodyOf', () => {
  it('is the predicted body when nothing was measured', () => {
    expect(bodyOf(occupant())).toEqual(predictedBody('male', 1755, 84.6))
  })

  it('takes every measured value as it is', () => {
    fc.assert(
      fc.property(
        fc.constantFrom<BodyMeasure>(...BODY_MEASURES),
        fc.integer({ min: 15, max: 900 }),
        (measure, value) => {
          expect(bodyOf(occupant({ [measure]: value }))[measure]).toBe(value)
        },
      ),
    )
  })

  it('leaves what does not follow from the measured value alone', () => {
    const body = bodyOf(occupant({ hipBreadthMm: 420 }))
    expect({ ...body, hipBreadthMm: 0 }).toEqual({ ...bodyOf(occupant()), hipBreadthMm: 0 })
  })

  it('lets the shoulder follow a measured seat-to-shoulder height by the slump of 0.95', () => {
    const plain = bodyOf(occupant())
    const raised = bodyOf(occupant({ midShoulderHeightMm: plain.midShoulderHeightMm + 40 }))
    expect(raised.hipToShoulderMm - plain.hipToShoulderMm).toBeCloseTo(38, 9)
    expect(raised.shoulderArcRadiusMm - plain.shoulderArcRadiusMm).toBeCloseTo(3800 / 590, 9)
    expect(raised.headCentreAboveHipMm).toBe(plain.headCentreAboveHipMm)
  })

  it('lets the head follow a measured sitting height', () => {
    const plain = bodyOf(occupant())
    const raised = bodyOf(occupant({ sittingHeightMm: plain.sittingHeightMm + 40 }))
    expect(raised.headCentreAboveHipMm - plain.headCentreAboveHipMm).toBeCloseTo(38, 9)
    expect(raised.hipToShoulderMm).toBe(plain.hipToShoulderMm)
  })

  it('lets a measured hip-to-shoulder length win over the shoulder height', () => {
    const body = bodyOf(occupant({ midShoulderHeightMm: 700, hipToShoulderMm: 500 }))
    expect(body.hipToShoulderMm).toBe(500)
    expect(body.shoulderArcRadiusMm).toBeCloseTo(50_000 / 590, 9)
  })

  it('keeps a trunk even when a typed height is below the hip', () => {
    expect(bodyOf(occupant({ midShoulderHeightMm: 1 })).hipToShoulderMm).toBe(100)
  })

  it('becomes the published template', () => {
    const body = bodyOf(occupant(STUDENT_TEMPLATE_MEASURES))
    // F.5.6: circles Ø200, Ø200, Ø300; centres 490 and 280 mm apart.
    expect(body.hipToShoulderMm - body.shoulderArcRadiusMm).toBe(490)
    expect(body.headCentreAboveHipMm - 490).toBe(280)
    expect(body.helmetRadiusMm * 2).toBe(300)
    expect(body.hipHeightMm * 2).toBe(200)
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Sex } from '../../../src/domain/body/occupant'
import { posedBody } from '../../../src/domain/body/posed'
import type { BodyCore } from '../../../src/domain/body/posedBody'
import { predictedBody } from '../../../src/domain/body/predicted'
import { pointMm } from '../../../src/domain/geometry/point'

const person = fc
  .record({
    sex: fc.constantFrom<Sex>('female', 'male'),
    statureMm: fc.double({ min: 1450, max: 2000, noNaN: true }),
    bodyMassIndex: fc.double({ min: 18, max: 40, noNaN: true }),
  })
  .map(({ sex, statureMm, bodyMassIndex }) =>
    predictedBody(sex, statureMm, bodyMassIndex * (statureMm / 1000) ** 2),
  )

const partsOf = (core: readonly BodyCore[], part: BodyCore['part']): readonly BodyCore[] =>
  core.filter((each) => each.part === part)

/** The two parts are mirror images about the middle y. */
const isMirrored = ({ from: a, to: b }: BodyCore, yMm: number): boolean =>
  Math.abs(a.yMm + b.yMm - 2 * yMm) < 1e-9

describe('bodyCore', () => {
  it('lies within the person as measured, whoever it is and however the back leans', () => {
    fc.assert(
      fc.property(person, fc.double({ min: 0, max: 45, noNaN: true }), (body, reclineDeg) => {
        const hip = pointMm(100, 40, 20)
        const {
          core,
          hip: own,
          hipHalfBreadthMm,
          lapArc,
          shoulderArc,
          chest,
        } = posedBody(body, { hip, reclineDeg }, body.hipHeightMm)
        expect(core.map(({ part }) => part).toSorted()).toEqual(
          ['belly', 'chest', 'pelvis', 'shoulders', 'thigh', 'thigh'].toSorted(),
        )
        expect(Math.min(...core.map(({ radiusMm }) => radiusMm))).toBeGreaterThan(0)
        const widestMm = core
          .filter(({ part }) => part !== 'shoulders')
          .flatMap(({ from, to, radiusMm }) =>
            [from, to].map(({ yMm }) => Math.abs(yMm - own.yMm) + radiusMm),
          )
        expect(Math.max(...widestMm)).toBeLessThanOrEqual(hipHalfBreadthMm + 1e-9)
        const [pelvis] = partsOf(core, 'pelvis')
        const [shoulders] = partsOf(core, 'shoulders')
        const [trunk] = partsOf(core, 'chest')
        if (pelvis === undefined || shoulders === undefined || trunk === undefined) throw new Error('no core')
        // The straps lie on these three: the lap strap's circle, the shoulder's and the front of the chest.
        expect(pelvis.radiusMm).toBeCloseTo(Math.min(lapArc.radiusMm, hipHalfBreadthMm), 9)
        expect(pelvis.from.xMm).toBeCloseTo(own.xMm, 9)
        expect(shoulders.radiusMm).toBe(shoulderArc.radiusMm)
        expect([shoulders.from.xMm, shoulders.from.zMm]).toEqual([
          shoulderArc.centre.uMm,
          shoulderArc.centre.vMm,
        ])
        expect(trunk.radiusMm).toBeLessThanOrEqual(body.chestDepthMm / 2 + 1e-9)
        expect([trunk.from.xMm, trunk.from.zMm]).toEqual([chest.centre.uMm, chest.centre.vMm])
        for (const each of [pelvis, shoulders, trunk]) expect(isMirrored(each, own.yMm)).toBe(true)
      }),
    )
  })

  it('has a pelvis no wider than the hips, however much flesh is typed over their bones', () => {
    const body = { ...predictedBody('female', 1550, 50), lapTissueMm: 120 }
    const { core, lapArc, hipHalfBreadthMm } = posedBody(
      body,
      { hip: pointMm(0, 0, 0), reclineDeg: 20 },
      body.hipHeightMm,
    )
    expect(lapArc.radiusMm).toBeGreaterThan(hipHalfBreadthMm)
    const [pelvis] = partsOf(core, 'pelvis')
    expect(pelvis?.radiusMm).toBe(hipHalfBreadthMm)
    expect(pelvis?.from).toEqual(pelvis?.to)
  })

  it('has thighs under the line that bounds the lap strap, one on each side', () => {
    fc.assert(
      fc.property(person, (body) => {
        const { core, hip } = posedBody(body, { hip: pointMm(0, 0, 0), reclineDeg: 20 }, body.hipHeightMm)
        const thighs = partsOf(core, 'thigh')
        // The thigh's top line rises forward at 10° (our judgement), its clearance less the hip height square above the hip point.
        const turn = (10 * Math.PI) / 180
        const aboveTopMm = ({ xMm, zMm }: { readonly xMm: number; readonly zMm: number }): number =>
          (xMm - hip.xMm) * Math.sin(turn) +
          (zMm - hip.zMm) * Math.cos(turn) -
          (body.thighClearanceMm - body.hipHeightMm)
        for (const { from, to, radiusMm } of thighs) {
          expect(aboveTopMm(from) + radiusMm).toBeCloseTo(0, 6)
          expect(aboveTopMm(to) + radiusMm).toBeCloseTo(0, 6)
          expect(2 * radiusMm).toBeLessThanOrEqual(body.thighClearanceMm)
          expect(from.yMm).toBe(to.yMm)
        }
        expect(thighs.map(({ from }) => Math.sign(from.yMm - hip.yMm))).toEqual([-1, 1])
      }),
    )
  })
})

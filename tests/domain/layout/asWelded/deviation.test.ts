import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { pointDistanceMm } from '../../../../src/domain/geometry/point'
import { anchorReading } from '../../../../src/domain/layout/asWelded/anchorReading'
import {
  anchorDeviation,
  type AnchorDeviation,
  deviationVerdict,
  recordDeviations,
} from '../../../../src/domain/layout/asWelded/deviation'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { addRecord, withMeasurement, withSignature } from '../../../../src/domain/layout/edit/asWelded'
import { tapeReadMm, uncertaintyMm } from '../../../../src/domain/layout/asWelded/uncertainty'
import type { MeasuredAnchor } from '../../../../src/domain/measure/asWeldedRecord'
import type { Measurement } from '../../../../src/domain/measure/measurement'
import type { WeldTolerance } from '../../../../src/domain/rules/tolerance'
import { coordinatesAt, planOfExample, recordWith } from '../../../support/asWelded'

const TOLERANCE: WeldTolerance = { xMm: 2, yMm: 3, zMm: 4, tabDeg: 2, reclineDeg: 1, spread: 'worst-case' }

const ENTRY: MeasuredAnchor = {
  placeId: 'driver',
  anchorId: 'driver-lap-left',
  strap: 'lap-left',
  planned: {
    kind: 'tab',
    point: { xMm: 1350, yMm: 70, zMm: 38 },
    planDeg: -31,
    leanDeg: 4,
    thicknessMm: 4.8,
    holeDiameterMm: 11.5,
    shear: 'double',
    tubeId: 'cross-lap',
  },
  measurement: null,
}

const measured = (
  part: Partial<MeasuredAnchor>,
  tolerance: WeldTolerance | null = TOLERANCE,
): AnchorDeviation =>
  anchorDeviation(
    {
      tubes: [],
      ...(tolerance === null ? {} : { tolerance }),
    },
    anchorReading({ ...ENTRY, ...part }),
  )

const offBy = (xMm: number, yMm: number, zMm: number): Measurement =>
  coordinatesAt(ENTRY.planned.point, { xMm, yMm, zMm })

describe('deviationVerdict', () => {
  // The rule of ISO 14253-1 (from memory) worked by hand: the zone of conformity is the tolerance less the uncertainty at both ends,
  // that of non-conformity begins the uncertainty beyond the tolerance.
  it.each([
    { off: 1.5, uncertainty: 0.5, verdict: 'within' },
    { off: -1.5, uncertainty: 0.5, verdict: 'within' },
    { off: 1.501, uncertainty: 0.5, verdict: 'cannot-be-told' },
    { off: -1.501, uncertainty: 0.5, verdict: 'cannot-be-told' },
    { off: 2.5, uncertainty: 0.5, verdict: 'cannot-be-told' },
    { off: 2.501, uncertainty: 0.5, verdict: 'outside' },
    { off: -2.501, uncertainty: 0.5, verdict: 'outside' },
    { off: 2, uncertainty: 0, verdict: 'within' },
    { off: 2.001, uncertainty: 0, verdict: 'outside' },
    { off: 0, uncertainty: 2, verdict: 'within' },
    { off: 0, uncertainty: 2.001, verdict: 'cannot-be-told' },
    { off: 0, uncertainty: null, verdict: 'cannot-be-told' },
    { off: 300, uncertainty: null, verdict: 'cannot-be-told' },
  ])('of $off mm ± $uncertainty within ± 2 mm is $verdict', ({ off, uncertainty, verdict }) => {
    expect(deviationVerdict(off, 2, uncertainty)).toBe(verdict)
  })

  it('invents no tolerance', () => {
    expect(deviationVerdict(0, null, 0.5)).toBe('no-tolerance')
    expect(deviationVerdict(90, null, null)).toBe('no-tolerance')
  })

  it('never says within of what might be outside, nor outside of what might be within', () => {
    const mm = fc.double({ min: 0, max: 10, noNaN: true })
    const signed = fc.double({ min: -10, max: 10, noNaN: true })
    fc.assert(
      fc.property(
        signed,
        mm,
        mm,
        fc.double({ min: -1, max: 1, noNaN: true }),
        (off, allowed, uncertainty, share) => {
          const verdict = deviationVerdict(off, allowed, uncertainty)
          const really = Math.abs(off + share * uncertainty)
          expect(verdict === 'within' && really > allowed + 2e-9).toBe(false)
          expect(verdict === 'outside' && really <= allowed - 2e-9).toBe(false)
        },
      ),
    )
  })
})

describe('anchorDeviation', () => {
  it('is measured less planned along each axis, with the straight distance', () => {
    const { position } = measured({ measurement: offBy(1, -2, 2) })
    expect([position?.x.off, position?.y.off, position?.z.off]).toEqual([1, -2, 2])
    expect(position?.totalMm).toBe(3)
  })

  it('is judged along each axis by its own tolerance, and as a whole by the worst of them', () => {
    // Read once to the nearest millimetre: half a millimetre either way.
    expect(measured({ measurement: offBy(1.5, 2.5, 3.5) }).verdict).toBe('within')
    const { position, verdict } = measured({ measurement: offBy(1.5, 2.6, -4.6) })
    expect(position?.x.verdict).toBe('within')
    expect(position?.y.verdict).toBe('cannot-be-told')
    expect(position?.z.verdict).toBe('outside')
    expect(verdict).toBe('outside')
    expect(measured({ measurement: offBy(0, 2.6, 0) }).verdict).toBe('cannot-be-told')
  })

  it('only shows deviations while no tolerance is typed', () => {
    const { position, verdict } = measured({ measurement: offBy(1, 2, 3) }, null)
    expect(verdict).toBe('no-tolerance')
    expect(position?.x).toEqual({ off: 1, uncertainty: 0.5, allowed: null, verdict: 'no-tolerance' })
  })

  it('cannot be told where readings scatter by more than what is left of the tolerance', () => {
    const once = measured({ measurement: { kind: 'coordinates', xMm: [1350.5], yMm: [70], zMm: [38] } })
    expect(once.verdict).toBe('within')
    const apart = measured({
      measurement: { kind: 'coordinates', xMm: [1348.5, 1352.5], yMm: [70], zMm: [38] },
    })
    // The mean is the same; half of the 4 mm between the readings is more than the 1.5 mm left.
    expect(apart.position?.x).toEqual({ off: 0.5, uncertainty: 2, allowed: 2, verdict: 'cannot-be-told' })
    expect(apart.verdict).toBe('cannot-be-told')
  })

  it('is not measured without readings, and cannot be told where they give no position', () => {
    expect(measured({}).verdict).toBe('not-measured')
    const half = measured({ measurement: { kind: 'coordinates', xMm: [1350], yMm: [], zMm: [38] } })
    expect(half.position).toBeNull()
    expect(half.verdict).toBe('cannot-be-told')
  })

  it('judges tab angles that were measured, and says when they were not', () => {
    const at = { measurement: offBy(0, 0, 0) }
    expect(measured(at).areAnglesUnmeasured).toBe(true)
    const good = measured({ ...at, planDeg: [-30], leanDeg: [4.5] })
    expect(good.areAnglesUnmeasured).toBe(false)
    expect([good.planDeg?.off, good.leanDeg?.off]).toEqual([1, 0.5])
    expect(good.verdict).toBe('within')
    // 2° allowed, read to half a degree.
    expect(measured({ ...at, planDeg: [-29.5] }).planDeg?.verdict).toBe('within')
    expect(measured({ ...at, planDeg: [-29.4] }).planDeg?.verdict).toBe('cannot-be-told')
    expect(measured({ ...at, planDeg: [-28.4] }).verdict).toBe('outside')
  })

  it('knows one plane written two ways: half a turn on and leaned the other way', () => {
    const same = measured({ measurement: offBy(0, 0, 0), planDeg: [149], leanDeg: [-4] })
    expect(same.planDeg?.off).toBe(0)
    expect(same.leanDeg?.off).toBe(0)
    expect(same.verdict).toBe('within')
  })

  it('of a signed record stays held against what was allowed when it was signed', () => {
    const plan = { ...planOfExample('rock-buggy.layout.json'), tolerance: TOLERANCE }
    const open = addRecord(plan)
    const ref = { recordId: 'welded-1', placeId: 'driver', anchorId: 'driver-lap-left' }
    const measuredOne = withMeasurement(open, ref, offBy(4, 0, 0))
    const verdictIn = (layout: Layout): string | undefined => {
      const [record] = layout.asWelded ?? []
      if (record === undefined) throw new Error('no record')
      return recordDeviations(layout, record).find(({ reading }) => reading.entry.strap === 'lap-left')
        ?.verdict
    }
    const wider = { ...TOLERANCE, xMm: 10 }
    expect(verdictIn(measuredOne)).toBe('outside')
    expect(verdictIn({ ...measuredOne, tolerance: wider })).toBe('within')
    const signed = withSignature(measuredOne, 'welded-1', { name: 'Ines', date: '2026-04-02' })
    expect(verdictIn(signed)).toBe('outside')
    expect(verdictIn({ ...signed, tolerance: wider })).toBe('outside')
    const { tolerance: _typed, ...without } = measuredOne
    const signedWithout = withSignature(without, 'welded-1', { name: 'Ines', date: '2026-04-02' })
    expect(verdictIn({ ...signedWithout, tolerance: wider })).toBe('no-tolerance')
  })

  it('of a wrap is told at the outside of its bar, where the tape is held', () => {
    const plan = planOfExample('hill-climber-joined-straps.layout.json')
    const wrapped = recordWith(plan, (entry) => entry).anchors.find(({ planned }) => planned.kind === 'wrap')
    const bar = plan.tubes.find(({ id }) => id === wrapped?.planned.tubeId)
    if (wrapped === undefined || bar === undefined) throw new Error('the example has no wrap')
    // Straight above the centre line of a level bar by half its diameter.
    const { xMm, yMm, zMm } = wrapped.planned.point
    const topMm = zMm + bar.outsideDiameterMm / 2
    const at = coordinatesAt({ xMm, yMm, zMm: topMm }, { zMm: -4 })
    const { planned, position } = anchorDeviation(plan, anchorReading({ ...wrapped, measurement: at }))
    expect(planned.zMm).toBeCloseTo(topMm, 9)
    expect(position?.z.off).toBeCloseTo(-4, 9)
    expect(position?.totalMm).toBeCloseTo(4, 9)
  })

  it('keeps the verdict of the whole record in the order of its entries', () => {
    const plan = { ...planOfExample('rock-buggy.layout.json'), tolerance: TOLERANCE }
    const record = recordWith(plan, (entry) =>
      entry.strap === 'lap-left' ? { ...entry, measurement: coordinatesAt(entry.planned.point) } : entry,
    )
    expect(recordDeviations(plan, record).map(({ verdict }) => verdict)).toEqual(
      record.anchors.map(({ strap }) => (strap === 'lap-left' ? 'within' : 'not-measured')),
    )
  })
})

describe('uncertaintyMm', () => {
  it('of coordinates is what the tape is read to, or half their spread', () => {
    expect(uncertaintyMm(coordinatesAt(ENTRY.planned.point))).toEqual({ x: 0.5, y: 0.5, z: 0.5 })
    expect(uncertaintyMm({ kind: 'coordinates', xMm: [1, 1.5], yMm: [2, 6], zMm: [3] })).toEqual({
      x: 0.5,
      y: 2,
      z: 0.5,
    })
  })

  it('knows a tape with inches by its readings, whatever unit is shown', () => {
    const inches = (...values: readonly number[]): Measurement => {
      const [x = 0, y = 0, z = 0] = values.map((value) => value * 25.4)
      return { kind: 'coordinates', xMm: [x], yMm: [y], zMm: [z] }
    }
    // Half of 1/16 in: 25.4 mm / 32. 53 1/8, 2 3/4 and 1 1/2 in.
    expect(tapeReadMm(inches(53.125, 2.75, 1.5))).toBe(0.79375)
    expect(tapeReadMm(inches(53 + 3 / 16, 0, -1.5))).toBe(0.79375)
    expect(tapeReadMm({ kind: 'coordinates', xMm: [1350], yMm: [70], zMm: [38] })).toBe(0.5)
    // Both kinds of tape have these marks; one of them settles it.
    expect(tapeReadMm({ kind: 'coordinates', xMm: [1270], yMm: [0], zMm: [254] })).toBe(0.5)
    expect(tapeReadMm({ kind: 'coordinates', xMm: [1270], yMm: [0], zMm: [3.175] })).toBe(0.79375)
    expect(tapeReadMm({ kind: 'coordinates', xMm: [1270.3], yMm: [0], zMm: [3.175] })).toBe(0.5)
  })

  it('of three tapes square to each other is what each is read to, along its own axis', () => {
    const far = 1000
    const tape = (xMm: number, yMm: number, zMm: number, lengthMm: number) => ({
      from: { name: 'P', point: { xMm, yMm, zMm } },
      lengthsMm: [lengthMm],
    })
    const square: Measurement = {
      kind: 'tapes',
      tapes: [tape(far, 0, 0, far), tape(0, far, 0, far), tape(0, 0, far, far)],
      coordinate: null,
      side: 'opposite',
    }
    const found = uncertaintyMm(square)
    // Each tape moves the point along itself alone, but for the curvature of the spheres, some micrometres a metre away.
    for (const axis of ['x', 'y', 'z'] as const) expect(found?.[axis]).toBeCloseTo(0.5, 2)
  })

  it('grows with how slantwise the tapes cross: derived by hand for two tapes and a height', () => {
    // Known points 200 mm apart across, the point 1000 mm rearward midway: d² = x² + 100² for both. One tape off by u alone turns
    // the point: dy = d·u/200, dx = d·u/(2·1000), to first order; both together add up.
    const d = Math.hypot(1000, 100)
    const narrow: Measurement = {
      kind: 'tapes',
      tapes: [-100, 100].map((yMm) => ({
        from: { name: `P ${yMm}`, point: { xMm: 0, yMm, zMm: 0 } },
        lengthsMm: [d],
      })),
      coordinate: { axis: 'z', readingsMm: [0] },
      side: 'normal',
    }
    for (const side of ['normal', 'opposite'] as const) {
      const found = uncertaintyMm({ ...narrow, side })
      expect(found?.y).toBeCloseTo((2 * d * 0.5) / 200, 1)
      expect(found?.x).toBeCloseTo((2 * d * 0.5) / 2000, 1)
      expect(found?.z).toBeCloseTo(0.5, 9)
    }
  })

  it('counts what more tapes than are needed disagree by', () => {
    const at = { xMm: 500, yMm: 400, zMm: 300 }
    const corners = [
      { xMm: 0, yMm: 0, zMm: 0 },
      { xMm: 1000, yMm: 0, zMm: 0 },
      { xMm: 0, yMm: 900, zMm: 0 },
      { xMm: 0, yMm: 0, zMm: 800 },
    ]
    const tapes = (wrongMm: number): Measurement => ({
      kind: 'tapes',
      tapes: corners.map((point, index) => ({
        from: { name: `P ${index}`, point },
        lengthsMm: [pointDistanceMm(point, at) + (index === 0 ? wrongMm : 0)],
      })),
      coordinate: null,
      side: null,
    })
    const [agreeing, apart] = [uncertaintyMm(tapes(0)), uncertaintyMm(tapes(8))]
    if (agreeing === null || apart === null) throw new Error('no position')
    for (const axis of ['x', 'y', 'z'] as const) expect(apart[axis]).toBeGreaterThan(3 * agreeing[axis])
  })

  it('of a string is mostly what its angle finder is read to', () => {
    const found = uncertaintyMm({
      kind: 'angle',
      from: { name: 'Datum', point: { xMm: 0, yMm: 0, zMm: 0 } },
      stringDeg: [0],
      lengthMm: [1000],
      runs: 'rearward',
      aside: { kind: 'y', readingsMm: [0] },
    })
    // 1000 mm × sin 0.5°.
    expect(found?.z).toBeCloseTo(8.7265, 3)
  })

  it('has no bound where the readings would give no point any more within their error', () => {
    // Two tapes that only just reach each other: half a millimetre less and they do not.
    const justTouching: Measurement = {
      kind: 'tapes',
      tapes: [0, 1000].map((xMm) => ({
        from: { name: `P ${xMm}`, point: { xMm, yMm: 0, zMm: 0 } },
        lengthsMm: [500.1],
      })),
      coordinate: { axis: 'z', readingsMm: [0] },
      side: 'normal',
    }
    expect(uncertaintyMm(justTouching)).toBeNull()
  })
})

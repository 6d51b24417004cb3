import fc from 'fast-check'

import { LIMITS, type NumberLimits } from '../../src/domain/layout/document/limits'
import { type Arrangement, ARRANGEMENTS, type Belt } from '../../src/domain/straps/strap'

/** Any number of a closed interval; -0 is left out because JSON turns it into 0. */
export const within = (limits: NumberLimits): fc.Arbitrary<number> =>
  fc.double({ min: limits.min, max: limits.max, noNaN: true }).map((value) => (value === 0 ? 0 : value))

const adjusterArb = fc
  .record({
    lengthMm: within(LIMITS.adjusterLengthMm),
    beyondMm: within({ ...LIMITS.adjusterPlaceMm, max: 2_000 }),
  })
  .map(({ lengthMm, beyondMm }) => ({ lengthMm, fromAnchorMm: lengthMm / 2 + beyondMm }))

const runArb = fc.record(
  {
    diagonal: fc.constantFrom('left' as const, 'right' as const),
    thighStraps: fc.constantFrom('rearward' as const, 'under-thighs' as const),
    shoulderTailMm: within(LIMITS.shoulderTailMm),
    adjusters: fc.record({ shoulder: adjusterArb, lap: adjusterArb, sub: adjusterArb }, { requiredKeys: [] }),
  },
  { requiredKeys: [] },
)

type Run = typeof runArb extends fc.Arbitrary<infer Value> ? Value : never

/** Of the fields that not every arrangement has, those that this one may have. */
const runOf = (arrangement: Arrangement, { diagonal, thighStraps, shoulderTailMm, adjusters }: Run): Run => {
  const { sub, ...upper } = adjusters ?? {}
  const hasSub = arrangement > 4 && sub !== undefined
  return {
    ...(arrangement === 3 && diagonal !== undefined ? { diagonal } : {}),
    ...(arrangement !== 3 && shoulderTailMm !== undefined ? { shoulderTailMm } : {}),
    ...(arrangement > 5 && thighStraps !== undefined ? { thighStraps } : {}),
    ...(adjusters === undefined ? {} : { adjusters: { ...upper, ...(hasSub ? { sub } : {}) } }),
  }
}

/** Any belt that a file may hold, with only what its arrangement has. */
export const beltArb: fc.Arbitrary<Belt> = fc.constantFrom(...ARRANGEMENTS).chain((arrangement) =>
  fc
    .record({
      run: runArb,
      belt: fc.record({
        arrangement: fc.constant(arrangement),
        webbingMm: fc.record({
          shoulder: within(LIMITS.webbingMm),
          lap: within(LIMITS.webbingMm),
          sub: within(LIMITS.webbingMm),
        }),
        material: fc.constantFrom('polyester' as const, 'nylon' as const),
        buckle: fc.constantFrom('latch-and-link' as const, 'rotary-cam' as const),
        lapAdjuster: fc.constantFrom('pull-up' as const, 'pull-down' as const),
        headAndNeckRestraint: fc.boolean(),
        adjusterTailMm: within(LIMITS.spareWebbingMm),
        wrapReturnMm: within(LIMITS.spareWebbingMm),
      }),
    })
    .map(({ run, belt }) => ({ ...belt, ...runOf(arrangement, run) })),
)

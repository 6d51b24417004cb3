import fc from 'fast-check'

import { BODY_MEASURES, type BodyMeasure, type Occupant } from '../../src/domain/body/occupant'
import { pointBetween, pointDistanceMm, type PointMm } from '../../src/domain/geometry/point'
import type { Tube } from '../../src/domain/geometry/tube'
import { bodyContradictions } from '../../src/domain/layout/document/bodyContradictions'
import type { Layout, Place } from '../../src/domain/layout/document/layout'
import { LIMITS, MEASURE_LIMITS } from '../../src/domain/layout/document/limits'
import { ERROR_SPREADS } from '../../src/domain/rules/tolerance'
import { documentsToConfirm } from '../../src/domain/rules/confirmed'
import { RULE_SETS } from '../../src/domain/rules/ruleSets'
import { type Anchor, formShear, TAB_FORMS } from '../../src/domain/straps/anchor'
import type { Seat, Slot } from '../../src/domain/straps/seat'
import { STRAP_IDS, type StrapId } from '../../src/domain/straps/strap'
import { beltArb, within } from './beltArbitraries'

/*
 * Any layout that a file may hold, within the limits of layout/document/limits.ts. Not only sensible ones: a seat may lie under
 * the floor. -0 is left out because JSON turns it into 0.
 */

/** A point within a room's size, where a car is; whole and fractional millimetres. */
export const pointInCar: fc.Arbitrary<PointMm> = fc.record({
  xMm: within({ min: -4_000, max: 4_000, unit: 'mm' }),
  yMm: within({ min: -2_000, max: 2_000, unit: 'mm' }),
  zMm: within({ min: -1_000, max: 3_000, unit: 'mm' }),
})

const words = fc.string({ maxLength: 30 })

const tubeArb = (id: string): fc.Arbitrary<Tube> =>
  fc
    .record({
      name: words,
      role: fc.constantFrom('harness-bar' as const, 'cage' as const, 'floor' as const),
      points: fc.array(pointInCar, { minLength: 2, maxLength: 5 }),
      outsideDiameterMm: within(LIMITS.outsideDiameterMm),
      wallShare: fc.double({ min: 0, max: 1, noNaN: true }),
    })
    .filter(({ points }) =>
      points.every((point, i) => {
        const before = points[i - 1]
        return before === undefined || pointDistanceMm(before, point) >= 1
      }),
    )
    .map(({ wallShare, ...tube }) => ({
      id,
      ...tube,
      wallMm: 0.5 + wallShare * (Math.min(LIMITS.wallMm.max, tube.outsideDiameterMm / 2) - 0.5),
    }))

const measuredArb: fc.Arbitrary<Partial<Record<BodyMeasure, number>>> = fc.record(
  Object.fromEntries(BODY_MEASURES.map((measure) => [measure, within(MEASURE_LIMITS[measure])])),
  { requiredKeys: [] },
)

/** The occupant without the measured values that cannot all be true; a layout does not hold those. */
const withAgreeingValues = (occupant: Occupant): Occupant => {
  const refused = new Set(bodyContradictions(occupant, []).map(({ path }) => path.at(-1)))
  if (refused.size === 0) return occupant
  const kept = Object.entries(occupant.measured).filter(([measure]) => !refused.has(measure))
  return withAgreeingValues({ ...occupant, measured: Object.fromEntries(kept) })
}

const occupantArb = (id: string): fc.Arbitrary<Occupant> =>
  fc
    .record({
      id: fc.constant(id),
      name: words,
      sex: fc.constantFrom('female' as const, 'male' as const),
      statureMm: within(LIMITS.statureMm),
      massKg: within(LIMITS.massKg),
      measured: measuredArb,
    })
    .map(withAgreeingValues)

const seatNumber = within({ min: -700, max: 700, unit: 'mm' })
const sidePoint = fc.record({ xMm: seatNumber, zMm: seatNumber })
const planPoint = fc.record({ xMm: seatNumber, yMm: seatNumber })

const slotArb = (id: string, strap: StrapId): fc.Arbitrary<Slot> =>
  fc.record({
    id: fc.constant(id),
    straps: fc.constant([strap]),
    face: fc.constantFrom('back' as const, 'side' as const, 'cushion' as const),
    centre: fc.record({ xMm: seatNumber, yMm: seatNumber, zMm: seatNumber }),
    lengthMm: within(LIMITS.slotLengthMm),
    heightMm: within(LIMITS.slotHeightMm),
    turnDeg: within(LIMITS.turnDeg),
  })

const slotsArb: fc.Arbitrary<readonly Slot[]> = fc
  .subarray([...STRAP_IDS])
  .chain((straps) => fc.tuple(...straps.map((strap, i) => slotArb(`slot-${i + 1}`, strap))))

const seatArb: fc.Arbitrary<Seat> = fc
  .record({
    hipPoint: pointInCar,
    hipHeightMm: within(LIMITS.hipHeightMm),
    reclines: fc.array(within(LIMITS.reclineDeg), { minLength: 3, maxLength: 3 }),
    isFixedBack: fc.boolean(),
    slide: fc.record({ forwardMm: within(LIMITS.slideMm), rearwardMm: within(LIMITS.slideMm) }),
    sideOutline: fc.array(sidePoint, { minLength: 3, maxLength: 6 }),
    topOutline: fc.array(planPoint, { minLength: 3, maxLength: 6 }),
    backrestRim: sidePoint,
    slots: slotsArb,
    shellThicknessMm: fc.option(within(LIMITS.shellThicknessMm), { nil: null }),
  })
  .map(({ reclines, isFixedBack, shellThicknessMm, ...seat }) => {
    const [uprightDeg = 0, reclineDeg = 0, reclinedDeg = 0] = reclines.toSorted((a, b) => a - b)
    return {
      ...seat,
      ...(shellThicknessMm === null ? {} : { shellThicknessMm }),
      reclineDeg,
      reclineRange: isFixedBack
        ? { uprightDeg: reclineDeg, reclinedDeg: reclineDeg }
        : { uprightDeg, reclinedDeg },
    }
  })

const tabArb = (tubes: readonly Tube[]): fc.Arbitrary<Anchor['mount']> =>
  fc
    .record({
      form: fc.constantFrom(null, ...TAB_FORMS),
      sizes: fc.record(
        {
          widthMm: within(LIMITS.tabWidthMm),
          edgeDistanceMm: within(LIMITS.edgeDistanceMm),
          gapMm: within(LIMITS.clevisGapMm),
        },
        { requiredKeys: [] },
      ),
      mount: fc.record({
        kind: fc.constant('tab' as const),
        point: pointInCar,
        planDeg: within(LIMITS.turnDeg),
        leanDeg: within(LIMITS.leanDeg),
        thicknessMm: within(LIMITS.thicknessMm),
        holeDiameterMm: within(LIMITS.holeDiameterMm),
        shear: fc.constantFrom('single' as const, 'double' as const),
        tubeId: fc.constantFrom(null, ...tubes.map((tube) => tube.id)),
      }),
    })
    .map(({ form, sizes: { widthMm, edgeDistanceMm, gapMm }, mount }) => ({
      ...mount,
      ...(form === null ? {} : { form, shear: formShear(form) ?? mount.shear }),
      ...(widthMm === undefined ? {} : { widthMm }),
      ...(edgeDistanceMm === undefined || form === 'insert' ? {} : { edgeDistanceMm }),
      ...(gapMm === undefined || form !== 'clevis' ? {} : { gapMm }),
    }))

const eyeArb = (tubes: readonly Tube[]): fc.Arbitrary<Anchor['mount']> =>
  fc.record({
    kind: fc.constant('eye' as const),
    point: pointInCar,
    planDeg: within(LIMITS.turnDeg),
    riseDeg: within(LIMITS.leanDeg),
    threadDiameterMm: within(LIMITS.threadDiameterMm),
    eyeDiameterMm: within(LIMITS.eyeDiameterMm),
    tubeId: fc.constantFrom(null, ...tubes.map((tube) => tube.id)),
  })

const wrapArb = (tube: Tube): fc.Arbitrary<Anchor['mount']> =>
  fc
    .record({
      piece: fc.nat({ max: tube.points.length - 2 }),
      share: fc.double({ min: 0, max: 1, noNaN: true }),
      over: fc.constantFrom('over' as const, 'under' as const),
      guideHoops: fc.boolean(),
    })
    .map(({ piece, share, over, guideHoops }) => {
      const [start, end] = tube.points.slice(piece, piece + 2)
      if (start === undefined || end === undefined) throw new RangeError(`no piece ${piece}`)
      return { kind: 'wrap', tubeId: tube.id, point: pointBetween(start, end, share), over, guideHoops }
    })

const mountArb = (tubes: readonly Tube[]): fc.Arbitrary<Anchor['mount']> =>
  fc.oneof(tabArb(tubes), eyeArb(tubes), ...tubes.map(wrapArb))

const placeArb = (index: number, tubes: readonly Tube[]): fc.Arbitrary<Place> =>
  fc.record({
    id: fc.constant(`place-${index + 1}`),
    name: words,
    seat: seatArb,
    occupants: fc
      .integer({ min: 1, max: 3 })
      .chain((count) =>
        fc.tuple(...Array.from({ length: count }, (_, i) => occupantArb(`occupant-${i + 1}`))),
      ),
    belt: beltArb,
    anchors: fc
      .subarray([...STRAP_IDS])
      .chain((straps) =>
        fc.tuple(
          ...straps.map((strap) =>
            mountArb(tubes).map((mount): Anchor => ({ id: `place-${index + 1}-${strap}`, strap, mount })),
          ),
        ),
      ),
    mirrored: fc.record({ shoulder: fc.boolean(), lap: fc.boolean(), sub: fc.boolean() }),
  })

const toleranceArb = fc.option(
  fc.record({
    xMm: within(LIMITS.weldErrorMm),
    yMm: within(LIMITS.weldErrorMm),
    zMm: within(LIMITS.weldErrorMm),
    tabDeg: within(LIMITS.angleErrorDeg),
    reclineDeg: within(LIMITS.angleErrorDeg),
    spread: fc.constantFrom(...ERROR_SPREADS),
  }),
  { nil: undefined },
)

/** Copies of sets of the program as own ones, and documents of theirs as confirmed; left out when there are none. */
const ownRulesArb = fc
  .record({
    sets: fc.subarray([...RULE_SETS], { maxLength: 2 }),
    documents: fc.subarray([...new Set(RULE_SETS.flatMap(documentsToConfirm))], { maxLength: 3 }),
  })
  .map(({ sets, documents }) => ({
    ...(sets.length === 0
      ? {}
      : {
          ownRuleSets: sets.map((set, i) => ({
            ...set,
            id: `own-${i + 1}`,
            group: 'Own' as const,
            rules: set.rules.slice(0, 4),
          })),
        }),
    ...(documents.length === 0 ? {} : { confirmedDocuments: documents }),
  }))

const builtArb = fc
  .integer({ min: 0, max: 3 })
  .chain((count) => fc.tuple(...Array.from({ length: count }, (_, i) => tubeArb(`tube-${i + 1}`))))
  .chain((tubes) =>
    fc.record({
      tubes: fc.constant(tubes),
      places: fc
        .integer({ min: 1, max: 2 })
        .chain((count) => fc.tuple(...Array.from({ length: count }, (_, i) => placeArb(i, tubes)))),
    }),
  )

/** Up to three other variants, most often none; the drawn one stands anywhere among them. */
const variantsArb: fc.Arbitrary<Pick<Layout, 'variants'>> = fc
  .oneof({ arbitrary: fc.constant([]), weight: 3 }, fc.array(builtArb, { minLength: 1, maxLength: 3 }))
  .chain((built) =>
    built.length === 0
      ? fc.constant({})
      : fc.integer({ min: 0, max: built.length }).map((index) => ({
          variants: {
            drawn: { id: 'variant-drawn', name: 'As drawn', index },
            others: built.map((one, i) => ({ id: `variant-${i + 1}`, name: `Other ${i + 1}`, ...one })),
          },
        })),
  )

/** Any layout that a file may hold. */
export const layoutArb: fc.Arbitrary<Layout> = fc
  .tuple(
    builtArb,
    variantsArb,
    fc.record({
      version: fc.constant(1 as const),
      job: fc.record({
        name: words,
        car: words,
        customer: words,
        date: fc.constantFrom('', '2026-02-28', '2028-02-29'),
        revision: words,
        preparedBy: words,
        notes: words,
      }),
      datum: words,
      units: fc.record({
        length: fc.constantFrom('mm' as const, 'in' as const),
        force: fc.constantFrom('N' as const, 'daN' as const, 'lbf' as const),
        mass: fc.constantFrom('kg' as const, 'lb' as const),
      }),
      dustyOrMuddyUse: fc.boolean(),
      ruleSetId: fc.constantFrom(...RULE_SETS.map((set) => set.id)),
      ownRules: ownRulesArb,
      tolerance: toleranceArb,
      notMeasured: fc.option(fc.subarray(['seat', 'bar', 'lap']), { nil: undefined }),
      tapePoints: fc.array(fc.record({ name: words, point: pointInCar }), { maxLength: 3 }),
    }),
  )
  .map(([built, variants, { tolerance, ownRules, tapePoints, notMeasured, ...layout }]) => ({
    ...layout,
    ...built,
    ...variants,
    ...ownRules,
    ...(tapePoints.length === 0
      ? {}
      : { tapePoints: tapePoints.map((tapePoint, i) => ({ id: `t${i}`, ...tapePoint })) }),
    ...(notMeasured === undefined ? {} : { notMeasured }),
    ...(tolerance === undefined ? {} : { tolerance }),
  }))

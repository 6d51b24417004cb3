import fc from 'fast-check'

/*
 * What a random car is made of. Sizes are about those of a real cockpit (judgement); lateral distances are outward from the seat's
 * middle on the strap's own side, so a negative one puts the mount across.
 */

/** Evenly over the range in a million steps; doubles drawn by their bits would crowd about 0. */
const mm = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1_000_000 }).map((step) => min + ((max - min) * step) / 1_000_000)
const at = (
  x: readonly [number, number],
  y: readonly [number, number],
  z: readonly [number, number],
): fc.Arbitrary<{ xMm: number; yMm: number; zMm: number }> =>
  fc.record({ xMm: mm(...x), yMm: mm(...y), zMm: mm(...z) })

/** 0 about half of the time. */
const orNone = (some: fc.Arbitrary<number>): fc.Arbitrary<number> => fc.oneof(fc.constant(0), some)

const mountKind = fc.record({
  kind: fc.constantFrom('tab', 'tab', 'eye', 'wrap', 'tilted-wrap'),
  over: fc.constantFrom('over', 'under'),
  /** Rearward and upward parts of the tube's axis for one across. */
  tiltX: mm(-0.4, 0.4),
  tiltZ: mm(-0.4, 0.4),
  diameterMm: mm(20, 60),
})

const opening = fc.record({ lengthMm: mm(55, 150), heightMm: mm(15, 60), turnDeg: orNone(mm(-30, 30)) })

export const bodyChoice = fc.record({
  hip: at([-500, 500], [-400, 400], [-200, 300]),
  reclineDeg: mm(0, 40),
  hipToShoulderMm: mm(540, 640),
  shoulderRadiusMm: mm(40, 110),
  shoulderHalfSpacingMm: mm(50, 100),
  lapRadiusMm: mm(98, 125),
  lapLowestDeg: mm(0, 60),
  groinRadiusMm: mm(70, 95),
  boneHalfMm: mm(95, 125),
  hipHalfBreadthMm: mm(110, 195),
  chest: fc.record({
    aheadMm: mm(-40, 40),
    upShare: mm(0.6, 0.68),
    acrossMm: mm(90, 150),
    alongShare: mm(0.2, 0.28),
  }),
})

export const shoulderChoice = fc.record({
  mount: mountKind,
  at: at([250, 700], [-120, 220], [-350, 150]),
  way: fc.constantFrom('rim', 'back-slot'),
  rim: fc.record({ xMm: mm(105, 150), zMm: mm(300, 640) }),
  slotUpMm: mm(430, 640),
  slotOutMm: mm(40, 130),
  opening,
  /** Length of the joined tail as a share of the room behind the rim; 0: not joined. */
  tailShare: fc.oneof(fc.constant(0), fc.constant(0), fc.constant(0), mm(0.1, 0.9)),
})

export const lapChoice = fc.record({
  mount: mountKind,
  at: at([20, 400], [60, 140], [-350, 20]),
  way: fc.constantFrom('free', 'side-slot', 'side-slot', 'back-slot', 'seat-side'),
  wallMm: mm(2, 60),
  slot: at([40, 140], [0, 0], [-170, -40]),
  opening,
})

export const subChoice = fc.record({
  mount: mountKind,
  at: at([-250, 220], [20, 110], [-480, -240]),
  centre: at([-250, 220], [-40, 40], [-480, -240]),
  way: fc.constantFrom('free', 'cushion-slot'),
  slot: at([-150, 10], [20, 80], [-30, 0]),
  opening,
})

export const thicknessMm = orNone(mm(1, 50))

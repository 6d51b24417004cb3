import type { Layout, Place } from '../../src/domain/layout/document/layout'
import type { Tube } from '../../src/domain/geometry/tube'
import type { PointMm } from '../../src/domain/geometry/point'
import type { Anchor } from '../../src/domain/straps/anchor'
import type { Belt, StrapId } from '../../src/domain/straps/strap'

/** A tab with its hole there, upright and fore-and-aft. */
export const tabAt = (strap: StrapId, point: PointMm, tubeId: string | null = null): Anchor => ({
  id: `${strap}-anchor`,
  strap,
  mount: {
    kind: 'tab',
    point,
    planDeg: 0,
    leanDeg: 0,
    thicknessMm: 5,
    holeDiameterMm: 12.7,
    shear: 'double',
    tubeId,
  },
})

/** Left and right tabs of a family, mirrored about y = 0. */
export const tabPair = (
  family: 'shoulder' | 'lap' | 'sub',
  point: PointMm,
  tubeId: string | null = null,
): readonly Anchor[] => [
  tabAt(`${family}-left`, { ...point, yMm: -Math.abs(point.yMm) }, tubeId),
  tabAt(`${family}-right`, { ...point, yMm: Math.abs(point.yMm) }, tubeId),
]

export const crossTube = (
  id: string,
  xMm: number,
  zMm: number,
  role: Tube['role'] = 'harness-bar',
): Tube => ({
  id,
  name: `Test ${id}`,
  role,
  points: [
    { xMm, yMm: -600, zMm },
    { xMm, yMm: 600, zMm },
  ],
  outsideDiameterMm: 38,
  wallMm: 2.5,
})

const belt: Belt = {
  arrangement: 4,
  webbingMm: { shoulder: 75, lap: 50, sub: 50 },
  material: 'polyester',
  buckle: 'latch-and-link',
  lapAdjuster: 'pull-up',
  headAndNeckRestraint: false,
  adjusterTailMm: 200,
  wrapReturnMm: 200,
}

/**
 * One place whose hip point is the datum itself, so that coordinates are distances from the hip point: the occupant's own hip
 * height is typed equal to the seat's. A fixed seat at 20° without slots: a back that ends above the hips, over a cushion of foam
 * that belongs to no shell, so that lap and crotch straps reach the body without passing through anything.
 */
export const flatPlace = (change: Partial<Place> = {}): Place => ({
  id: 'driver',
  name: 'Driver',
  seat: {
    hipPoint: { xMm: 0, yMm: 0, zMm: 0 },
    hipHeightMm: 97,
    reclineDeg: 20,
    slide: { forwardMm: 0, rearwardMm: 0 },
    reclineRange: { uprightDeg: 20, reclinedDeg: 20 },
    sideOutline: [
      { xMm: 100, zMm: 150 },
      { xMm: 120, zMm: 150 },
      { xMm: 120, zMm: 650 },
      { xMm: 100, zMm: 650 },
    ],
    topOutline: [
      { xMm: 100, yMm: -250 },
      { xMm: 120, yMm: -250 },
      { xMm: 120, yMm: 250 },
      { xMm: 100, yMm: 250 },
    ],
    backrestRim: { xMm: 130, zMm: 480 },
    slots: [],
  },
  occupants: [
    {
      id: 'marla',
      name: 'Marla',
      sex: 'male',
      statureMm: 1755,
      massKg: 85,
      measured: { hipHeightMm: 97 },
    },
  ],
  belt,
  anchors: [],
  mirrored: { shoulder: true, lap: true, sub: true },
  ...change,
})

export const flatLayout = (places: readonly Place[], change: Partial<Layout> = {}): Layout => ({
  version: 1,
  job: { name: '', car: '', customer: '', date: '', revision: '', preparedBy: '', notes: '' },
  datum: 'hip point of the test seat',
  units: { length: 'mm', force: 'N', mass: 'kg' },
  dustyOrMuddyUse: false,
  ruleSetId: 'workshop-practice',
  tubes: [],
  places,
  ...change,
})

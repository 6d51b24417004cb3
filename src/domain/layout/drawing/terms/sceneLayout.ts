import type { PointMm } from '../../../geometry/point'
import type { Tube } from '../../../geometry/tube'
import type { Anchor } from '../../../straps/anchor'
import type { Slot } from '../../../straps/seat'
import { type StrapId, strapSide } from '../../../straps/strap'
import { emptyLayout, startingOccupant } from '../../document/empty'
import type { Layout, Place } from '../../document/layout'

/*
 * The car that pictures of words and reasons are drawn from: invented, nobody's, and sound. Its seat, belt and person are the
 * starting ones; everything else here is our own choice and no advice.
 */

/** What the guide lets be moved, mm; the starting car has 0 everywhere. */
export interface SceneShift {
  /** The harness bar, + up. */
  readonly barUpMm?: number
  /** The harness bar, + rearward. */
  readonly barBackMm?: number
  /** Both lap tabs, + rearward along their rails. */
  readonly lapBackMm?: number
  /** Both tabs of the straps under the thighs, + rearward. */
  readonly subBackMm?: number
}

const RAIL_Y_MM = 300
const RAIL_Z_MM = 40
const BAR_X_MM = 1400
const BAR_Z_MM = 596
const TUBE = { outsideDiameterMm: 38.1, wallMm: 2.4 } as const

const tube = (id: string, name: string, role: Tube['role'], points: readonly PointMm[]): Tube => ({
  id,
  name,
  role,
  points,
  ...TUBE,
})

const across = (xMm: number, halfMm: number, zMm: number): readonly PointMm[] => [
  { xMm, yMm: -halfMm, zMm },
  { xMm, yMm: halfMm, zMm },
]

const rail = (yMm: number): readonly PointMm[] => [
  { xMm: 450, yMm, zMm: RAIL_Z_MM },
  { xMm: BAR_X_MM, yMm, zMm: RAIL_Z_MM },
]

const tubes = ({ barUpMm = 0, barBackMm = 0, subBackMm = 0 }: SceneShift): readonly Tube[] => [
  tube('rail-left', 'Left rail', 'floor', rail(-RAIL_Y_MM)),
  tube('rail-right', 'Right rail', 'floor', rail(RAIL_Y_MM)),
  tube('thigh-tube', 'Cross tube', 'floor', across(845 + subBackMm, RAIL_Y_MM, RAIL_Z_MM)),
  tube('hoop', 'Main hoop', 'cage', [
    { xMm: BAR_X_MM, yMm: -420, zMm: RAIL_Z_MM },
    { xMm: BAR_X_MM, yMm: -420, zMm: 1180 },
    { xMm: BAR_X_MM, yMm: 420, zMm: 1180 },
    { xMm: BAR_X_MM, yMm: 420, zMm: RAIL_Z_MM },
  ]),
  tube('bar', 'Harness bar', 'harness-bar', across(BAR_X_MM + barBackMm, 420, BAR_Z_MM + barUpMm)),
]

const sideOf = (strap: StrapId): 1 | -1 => (strapSide(strap) === 'left' ? -1 : 1)

const tab = (strap: StrapId, tubeId: string, point: PointMm, planDeg: number): Anchor => ({
  id: strap,
  strap,
  mount: {
    kind: 'tab',
    point,
    planDeg,
    leanDeg: 0,
    thicknessMm: 4.8,
    holeDiameterMm: 11.5,
    shear: 'double',
    tubeId,
  },
})

const wrap = (strap: StrapId, { barUpMm = 0, barBackMm = 0 }: SceneShift): Anchor => ({
  id: strap,
  strap,
  mount: {
    kind: 'wrap',
    tubeId: 'bar',
    point: { xMm: BAR_X_MM + barBackMm, yMm: 126 * sideOf(strap), zMm: BAR_Z_MM + barUpMm },
    over: 'over',
    guideHoops: true,
  },
})

/** Tabs stand turned along their straps, degrees from fore and aft. */
const LAP_TURN_DEG = 40
const THIGH_TURN_DEG = 32

const lap = (strap: StrapId, { lapBackMm = 0 }: SceneShift): Anchor =>
  tab(
    strap,
    strapSide(strap) === 'left' ? 'rail-left' : 'rail-right',
    { xMm: 1040 + lapBackMm, yMm: RAIL_Y_MM * sideOf(strap), zMm: 88 },
    LAP_TURN_DEG * sideOf(strap),
  )

const sub = (strap: StrapId, { subBackMm = 0 }: SceneShift): Anchor =>
  tab(
    strap,
    'thigh-tube',
    { xMm: 845 + subBackMm, yMm: 50 * sideOf(strap), zMm: 86 },
    THIGH_TURN_DEG * sideOf(strap),
  )

/** Openings where the straps of the starting car cross its shell, large enough for what the guide moves. */
const slots: readonly Slot[] = (['left', 'right'] as const).flatMap((side): readonly Slot[] => {
  const sign = side === 'left' ? -1 : 1
  return [
    {
      id: `lap-slot-${side}`,
      straps: [`lap-${side}`],
      face: 'side',
      centre: { xMm: 70, yMm: 250 * sign, zMm: -66 },
      lengthMm: 110,
      heightMm: 50,
      turnDeg: 38,
    },
    {
      id: `thigh-slot-${side}`,
      straps: [`sub-${side}`],
      face: 'cushion',
      centre: { xMm: -44, yMm: 40 * sign, zMm: -123 },
      lengthMm: 70,
      heightMm: 76,
      turnDeg: 0,
    },
  ]
})

/** The car of the guide with something moved. */
export const sceneLayout = (shift: SceneShift = {}): Layout => {
  const start = emptyLayout()
  const [first] = start.places
  if (first === undefined) throw new Error('the starting layout has no place')
  const place: Place = {
    ...first,
    seat: { ...first.seat, slots, reclineDeg: 12, reclineRange: { uprightDeg: 12, reclinedDeg: 12 } },
    occupants: [startingOccupant('driver', 'Driver')],
    anchors: [
      wrap('shoulder-left', shift),
      wrap('shoulder-right', shift),
      lap('lap-left', shift),
      lap('lap-right', shift),
      sub('sub-left', shift),
      sub('sub-right', shift),
    ],
  }
  return { ...start, datum: 'Front end of the left rail', tubes: tubes(shift), places: [place] }
}

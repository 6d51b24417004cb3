import type { Occupant } from '../../body/occupant'
import type { Seat } from '../../straps/seat'
import type { Belt } from '../../straps/strap'
import { type Layout, LAYOUT_VERSION, type Place } from './layout'

/**
 * A plain bucket seat to start drawing from. Starting values, not advice: hip point 98 mm above the compressed cushion and
 * 148 mm ahead of the back. Source of those two: public dummy models, 97–103 mm and 147–150 mm; the rest is our judgement.
 * The back ends below the shoulders, so that no strap slot is needed before there is one.
 */
const startingSeat = (): Seat => ({
  hipPoint: { xMm: 900, yMm: 0, zMm: 250 },
  hipHeightMm: 98,
  reclineDeg: 20,
  slide: { forwardMm: 0, rearwardMm: 0 },
  reclineRange: { uprightDeg: 20, reclinedDeg: 20 },
  sideOutline: [
    { xMm: -400, zMm: -160 },
    { xMm: -60, zMm: -105 },
    { xMm: 90, zMm: -85 },
    { xMm: 150, zMm: 20 },
    { xMm: 150, zMm: 480 },
    { xMm: 185, zMm: 480 },
    { xMm: 190, zMm: -60 },
    { xMm: 110, zMm: -130 },
    { xMm: -60, zMm: -150 },
    { xMm: -405, zMm: -205 },
  ],
  topOutline: [
    { xMm: -400, yMm: -235 },
    { xMm: 190, yMm: -250 },
    { xMm: 190, yMm: 250 },
    { xMm: -400, yMm: 235 },
  ],
  backrestRim: { xMm: 165, zMm: 480 },
  slots: [],
})

/** A six-point harness of common widths: 3 in shoulder and lap (76 mm), 2 in thigh straps (51 mm). Starting values, not advice. */
const startingBelt = (): Belt => ({
  arrangement: 6,
  webbingMm: { shoulder: 76, lap: 76, sub: 51 },
  material: 'polyester',
  buckle: 'latch-and-link',
  lapAdjuster: 'pull-up',
  headAndNeckRestraint: true,
  adjusterTailMm: 200,
  wrapReturnMm: 200,
})

/**
 * A mid-size man, to be replaced by the people who will really sit there.
 * Source of stature and mass: ANSUR II medians for men (Gordon et al. 2014), 1755 mm and 84.6 kg, rounded.
 */
export const startingOccupant = (id: string, name: string): Occupant => ({
  id,
  name,
  sex: 'male',
  statureMm: 1755,
  massKg: 85,
  measured: {},
})

/** A place with the starting seat, belt and occupant and no anchors. */
const startingPlace = (id: string, name: string): Place => ({
  id,
  name,
  seat: startingSeat(),
  occupants: [startingOccupant('occupant-1', 'Occupant 1')],
  belt: startingBelt(),
  anchors: [],
  mirrored: { shoulder: true, lap: true, sub: true },
})

/** The layout that "new" starts from: one place, nothing welded, nothing named. The date is left to the builder. */
export const emptyLayout = (): Layout => ({
  version: LAYOUT_VERSION,
  job: { name: '', car: '', customer: '', date: '', revision: '', preparedBy: '', notes: '' },
  datum: '',
  units: { length: 'mm', force: 'N', mass: 'kg' },
  dustyOrMuddyUse: true,
  ruleSetId: 'workshop-practice',
  tubes: [],
  places: [startingPlace('place-1', 'Driver')],
})

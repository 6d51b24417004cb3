import type { Body, Occupant } from './occupant'
import { bodyFrom } from './predicted'

/** An occupant's body: what was measured, and for the rest what people of that sex, stature and mass have in the middle. */
export const bodyOf = (occupant: Occupant): Body =>
  bodyFrom(occupant.sex, occupant.statureMm, occupant.massKg, occupant.measured)

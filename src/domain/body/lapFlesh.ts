import type { Occupant } from './occupant'

/** Body mass index, kg/m² > 0. Source: the common definition, mass / stature². */
export const bodyMassIndex = ({ statureMm, massKg }: Pick<Occupant, 'statureMm' | 'massKg'>): number =>
  massKg / (statureMm / 1000) ** 2

/**
 * Beyond this body mass index nothing is taken for the flesh over the front hip bones, and so not where a lap strap comes to lie on
 * them. Source: our judgement after Reed, Ebert and Hallman (conference slides): drivers’ lap belts lie with their upper edge
 * 4.7·BMI − 70.1 mm above the bone, RMSE 22.9 mm: 47 mm at 25, 71 mm at 30, 118 mm at 40; Jones, Ebert and Reed, ATLAS-2016-15 (abstract):
 * 31 mm above and 33 mm ahead of it at 25, 118 and 68 mm at 40. At 30 that is more than their scatter away from the people whom the 30 mm
 * are for.
 */
const KNOWN_UP_TO = 30

/** Whether the flesh over the front hip bones is neither measured nor to be predicted: then nobody knows how low a lap strap lies. */
export const isLapFleshUnknown = (occupant: Pick<Occupant, 'statureMm' | 'massKg' | 'measured'>): boolean =>
  occupant.measured.lapTissueMm === undefined && bodyMassIndex(occupant) > KNOWN_UP_TO

import { COMMON_PRACTICE } from './careSources'
import type { CareStatement } from './inspection'

/** How belts are cleaned and kept. The belt maker's instructions come first. */
export const CLEANING: readonly CareStatement[] = [
  {
    says: 'Clean with air, a soft brush and a damp cloth. No soap, no chemicals, no pressure washer.',
    source: COMMON_PRACTICE,
    caveat:
      'Sources disagree: a gliding leaflet (BGA 4-8) allows soap or mild household detergent in warm water, rinsed out, and forbids solvents and harsh detergents. Do what the belt maker says.',
  },
  {
    says: 'Never store the belt wet: dry it in the air, away from heat.',
    source: COMMON_PRACTICE,
    caveat: null,
  },
  {
    says: 'Only a dry lubricant, graphite or PTFE, on the latch.',
    source: COMMON_PRACTICE,
    caveat:
      'Sources disagree: the same leaflet oils the release sparingly and warns that too much gathers dirt. Dust sticks to oil.',
  },
]

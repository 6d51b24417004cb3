/** A press that lasts no longer than this is one step. Our judgement. */
export const HOLD_DELAY_MS = 450

/** The first repeat of a held button comes this long after the one before, and none ever comes sooner than the last of these. Our judgement. */
const FIRST_PAUSE_MS = 240
const LEAST_PAUSE_MS = 50

/** Each pause is shorter than the one before by this share. Our judgement. */
const SHRINKS_TO = 0.88

/** How long to wait after the `steps`-th step of one hold (the first is 1) until the next, ms: long, then ever shorter. */
export const pauseAfterMs = (steps: number): number =>
  steps <= 1 ? HOLD_DELAY_MS : Math.max(LEAST_PAUSE_MS, FIRST_PAUSE_MS * SHRINKS_TO ** (steps - 2))

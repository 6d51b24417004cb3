/** A share of strength or length that a document sets for webbing. */
export interface WebbingShare {
  readonly id: string
  readonly words: string
  /** 1 is the whole. */
  readonly share: number
  readonly source: string
}

const FMVSS_209 = '49 CFR 571.209'

/** What webbing for road cars must still hold after being used hard in a test, as a share of what it must hold or held when new. */
export const KEPT_STRENGTH: readonly WebbingShare[] = [
  { id: 'new', words: 'new', share: 1, source: 'the beginning' },
  { id: 'soil', words: 'rot', share: 0.85, source: `${FMVSS_209} S4.2(f), read in the document` },
  { id: 'rubbed', words: 'rubbed', share: 0.75, source: `${FMVSS_209} S4.2(d), read in the document` },
  { id: 'light', words: 'light', share: 0.6, source: `${FMVSS_209} S4.2(e), read in the document` },
]

/** The most that webbing may grow at a load, as a share of its length. Limits of a test, not usual values. */
export const GROWTH_LIMITS = {
  /** Torso webbing at 11 120 N. */
  road: {
    id: 'road',
    words: 'road-car torso webbing at 11,120 N',
    share: 0.4,
    source: `${FMVSS_209} S4.2(c), read in the document`,
  },
  /** A whole lap belt at 4 000 lbf, which is 17 793 N. */
  crash: {
    id: 'crash',
    words: 'crash-seat lap belt at 17,793 N',
    share: 0.1,
    source: 'MIL-S-85510(AS), lap-belt assembly test, read in the document',
  },
} as const satisfies Readonly<Record<string, WebbingShare>>

/** How much longer a strap gets, mm ≥ 0: its length times the share. */
export const growthMm = (lengthMm: number, { share }: Pick<WebbingShare, 'share'>): number => lengthMm * share

import type { TextStyle } from './table'

/** The lettering of one sheet; every size in mm. */
export interface Typography {
  readonly title: TextStyle
  readonly heading: TextStyle
  /** The numbers a welder works by. */
  readonly figure: TextStyle
  readonly strong: TextStyle
  readonly body: TextStyle
  readonly small: TextStyle
}

/**
 * Lettering enlarged by a factor. Our judgement: at factor 1 the working figures are 2.9 mm (about 8 point), nothing is below
 * 2 mm (about 5.7 point).
 */
export const typography = (factor: number): Typography => ({
  title: { sizeMm: 5 * factor, weight: 'bold', ink: 'black' },
  heading: { sizeMm: 2.7 * factor, weight: 'bold', ink: 'black' },
  figure: { sizeMm: 2.9 * factor, weight: 'bold', ink: 'black' },
  strong: { sizeMm: 2.35 * factor, weight: 'bold', ink: 'black' },
  body: { sizeMm: 2.35 * factor, weight: 'regular', ink: 'black' },
  small: { sizeMm: 2.05 * factor, weight: 'regular', ink: 'dark' },
})

/** Tried in turn, the largest that needs the fewest pages wins. Our judgement. */
export const LETTERING_FACTORS = [1.3, 1.15, 1] as const

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
 * Lettering enlarged by a factor. Our judgement: at factor 1 the working figures are 2.9 mm (8.2 point) and the least lettering
 * of the tables is 2.3 mm (6.5 point); nothing is set smaller.
 */
export const typography = (factor: number): Typography => ({
  title: { sizeMm: 5 * factor, weight: 'bold', ink: 'black' },
  heading: { sizeMm: 2.7 * factor, weight: 'bold', ink: 'black' },
  figure: { sizeMm: 2.9 * factor, weight: 'bold', ink: 'black' },
  strong: { sizeMm: 2.4 * factor, weight: 'bold', ink: 'black' },
  body: { sizeMm: 2.35 * factor, weight: 'regular', ink: 'black' },
  small: { sizeMm: LEAST_TEXT_MM * factor, weight: 'regular', ink: 'dark' },
})

/** The least lettering on the sheet, mm: 6.5 point. Our judgement: smaller is not read at arm's length in a workshop. */
export const LEAST_TEXT_MM = 2.3

/** Tried in turn, the largest that needs the fewest pages wins. Our judgement. */
export const LETTERING_FACTORS = [1.2, 1.1, 1] as const

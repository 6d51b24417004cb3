export type PaperName = 'a4' | 'letter'

/** A sheet of paper as it comes out of the printer, lying on its long side: the two elevations stand above each other beside the tables. */
export interface Paper {
  readonly name: PaperName
  readonly title: string
  readonly widthMm: number
  readonly heightMm: number
}

const MM_PER_INCH = 25.4

/**
 * Sizes. Source: A4 is 210 mm × 297 mm, ISO 216 (from memory); Letter is 8 1/2 in × 11 in, ANSI/ASME Y14.1 size A (from memory);
 * 1 in = 25.4 mm exactly.
 */
export const PAPERS: Readonly<Record<PaperName, Paper>> = {
  a4: { name: 'a4', title: 'A4', widthMm: 297, heightMm: 210 },
  letter: { name: 'letter', title: 'US Letter', widthMm: 11 * MM_PER_INCH, heightMm: 8.5 * MM_PER_INCH },
}

/** Unprinted border. Our judgement: a little more than the quarter inch that common printers cannot reach. */
export const MARGIN_MM = 8

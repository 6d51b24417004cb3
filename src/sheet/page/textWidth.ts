import { advanceOf } from './fontAdvance'

export type TextWeight = 'regular' | 'bold'

/**
 * Width of a text, mm: the sum of the letters' advances in the sheet's font, without kerning. The page tells the renderer this
 * width, so that another font on another machine is squeezed into it instead of running into its neighbour.
 */
export const textWidthMm = (text: string, sizeMm: number, weight: TextWeight): number => {
  let thousandths = 0
  for (const letter of text) thousandths += advanceOf(letter, weight)
  return (thousandths / 1000) * sizeMm
}

/** A text cut into lines that fit a width: between words where possible, inside a word that is wider than the line. Never empty. */
export const wrappedLines = (
  text: string,
  widthMm: number,
  sizeMm: number,
  weight: TextWeight,
): readonly string[] => {
  const fits = (line: string): boolean => textWidthMm(line, sizeMm, weight) <= widthMm
  const lines: string[] = []
  for (const paragraph of glued(printable(text)).split('\n')) {
    let line = ''
    // A glued number that is wider than the line is better broken at its spaces than between its digits.
    const words = paragraph.split(/ +/).flatMap((word) => (fits(word) ? [word] : word.split(NO_BREAK)))
    for (const word of words) {
      const longer = line === '' ? word : `${line} ${word}`
      if (fits(longer)) {
        line = longer
        continue
      }
      if (line !== '') lines.push(line)
      const pieces = fits(word) ? [word] : cutWord(word, fits)
      lines.push(...pieces.slice(0, -1))
      line = pieces.at(-1) ?? ''
    }
    lines.push(line)
  }
  return lines.map((line) => line.replaceAll(NO_BREAK, ' '))
}

const NO_BREAK = '\u00A0'

/** A number stays with its sign, fraction and unit: 12 5/16 in on two lines is misread. */
const glued = (text: string): string =>
  text.replaceAll(/Ø (?=\d)/g, `Ø${NO_BREAK}`).replaceAll(/(\d) (?=\d+\/\d|mm\b|in\b|kN\b)/g, `$1${NO_BREAK}`)

/**
 * Letters that are not seen and turn the order of what follows round: behind one of them 612 reads 216. Source: Unicode Standard Annex 9,
 * explicit directional characters (table 2, from memory).
 */
const TURNING_MARKS = /[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/g

/**
 * Tabs and other control characters would be drawn as boxes, or make a file that no reader opens: they become spaces. Marks that turn
 * the order of letters round are dropped; letters of scripts that run from the right keep their own order without them.
 */
export const printable = (text: string): string =>
  text
    .replaceAll(/\r\n?/g, '\n')
    .replaceAll(TURNING_MARKS, '')
    // oxlint-disable-next-line no-control-regex -- control characters are exactly what is meant
    .replaceAll(/[\u0000-\u0009\u000B-\u001F\u007F-\u009F\uFFFE\uFFFF]|\p{Surrogate}/gu, ' ')

const cutWord = (word: string, fits: (line: string) => boolean): readonly string[] => {
  const pieces: string[] = []
  let piece = ''
  for (const letter of word) {
    if (piece !== '' && !fits(piece + letter)) {
      pieces.push(piece)
      piece = ''
    }
    piece += letter
  }
  return [...pieces, piece]
}

/** At most `most` lines; the last one ends in … when some were left out, so that nobody takes it for the whole text. */
export const cappedLines = (
  text: string,
  widthMm: number,
  sizeMm: number,
  weight: TextWeight,
  most: number,
): readonly string[] => {
  const lines = wrappedLines(text, widthMm, sizeMm, weight)
  if (lines.length <= most) return lines
  const last = Array.from(lines[most - 1] ?? '')
  while (last.length > 0 && textWidthMm(`${last.join('')}…`, sizeMm, weight) > widthMm) last.pop()
  return [...lines.slice(0, most - 1), `${last.join('')}…`]
}

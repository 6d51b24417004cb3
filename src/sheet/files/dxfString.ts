import { printable } from '../page/textWidth'

/**
 * Characters that the format or plain letters have something for. Source: `%%d` degree, `%%c` diameter, `%%p` plus-minus are the
 * control codes of drawing text since before release 12 (from memory; all three are read by the parsers that the tests use).
 */
const SPELLED: Readonly<Record<string, string>> = {
  '°': '%%d',
  Ø: '%%c',
  ø: '%%c',
  '⌀': '%%c',
  '∅': '%%c',
  '±': '%%p',
  '−': '-',
  '–': '-',
  '—': '-',
  '×': 'x',
  '·': '-',
  '…': '...',
  '’': "'",
  '‘': "'",
  '′': "'",
  '“': '"',
  '”': '"',
  '″': '"',
  '≤': '<=',
  '≥': '>=',
  '→': '->',
  // In ½ and the like, which come apart as 1⁄2.
  '⁄': '/',
  ß: 'ss',
  æ: 'ae',
  Æ: 'AE',
  œ: 'oe',
  Œ: 'OE',
  ł: 'l',
  Ł: 'L',
  '\u00A0': ' ',
  // What a reader would take for the beginning of a code of its own: a caret opens control characters, a backslash \U+XXXX.
  '^': ' ',
  '\\': '/',
}

/** Source: strings of release 12 are at most 255 characters (from memory); some readers stop at a little less. */
const LONGEST = 250
const CUT_MARK = '...'

/**
 * A text as one value line of a drawing file: printable ASCII only, one line, nothing that a reader takes for a code but the codes
 * meant. Accents are dropped, other letters become `\U+XXXX`, which readers since release 13 show as the letter and older ones as it
 * stands (ezdxf documentation, "DXF File Encoding"). A text too long for the format ends in "...".
 */
export const dxfString = (text: string): string => {
  const plain = printable(text)
    .replaceAll(/[\n\u2028\u2029]/g, ' ')
    .trim()
  return cut(apart(Array.from(plain).flatMap(spelled))).trim()
}

/** Two percent signs open a control code: one that was typed is kept apart from the next. */
const apart = (pieces: readonly string[]): readonly string[] =>
  pieces.map((piece, index) => (piece === '%' && pieces[index + 1]?.startsWith('%') ? '% ' : piece))

const isAscii = (piece: string): boolean => /^[ -~]*$/.test(piece)

const spelled = (letter: string): readonly string[] => {
  const known = SPELLED[letter]
  if (known !== undefined) return [known]
  if (isAscii(letter)) return [letter]
  const bare = letter.normalize('NFKD').replaceAll(/\p{M}/gu, '')
  const parts = Array.from(bare, (part) => SPELLED[part] ?? part)
  // 2½ is not 21/2.
  if (parts.every(isAscii)) return [bare.includes('⁄') ? ` ${parts.join('')}` : parts.join('')]
  const units = Array.from({ length: letter.length }, (_, index) => letter.charCodeAt(index))
  return units.map((code) => `\\U+${code.toString(16).toUpperCase().padStart(4, '0')}`)
}

/** Whole pieces only: half a code would be read as letters. */
const cut = (pieces: readonly string[]): string => {
  const whole = pieces.join('')
  if (whole.length <= LONGEST) return whole
  let text = ''
  for (const piece of pieces) {
    if (text.length + piece.length > LONGEST - CUT_MARK.length) break
    text += piece
  }
  return `${text}${CUT_MARK}`
}

/**
 * Pieces that layouts have many of, each as one control character of its own: JSON without spaces has none of those (RFC 8259, section 7),
 * so nothing is mistaken. Longer ones first where one begins like another. Like the dictionary they belong to the format digit of links.
 */
const WORDS = [
  '","role":"floor","wallMm":',
  '},"face":"side","heightMm":',
  '","role":"cage","wallMm":',
  '","outsideDiameterMm":',
  '","mount":{"kind":"',
  '},"shear":"double"',
  ',"holeDiameterMm":',
  '","points":[{"xMm":',
  ',"thicknessMm":',
  ',"point":{"xMm":',
  ',"lengthMm":',
  ',"tubeId":"',
  '","name":"',
  '","kind":"',
  ':[{"id":"',
  '},{"xMm":',
  '},{"id":"',
  'shoulder',
  ':{"xMm":',
  '{"xMm":',
  ',"yMm":',
  ',"zMm":',
  '"sound"',
  'strap',
  'Deg":',
  'Mm":',
  '"},{"',
  '":{',
  '":[',
  '":"',
  '","',
  ',"',
] as const

/** JSON without spaces, its words shortened. */
export const shortened = (json: string): string =>
  WORDS.reduce((text, word, code) => text.replaceAll(word, String.fromCharCode(code)), json)

const wordAt = (character: string): string => WORDS[character.charCodeAt(0)] ?? ''

/** The JSON again; null when it would be longer than `most` characters. */
export const lengthened = (text: string, most: number): string | null => {
  // eslint-disable-next-line no-control-regex
  const json = text.replace(/[\0-\x1f]/g, wordAt)
  return json.length > most ? null : json
}

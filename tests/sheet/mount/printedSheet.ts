import type { SheetPage } from '../../../src/sheet/page/sheetPage'

/*
 * Reads a mount sheet as somebody does who has nothing but the paper: the texts in the order in which they are printed, no item of the
 * layout, no function of the program.
 */

export type Triple = readonly [number, number, number]

interface PrintedAnchor {
  readonly point: Triple
  /** Everything written in the row before the numbers. */
  readonly words: string
}

interface PrintedDistances {
  readonly from: readonly { readonly letter: string; readonly lengthMm: number }[]
  /** Where the tape is held, from the point of the anchor table. */
  readonly offset: Triple
}

export interface PrintedSheet {
  readonly anchors: ReadonlyMap<string, PrintedAnchor>
  readonly places: ReadonlyMap<string, Triple>
  readonly distances: ReadonlyMap<string, PrintedDistances>
}

const NUMBER = String.raw`−?\d+(?:\.\d+)?`
const MAIN = /^−?[\d./ ]+$/
const OTHER = /^−?[\d./ ]+ (?:mm|in)$/
const ITEM = /^\d+$/
const LETTER = /^[A-Z]{1,2}$/

const plain = (text: string): number => Number(text.replace('−', '-'))

/** The millimetres of a number printed in both units: below an inch number they say so, else they are the number itself. */
const millimetres = (main: string, other: string): number =>
  other.endsWith(' mm') ? plain(other.slice(0, -3)) : plain(main)

const textsOf = (pages: readonly SheetPage[]): readonly string[] =>
  pages.flatMap((page) => page.items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])))

/** Three numbers in both units, one after the other, from the first place at or after `from` where there are such. */
const tripleFrom = (
  texts: readonly string[],
  from: number,
): { readonly at: number; readonly triple: Triple } => {
  for (let at = from; at + 6 <= texts.length; at += 1) {
    const six = texts.slice(at, at + 6)
    if (!six.every((text, index) => (index % 2 === 0 ? MAIN : OTHER).test(text))) continue
    const [x = '', xOther = '', y = '', yOther = '', z = '', zOther = ''] = six
    return { at, triple: [millimetres(x, xOther), millimetres(y, yOther), millimetres(z, zOther)] }
  }
  throw new Error(`no coordinates after "${texts[from - 1]}"`)
}

/** The texts between two headings; throws when one is missing. */
const between = (texts: readonly string[], start: string, ends: readonly string[]): readonly string[] => {
  const from = texts.indexOf(start)
  const to = texts.findIndex((text, index) => index > from && ends.includes(text))
  if (from < 0 || to < 0) throw new Error(`"${start}" and what ends it are not both printed`)
  return texts.slice(from + 1, to)
}

const readAnchors = (texts: readonly string[]): PrintedSheet['anchors'] => {
  // A sheet of several places begins each with a heading; the explanation ends the table.
  const from = texts.indexOf('Strap and mount')
  const end = texts.findIndex((text) => text.startsWith('Right and left are the occupant’s.'))
  const part = texts.slice(from, end)
  const found = new Map<string, PrintedAnchor>()
  for (const [index, text] of part.entries()) {
    if (!ITEM.test(text) || text !== String(found.size + 1)) continue
    const { at, triple } = tripleFrom(part, index + 1)
    found.set(text, { point: triple, words: part.slice(index + 1, at).join(' ') })
  }
  return found
}

const MARKS = 'Marks first: from letter to letter'
const FROM = 'From each letter to the anchor'
const PAIRS = 'Anchor to anchor, numbers as on the drawing'
const WHEN_OFF = 'When a distance is off by more than'

const readPlaces = (texts: readonly string[]): PrintedSheet['places'] => {
  const part = between(texts, 'Hold the tape at', [MARKS, FROM])
  const found = new Map<string, Triple>()
  for (const [index, text] of part.entries())
    if (LETTER.test(text) && !found.has(text)) found.set(text, tripleFrom(part, index + 1).triple)
  return found
}

const readDistances = (texts: readonly string[]): PrintedSheet['distances'] => {
  const end = texts.findIndex((text) => text === PAIRS || text.startsWith(WHEN_OFF))
  const part = between([...texts.slice(0, end), PAIRS], FROM, [PAIRS])
  const starts = part.flatMap((text, index) =>
    ITEM.test(text) && /^[A-Z]{1,2} −?[\d./ ]+$/.test(part[index + 1] ?? '') ? [index] : [],
  )
  return new Map(
    starts.map((start, order): [string, PrintedDistances] => {
      const row = part.slice(start + 1, starts[order + 1] ?? part.length)
      const from: PrintedDistances['from'][number][] = []
      let at = 0
      for (;;) {
        const named = /^([A-Z]{1,2}) (.*)$/.exec(row[at] ?? '')
        const other = row[at + 1] ?? ''
        if (named === null || !MAIN.test(named[2] ?? '') || !OTHER.test(other)) break
        from.push({ letter: named[1] ?? '', lengthMm: millimetres(named[2] ?? '', other) })
        at += 2
      }
      return [part[start] ?? '', { from, offset: offsetIn(row.slice(at).join(' ')) }]
    }),
  )
}

const offsetIn = (words: string): Triple => {
  const pattern = new RegExp(`x (${NUMBER}), y (${NUMBER}), z (${NUMBER}) mm`)
  const found = pattern.exec(words)
  if (found === null) {
    if (words.includes('Its mark on the bar')) throw new Error(`no millimetres in "${words}"`)
    return [0, 0, 0]
  }
  return [plain(found[1] ?? ''), plain(found[2] ?? ''), plain(found[3] ?? '')]
}

export const readSheet = (pages: readonly SheetPage[]): PrintedSheet => readTexts(textsOf(pages))

/** The same from the texts of a printed file, in its order. */
export const readTexts = (texts: readonly string[]): PrintedSheet => ({
  anchors: readAnchors(texts),
  places: readPlaces(texts),
  distances: readDistances(texts),
})

import { getDocumentProxy, getResolvedPDFJS } from 'unpdf'

/** One page of a printed file, as another program reads it. Lengths are in the file's own units, brought to mm: 72 pt to the inch of 25.4 mm. */
export interface PdfPage {
  readonly widthPt: number
  readonly heightPt: number
  /** What can be selected and copied, in the file's order, without empty pieces. */
  readonly texts: readonly string[]
  /** Lengths of all straight lines of a single piece that lie level or upright. */
  readonly levelMm: readonly number[]
  readonly uprightMm: readonly number[]
  readonly imageCount: number
}

/** a b c d e f: (x, y) becomes (ax + cy + e, bx + dy + f). Source: ISO 32000-1, 8.3.3 (from memory). */
type Matrix = readonly [number, number, number, number, number, number]

const MM_PER_PT = 25.4 / 72

const times = (inner: Matrix, outer: Matrix): Matrix => [
  inner[0] * outer[0] + inner[1] * outer[2],
  inner[0] * outer[1] + inner[1] * outer[3],
  inner[2] * outer[0] + inner[3] * outer[2],
  inner[2] * outer[1] + inner[3] * outer[3],
  inner[4] * outer[0] + inner[5] * outer[2] + outer[4],
  inner[4] * outer[1] + inner[5] * outer[3] + outer[5],
]

interface Piece {
  readonly acrossMm: number
  readonly upMm: number
}

/** How the reader codes a path: each number that begins a step, and how many coordinates follow it. */
const STEPS = { moveTo: 0, lineTo: 1, curveTo: 2, closePath: 3 } as const
const COORDINATES: Readonly<Record<number, number>> = {
  [STEPS.moveTo]: 2,
  [STEPS.lineTo]: 2,
  [STEPS.curveTo]: 6,
  [STEPS.closePath]: 0,
}

/** The piece of a path that is nothing but one straight line; null for any other path. */
const onlyPiece = (path: readonly number[], at: Matrix): Piece | null => {
  const points: (readonly [number, number])[] = []
  for (let index = 0; index < path.length;) {
    const step = path[index] ?? -1
    const count = COORDINATES[step]
    if (count === undefined || step === STEPS.curveTo || step === STEPS.closePath) return null
    points.push([path[index + 1] ?? 0, path[index + 2] ?? 0])
    index += 1 + count
  }
  const [from, to] = points
  if (points.length !== 2 || from === undefined || to === undefined) return null
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  return {
    acrossMm: Math.abs(dx * at[0] + dy * at[2]) * MM_PER_PT,
    upMm: Math.abs(dx * at[1] + dy * at[3]) * MM_PER_PT,
  }
}

type Reader = Awaited<ReturnType<typeof getDocumentProxy>>
type ReaderPage = Awaited<ReturnType<Reader['getPage']>>

/** Every line of a single straight piece, with what is turned, moved and scaled about it. */
const straightPieces = async (page: ReaderPage): Promise<readonly Piece[]> => {
  const { OPS } = await getResolvedPDFJS()
  const { fnArray, argsArray } = await page.getOperatorList()
  const kept: Matrix[] = []
  let at: Matrix = [1, 0, 0, 1, 0, 0]
  return fnArray.flatMap((operation, index): readonly Piece[] => {
    const args = argsArray[index] as readonly unknown[] | null
    if (operation === OPS.save) kept.push(at)
    else if (operation === OPS.restore) at = kept.pop() ?? at
    else if (operation === OPS.transform) at = times(args as unknown as Matrix, at)
    else if (operation === OPS.constructPath) {
      const [path] = (args?.[1] ?? []) as readonly (ArrayLike<number> | null)[]
      const piece = path == null ? null : onlyPiece(Array.from(path), at)
      return piece === null ? [] : [piece]
    }
    return []
  })
}

/** Less than this off level or upright is rounding, mm. */
const STRAIGHT_MM = 0.01

const readPage = async (page: ReaderPage): Promise<PdfPage> => {
  const [left = 0, bottom = 0, right = 0, top = 0] = page.view
  const { OPS } = await getResolvedPDFJS()
  const pieces = await straightPieces(page)
  const { items } = await page.getTextContent()
  const { fnArray } = await page.getOperatorList()
  return {
    widthPt: right - left,
    heightPt: top - bottom,
    texts: items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item.str.trim()] : [])),
    levelMm: pieces.filter(({ upMm }) => upMm < STRAIGHT_MM).map(({ acrossMm }) => acrossMm),
    uprightMm: pieces.filter(({ acrossMm }) => acrossMm < STRAIGHT_MM).map(({ upMm }) => upMm),
    imageCount: fnArray.filter((operation) =>
      [OPS.paintImageXObject, OPS.paintInlineImageXObject, OPS.paintImageMaskXObject].includes(operation),
    ).length,
  }
}

/** What a printed file holds, read by a general PDF reader. */
export const readPdf = async (file: Uint8Array): Promise<readonly PdfPage[]> => {
  const document = await getDocumentProxy(Uint8Array.from(file), { verbosity: 0 })
  const numbers = Array.from({ length: document.numPages }, (_, index) => index + 1)
  return await Promise.all(numbers.map(async (number) => await readPage(await document.getPage(number))))
}

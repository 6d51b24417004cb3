import { pagePictures } from '../../../state/photos/pagePictures'
import type { PaperKind, PaperRequest } from '../../paperKinds'
import { embeddedFonts } from '../savedFile'
import { paperStem } from '../sheetFile'
import { archive } from './archive'
import { filesOf } from './handOverFiles'
import { type HandOverRequest, type MadePart, madePart } from './handOverPart'
import { handOverParts, handOverStem, tableParts } from './handOverParts'
import { picturesOf } from './picturesOf'
import { HAND_OVER_TITLE } from './readMeFirst'

export interface MadeArchive {
  readonly name: string
  readonly bytes: Uint8Array<ArrayBuffer>
  /** What could not be made, one line for each. */
  readonly missing: readonly string[]
}

/** Longest wait for a frame, ms: a hidden page draws none. */
const MOST_WAIT_MS = 50

/** Lets the page draw what was said before the next part holds it up. */
const pageDrawn = (): Promise<void> =>
  new Promise((resolve) => {
    requestAnimationFrame(() => setTimeout(resolve))
    setTimeout(resolve, MOST_WAIT_MS)
  })

/** The whole folder, one part after the other with the page alive in between. `onStep` hears what is being made. */
export const madeArchive = async (
  request: PaperRequest,
  onStep: (words: string) => void,
): Promise<MadeArchive> => {
  const withFonts = {
    ...request,
    fonts: await embeddedFonts(),
    pictures: await picturesOf(request.layout.photos ?? [], pagePictures.read),
  }
  const made: MadePart[] = []
  for (const part of handOverParts()) {
    onStep(part.words.replace(/[:,].*$/, '').toLowerCase())
    await pageDrawn()
    made.push(madePart(part, withFonts))
  }
  return packed(handOverStem(request.layout), HAND_OVER_TITLE, withFonts, made)
}

/** The tables of one kind of paper alone, with a list of contents of their own. */
export const tablesArchive = (kind: PaperKind, request: PaperRequest): MadeArchive => {
  const withFonts = { ...request, fonts: [] }
  const made = tableParts(kind).map((part) => madePart(part, withFonts))
  const stem = paperStem(`${kind.fileStem}-tables`, request.layout)
  return packed(stem, `${kind.words}, tables`, withFonts, made)
}

const packed = (
  stem: string,
  title: string,
  request: HandOverRequest,
  made: readonly MadePart[],
): MadeArchive => ({
  name: `${stem}.zip`,
  bytes: archive(stem, filesOf(request, made, title), request.layout.job.date),
  missing: made.flatMap(({ words, made: result }) =>
    result.kind === 'failed'
      ? [`${words}: ${result.message}`]
      : result.kind === 'files'
        ? (result.missing ?? [])
        : [],
  ),
})

import type { PaperRequest } from '../../paperKinds'
import { embeddedFonts } from '../savedFile'
import { archive } from './archive'
import { filesOf } from './handOverFiles'
import { type MadePart, madePart } from './handOverPart'
import { handOverParts, handOverStem } from './handOverParts'

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
  const withFonts = { ...request, fonts: await embeddedFonts() }
  const made: MadePart[] = []
  for (const part of handOverParts()) {
    onStep(part.words.replace(/[:,].*$/, '').toLowerCase())
    await pageDrawn()
    made.push(madePart(part, withFonts))
  }
  const stem = handOverStem(request.layout)
  const bytes = archive(stem, filesOf(withFonts, made), request.layout.job.date)
  const missing = made.flatMap(({ words, made: result }) =>
    result.kind === 'failed' ? [`${words}: ${result.message}`] : [],
  )
  return { name: `${stem}.zip`, bytes, missing }
}

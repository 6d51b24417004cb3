import type { Photo } from '../../../domain/measure/photo/photo'
import type { PaperRequest } from '../../paperKinds'
import type { EmbeddedFont } from '../sheetFile'

/** One file of the folder. */
export interface HandOverFile {
  /** Folders and name below the hand-over folder, with /. */
  readonly path: string
  /** What it is, where its name does not say it. */
  readonly about?: string
  readonly text: string
  /** Of a file that is no text, such as a picture; its text is then empty. */
  readonly bytes?: Uint8Array<ArrayBuffer>
}

/** A photo of the layout with its picture; null where this device does not have it. */
export interface HandOverPicture {
  readonly photo: Photo
  readonly bytes: Uint8Array<ArrayBuffer> | null
}

export interface HandOverRequest extends PaperRequest {
  /** None where they could not be read: the pages then use a face of the machine that opens them. */
  readonly fonts: readonly EmbeddedFont[]
  /** Of all photos under the drawing; left out when there are none. */
  readonly pictures?: readonly HandOverPicture[]
}

/** Files of one kind, or the reason why there are none; empty where nobody misses them. */
type PartFiles =
  | {
      readonly kind: 'files'
      readonly files: readonly HandOverFile[]
      /** What of it is not there, one sentence for each. */
      readonly missing?: readonly string[]
    }
  | { readonly kind: 'none'; readonly because: string }

/** Something the folder is to hold, made on its own so that one that fails takes nothing else with it. */
export interface HandOverPart {
  /** What it is, as the list of contents says it. */
  readonly words: string
  readonly make: (request: HandOverRequest) => PartFiles
}

/** A part after it was made. */
export interface MadePart {
  readonly words: string
  readonly made: PartFiles | { readonly kind: 'failed'; readonly message: string }
}

/** Makes one part; what goes wrong in it is kept as a message and said in the folder. */
export const madePart = ({ words, make }: HandOverPart, request: HandOverRequest): MadePart => {
  try {
    return { words, made: make(request) }
  } catch (problem) {
    return {
      words,
      made: { kind: 'failed', message: problem instanceof Error ? problem.message : String(problem) },
    }
  }
}

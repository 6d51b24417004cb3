import { handOverParts } from './handOverParts'
import { type HandOverFile, type HandOverRequest, type MadePart, madePart } from './handOverPart'
import { HAND_OVER_TITLE, READ_ME_NAME, readMeFirst } from './readMeFirst'

/** Every file of the folder, READ-ME-FIRST before all others. Pure: the same layout on the same day gives the same files. */
export const handOverFiles = (request: HandOverRequest): readonly HandOverFile[] =>
  filesOf(
    request,
    handOverParts().map((part) => madePart(part, request)),
  )

/** The files of parts that were made, with the list of contents that names every part and what is missing. */
export const filesOf = (
  request: HandOverRequest,
  parts: readonly MadePart[],
  title = HAND_OVER_TITLE,
): readonly HandOverFile[] => {
  const named = withUniquePaths(parts)
  return [
    { path: READ_ME_NAME, text: readMeFirst(request, named, title) },
    ...named.flatMap(({ made }) => (made.kind === 'files' ? made.files : [])),
  ]
}

/** Systems that know no capitals would write one file over another: the second gets a number. */
const withUniquePaths = (parts: readonly MadePart[]): readonly MadePart[] => {
  const taken = new Set([READ_ME_NAME.toLowerCase()])
  const unique = (file: HandOverFile): HandOverFile => {
    const dot = file.path.lastIndexOf('.')
    const [stem, ending] = [file.path.slice(0, dot), file.path.slice(dot)]
    let path = file.path
    for (let number = 2; taken.has(path.toLowerCase()); number += 1) path = `${stem}-${number}${ending}`
    taken.add(path.toLowerCase())
    return { ...file, path }
  }
  return parts.map((part) =>
    part.made.kind === 'files'
      ? { ...part, made: { ...part.made, files: part.made.files.map(unique) } }
      : part,
  )
}

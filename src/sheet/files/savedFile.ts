import regularFontUrl from '@fontsource/ibm-plex-sans-condensed/files/ibm-plex-sans-condensed-latin-400-normal.woff2?url'
import boldFontUrl from '@fontsource/ibm-plex-sans-condensed/files/ibm-plex-sans-condensed-latin-600-normal.woff2?url'
import type { EmbeddedFont } from './sheetFile'

const dataUrlOf = async (url: string): Promise<string> => {
  const response = await fetch(url)
  if (!response.ok) throw new Error(`the font answered ${response.status}`)
  const bytes = new Uint8Array(await response.arrayBuffer())
  let text = ''
  for (const byte of bytes) text += String.fromCodePoint(byte)
  return `data:font/woff2;base64,${btoa(text)}`
}

/** The two weights of the sheet's font to travel inside a file; none when they cannot be read, which the layout allows for. */
export const embeddedFonts = async (): Promise<readonly EmbeddedFont[]> => {
  try {
    const [regular, bold] = await Promise.all([dataUrlOf(regularFontUrl), dataUrlOf(boldFontUrl)])
    return [
      { weight: 400, dataUrl: regular },
      { weight: 600, dataUrl: bold },
    ]
  } catch {
    return []
  }
}

/** Hands a text to the browser as a download. */
export const saveText = (text: string, fileName: string, mediaType: string): void =>
  saveBlob(new Blob([text], { type: `${mediaType};charset=utf-8` }), fileName)

/** Hands an archive to the browser as a download. */
export const saveArchive = (bytes: Uint8Array<ArrayBuffer>, fileName: string): void =>
  saveBlob(new Blob([bytes], { type: 'application/zip' }), fileName)

const saveBlob = (blob: Blob, fileName: string): void => {
  const url = URL.createObjectURL(blob)
  const link = document.createElement('a')
  link.href = url
  link.download = fileName
  link.click()
  // The download has started by then; a browser that is slower still holds the blob for this long.
  setTimeout(() => URL.revokeObjectURL(url), 60_000)
}

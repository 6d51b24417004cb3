import { strToU8, zipSync, type ZippableFile } from 'fflate'
import type { HandOverFile } from './handOverPart'

/** The years that an archive can write. Source: PKWARE APPNOTE, MS-DOS date format (from memory): 1980 and 7 bits of years. */
const FIRST_YEAR = 1980
const LAST_YEAR = 2099

/**
 * The date of every file in the archive: the job's, at noon so that no time zone moves it, else the earliest there is. Never the clock's,
 * so that the same files give the same archive, byte for byte.
 */
const fileDate = (jobDate: string): Date => {
  const [year = 0, month = 1, day = 1] = jobDate.split('-').map(Number)
  const isKnown = /^\d{4}-\d{2}-\d{2}$/.test(jobDate) && year >= FIRST_YEAR && year <= LAST_YEAR
  return isKnown ? new Date(year, month - 1, day, 12) : new Date(FIRST_YEAR, 0, 1, 12)
}

/** All files in one folder of one archive, in their order. */
export const archive = (
  folder: string,
  files: readonly HandOverFile[],
  jobDate: string,
): Uint8Array<ArrayBuffer> => {
  const mtime = fileDate(jobDate)
  const entries = files.map(({ path, text, bytes }): readonly [string, ZippableFile] => [
    `${folder}/${path}`,
    // A picture is packed already.
    bytes === undefined ? [strToU8(text), { mtime, level: 6 }] : [bytes, { mtime, level: 0 }],
  ])
  return zipSync(Object.fromEntries(entries))
}

import { encode } from 'uqr'
import { err, ok, type Result } from '../../domain/result'

/** A QR code: its modules row by row, true for a dark one, with the quiet zone around them. */
export interface QrModules {
  readonly rows: readonly (readonly boolean[])[]
  /** Modules along one side, quiet zone and all. */
  readonly size: number
}

/**
 * The largest code that a phone's camera still takes off a screen at arm's length: version 32, 145 modules, 1952 letters. Our judgement; the
 * capacity is ISO/IEC 18004's for level L in bytes (from memory; the test has such a code read by another library).
 */
const LARGEST_VERSION = 32
export const MOST_QR_CHARACTERS = 1952

/** Modules of white around a code. Source: ISO/IEC 18004 asks for four (from memory). */
const QUIET_ZONE = 4

/** A text as a QR code with the least error correction, for screens and clean paper; the reason in words when it is too long for one. */
export const qrModules = (text: string): Result<QrModules, string> => {
  const bytes = [...new TextEncoder().encode(text)]
  if (bytes.length > MOST_QR_CHARACTERS)
    return err(
      `The link has ${bytes.length} characters. A code that a phone can read holds ${MOST_QR_CHARACTERS}: send the link or the file.`,
    )
  const { data, size } = encode(bytes, {
    ecc: 'L',
    boostEcc: false,
    border: QUIET_ZONE,
    maxVersion: LARGEST_VERSION,
  })
  return ok({ rows: data, size })
}

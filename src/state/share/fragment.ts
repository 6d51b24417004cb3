import { deflateSync } from 'fflate'
import { err, ok, type Result } from '../../domain/result'
import { base64url, bytesOfBase64url } from './base64url'
import { crc32 } from './crc32'
import { DICTIONARY_TEXT } from './dictionary'
import { inflated } from './inflating'
import { jsonDepth } from './jsonDepth'
import { lengthened, shortened } from './shortWords'

const KINDS = ['layout', 'proposal', 'answer'] as const

/** Something that travels in the part of an address after #, which no server ever sees. */
export interface Carried {
  readonly kind: (typeof KINDS)[number]
  readonly text: string
}

/** Counted up whenever the same letters would come to mean something else. */
const FORMAT = 1

/** Far beyond any layout; more is not a link that we made. Our judgement. */
const MOST_TEXT_BYTES = 1_000_000
const MOST_LINK_CHARACTERS = 1_000_000

const CHECK_BYTES = 4
const dictionary = new TextEncoder().encode(shortened(DICTIONARY_TEXT))

/** How the text was made smaller before it was deflated; the first byte of what is deflated. */
const PACKING = { asItIs: 0, shortJson: 1 } as const

const indented = (value: unknown): string => `${JSON.stringify(value, null, 2)}\n`

/** A layout's groups lie about ten deep. Deeper ones travel as they are: their spaces would be many times what they hold. Our judgement. */
const MOST_DEPTH = 24

/** JSON as our files have it, without its spaces and with its words shortened; null for every other text. */
const shortJson = (text: string): string | null => {
  if (jsonDepth(text) > MOST_DEPTH) return null
  try {
    const value: unknown = JSON.parse(text)
    return indented(value) === text ? shortened(JSON.stringify(value)) : null
  } catch {
    return null
  }
}

const packed = (text: string): Uint8Array => {
  const json = shortJson(text)
  const body = new TextEncoder().encode(json ?? text)
  const bytes = new Uint8Array(1 + body.length)
  bytes[0] = json === null ? PACKING.asItIs : PACKING.shortJson
  bytes.set(body, 1)
  return bytes
}

const unpacked = (bytes: Uint8Array): string | null => {
  try {
    const body = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes.subarray(1))
    if (bytes[0] === PACKING.asItIs) return body
    if (bytes[0] !== PACKING.shortJson) return null
    const json = lengthened(body, MOST_TEXT_BYTES)
    return json === null || jsonDepth(json) > MOST_DEPTH ? null : indented(JSON.parse(json))
  } catch {
    return null
  }
}

/**
 * The part of an address, # and all, that carries this text whole: `#layout1.` and letters, digits, - and _. A text longer than any layout
 * makes one that `carriedIn` refuses, so whoever shows a link reads it back first.
 */
export const fragmentOf = ({ kind, text }: Carried): string => {
  const plain = packed(text)
  const small = deflateSync(plain, { level: 9, mem: 7, dictionary })
  const bytes = new Uint8Array(CHECK_BYTES + small.length)
  new DataView(bytes.buffer).setUint32(0, crc32(plain))
  bytes.set(small, CHECK_BYTES)
  return `#${kind}${FORMAT}.${base64url(bytes)}`
}

const CUT = 'The link is damaged or was cut off on its way. Have it sent once more, whole, or as a file.'
const TOO_LARGE = 'The link holds more than any layout could. It is not opened.'
const NEWER =
  'The link was made by another version of this program and cannot be read by this one. Load the page anew, or ask for a file.'

const textIn = (letters: string): Result<string, string> => {
  if (letters.length > MOST_LINK_CHARACTERS) return err(TOO_LARGE)
  const bytes = bytesOfBase64url(letters)
  if (bytes === null || bytes.length <= CHECK_BYTES) return err(CUT)
  const plain = inflated(bytes.subarray(CHECK_BYTES), { dictionary, mostBytes: MOST_TEXT_BYTES })
  if (!plain.ok) return err(plain.error === 'too-large' ? TOO_LARGE : CUT)
  if (crc32(plain.value) !== new DataView(bytes.buffer).getUint32(0)) return err(CUT)
  const text = unpacked(plain.value)
  return text === null ? err(CUT) : ok(text)
}

/**
 * What an address carries after #, with or without the #; null for an ordinary address. Never throws and never takes long, whatever the
 * letters are; the reason of a failure is a sentence for people. The text is as it was sent, but nobody has checked yet what it says.
 */
export const carriedIn = (fragment: string): Result<Carried | null, string> => {
  const [, kindWord, format, letters = ''] =
    /^#?(layout|proposal|answer)(?:(\d+)(?:\.(.*))?)?$/s.exec(fragment) ?? []
  const kind = KINDS.find((known) => known === kindWord)
  if (kind === undefined) return ok(null)
  if (format !== undefined && Number(format) !== FORMAT) return err(NEWER)
  const text = textIn(letters.trim())
  return text.ok ? ok({ kind, text: text.value }) : text
}

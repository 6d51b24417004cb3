/** Bytes as letters that every address and messenger carries as they are. Source: RFC 4648, section 5, without padding (from memory). */
export const base64url = (bytes: Uint8Array): string => {
  // In pieces: a long list of arguments would be too many for some browsers.
  const pieces = Array.from({ length: Math.ceil(bytes.length / PIECE) }, (_, index) =>
    String.fromCharCode(...bytes.subarray(index * PIECE, (index + 1) * PIECE)),
  )
  return btoa(pieces.join('')).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '')
}

const PIECE = 4096

/** The bytes again; null when a character is none of the alphabet or one is missing. */
export const bytesOfBase64url = (text: string): Uint8Array<ArrayBuffer> | null => {
  if (!/^[A-Za-z0-9_-]*$/.test(text) || text.length % 4 === 1) return null
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'))
  return Uint8Array.from(binary, (character) => character.charCodeAt(0))
}

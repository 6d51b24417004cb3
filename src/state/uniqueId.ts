/** Ninety-six random bits as letters and digits. Not `randomUUID`, which pages of a shop's own network without encryption do not have. */
export const uniqueId = (): string =>
  [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, '0')).join('')

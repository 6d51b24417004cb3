/**
 * A value as text that is the same however its fields were ordered; fields that are undefined are left out, as in a file. Only
 * printable ASCII, so that bytes and characters are one.
 */
export const canonicalText = (value: unknown): string =>
  (JSON.stringify(value, inOrderOfNames) ?? 'null').replace(
    /[^ -~]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  )

const inOrderOfNames = (_name: string, value: unknown): unknown =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
    ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)))
    : value

/** The one clock of the page for dates: panels and papers ask here, the domain is told. */

/** Now, in milliseconds since 1970-01-01T00:00Z. */
export const nowMs = (): number => Date.now()

const twoDigits = (value: number): string => String(value).padStart(2, '0')

/** The calendar date where the page is looked at, ISO 8601. */
export const today = (now: () => number = nowMs): string => {
  const date = new Date(now())
  const year = String(date.getFullYear()).padStart(4, '0')
  return `${year}-${twoDigits(date.getMonth() + 1)}-${twoDigits(date.getDate())}`
}

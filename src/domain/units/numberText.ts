/** Shown in place of a value that cannot be told, so that no NaN or Infinity ever reaches a page. */
export const NO_VALUE = '–'

/** The minus sign of print, U+2212, as wide as a plus sign in tabular figures. */
export const MINUS = '−'

/** A finite number at one decimal, halves away from zero, a trailing .0 dropped, a true minus sign and never a minus zero. */
export const tenthsText = (value: number): string => {
  // The nudge undoes binary rounding: 0.05 · 10 and the like must count as the half they were written as.
  const tenths = Math.round(Math.abs(value) * 10 * (1 + Number.EPSILON))
  const text = tenths % 10 === 0 ? String(tenths / 10) : (tenths / 10).toFixed(1)
  return value < 0 && tenths > 0 ? `${MINUS}${text}` : text
}

/** A finite number at whole units, halves away from zero, a true minus sign and never a minus zero. */
export const wholeText = (value: number): string => {
  const whole = Math.round(Math.abs(value) * (1 + Number.EPSILON))
  return value < 0 && whole > 0 ? `${MINUS}${whole}` : String(whole)
}

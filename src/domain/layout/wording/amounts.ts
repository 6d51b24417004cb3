import { isWithin, type Interval } from '../../rules/check'
import type { Limit } from '../../rules/finding'
import { PROPERTY_IDS, type PropertyId } from '../../rules/rule'
import { type QuantityId, quantityUnit } from '../../straps/quantity'
import { lengthOnScaleMm, type LengthUnit, lengthWithUnit } from '../../units/length'

/** What the number of a finding is counted in. */
type AmountUnit = 'deg' | 'mm' | 'ratio' | 'mm2' | 'mm4' | 'count'

const isProperty = (id: QuantityId | PropertyId): id is PropertyId =>
  (PROPERTY_IDS as readonly string[]).includes(id)

const amountUnit = (id: QuantityId | PropertyId): AmountUnit => {
  if (!isProperty(id)) return quantityUnit(id)
  switch (id) {
    case 'bar-area':
      return 'mm2'
    case 'bar-second-moment':
      return 'mm4'
    case 'webbing-width':
    case 'wrap-bar-diameter':
    case 'eye-thread':
    case 'tab-thickness':
    case 'bar-diameter':
    case 'bar-wall':
    case 'slot-spare':
    case 'tab-to-tube':
    case 'sub-to-lap':
      return 'mm'
    case 'belt-points':
    case 'belt-buckle':
    case 'belt-material':
    case 'belt-lap-adjuster':
    case 'belt-head-and-neck':
    case 'belt-joined':
    case 'straps-crossed':
    case 'anchor-form':
    case 'wrap-guide-hoops':
    case 'wrap-tube-role':
    case 'strap-slot':
    case 'shoulder-anchorages':
    case 'tab-shear':
      return 'count'
  }
}

/** A number at a fixed number of decimals, trailing zeros dropped, with a true minus sign and no minus zero. */
const decimalText = (value: number, digits: number): string => {
  const size = String(Number(Math.abs(value).toFixed(digits)))
  return value < 0 && size !== '0' ? `−${size}` : size
}

const usualDigits = (unit: AmountUnit): number => {
  switch (unit) {
    case 'deg':
    case 'mm':
      return 1
    case 'ratio':
      return 2
    case 'mm2':
    case 'mm4':
    case 'count':
      return 0
  }
}

const withUnit = (value: number, digits: number, unit: AmountUnit, lengthUnit: LengthUnit): string => {
  const text = decimalText(value, digits)
  switch (unit) {
    case 'deg':
      return `${text}°`
    case 'mm':
      // Rules are written in mm and 1/16 in is coarse, so the mm stay beside the inches.
      return lengthUnit === 'mm' ? `${text} mm` : `${lengthWithUnit(value, 'in')} (${text} mm)`
    case 'ratio':
      return `${text} of the strap tension`
    case 'mm2':
      return `${text} mm²`
    case 'mm4':
      return `${text} mm⁴`
    case 'count':
      return text
  }
}

/** A typed word as people say it. */
const wordText = (id: QuantityId | PropertyId, word: string): string => {
  switch (word) {
    case 'single':
    case 'double':
      return `${word} shear`
    case 'harness-bar':
      return 'harness bar'
    case 'cage':
      return 'cage tube'
    case 'floor':
      return 'floor tube'
    case 'rotary-cam':
      return 'rotary cam'
    case 'plate':
      return 'tab'
    case 'eye':
      return 'eye bolt'
    default:
      return id === 'belt-lap-adjuster' ? `${word} type` : word
  }
}

/** A value with its unit for people: angles and mm at 0.1, shares at 0.01; in inches the mm follow in brackets. */
export const valueText = (
  id: QuantityId | PropertyId,
  value: number | string,
  lengthUnit: LengthUnit,
): string => {
  if (typeof value === 'string') return wordText(id, value)
  const unit = amountUnit(id)
  return withUnit(value, usualDigits(unit), unit, lengthUnit)
}

/** More decimals than this are never shown: it is where a value counts as on its limit. */
const MOST_DIGITS = 9

/**
 * As `valueText`, but with as many decimals as it takes to see that the value is outside the limits: 44.97° must not be shown
 * as "45°" where at least 45° is asked for.
 */
export const outsideText = (
  id: QuantityId | PropertyId,
  value: number | string,
  limit: Interval,
  lengthUnit: LengthUnit,
): string => {
  if (typeof value === 'string') return wordText(id, value)
  const unit = amountUnit(id)
  let digits = usualDigits(unit)
  while (digits < MOST_DIGITS && isWithin(Number(value.toFixed(digits)), limit)) digits += 1
  return withUnit(value, digits, unit, lengthUnit)
}

/** A limit in words: "45° to 60°", "at least 46 mm", "at most 3°", "latch-and-link". */
export const limitText = (id: QuantityId | PropertyId, limit: Limit, lengthUnit: LengthUnit): string => {
  const { min, max, wanted } = limit
  if (wanted !== null) return wanted.map((word) => wordText(id, word)).join(' or ')
  // Limits keep every digit their document gives; the inches beside them are rounded to the side that keeps them.
  const text = (value: number, way: 'up' | 'down'): string => {
    const unit = amountUnit(id)
    if (unit !== 'mm' || lengthUnit === 'mm') return withUnit(value, MOST_DIGITS, unit, lengthUnit)
    return `${lengthWithUnit(lengthOnScaleMm(value, 'in', way), 'in')} (${decimalText(value, MOST_DIGITS)} mm)`
  }
  if (min !== null && max !== null) return `${text(min, 'up')} to ${text(max, 'down')}`
  if (min !== null) return `at least ${text(min, 'up')}`
  return max === null ? 'no limit' : `at most ${text(max, 'down')}`
}

/** A value that a change proposes: a length at least so large, in inches rounded up; anything else as `valueText`. */
export const proposedText = (
  id: QuantityId | PropertyId,
  value: number | string,
  lengthUnit: LengthUnit,
): string =>
  typeof value === 'number' && amountUnit(id) === 'mm'
    ? roundedText(value, lengthUnit, 'up')
    : valueText(id, value, lengthUnit)

/** A move that has to be made in full: rounded up to what can be measured, in inches with the mm in brackets. */
export const moveText = (byMm: number, lengthUnit: LengthUnit): string => roundedText(byMm, lengthUnit, 'up')

/** What is left to a limit: rounded down, so that nobody uses up more than there is. */
export const roomText = (roomMm: number, lengthUnit: LengthUnit): string =>
  roundedText(roomMm, lengthUnit, 'down')

/** A way that has to be gone, rounded up: what is gone is enough. */
export const wayText = (wayMm: number, lengthUnit: LengthUnit): string => roundedText(wayMm, lengthUnit, 'up')

const roundedText = (lengthMm: number, lengthUnit: LengthUnit, way: 'up' | 'down'): string => {
  const mmText = lengthWithUnit(lengthOnScaleMm(lengthMm, 'mm', way), 'mm')
  return lengthUnit === 'mm'
    ? mmText
    : `${lengthWithUnit(lengthOnScaleMm(lengthMm, 'in', way), 'in')} (${mmText})`
}

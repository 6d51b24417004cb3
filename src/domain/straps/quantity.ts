import type { StrapId } from './strap'

/** Stable ids of everything computed; definitions in straps/README.md and beside each formula. */
export const QUANTITY_IDS = [
  'shoulder-drop',
  'shoulder-to-spine',
  'shoulder-rim-drop',
  'shoulder-height',
  'shoulder-plan',
  'shoulder-spacing',
  'shoulder-mirror',
  'shoulder-free-length',
  'shoulder-length-behind-seat',
  'shoulder-above-hip',
  'shoulder-behind-hip',
  'shoulder-behind-fk',
  'shoulder-reference-plan',
  'spine-load-share',
  'lap-angle',
  'lap-run-angle',
  'lap-shifted-angle',
  'lap-spacing',
  'lap-mirror',
  'lap-off-centre',
  'lap-over-asis',
  'sub-to-chest',
  'sub-to-vertical',
  'sub-spacing',
  'sub-mirror',
  'slot-bend',
  'wrap-square',
  'tab-twist',
  'shank-angle',
  'shoulder-junction',
  'adjuster-clearance',
  'tube-clearance',
  'helmet-clearance',
  'body-clearance',
  'strap-length',
] as const

export type QuantityId = (typeof QUANTITY_IDS)[number]
export type QuantityUnit = 'deg' | 'mm' | 'ratio'

export const quantityUnit = (id: QuantityId): QuantityUnit => {
  switch (id) {
    case 'shoulder-height':
    case 'shoulder-spacing':
    case 'shoulder-mirror':
    case 'shoulder-free-length':
    case 'shoulder-length-behind-seat':
    case 'lap-spacing':
    case 'lap-mirror':
    case 'shoulder-above-hip':
    case 'shoulder-behind-hip':
    case 'shoulder-behind-fk':
    case 'lap-off-centre':
    case 'lap-over-asis':
    case 'sub-spacing':
    case 'sub-mirror':
    case 'shoulder-junction':
    case 'adjuster-clearance':
    case 'tube-clearance':
    case 'helmet-clearance':
    case 'body-clearance':
    case 'strap-length':
      return 'mm'
    case 'spine-load-share':
      return 'ratio'
    case 'shoulder-drop':
    case 'shoulder-to-spine':
    case 'shoulder-rim-drop':
    case 'shoulder-plan':
    case 'shoulder-reference-plan':
    case 'lap-angle':
    case 'lap-run-angle':
    case 'lap-shifted-angle':
    case 'sub-to-chest':
    case 'sub-to-vertical':
    case 'slot-bend':
    case 'wrap-square':
    case 'tab-twist':
    case 'shank-angle':
      return 'deg'
  }
}

/** What a quantity is of: a strap, a pair of straps, the head, or the rest of the person. */
export type Subject = StrapId | 'shoulder-pair' | 'lap-pair' | 'sub-pair' | 'head' | 'body'

/** One computed number of one sitting; always finite. */
export interface QuantityValue {
  readonly id: QuantityId
  readonly subject: Subject
  readonly value: number
}

/** Takes computed numbers. What nobody wants need not be worked out. */
export interface QuantitySink {
  readonly wants: (id: QuantityId) => boolean
  /** `value` is finite. */
  readonly put: (id: QuantityId, subject: Subject, value: number) => void
}

/** A sink that wants everything and keeps it in the order in which it comes. */
export class QuantityList implements QuantitySink {
  readonly values: QuantityValue[] = []

  wants(): boolean {
    return true
  }

  put(id: QuantityId, subject: Subject, value: number): void {
    this.values.push({ id, subject, value })
  }
}

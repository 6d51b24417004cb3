import { pointDistanceMm, type PointMm } from '../../geometry/point'
import type { BodyMeasure } from '../../body/occupant'
import type { StrapId } from '../../straps/strap'
import type { Matched } from './matched'

/** What may be told apart about a part; the words are in wording/compareWords.ts. */
export type PartField =
  | 'name'
  | 'x'
  | 'y'
  | 'z'
  | 'form'
  | 'on-tube'
  | 'plan'
  | 'lean'
  | 'rise'
  | 'thickness'
  | 'hole'
  | 'width'
  | 'edge'
  | 'gap'
  | 'shear'
  | 'thread'
  | 'eye'
  | 'over'
  | 'guide-hoops'
  | 'role'
  | 'outside-diameter'
  | 'wall'
  | 'hip-height'
  | 'recline'
  | 'slide-forward'
  | 'slide-rearward'
  | 'most-upright'
  | 'most-reclined'
  | 'rim-x'
  | 'rim-z'
  | 'shell-thickness'
  | 'side-outline'
  | 'top-outline'
  | 'slot-straps'
  | 'face'
  | 'length'
  | 'height'
  | 'turn'
  | 'arrangement'
  | 'diagonal'
  | 'thigh-straps'
  | 'shoulder-tail'
  | 'adjuster-place'
  | 'adjuster-length'
  | 'bolt-diameter'
  | 'bolt-grade'
  | 'torque'
  | 'bolt-source'
  | 'webbing'
  | 'material'
  | 'buckle'
  | 'lap-adjuster'
  | 'head-and-neck'
  | 'adjuster-tail'
  | 'wrap-return'
  | 'sex'
  | 'stature'
  | 'mass'
  | 'measured'
  | 'mirrored'

/** A number with what it is counted in, a word as the file has it, or an outline as the text of its points. */
export type FieldValue =
  | { readonly kind: 'number'; readonly value: number; readonly unit: 'mm' | 'deg' | 'kg' | 'Nm' | 'count' }
  | { readonly kind: 'word'; readonly word: string }
  | { readonly kind: 'outline'; readonly points: number; readonly text: string }

/** Which one of several alike: a tube's point counted from 1, a family of straps, a body measure. */
export type FieldOf = number | 'shoulder' | 'lap' | 'sub' | BodyMeasure | null

/** One field of a part of one variant. */
export interface PartValue {
  readonly field: PartField
  readonly of: FieldOf
  readonly value: FieldValue
}

export interface ComparedField {
  readonly field: PartField
  readonly of: FieldOf
  /** One for each variant; null where it has no such part, or the part no such field. */
  readonly values: Matched<FieldValue>
}

type PartKind = 'anchor' | 'seat' | 'slot' | 'belt' | 'occupant' | 'place' | 'tube'

/** A part of one variant, ready to be compared. */
export interface Part {
  readonly kind: PartKind
  readonly id: string
  readonly name: string
  /** Null for tubes. */
  readonly placeId: string | null
  /** Of an anchor. */
  readonly strap: StrapId | null
  /**
   * What a shift is measured by: an anchor's own point, the hip point, a tube's points; a slot's middle in the seat frame. Empty for
   * what has no position.
   */
  readonly points: readonly PointMm[]
  readonly values: readonly PartValue[]
}

/** One part as the variants have it. */
export interface ComparedPart {
  readonly kind: PartKind
  /** One for each variant; null where it has none. */
  readonly parts: Matched<Part>
  readonly fields: readonly ComparedField[]
}

/** Numbers closer than this are the same: a thousandth of what a sheet shows. Our judgement. */
const SAME = 1e-4

/** Whether two values of a field are one. */
export const isSameField = (a: FieldValue | null, b: FieldValue | null): boolean => {
  if (a === null || b === null) return a === b
  if (a.kind === 'number') return b.kind === 'number' && Math.abs(a.value - b.value) <= SAME
  if (a.kind === 'word') return b.kind === 'word' && a.word === b.word
  return b.kind === 'outline' && a.text === b.text
}

/** Whether any two variants differ in a field. */
export const doesFieldDiffer = ({ values }: ComparedField): boolean =>
  values.some((value) => !isSameField(value, values[0] ?? null))

/** Whether any two variants differ in a part. */
export const doesPartDiffer = ({ parts, fields }: ComparedPart): boolean =>
  parts.some((part) => (part === null) !== (parts[0] === null)) || fields.some(doesFieldDiffer)

/**
 * How far a part lies from where another variant has it, mm, ≥ 0; of a tube its point that is furthest off. Null where one of the two
 * has no such part, or their points do not correspond.
 */
export const shiftMm = ({ parts }: ComparedPart, from: number, to: number): number | null => {
  const before = parts[from]?.points ?? []
  const after = parts[to]?.points ?? []
  if (before.length === 0 || before.length !== after.length) return null
  return Math.max(...before.map((point, index) => pointDistanceMm(point, after[index] ?? point)))
}

/** One field in which a variant differs from another. */
interface FieldDifference {
  readonly field: PartField
  readonly of: FieldOf
  readonly before: FieldValue | null
  readonly after: FieldValue | null
  /** After less before, in the field's unit; null where the two are not both numbers. */
  readonly by: number | null
}

/** One part in which a variant differs from another. */
export interface PartDifference {
  readonly part: ComparedPart
  readonly presence: 'both' | 'only-before' | 'only-after'
  readonly shiftMm: number | null
  readonly fields: readonly FieldDifference[]
}

const presenceOf = ({ parts }: ComparedPart, from: number, to: number): PartDifference['presence'] | null => {
  const [before, after] = [parts[from] ?? null, parts[to] ?? null]
  if (before !== null) return after === null ? 'only-before' : 'both'
  return after === null ? null : 'only-after'
}

const fieldDifference = (
  { field, of, values }: ComparedField,
  from: number,
  to: number,
): readonly FieldDifference[] => {
  const [before, after] = [values[from] ?? null, values[to] ?? null]
  if (isSameField(before, after)) return []
  const by = before?.kind === 'number' && after?.kind === 'number' ? after.value - before.value : null
  return [{ field, of, before, after, by }]
}

/**
 * What one variant changes of another, `from` and `to` being their places in the order that was compared. First what only one of them
 * has, then what lies elsewhere, the largest shift first, then the rest in the order of the car.
 */
export const partDifferences = (
  parts: readonly ComparedPart[],
  from: number,
  to: number,
): readonly PartDifference[] => {
  const found = parts.flatMap((part): readonly PartDifference[] => {
    const presence = presenceOf(part, from, to)
    if (presence === null) return []
    const fields = part.fields.flatMap((field) => fieldDifference(field, from, to))
    return presence === 'both' && fields.length === 0
      ? []
      : [{ part, presence, shiftMm: shiftMm(part, from, to), fields }]
  })
  const rank = ({ presence }: PartDifference): number => (presence === 'both' ? 1 : 0)
  return found.toSorted((a, b) => rank(a) - rank(b) || (b.shiftMm ?? 0) - (a.shiftMm ?? 0))
}

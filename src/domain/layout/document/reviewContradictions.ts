import { isCalendarDate } from '../../units/calendarDate'
import type { Contradiction } from './contradiction'
import type { FieldPath } from './problem'
import { repeatedIds } from './repeatedIds'
import type { ReviewEntry, ShownEntry } from './review'

/**
 * Where the talk with the customer does not agree with itself. That a variant or a part is not in the layout any more is none: what
 * was said stays true when the plan changes. Nor is an answer to another drawing than the shown one: it was given all the same.
 */
export const reviewContradictions = (
  entries: readonly ReviewEntry[],
  path: FieldPath,
): readonly Contradiction[] => [
  ...repeatedIds(entries, path),
  ...entries.flatMap((entry, index) => {
    const at: FieldPath = [...path, index]
    const earlier = entries.slice(0, index)
    return [
      ...saidContradictions(entry, at),
      ...(entry.kind === 'shown' ? shownContradictions(entry, at) : answerContradictions(entry, earlier, at)),
    ]
  }),
]

/** What every entry has to say by itself: a day of the calendar, somebody, and in a comment something. */
export const saidContradictions = (entry: ReviewEntry, path: FieldPath): readonly Contradiction[] => {
  const day = {
    path: [...path, 'date'],
    received: entry.date,
    says: `there is no day ${entry.date}`,
    remedy: 'Write the date as YYYY-MM-DD.',
  }
  const nobody = {
    path: [...path, 'by'],
    received: entry.by,
    says: 'it is said by nobody',
    remedy: 'Name who said it.',
  }
  const nothing = {
    path: [...path, 'text'],
    received: '',
    says: 'the comment says nothing',
    remedy: 'Write what was said, or take the entry out.',
  }
  return [
    ...(isCalendarDate(entry.date) ? [] : [day]),
    ...(entry.by.trim() === '' ? [nobody] : []),
    ...(entry.kind === 'comment' && entry.text.trim() === '' ? [nothing] : []),
  ]
}

const shownContradictions = ({ variants }: ShownEntry, path: FieldPath): readonly Contradiction[] =>
  variants.flatMap(({ variantId }, index) => {
    const first = variants.findIndex((other) => other.variantId === variantId)
    if (first === index) return []
    const says = `the variant "${variantId}" is already item ${first + 1} of this list`
    const at: FieldPath = [...path, 'variants', index, 'variantId']
    return [{ path: at, received: variantId, says, remedy: 'List each variant once.' }]
  })

const answerContradictions = (
  entry: Exclude<ReviewEntry, ShownEntry>,
  earlier: readonly ReviewEntry[],
  path: FieldPath,
): readonly Contradiction[] => {
  const shown = earlier.find(
    (other): other is ShownEntry => other.kind === 'shown' && other.id === entry.shownId,
  )
  if (shown === undefined) {
    const says = `nothing with the id "${entry.shownId}" was shown before`
    const remedy = 'Name the id of an earlier "shown" entry.'
    return [{ path: [...path, 'shownId'], received: entry.shownId, says, remedy }]
  }
  if (shown.variants.some(({ variantId }) => variantId === entry.variantId)) return []
  const says = `the variant "${entry.variantId}" was not among those shown then`
  const remedy = `Name one of these: ${shown.variants.map(({ variantId }) => `"${variantId}"`).join(', ')}.`
  return [{ path: [...path, 'variantId'], received: entry.variantId, says, remedy }]
}

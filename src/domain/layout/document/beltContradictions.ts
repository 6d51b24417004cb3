import type { Belt, StrapFamily } from '../../straps/strap'
import { STRAP_FAMILIES, strapFamily, strapsOf } from '../../straps/strap'
import type { Contradiction } from './contradiction'
import type { FieldPath } from './problem'

const FAMILY_WORDS: Readonly<Record<StrapFamily, string>> = {
  shoulder: 'shoulder',
  lap: 'lap',
  sub: 'anti-submarine',
}

/** What a belt says of straps that its arrangement does not have. */
export const beltContradictions = (belt: Belt, path: FieldPath): readonly Contradiction[] => [
  ...diagonalContradictions(belt, path),
  ...thighStrapContradictions(belt, path),
  ...tailContradictions(belt, path),
  ...adjusterContradictions(belt, path),
  ...boltContradictions(belt, path),
]

const diagonalContradictions = (
  { arrangement, diagonal }: Belt,
  path: FieldPath,
): readonly Contradiction[] => {
  if (diagonal === undefined || arrangement === 3) return []
  return [
    {
      path: [...path, 'diagonal'],
      received: diagonal,
      says: `a ${arrangement}-point belt has a strap over each shoulder, so none of them is the diagonal`,
      remedy: 'Take the field out, or make the arrangement 3.',
    },
  ]
}

const thighStrapContradictions = (
  { arrangement, thighStraps }: Belt,
  path: FieldPath,
): readonly Contradiction[] => {
  if (thighStraps === undefined || arrangement === 6 || arrangement === 7) return []
  return [
    {
      path: [...path, 'thighStraps'],
      received: thighStraps,
      says: `a ${arrangement}-point belt has no pair of thigh straps`,
      remedy: 'Take the field out, or make the arrangement 6 or 7.',
    },
  ]
}

const tailContradictions = (
  { arrangement, shoulderTailMm }: Belt,
  path: FieldPath,
): readonly Contradiction[] => {
  if (shoulderTailMm === undefined || arrangement !== 3) return []
  return [
    {
      path: [...path, 'shoulderTailMm'],
      received: shoulderTailMm,
      says: 'a 3-point belt has one shoulder strap, so there is nothing to join',
      remedy: 'Take the field out, or make the arrangement 4 or more.',
    },
  ]
}

const adjusterContradictions = (belt: Belt, path: FieldPath): readonly Contradiction[] => {
  const families = strapsOf(belt).map(strapFamily)
  return STRAP_FAMILIES.flatMap((family): readonly Contradiction[] => {
    const adjuster = belt.adjusters?.[family]
    if (adjuster === undefined) return []
    const at = [...path, 'adjusters', family]
    if (!families.includes(family))
      return [
        {
          path: at,
          received: adjuster,
          says: `a ${belt.arrangement}-point belt has no ${FAMILY_WORDS[family]} straps to adjust`,
          remedy: 'Take the field out, or choose an arrangement that has them.',
        },
      ]
    if (adjuster.fromAnchorMm >= adjuster.lengthMm / 2) return []
    return [
      {
        path: [...at, 'fromAnchorMm'],
        received: adjuster.fromAnchorMm,
        says: `${adjuster.fromAnchorMm} mm from the anchor to the middle of a body of ${adjuster.lengthMm} mm would put its end beyond the anchor`,
        remedy: `Put at least ${adjuster.lengthMm / 2} mm there, or type the body's true length.`,
      },
    ]
  })
}

const boltContradictions = (belt: Belt, path: FieldPath): readonly Contradiction[] => {
  const families = strapsOf(belt).map(strapFamily)
  return STRAP_FAMILIES.flatMap((family): readonly Contradiction[] => {
    const bolt = belt.hardware?.[family]
    if (bolt === undefined || families.includes(family)) return []
    return [
      {
        path: [...path, 'hardware', family],
        received: bolt,
        says: `a ${belt.arrangement}-point belt has no ${FAMILY_WORDS[family]} straps to bolt`,
        remedy: 'Take the field out, or choose an arrangement that has them.',
      },
    ]
  })
}

import type { Tube } from '../../geometry/tube'
import { documentsToConfirm } from '../../rules/confirmed'
import { canonicalText } from '../document/canonicalText'
import type { Layout, Place } from '../document/layout'
import type { PartPrint, ReviewedVariant, ShownEntry } from '../document/review'
import { chosenRuleSet } from '../document/ruleSetOf'
import { type VariantLayout, variantsOf } from '../edit/changeVariants'
import { sha256Hex } from './sha256'

/** How many hexadecimal digits are kept: 80 bits, so that no two drawings of a shop ever share one by chance. Our judgement. */
const DIGITS = 20
/** Of a part, which is only ever compared with itself: 48 bits. Our judgement. */
const PART_DIGITS = 12
/** How many of them people compare by eye. */
const CODE_DIGITS = 8

/** A tube as it carries and stands in the way; its name does not. */
const tubeThatBears = ({ name: _name, ...rest }: Tube): Omit<Tube, 'name'> => rest

/** What of one place bears on the people there, by part. Not: its name, and which pairs move as one, which only helps drawing. */
const placeParts = ({ id, seat, occupants, belt, anchors }: Place): readonly Part[] => [
  [`seat:${id}`, seat],
  // The names of the people too: the agreement is about them.
  [`people:${id}`, occupants],
  [`belt:${id}`, belt],
  ...anchors.map((anchor): Part => [`anchor:${id}:${anchor.id}`, anchor]),
]

/** The id of a part and what of it bears on the people. */
type Part = readonly [string, unknown]

/** What the drawing is held against: the chosen rule set, its limits where they are the builder's own, and what raises them. */
const rulesThatBear = (layout: Layout): unknown => {
  const { dustyOrMuddyUse, ruleSetId, ownRuleSets = [] } = layout
  const ownLimits = ownRuleSets.some(({ id }) => id === ruleSetId) ? chosenRuleSet(layout).rules : []
  return { dustyOrMuddyUse, ruleSetId, ownLimits, confirmedDocuments: confirmedThatBear(layout) }
}

/** The confirmed documents that the chosen rule set has figures from, by name. */
export const confirmedThatBear = (layout: Layout): readonly string[] => {
  const bearing = new Set(documentsToConfirm(chosenRuleSet(layout)))
  return [...(layout.confirmedDocuments ?? [])].filter((name) => bearing.has(name)).sort()
}

/** Part ids of what is no handle of the drawing. */
export const DATUM_PART = 'datum'
export const RULES_PART = 'rules'

/** Every part of the drawn layout that bears on the people who sit there, in the order of the layout. */
const partsOf = (layout: Layout): readonly Part[] => [
  [DATUM_PART, layout.datum],
  [RULES_PART, rulesThatBear(layout)],
  ...layout.tubes.map((tube): Part => [`tube:${tube.id}`, tubeThatBears(tube)]),
  ...layout.places.flatMap(placeParts),
]

const fingerprintOf = (value: unknown, digits: number): string =>
  sha256Hex(Uint8Array.from(canonicalText(value), (character) => character.charCodeAt(0))).slice(0, digits)

/**
 * What of the drawn layout bears on the people who sit there, as lower-case hexadecimal digits: tubes, seats, people, belts and
 * anchors, the datum that all of it is counted from, and what it was checked against: the rule set with its limits, the documents
 * confirmed, dust and mud. Not: job, notes, units, records, photos, other variants, and the names of tubes and places.
 * The first 80 bits of SHA-256 over `canonicalText`.
 */
export const layoutFingerprint = (layout: Layout): string => fingerprintOf(partsOf(layout), DIGITS)

/** The fingerprint of every part by itself. */
export const partPrints = (layout: Layout): readonly PartPrint[] =>
  partsOf(layout).map(([partId, part]) => ({ partId, fingerprint: fingerprintOf(part, PART_DIGITS) }))

/** A fingerprint as people compare and print it, for example "3F07-A91C". */
export const fingerprintCode = (fingerprint: string): string => {
  const digits = fingerprint.slice(0, CODE_DIGITS).toUpperCase()
  return `${digits.slice(0, CODE_DIGITS / 2)}-${digits.slice(CODE_DIGITS / 2)}`
}

/** A variant as it is now, for the record of what was shown. */
const reviewedVariant = ({ id, name, layout }: VariantLayout): ReviewedVariant => ({
  variantId: id,
  name,
  fingerprint: layoutFingerprint(layout),
  parts: partPrints(layout),
})

/** Whether a layout holds what was shown: a variant with the fingerprint of one of those. */
export const holdsShown = (layout: Layout, { variants }: Pick<ShownEntry, 'variants'>): boolean => {
  const shown = new Set(variants.map(({ fingerprint }) => fingerprint))
  return variantsOf(layout).some((variant) => shown.has(layoutFingerprint(variant.layout)))
}

/** What was shown, with the parts of every variant that is still there as it was: they do not travel. */
export const withPartsOf = (shown: ShownEntry, layout: Layout): ShownEntry => {
  const present = reviewedVariantsOf(layout)
  const partsOfPrint = (fingerprint: string) =>
    present.find((variant) => variant.fingerprint === fingerprint)?.parts
  return {
    ...shown,
    variants: shown.variants.map((variant) => {
      const parts = partsOfPrint(variant.fingerprint)
      return parts === undefined ? variant : { ...variant, parts }
    }),
  }
}

/** Every variant of a layout as it is now; of a layout without variants itself alone. */
export const reviewedVariantsOf = (layout: Layout): readonly ReviewedVariant[] =>
  variantsOf(layout).map(reviewedVariant)

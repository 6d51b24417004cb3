import type { Layout } from '../document/layout'
import type { DecisionEntry, ReviewedVariant, ReviewEntry, ShownEntry } from '../document/review'
import { variantsOf } from '../edit/changeVariants'
import { layoutFingerprint, partPrints } from './fingerprint'

/**
 * How an agreement stands to the layout as it is now. `as-drawn`: to exactly what is drawn. `other-variant`: to a variant that is
 * still there but not drawn. `changed`: to what was shown then, which has changed. `not-as-shown`: what the customer looked at was
 * not what was shown, so something came between.
 */
type AgreedTo = 'as-drawn' | 'other-variant' | 'changed' | 'not-as-shown'

/** Where the talk with the customer has got to. */
export type Agreement =
  | { readonly kind: 'not-shown' }
  /** Shown, and nothing decided since. */
  | { readonly kind: 'open'; readonly shown: ShownEntry }
  | { readonly kind: 'change-asked'; readonly decision: DecisionEntry; readonly shown: ShownEntry }
  | {
      readonly kind: 'agreed'
      readonly decision: DecisionEntry
      readonly shown: ShownEntry
      readonly to: AgreedTo
      /** The name of the variant agreed to, empty where there were none. */
      readonly variantName: string
      /** Ids of the parts that are not as they were; empty unless `changed`, and where nobody kept how they were. */
      readonly changedParts: readonly string[]
    }

const isShown = (entry: ReviewEntry): entry is ShownEntry => entry.kind === 'shown'
const isDecision = (entry: ReviewEntry): entry is DecisionEntry =>
  entry.kind === 'agreed' || entry.kind === 'change-asked'

/**
 * The decision that counts: of the last day, and of several on it the one entered last. A wish for a change that was entered last,
 * about the same showing, counts whatever its day: a clock that runs slow must not hide it. Null while nothing was decided.
 */
const lastDecision = (entries: readonly ReviewEntry[]): DecisionEntry | null => {
  const decisions = entries.filter(isDecision)
  const entered = decisions.at(-1)
  if (entered === undefined) return null
  const ofLastDay = decisions.reduce((last, entry) => (entry.date >= last.date ? entry : last))
  return entered.kind === 'change-asked' && entered.shownId === ofLastDay.shownId ? entered : ofLastDay
}

/** The entry with which something was shown, by its id; null when there is none. */
export const shownById = (layout: Layout, shownId: string): ShownEntry | null =>
  (layout.reviews ?? []).filter(isShown).find(({ id }) => id === shownId) ?? null

/** What was shown last; null while nothing was. */
export const lastShown = (layout: Layout): ShownEntry | null =>
  (layout.reviews ?? []).filter(isShown).at(-1) ?? null

/** Where the talk with the customer has got to, worked out from what was said and from the layout as it is now. */
export const agreementOf = (layout: Layout): Agreement => {
  const newest = lastShown(layout)
  if (newest === null) return { kind: 'not-shown' }
  const decision = lastDecision(layout.reviews ?? [])
  const shown = decision === null ? null : shownById(layout, decision.shownId)
  if (decision === null || shown === null) return { kind: 'open', shown: newest }
  if (decision.kind === 'agreed') return agreed(layout, decision, shown)
  // A wish for a change is answered by what was shown after it.
  return shown === newest ? { kind: 'change-asked', decision, shown } : { kind: 'open', shown: newest }
}

const agreed = (layout: Layout, decision: DecisionEntry, shown: ShownEntry): Agreement => {
  const then = shown.variants.find(({ variantId }) => variantId === decision.variantId)
  const to = agreedTo(layout, decision, then)
  return {
    kind: 'agreed',
    decision,
    shown,
    to,
    variantName: then?.name ?? '',
    changedParts: to === 'changed' ? changedParts(layout, decision.variantId, then) : [],
  }
}

const agreedTo = (
  layout: Layout,
  { fingerprint }: DecisionEntry,
  then: ReviewedVariant | undefined,
): AgreedTo => {
  if (layoutFingerprint(layout) === fingerprint) return 'as-drawn'
  const isThere = variantsOf(layout).some((variant) => layoutFingerprint(variant.layout) === fingerprint)
  if (isThere) return 'other-variant'
  return then?.fingerprint === fingerprint ? 'changed' : 'not-as-shown'
}

/** The parts of that variant, or of the drawn one where it is gone, that are not as they were, the removed ones last. */
const changedParts = (
  layout: Layout,
  variantId: string,
  then: ReviewedVariant | undefined,
): readonly string[] => {
  if (then?.parts === undefined) return []
  const now = variantsOf(layout).find(({ id }) => id === variantId)?.layout ?? layout
  const before = new Map(then.parts.map(({ partId, fingerprint }) => [partId, fingerprint]))
  const present = partPrints(now)
  const isPresent = new Set(present.map(({ partId }) => partId))
  return [
    ...present.filter(({ partId, fingerprint }) => before.get(partId) !== fingerprint),
    ...then.parts.filter(({ partId }) => !isPresent.has(partId)),
  ].map(({ partId }) => partId)
}

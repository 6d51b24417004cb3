import { err, ok, type Result } from '../../result'
import type { Layout } from '../document/layout'
import { orderedText } from '../document/layoutText'
import { parseLayout } from '../document/parseLayout'
import type { LayoutProblem } from '../document/problem'
import type { ShownEntry } from '../document/review'
import { shownById } from './agreement'
import { confirmedThatBear } from './fingerprint'

/** A version of a layout as it travels to the customer. */
export interface Proposal {
  readonly shown: ShownEntry
  readonly layout: Layout
}

/**
 * What of a layout the customer is sent: the drawing with its variants, the people, the belts, what it is checked against, the job by
 * name, what nobody has measured yet, and the one entry that says who shows it. Not: notes and revisions, what was measured on the car, the histories of belts,
 * photos, what the shop may be off by, points for tapes, rule sets that are not used, and what was said before.
 */
const proposedLayout = (layout: Layout, shown: ShownEntry): Layout => {
  const { job, ownRuleSets = [], variants } = layout
  const confirmedDocuments = confirmedThatBear(layout)
  const { notes: _notes, revisions: _revisions, ...named } = job
  const used = ownRuleSets.filter(({ id }) => id === layout.ruleSetId)
  return {
    version: layout.version,
    job: { ...named, notes: '' },
    datum: layout.datum,
    units: layout.units,
    dustyOrMuddyUse: layout.dustyOrMuddyUse,
    ruleSetId: layout.ruleSetId,
    ...(used.length === 0 ? {} : { ownRuleSets: used }),
    ...(confirmedDocuments.length === 0 ? {} : { confirmedDocuments }),
    ...(variants === undefined ? {} : { variants }),
    ...(layout.notMeasured === undefined ? {} : { notMeasured: layout.notMeasured }),
    reviews: [{ ...shown, variants: shown.variants.map(({ parts: _parts, ...variant }) => variant) }],
    tubes: layout.tubes,
    places: layout.places,
  }
}

/** The version of the wrapping of a proposal. */
const PROPOSAL_VERSION = 1

/** A proposal as a file or a link holds it; null when nothing was shown under that id. */
export const proposalText = (layout: Layout, shownId: string): string | null => {
  const shown = shownById(layout, shownId)
  if (shown === null) return null
  return orderedText({ proposal: PROPOSAL_VERSION, layout: proposedLayout(layout, shown) })
}

const refused = (received: string, message: string): Result<never, readonly LayoutProblem[]> =>
  err([{ path: '', received, message, remedy: 'Ask for the link or the file of the proposal once more.' }])

/** A proposal from a text that came from anywhere. */
export const parseProposal = (text: string): Result<Proposal, readonly LayoutProblem[]> => {
  const input = jsonGroup(text)
  if (input === null) return refused(`${text.length} characters`, 'The proposal is damaged or cut off.')
  if (input['proposal'] !== PROPOSAL_VERSION)
    return refused(
      String(input['proposal']).slice(0, 20),
      'This is no proposal that this program can read; it reads version 1.',
    )
  const parsed = parseLayout(input['layout'])
  if (!parsed.ok) return parsed
  const [shown, ...more] = parsed.value.reviews ?? []
  if (shown?.kind !== 'shown' || more.length > 0)
    return refused(`${more.length + 1} entries`, 'The proposal does not say who shows it.')
  return ok({ shown, layout: parsed.value })
}

/** The group of fields that a text holds; null when it holds none. */
export const jsonGroup = (text: string): Readonly<Record<string, unknown>> | null => {
  try {
    const input: unknown = JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text)
    return typeof input === 'object' && input !== null && !Array.isArray(input) ? { ...input } : null
  } catch {
    return null
  }
}

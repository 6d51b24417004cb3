import { type StrapId, strapFamily } from '../../straps/strap'
import type { Layout } from '../document/layout'
import type { PlainFinding } from './plainFinding'

interface About {
  /** Null: whatever the place. */
  readonly placeId: string | null
  readonly subjects: readonly string[]
}

const ofStraps = (placeId: string, straps: readonly StrapId[]): About => ({
  placeId,
  subjects: [...straps, ...straps.map((strap) => `${strapFamily(strap)}-pair`)],
})

/** What findings are about a part that can be pointed at. */
const aboutPart = (partId: string, layout: Layout): About => {
  const [kind, owner = '', id = ''] = partId.split(':')
  const place = layout.places.find((each) => each.id === owner)
  if (kind === 'tube') return { placeId: null, subjects: [partId] }
  if (place === undefined) return { placeId: null, subjects: [] }
  if (kind === 'hip') return { placeId: owner, subjects: ['head', 'body', 'belt'] }
  if (kind === 'slot') return ofStraps(owner, place.seat.slots.find((slot) => slot.id === id)?.straps ?? [])
  const anchor = place.anchors.find((each) => each.id === id)
  return ofStraps(owner, anchor === undefined ? [] : [anchor.strap])
}

/** The findings that speak of a part, the heaviest first. */
export const findingsOfPart = (
  findings: readonly PlainFinding[],
  partId: string,
  layout: Layout,
): readonly PlainFinding[] => {
  const { placeId, subjects } = aboutPart(partId, layout)
  return findings.filter(({ cases }) =>
    cases.some(
      ({ finding }) =>
        (placeId === null || finding.placeId === placeId) && subjects.includes(finding.subject),
    ),
  )
}

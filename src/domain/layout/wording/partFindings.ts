import type { RuleLevel } from '../../rules/rule'
import type { ShownFinding, ShownVerdict } from '../../rules/finding'
import { type StrapFamily, type StrapId, strapFamily } from '../../straps/strap'
import type { Layout } from '../document/layout'
import type { HandleRef } from '../edit/handle'

const PAIR: Readonly<Record<StrapFamily, ShownFinding['subject']>> = {
  shoulder: 'shoulder-pair',
  lap: 'lap-pair',
  sub: 'sub-pair',
}

const ofStraps = (straps: readonly StrapId[]): readonly ShownFinding['subject'][] => [
  ...straps,
  ...straps.map((strap) => PAIR[strapFamily(strap)]),
]

const SHOULDER: readonly ShownFinding['subject'][] = ['shoulder-left', 'shoulder-right', 'shoulder-pair']

/** What a part is the subject of; null where every finding of its place hangs on it. */
const subjectsOf = (layout: Layout, ref: HandleRef): readonly ShownFinding['subject'][] | null => {
  switch (ref.kind) {
    case 'hip':
    case 'recline':
    case 'shoulder-point':
    case 'shell-point':
      return null
    case 'anchor': {
      const place = layout.places.find(({ id }) => id === ref.placeId)
      const anchor = place?.anchors.find(({ id }) => id === ref.anchorId)
      return anchor === undefined ? [] : ofStraps([anchor.strap])
    }
    case 'slot': {
      const place = layout.places.find(({ id }) => id === ref.placeId)
      return ofStraps(place?.seat.slots.find(({ id }) => id === ref.slotId)?.straps ?? [])
    }
    case 'tube-point':
    case 'tube-height': {
      const isBar = layout.tubes.find(({ id }) => id === ref.tubeId)?.role === 'harness-bar'
      return [`tube:${ref.tubeId}`, 'head', ...(isBar ? SHOULDER : [])]
    }
  }
}

/** The findings that moving a part can change: those of its straps and pairs, of a bar those of the shoulder straps, of the seat all of its place. */
export const findingsOfPart = (
  layout: Layout,
  ref: HandleRef,
  findings: readonly ShownFinding[],
): readonly ShownFinding[] => {
  const subjects = subjectsOf(layout, ref)
  return findings.filter(
    ({ placeId, subject }) =>
      (!('placeId' in ref) || placeId === ref.placeId) && (subjects === null || subjects.includes(subject)),
  )
}

const WORST_FIRST: readonly ShownVerdict[] = ['broken', 'unchecked', 'tight', 'kept', 'clear']
const LEVELS: readonly RuleLevel[] = ['must', 'should', 'advice']

const rank = ({ verdict, level }: ShownFinding): number =>
  WORST_FIRST.indexOf(verdict) * LEVELS.length + LEVELS.indexOf(level)

/** What needs a person first: broken before unchecked before tight, a must before a should; the first of equals. Null of none. */
export const worstFinding = (findings: readonly ShownFinding[]): ShownFinding | null =>
  findings.toSorted((a, b) => rank(a) - rank(b))[0] ?? null

import { err, ok, type Result } from '../../result'
import type { Anchor } from '../../straps/anchor'
import type { StrapId } from '../../straps/strap'
import type { Layout, Place } from '../document/layout'
import { ruleSetOf } from '../document/ruleSetOf'
import { withPlaceChanged } from '../edit/replace'
import { type Ground, groundOf, placeWith } from './ground'
import { type MovingGroup, movingGroups } from './group'
import { type Meter, meterOf, type OnProgress } from './meter'
import type { Proposal, Proposals } from './proposal'
import { type Explained, explainedPosition, furthestMoveMm, type Position } from './reasons'
import { type Candidate, compareCounts, compareScored, isApart, type Placed, type Scored } from './score'
import { bestOf, bestTogether, plannedLooks, REFINING_LOOKS, type Searched, searchedGroup } from './search'
import { MOST_PROPOSALS, type ProposalWish, type WishProblem } from './wish'

/** The layout with a proposal taken: exactly the mounts that were worked out. */
export const withProposal = (layout: Layout, placeId: string, proposal: Pick<Proposal, 'mounts'>): Layout =>
  withPlaceChanged(layout, placeId, (place) =>
    placeWith(place, new Map(proposal.mounts.map(({ anchorId, mount }) => [anchorId, mount]))),
  )

interface Search {
  readonly position: Position
  readonly groups: readonly MovingGroup[]
  readonly wish: ProposalWish
  readonly meter: Meter
}

const strapsIn = (groups: readonly MovingGroup[]): ReadonlySet<StrapId> =>
  new Set(
    groups.flatMap(({ primary, partner }) => [primary.strap, ...(partner === null ? [] : [partner.strap])]),
  )

/** The place with each partner on a mount of the primary anchor's kind, as it will be where a pair is made symmetric. */
const asIfMoved = (place: Place, groups: readonly MovingGroup[]): Place =>
  placeWith(
    place,
    new Map(
      groups.flatMap(({ primary, partner }): (readonly [string, Anchor['mount']])[] =>
        partner === null ? [] : [[partner.id, primary.mount]],
      ),
    ),
  )

const groundFor = (
  { layout, ruleSet }: Position,
  place: Place,
  moving: readonly MovingGroup[],
  later: readonly MovingGroup[],
): Ground =>
  groundOf({
    layout,
    place,
    ruleSet,
    moving: strapsIn(moving),
    later: strapsIn(later),
    asIf: asIfMoved(place, moving),
  })

const anywhere = (): boolean => true

/** Groups one after the other, each at its best with those before it where they are best; null where one finds no place. */
const oneByOne = ({ position, groups, meter }: Search): readonly Placed[] | null => {
  let { place } = position
  const placed: Placed[] = []
  for (const [index, group] of groups.entries()) {
    meter.begin(plannedLooks(group))
    const ground = groundFor(position, place, [group], groups.slice(index + 1))
    const { best } = bestOf(searchedGroup(ground, group, meter), anywhere, meter, false)
    if (best === null) return null
    placed.push(...best.placed)
    place = placeWith(place, best.trial.mounts)
  }
  return placed
}

/** Best first, each apart from all before it, none breaking more than the first. */
const rankedApart = (found: readonly Scored[], apartMm: number): readonly Scored[] => {
  const chosen: Scored[] = []
  const [first, ...rest] = found.toSorted(compareScored)
  if (first === undefined) return []
  chosen.push(first)
  for (const each of rest) {
    if (chosen.length >= MOST_PROPOSALS) break
    const isEqual = compareCounts(each.screen.counts, first.screen.counts) === 0
    if (isEqual && chosen.every((other) => isApart(each, other, apartMm))) chosen.push(each)
  }
  return chosen
}

/** One group: the best place, then the best one far enough from it, and so on. */
const forOneGroup = (search: Search, group: MovingGroup): readonly Scored[] => {
  const { position, wish, meter } = search
  meter.begin(plannedLooks(group))
  const ground = groundFor(position, position.place, [group], [])
  let searched: Searched = searchedGroup(ground, group, meter)
  const found: Scored[] = []
  while (found.length < MOST_PROPOSALS) {
    if (found.length > 0) meter.begin(REFINING_LOOKS)
    const isAllowed = (scored: Candidate): boolean =>
      found.every((other) => isApart(scored, other, wish.apartMm)) &&
      (found[0] === undefined || compareCounts(scored.screen.counts, found[0].screen.counts) <= 0)
    const next = bestOf(searched, isAllowed, meter)
    searched = next.searched
    if (next.best === null) break
    found.push(next.best)
  }
  return rankedApart(found, wish.apartMm)
}

/** Several groups: the best for all together, then each group in turn at its next best place while the others stay. */
const forAllGroups = (search: Search): readonly Scored[] => {
  const { position, groups, wish, meter } = search
  const alone = oneByOne(search)
  if (alone === null) return []
  const ground = groundFor(position, position.place, groups, [])
  meter.begin(groups.length * REFINING_LOOKS)
  const together = bestTogether(ground, alone, meter, true)
  if (together === null) return []
  const others = groups.flatMap((group, index) => {
    meter.begin(plannedLooks(group))
    const mounts = together.trial.mounts
    const here = groundFor(position, placeWith(position.place, mounts), [group], [])
    const isAllowed = (scored: Candidate): boolean => isApart(scored, together, wish.apartMm)
    const { best } = bestOf(searchedGroup(here, group, meter), isAllowed, meter)
    const placed = together.placed.map((each, at) => (at === index ? (best?.placed[0] ?? each) : each))
    return best === null ? [] : (bestTogether(ground, placed, meter, false) ?? [])
  })
  return rankedApart([together, ...others], wish.apartMm)
}

const totalLooks = (groups: readonly MovingGroup[]): number => {
  const once = groups.reduce((sum, group) => sum + plannedLooks(group), 0)
  return groups.length === 1
    ? once + (MOST_PROPOSALS - 1) * REFINING_LOOKS
    : 2 * once + groups.length * REFINING_LOOKS
}

/** Only the anchors that are part of the position: what the search set, in the order of the place. */
const mountsOf = (place: Place, { trial }: Scored): Proposal['mounts'] =>
  place.anchors.flatMap(({ id }) => {
    const mount = trial.mounts.get(id)
    return mount === undefined ? [] : [{ anchorId: id, mount }]
  })

const turnedTabs = (from: Place, to: Place): readonly string[] =>
  from.anchors.flatMap(({ id, mount }) => {
    const there = to.anchors.find((anchor) => anchor.id === id)?.mount
    const isTurned =
      mount.kind === 'tab' &&
      there?.kind === 'tab' &&
      (mount.planDeg !== there.planDeg || mount.leanDeg !== there.leanDeg)
    return isTurned ? [id] : []
  })

const proposalOf = (position: Position, present: Explained, scored: Scored): Omit<Proposal, 'id'> => {
  const mounts = mountsOf(position.place, scored)
  const layout = withProposal(position.layout, position.place.id, { mounts })
  const place = layout.places.find(({ id }) => id === position.place.id) ?? position.place
  const { roomMm, limiting, broken, findings, staying, unmeasured } = explainedPosition(
    { ...position, layout, place },
    present.others,
  )
  return {
    mounts,
    roomMm,
    limiting,
    broken,
    findings,
    staying: staying(),
    unmeasured: unmeasured.map(({ ruleId, quantity, subject }) => ({ ruleId, quantity, subject })),
    movedMm: furthestMoveMm(position.place, place),
    turnedTabs: turnedTabs(position.place, place),
  }
}

/**
 * Positions for one anchor or all anchors of a place with the most worst-case room: the least room, over all rules about the straps
 * that move and all sittings, is as large as the search finds it. Rules that are kept by straps that stay have to stay kept, and
 * what such a strap loses in room counts. Where no place keeps everything, those that break fewest orders, then fewest
 * recommendations, then least advice come first. The same wish on the same layout gives the same answer.
 */
export const proposedPositions = (
  layout: Layout,
  wish: ProposalWish,
  onProgress: OnProgress = () => undefined,
): Result<Proposals, WishProblem> => {
  const place = layout.places.find(({ id }) => id === wish.placeId)
  const ruleSet = ruleSetOf(layout)
  if (place === undefined || ruleSet === null) return err({ kind: 'place-unknown', placeId: wish.placeId })
  const groups = movingGroups(layout, place, wish)
  if (!groups.ok) return groups
  const [first] = groups.value
  if (first === undefined) return err({ kind: 'no-anchors' })
  const position: Position = { layout, place, ruleSet, moving: strapsIn(groups.value) }
  const meter = meterOf(totalLooks(groups.value), onProgress)
  const search: Search = { position, groups: groups.value, wish, meter }
  const found = groups.value.length === 1 ? forOneGroup(search, first) : forAllGroups(search)
  meter.end()
  if (found.length === 0) return err({ kind: 'no-spot', anchorId: first.primary.id })
  const present = explainedPosition(position, null)
  return ok({
    placeId: place.id,
    ruleSetId: ruleSet.id,
    anchorIds: place.anchors.filter(({ strap }) => position.moving.has(strap)).map(({ id }) => id),
    present: { roomMm: present.roomMm, limiting: present.limiting, broken: present.broken },
    proposals: found.map((scored, index) => ({
      id: `proposal-${index + 1}`,
      ...proposalOf(position, present, scored),
    })),
  })
}

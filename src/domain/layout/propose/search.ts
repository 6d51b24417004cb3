import type { Ground } from './ground'
import type { MovingGroup } from './group'
import type { Meter } from './meter'
import { climbed, lookedRound, type Refining } from './refine'
import { roughRoom, type RoughRoom } from './rough'
import {
  type Candidate,
  candidateAt,
  compareCounts,
  compareScored,
  coordinatesOf,
  type Placed,
  placedAt,
  type Scored,
  scoredCandidate,
} from './score'
import { firstLooks, heldToAxis, lookStep, roundedOnAxis } from './track'

/** Of the places that break fewest rules at the first look, so many with most room by a rough reckoning are measured. Our judgement. */
const MOST_MEASURED = 14

/** So many more where fewer than refining begins from may still be taken. Our judgement. */
const LATER_MEASURED = 4

/** From how many different places refining begins. Our judgement: zones of several strips have one best place in each. */
const SEEDS = 3

/** Looks that refining from one place is planned to take, for the progress alone. */
export const REFINING_LOOKS = 100

/** A place by where it is alone, since a trial is large, and about how much room it has. */
interface Ranked {
  readonly placed: readonly Placed[]
  readonly rough: RoughRoom
}

/** What the first look at one group found and every place that was measured since; later proposals are chosen from it. */
export interface Searched {
  readonly ground: Ground
  /** Those that break fewest rules, with most room by a rough reckoning first, and what was passed by since. */
  readonly ranked: readonly Ranked[]
  readonly scored: readonly Scored[]
}

/** How many places the first look at a group takes. */
const looksOf = ({ tracks }: MovingGroup): number =>
  tracks.reduce((sum, track) => sum + firstLooks(track).length + 1, 0)

/** Looks planned for a group: the first one, measuring, refining the best. For the progress alone. */
export const plannedLooks = (group: MovingGroup): number =>
  looksOf(group) + MOST_MEASURED + SEEDS * REFINING_LOOKS

const firstCandidates = (ground: Ground, group: MovingGroup, meter: Meter): readonly Candidate[] =>
  group.tracks.flatMap((track) => {
    const drawn = track.nearestAt(group.primary.mount.point).map((value, index) => {
      const axis = track.axes[index]
      return axis === undefined ? value : heldToAxis(axis, value)
    })
    return [drawn, ...firstLooks(track)].flatMap((at) => {
      meter.look()
      return candidateAt(ground, [{ group, track, at }]) ?? []
    })
  })

const fewestBroken = (candidates: readonly Candidate[]): readonly Candidate[] => {
  const best = candidates.reduce<Candidate | null>(
    (least, each) =>
      least === null || compareCounts(each.screen.counts, least.screen.counts) < 0 ? each : least,
    null,
  )
  return best === null
    ? []
    : candidates.filter(({ screen }) => compareCounts(screen.counts, best.screen.counts) === 0)
}

const byRoughRoom = ({ rough: a }: Ranked, { rough: b }: Ranked): number =>
  b.violationMm - a.violationMm || b.keptMm - a.keptMm || 0

const rankedPlace = (ground: Ground, candidate: Candidate): Ranked => ({
  placed: candidate.placed,
  rough: roughRoom(ground, candidate),
})

/** The first of some candidates, which is nearest to the drawn place, then the others, with most room by a rough reckoning first. */
const rankedPlaces = (ground: Ground, candidates: readonly Candidate[]): readonly Ranked[] => {
  const [first, ...rest] = fewestBroken(candidates).map((candidate) => rankedPlace(ground, candidate))
  return first === undefined ? [] : [first, ...rest.toSorted(byRoughRoom)]
}

/** The first look at a group: every place of its tracks tried, the best of them measured, no two from one part of the first look. */
export const searchedGroup = (ground: Ground, group: MovingGroup, meter: Meter): Searched => {
  const ranked = rankedPlaces(ground, firstCandidates(ground, group, meter))
  return withMeasured({ ground, ranked, scored: [] }, MOST_MEASURED, () => true, meter)
}

/** The same with so many more of its places measured, of those that may be taken, away from all others of those that were measured. */
const withMeasured = (
  searched: Searched,
  most: number,
  isAllowed: (candidate: Candidate) => boolean,
  meter: Meter,
): Searched => {
  const { ground, ranked } = searched
  const more: Scored[] = []
  const before = searched.scored.filter(isAllowed)
  for (const { placed } of ranked) {
    if (more.length >= most) break
    if (![...before, ...more].every((other) => areDifferent(other, { placed }))) continue
    const candidate = candidateAt(ground, placed)
    if (candidate === null || !isAllowed(candidate)) continue
    meter.look()
    more.push(scoredCandidate(ground, candidate))
  }
  return { ...searched, scored: [...searched.scored, ...more] }
}

/** Whether two places lie in different parts of the first look: on other tracks or more than a look and a half apart. */
const areDifferent = (a: Pick<Candidate, 'placed'>, b: Pick<Candidate, 'placed'>): boolean =>
  a.placed.some((placed, index) => {
    const other = b.placed[index]
    if (other === undefined || placed.track !== other.track) return true
    return placed.track.axes.some((axis, at) => {
      const gap = Math.abs((placed.at[at] ?? 0) - (other.at[at] ?? 0))
      const across = axis.isRound ? Math.min(gap, axis.high - axis.low - gap) : gap
      return across > 1.5 * lookStep(axis)
    })
  })

const seedsOf = (scored: readonly Scored[], count: number): readonly Scored[] => {
  const seeds: Scored[] = []
  for (const each of scored.toSorted(compareScored)) {
    if (seeds.length >= count) break
    if (seeds.every((seed) => areDifferent(seed, each))) seeds.push(each)
  }
  return seeds
}

/** The place as it is given: rounded to what can be set, unless that breaks a rule or takes it where it may not be. */
const rounded = (ground: Ground, best: Scored, isAllowed: (candidate: Candidate) => boolean): Scored => {
  const at = best.placed.flatMap(({ track, at: own }) =>
    track.axes.map((axis, index) => roundedOnAxis(axis, own[index] ?? 0)),
  )
  const candidate = candidateAt(ground, placedAt(best.placed, at))
  if (candidate === null || compareCounts(candidate.screen.counts, best.screen.counts) > 0) return best
  const scored = scoredCandidate(ground, candidate)
  return isAllowed(scored) ? scored : best
}

/**
 * Refines from the best of the measured places that may be taken; null where none may. What is measured on the way is added. Where
 * others will move as well it is not `final`: only so far that it is plain which place leads highest.
 */
export const bestOf = (
  found: Searched,
  isAllowed: (candidate: Candidate) => boolean,
  meter: Meter,
  isFinal = true,
): { readonly best: Scored | null; readonly searched: Searched } => {
  const isShort = found.scored.filter(isAllowed).length < SEEDS
  const searched = isShort ? withMeasured(found, LATER_MEASURED, isAllowed, meter) : found
  const { ground } = searched
  const more: Scored[] = []
  const passedBy: Ranked[] = []
  const refining: Refining = {
    ground,
    isAllowed,
    onLook: meter.look,
    onScored: (scored) => void more.push(scored),
    onPassedBy: (candidate) => void passedBy.push(rankedPlace(ground, candidate)),
  }
  const tops = seedsOf(searched.scored.filter(isAllowed), SEEDS).map((seed) => climbed(refining, seed))
  const [top] = tops.toSorted(compareScored)
  const isToEnd = isFinal && top !== undefined
  const best = isToEnd ? rounded(ground, lookedRound(refining, top), isAllowed) : (top ?? null)
  return {
    best,
    searched: {
      ground,
      ranked: [...searched.ranked, ...passedBy].toSorted(byRoughRoom),
      scored: [...searched.scored, ...more],
    },
  }
}

const nothing = (): void => undefined

/** Several groups moved together from where each of them is best alone; null where together they cannot be there. */
export const bestTogether = (
  ground: Ground,
  placed: readonly Placed[],
  meter: Meter,
  isClimbing: boolean,
): Scored | null => {
  const candidate = candidateAt(ground, placed)
  if (candidate === null) return null
  const start = scoredCandidate(ground, candidate)
  if (!isClimbing || coordinatesOf(placed).length === 0) return start
  const isAllowed = (): boolean => true
  const refining = { ground, isAllowed, onLook: meter.look, onScored: nothing, onPassedBy: nothing }
  const top = lookedRound(refining, climbed(refining, start))
  const given = rounded(ground, top, isAllowed)
  return compareScored(given, start) < 0 ? given : start
}

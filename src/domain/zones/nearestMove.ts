import type { Elevation } from '../geometry/plane'
import type { MoveDirection } from '../rules/finding'
import type { QuantityRule } from '../rules/rule'
import { strapSide } from '../straps/strap'
import { keeperOf, type Wanted } from './afterMove'
import { type Move, moveOf, type Trial, trialAfter } from './move'
import { isDecidedIn } from './rulePlane'
import { ruleSubject, scenesOfRule } from './subject'
import type { ZoneCase } from './zone'

/** Farther than this nobody moves a mount to mend an angle; beyond it there is no remedy. Our judgement. */
const FARTHEST_MM = 1000

/** Every whole millimetre up to this is looked at. */
const EVERY_MM = 40

/** Beyond, what is narrower than this share of its distance may be stepped over. */
const STEP_SHARE = 0.025

const looksWith = (everyMm: number, share: number): readonly number[] => {
  const looks: number[] = []
  for (let mm = 1; mm <= FARTHEST_MM; mm += mm < everyMm ? 1 : Math.ceil(mm * share)) looks.push(mm)
  return looks
}

const LOOKS = looksWith(EVERY_MM, STEP_SHARE)

/** The rules of some that the anchor's position in a drawn plane decides, in the sittings in which they speak. */
export const wantedIn = (
  rules: readonly QuantityRule[],
  zoneCase: ZoneCase,
  elevation: Elevation,
): readonly Wanted[] =>
  rules.flatMap((rule) => {
    const subject = ruleSubject(rule, zoneCase)
    const scenes = scenesOfRule(rule, zoneCase)
    const isDecided = isDecidedIn(rule, zoneCase.mirrored, elevation)
    return subject === null || scenes.length === 0 || !isDecided ? [] : [{ rule, subject, scenes }]
  })

/** Where everything of a case is after some moves; null where they cannot be made or its anchor would change its side of the seat. */
export const caseAfter = ({ scenes, anchor }: ZoneCase, moves: readonly Move[]): Trial | null => {
  const scene = scenes[0]?.scene
  const trial = scene && trialAfter(scene, moves)
  if (scene === undefined || trial === undefined || trial === null) return null
  const centreYMm = scene.body.hip.yMm
  const wasMm = anchor.mount.point.yMm - centreYMm
  const there = trial.points[scene.anchors.findIndex(({ id }) => id === anchor.id)]
  const isMm = (there?.yMm ?? centreYMm) - centreYMm
  return isMm !== wasMm && wasMm * isMm <= 0 && wasMm !== 0 ? null : trial
}

/** The smallest move in one direction, in whole mm, `fromMm` or more, after which some rules are kept; null where none within reach does. */
export const leastMove = (
  wanted: readonly Wanted[],
  zoneCase: ZoneCase,
  direction: MoveDirection,
  fromMm = 1,
): Move | null => {
  const isAcross = direction === 'inward' || direction === 'outward'
  if (wanted.length === 0 || (isAcross && strapSide(zoneCase.anchor.strap) === 'centre')) return null
  const start = moveOf(direction, 1, zoneCase)
  if (start === null) return null
  const isKept = keeperOf(wanted)
  const keeps = (byMm: number): boolean => {
    const trial = caseAfter(zoneCase, [{ ...start, byMm }])
    return trial !== null && isKept(trial)
  }
  let beforeMm = fromMm - 1
  for (const lookMm of LOOKS) {
    if (lookMm <= beforeMm) continue
    if (keeps(lookMm))
      for (let byMm = beforeMm + 1; byMm <= lookMm; byMm += 1)
        if (byMm === lookMm || keeps(byMm)) return { ...start, byMm }
    beforeMm = lookMm
  }
  return null
}

/** Whole millimetres along both axes of a drawn plane. */
interface Offset {
  readonly du: number
  readonly dv: number
}

const sizeOf = ({ du, dv }: Offset): number => Math.hypot(du, dv)

/** The ways along the axes of a drawn plane that an anchor can be moved; null for one that it cannot. */
interface PlaneWays {
  readonly rearward: Move | null
  readonly forward: Move | null
  /** Toward +v and −v: up and down, or to the occupant's right and left. */
  readonly plus: Move | null
  readonly minus: Move | null
}

const planeWays = (zoneCase: ZoneCase, elevation: Elevation): PlaneWays => {
  const along = (direction: MoveDirection): Move | null => moveOf(direction, 1, zoneCase)
  const ways = { rearward: along('rearward'), forward: along('forward') }
  if (elevation === 'side') return { ...ways, plus: along('up'), minus: along('down') }
  if (strapSide(zoneCase.anchor.strap) === 'centre') return { ...ways, plus: null, minus: null }
  const isRight = zoneCase.anchor.mount.point.yMm >= (zoneCase.scenes[0]?.scene.body.hip.yMm ?? 0)
  const [outward, inward] = [along('outward'), along('inward')]
  return { ...ways, plus: isRight ? outward : inward, minus: isRight ? inward : outward }
}

/** An offset in a drawn plane as moves along its axes, each in the way that the anchor can be moved; null where one cannot be made. */
const movesOf = ({ du, dv }: Offset, ways: PlaneWays): readonly Move[] | null => {
  const moves: Move[] = []
  for (const [way, byMm] of [
    [du > 0 ? ways.rearward : ways.forward, Math.abs(du)],
    [dv > 0 ? ways.plus : ways.minus, Math.abs(dv)],
  ] as const) {
    if (byMm === 0) continue
    if (way === null) return null
    moves.push({ ...way, byMm })
  }
  return moves
}

/** Places are looked for about the anchor on circles ever farther apart, like the looks along one way but coarser. Our judgement. */
const RINGS = looksWith(16, 0.05)

/** On each circle so far apart at most, in so many places at most. Our judgement. */
const APART_MM = 8
const MOST_LOOKS = 64

/** After the first ring that meets a place so many more are looked at: another may reach nearer. */
const RINGS_MORE = 3

/** Steps of the way along the edge of what is kept to the place of it that is nearest. */
const STEPS: readonly Offset[] = Array.from({ length: 81 }, (_, index) => ({
  du: (index % 9) - 4,
  dv: Math.floor(index / 9) - 4,
}))

/** From a place that keeps some rules to ever nearer ones, until none beside it is nearer. */
const nearest = (from: Offset, isKept: (offset: Offset) => boolean): Offset => {
  let here = from
  for (;;) {
    const found = STEPS.map(({ du, dv }): Offset => ({ du: here.du + du, dv: here.dv + dv }))
      .filter((offset) => sizeOf(offset) < sizeOf(here))
      .toSorted((a, b) => sizeOf(a) - sizeOf(b))
      .find(isKept)
    if (found === undefined) return here
    here = found
  }
}

const ringOffsets = (ringMm: number): readonly Offset[] => {
  const seen = new Map<string, Offset>()
  const count = Math.min(MOST_LOOKS, Math.max(8, Math.ceil((2 * Math.PI * ringMm) / APART_MM)))
  for (let look = 0; look < count; look += 1) {
    const angle = (2 * Math.PI * look) / count
    const offset = { du: Math.round(ringMm * Math.cos(angle)), dv: Math.round(ringMm * Math.sin(angle)) }
    seen.set(`${offset.du},${offset.dv}`, offset)
  }
  return [...seen.values()]
}

/** Places that keep some rules, each the nearest about it, smallest first; none nearer than `leastMm` is looked for. */
const nearestOffsets = (isKept: (offset: Offset) => boolean, leastMm: number): readonly Offset[] => {
  const found = new Map<string, Offset>()
  let lastRing = RINGS.length - 1
  for (const [ring, ringMm] of RINGS.entries()) {
    if (ring > lastRing) break
    if (ringMm < leastMm - 1) continue
    for (const offset of ringOffsets(ringMm)) {
      if (!isKept(offset)) continue
      lastRing = Math.min(lastRing, ring + RINGS_MORE)
      const place = nearest(offset, isKept)
      found.set(`${place.du},${place.dv}`, place)
    }
  }
  return [...found.values()].toSorted((a, b) => sizeOf(a) - sizeOf(b) || a.du - b.du || a.dv - b.dv)
}

type Moves = readonly Move[]

/** The smallest moves along both axes of a drawn plane at once. They still have to be checked by solving every sitting. */
export interface NearestMoves {
  /** After which one rule is kept, each the nearest of the places about it, smallest first. */
  readonly alone: readonly Moves[]
  /** The same for that rule and some others together, as far as the plane decides them. */
  readonly together: readonly Moves[]
}

/** The smallest moves in a drawn plane, in whole mm along its axes, after which a rule is kept, alone and with others. */
export const nearestMoves = (
  rule: QuantityRule,
  others: readonly QuantityRule[],
  zoneCase: ZoneCase,
  elevation: Elevation,
): NearestMoves => {
  const ways = planeWays(zoneCase, elevation)
  const offsetsFor = (rules: readonly QuantityRule[], leastMm: number): readonly Offset[] => {
    const areKept = keeperOf(wantedIn(rules, zoneCase, elevation))
    return nearestOffsets((offset) => {
      const moves = movesOf(offset, ways)
      const trial = moves && caseAfter(zoneCase, moves)
      return trial !== null && areKept(trial)
    }, leastMm)
  }
  const alone = wantedIn([rule], zoneCase, elevation).length === 0 ? [] : offsetsFor([rule], 1)
  const [first] = alone
  // What keeps all of them keeps the one.
  const together = first === undefined ? [] : offsetsFor([rule, ...others], sizeOf(first))
  const movesFor = (offsets: readonly Offset[]): readonly Moves[] =>
    offsets.flatMap((offset) => {
      const moves = movesOf(offset, ways)
      return moves === null || moves.length === 0 ? [] : [moves]
    })
  return { alone: movesFor(alone), together: movesFor(together) }
}

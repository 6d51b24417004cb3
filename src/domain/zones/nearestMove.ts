import type { Elevation } from '../geometry/plane'
import type { MoveDirection } from '../rules/finding'
import type { QuantityRule } from '../rules/rule'
import { strapSide } from '../straps/strap'
import { keeperOf, type Wanted } from './afterMove'
import { type Move, type MovedParts, movedParts, moveOf } from './move'
import { isDecidedIn } from './rulePlane'
import { ruleSubject, scenesOfRule } from './subject'
import type { ZoneCase } from './zone'

/** Farther than this nobody moves a mount to mend an angle; beyond it there is no remedy. Our judgement. */
export const FARTHEST_MM = 1000

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

/** Anchors and tubes of a case after some moves; null where they cannot be made or an anchor would change its side of the seat. */
export const partsAfter = (zoneCase: ZoneCase, moves: readonly Move[]): MovedParts | null => {
  const scene = zoneCase.scenes[0]?.scene
  if (scene === undefined) return null
  let parts: MovedParts = scene
  for (const move of moves) {
    const next = movedParts({ ...scene, ...parts }, move)
    if (next === null) return null
    parts = next
  }
  const { anchor } = zoneCase
  const centreYMm = scene.body.hip.yMm
  const there = parts.anchors.find(({ id }) => id === anchor.id)?.mount.point
  const wasMm = anchor.mount.point.yMm - centreYMm
  const isMm = (there?.yMm ?? centreYMm) - centreYMm
  return isMm !== wasMm && wasMm * isMm <= 0 && wasMm !== 0 ? null : parts
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
    const parts = partsAfter(zoneCase, [{ ...start, byMm }])
    return parts !== null && isKept(parts)
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

/** An offset in a drawn plane as moves along its axes, each in the way that the anchor can be moved; null where one cannot be made. */
const movesOf = ({ du, dv }: Offset, elevation: Elevation, zoneCase: ZoneCase): readonly Move[] | null => {
  const moves: Move[] = []
  const add = (direction: MoveDirection, byMm: number): boolean => {
    const move = byMm === 0 ? null : moveOf(direction, byMm, zoneCase)
    if (move !== null) moves.push(move)
    return byMm === 0 || move !== null
  }
  if (!add(du > 0 ? 'rearward' : 'forward', Math.abs(du))) return null
  if (elevation === 'side') return add(dv > 0 ? 'up' : 'down', Math.abs(dv)) ? moves : null
  if (dv !== 0 && strapSide(zoneCase.anchor.strap) === 'centre') return null
  const isRight = zoneCase.anchor.mount.point.yMm >= (zoneCase.scenes[0]?.scene.body.hip.yMm ?? 0)
  return add(isRight === dv > 0 ? 'outward' : 'inward', Math.abs(dv)) ? moves : null
}

/** Directions in which places are looked for, and how far apart the looks along them are. Our judgement. */
const RAYS = 32
const RINGS = looksWith(24, 0.045)

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
  for (let ray = 0; ray < RAYS; ray += 1) {
    const angle = (2 * Math.PI * ray) / RAYS
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
  const offsetsFor = (rules: readonly QuantityRule[], leastMm: number): readonly Offset[] => {
    const areKept = keeperOf(wantedIn(rules, zoneCase, elevation))
    return nearestOffsets((offset) => {
      const moves = movesOf(offset, elevation, zoneCase)
      const parts = moves && partsAfter(zoneCase, moves)
      return parts !== null && areKept(parts)
    }, leastMm)
  }
  const alone = wantedIn([rule], zoneCase, elevation).length === 0 ? [] : offsetsFor([rule], 1)
  const [first] = alone
  // What keeps all of them keeps the one.
  const together = first === undefined ? [] : offsetsFor([rule, ...others], sizeOf(first))
  const movesFor = (offsets: readonly Offset[]): readonly Moves[] =>
    offsets.flatMap((offset) => {
      const moves = movesOf(offset, elevation, zoneCase)
      return moves === null || moves.length === 0 ? [] : [moves]
    })
  return { alone: movesFor(alone), together: movesFor(together) }
}

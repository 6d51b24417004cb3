import { LIMIT_TOLERANCE, marginInside } from '../../rules/check'
import type { QuantityRule } from '../../rules/rule'
import { ruleSubjects } from '../../rules/subjects'
import { type QuantityUnit, quantityUnit, type Subject } from '../../straps/quantity'
import type { Layout, Place } from '../document/layout'
import type { Sitting } from './evaluation'
import { valuesOf } from './placeNumbers'
import { bendOf, hiddenAbout, isClearance, worstAbout } from './seatSearch'
import type { SeatedLattice } from './seatedLattice'
import type { SolvedSitting } from './solvedSittings'
import { speaksIn } from './speaking'

/*
 * A limit that is kept at both ends of the seat's travel can be broken on the way: a tube between the two ends of a strap's sweep, a
 * slot that holds the strap only half way. So everybody is solved on a lattice of positions, and where a number comes near its limit
 * also between those.
 */

/** What of a rule says how well a number does. */
type Asking = Pick<QuantityRule, 'quantity' | 'family' | 'min' | 'max' | 'when'>

/** Whatever the rules ask: a strap through a tube lies otherwise, and then no rule has a number for it. */
const NO_TUBE_IN_THE_WAY: Asking = { quantity: 'tube-clearance', family: null, min: 0, max: null, when: {} }

/** By how much a position in between has to be worse before it is worth telling. Our judgement. */
const TELLING: Readonly<Record<QuantityUnit, number>> = { mm: 0.5, deg: 0.1, ratio: 0.01 }

/** A number that stays inside its limits by more than this is not told in between. Our judgement: twice the room that counts as tight. */
const NEAR: Readonly<Record<QuantityUnit, number>> = { mm: 20, deg: 2, ratio: 0.02 }

/** Numbers that are kept so far are looked for between the positions of the lattice about so many of them, for each rule and part. */
const MOST_STARTS = 3

/** One number that a rule asks about, and how far inside its limits it lies at each position of the lattice. */
interface Demand {
  readonly rule: Asking
  readonly subject: Subject
  readonly speaks: (sitting: Sitting) => boolean
}

const demandsOf = (layout: Layout, place: Place, rules: readonly Asking[]): readonly Demand[] => {
  const scene = { belt: place.belt, anchors: place.anchors, tubes: layout.tubes, seat: place.seat }
  return rules.flatMap((rule) =>
    ruleSubjects(rule, scene).map((subject) => ({
      rule,
      subject,
      speaks: speaksIn(layout, place, rule, subject),
    })),
  )
}

/** How far inside its limits a number lies; NaN without a number, Infinity where the rule does not speak. */
const marginOf = ({ rule, subject, speaks }: Demand, { sitting, solved }: SolvedSitting): number => {
  if (!speaks(sitting)) return Infinity
  for (const { id, subject: of, value } of solved.quantities)
    if (id === rule.quantity && of === subject) return marginInside(value, rule)
  return NaN
}

/** The same at every position of the lattice. */
const marginsOf = ({ rule, subject, speaks }: Demand, { all }: SeatedLattice): readonly number[] => {
  const values = valuesOf(all, rule.quantity, subject)
  return all.map(({ sitting }, index) => {
    if (!speaks(sitting)) return Infinity
    const value = values[index] ?? null
    return value === null ? NaN : marginInside(value, rule)
  })
}

/** Positions that are as bad as all next to them and between which something worse may hide that would break the limit. */
const startsOf = (
  { rule }: Demand,
  lattice: SeatedLattice,
  margins: readonly number[],
): readonly number[] => {
  let least = Infinity
  let most = -Infinity
  for (const margin of margins) {
    if (!Number.isFinite(margin)) continue
    if (margin < least) least = margin
    if (margin > most) most = margin
  }
  // Three in a row bend by no more than twice all that the number changes.
  const mostBend = 2 * (most - least)
  if (least > most || least - hiddenAbout(rule.quantity, mostBend, lattice.step) >= 0) return []
  // How far a clearance that is broken goes, but no other number: the lattice says that it is broken.
  if (least < 0) return isClearance(rule.quantity) ? [margins.indexOf(least)] : []
  const starts = margins.flatMap((margin, index) => {
    const about = lattice.about[index]
    if (about === undefined || !Number.isFinite(margin)) return []
    if (about.beside.some((other) => (margins[other] ?? NaN) < margin)) return []
    const bend = about.rows.reduce(
      (greatest, { indexes: [a, b, c], at }) =>
        Math.max(greatest, bendOf([margins[a] ?? NaN, margins[b] ?? NaN, margins[c] ?? NaN], at)),
      0,
    )
    return margin - hiddenAbout(rule.quantity, bend, lattice.step) < 0 ? [index] : []
  })
  return starts.toSorted((a, b) => (margins[a] ?? 0) - (margins[b] ?? 0)).slice(0, MOST_STARTS)
}

/** Whether a position in between is worth telling, by its margin and the least of the positions that are told already. */
const isTold = ({ rule }: Demand, margin: number, least: number): boolean => {
  // Of what no rule asks, only that the strap would pass through.
  if (rule === NO_TUBE_IN_THE_WAY) return margin < 0 && least >= 0
  const isTurning = margin < -LIMIT_TOLERANCE && least >= -LIMIT_TOLERANCE
  const unit = quantityUnit(rule.quantity)
  return isTurning || (margin < NEAR[unit] && margin < least - TELLING[unit])
}

/** Where in between a demand fares worse than in all positions that are told already, and where its strap has no path. */
const decidingFor = (
  demand: Demand,
  lattice: SeatedLattice,
  chosen: ReadonlySet<SolvedSitting>,
): readonly SolvedSitting[] => {
  const margins = marginsOf(demand, lattice)
  const told = lattice.listed.map((index) => margins[index] ?? NaN)
  for (const each of chosen) told.push(marginOf(demand, each))
  const lost = told.some(Number.isNaN) ? undefined : lattice.all[margins.findIndex(Number.isNaN)]
  const found = lost === undefined ? [] : [lost]
  const least = told.reduce((worst, margin) => (margin < worst ? margin : worst), Infinity)
  let margin = least
  let at = -1
  for (let index = 0; index < margins.length; index += 1) {
    const there = margins[index] ?? NaN
    if (!(there < margin)) continue
    margin = there
    at = index
  }
  let worst = lattice.all[at]
  for (const index of startsOf(demand, lattice, margins)) {
    const start = lattice.all[index]
    if (start === undefined) continue
    const search = { ...lattice, quantity: demand.rule.quantity, marginOf: marginOf.bind(null, demand) }
    const about = worstAbout(search, start)
    if (!(about.margin < margin)) continue
    margin = about.margin
    worst = about.at
  }
  return worst !== undefined && isTold(demand, margin, least) ? [...found, worst] : found
}

const inOrder = (place: Place, chosen: readonly SolvedSitting[]): readonly SolvedSitting[] => {
  const rank = new Map(place.occupants.map(({ id }, index) => [id, index]))
  return chosen.toSorted(
    ({ sitting: a }, { sitting: b }) =>
      (rank.get(a.occupantId) ?? 0) - (rank.get(b.occupantId) ?? 0) ||
      a.slideMm - b.slideMm ||
      a.reclineDeg - b.reclineDeg,
  )
}

/**
 * The sittings between those of `sittingsOf` that decide something under these rules: where a limit is broken, or come nearer to, by
 * more than in all of those, or where a strap has no path although it has one in all of them. The lattice has a position every
 * 50 mm and 5° or closer; where a number may still pass its limit between those, its worst is looked for down to 1 mm and 0.1°. By
 * place in the list of occupants, slide and recline.
 */
export const betweenSittings = (
  layout: Layout,
  lattice: SeatedLattice,
  rules: readonly QuantityRule[],
): readonly SolvedSitting[] => {
  const { place } = lattice
  const chosen = new Set<SolvedSitting>()
  for (const demand of demandsOf(layout, place, [...rules, NO_TUBE_IN_THE_WAY]))
    for (const each of decidingFor(demand, lattice, chosen)) chosen.add(each)
  return inOrder(place, [...chosen])
}

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PointMm } from '../../../../../src/domain/geometry/point'
import { type QuantityId, quantityUnit } from '../../../../../src/domain/straps/quantity'
import { disturbedArb, EXAMPLES, type Explained, explainedOf, OUTFITTED } from './explainedLayouts'

/** A point by its letter; throws when the card does not name it. */
type At = (letter: string) => PointMm

const degrees = (u: number, v: number): number => (Math.atan2(v, u) * 180) / Math.PI

const apartMm = (a: PointMm, b: PointMm): number => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm, a.zMm - b.zMm)

/** Below horizontal, + when the line falls to the rear. */
const fallDeg = (from: PointMm, to: PointMm): number => degrees(to.xMm - from.xMm, from.zMm - to.zMm)

/** From straight down, + rearward. */
const rearwardDeg = (from: PointMm, to: PointMm): number => degrees(from.zMm - to.zMm, to.xMm - from.xMm)

const along = (points: readonly PointMm[]): number =>
  points.slice(1).reduce((sum, point, index) => sum + apartMm(points[index] ?? point, point), 0)

const mirrored = (at: At): number => Math.hypot(at('L').xMm - at('R').xMm, at('L').zMm - at('R').zMm)

/**
 * The definitions of straps/README.md on the named points alone, written down once more: what a reader works out with the coordinates
 * on the card. Left out are those that need a direction, a radius or the strap laid out straight.
 */
const ON_POINTS: Partial<Record<QuantityId, (at: At, letters: readonly string[]) => number>> = {
  'shoulder-drop': (at) => fallDeg(at('T'), at('E')),
  'shoulder-height': (at) => at('S').zMm - at('A').zMm,
  'shoulder-spacing': (at) => apartMm(at('L'), at('R')),
  'shoulder-above-hip': (at) => at('E').zMm - at('H').zMm,
  'shoulder-behind-hip': (at) => at('E').xMm - at('H').xMm,
  'shoulder-rim-drop': (at, letters) => fallDeg(at(letters.includes('R') ? 'R' : 'G'), at('A')),
  'shoulder-free-length': (at, letters) =>
    along(['T', 'E', 'F', 'G', 'J', 'A'].filter((letter) => letters.includes(letter)).map(at)),
  'shoulder-length-behind-seat': (at, letters) =>
    along(['G', 'J', 'A'].filter((letter) => letters.includes(letter)).map(at)),
  'shoulder-junction': (at) => at('J').xMm - at('N').xMm,
  'lap-angle': (at) => fallDeg(at('H'), at('E')),
  'lap-run-angle': (at) => fallDeg(at('Q'), at('E')),
  // 49 CFR 571.210 S4.3.1.1(b): "64 mm forward of and 10 mm above".
  'lap-shifted-angle': (at) => {
    const { xMm, yMm, zMm } = at('H')
    return fallDeg({ xMm: xMm - 64, yMm, zMm: zMm + 10 }, at('E'))
  },
  'lap-spacing': (at) => at('R').yMm - at('L').yMm,
  'sub-spacing': (at) => at('R').yMm - at('L').yMm,
  'lap-mirror': mirrored,
  'shoulder-mirror': mirrored,
  'sub-mirror': mirrored,
  'sub-to-vertical': (at) => rearwardDeg(at('T'), at('E')),
  'sub-to-chest': (at, letters) =>
    rearwardDeg(at('T'), at('E')) - rearwardDeg(at('C'), at(letters.includes('K') ? 'K' : 'T')),
}

/** Letters of contacts of the solved strap, for the quantities that have them. */
const CONTACT_LETTERS: Partial<Record<QuantityId, string>> = {
  'shoulder-drop': 'TE',
  'shoulder-to-spine': 'TE',
  'shoulder-height': 'A',
  'shoulder-rim-drop': 'A',
  'shoulder-length-behind-seat': 'JA',
  'shoulder-plan': 'TE',
  'shoulder-spacing': 'LR',
  'shoulder-free-length': 'TEFGJA',
  'shoulder-junction': 'J',
  'lap-angle': 'E',
  'lap-run-angle': 'EQ',
  'lap-over-asis': 'Q',
  'sub-to-vertical': 'TE',
  'sub-to-chest': 'TE',
  'slot-bend': 'EFA',
  'strap-length': 'AK',
  'adjuster-clearance': 'A',
}

const differenceDeg = (a: number, b: number): number => Math.abs(((((a - b + 180) % 360) + 360) % 360) - 180)

const checkValue = ({ quantity, explanation }: Explained): void => {
  const at: At = (letter) => {
    const found = explanation.points.find((each) => each.letter === letter)
    if (found === undefined) throw new Error(`${quantity.id} has no point ${letter}`)
    return found.point
  }
  const letters = explanation.points.map(({ letter }) => letter)
  expect(new Set(letters).size).toBe(letters.length)
  const value = ON_POINTS[quantity.id]?.(at, letters)
  if (value === undefined) return
  const isAngle = quantityUnit(quantity.id) === 'deg'
  expect(isAngle ? differenceDeg(value, quantity.value) : Math.abs(value - quantity.value)).toBeLessThan(1e-6)
}

const checkContacts = ({ quantity, explanation, sitting }: Explained): void => {
  const isPair = quantity.subject === 'shoulder-pair'
  const contacts = sitting.paths
    .filter(({ strap }) => strap === quantity.subject || (isPair && strap.startsWith('shoulder')))
    .flatMap((path) => path.contacts.map(({ point }) => point))
  const letters = CONTACT_LETTERS[quantity.id] ?? ''
  for (const { letter, point } of explanation.points)
    if (letters.includes(letter)) expect(contacts).toContainEqual(point)
}

/** Distance of a point from the nearest of the straight pieces of a polyline, by looking at many points of each. */
const offLineMm = (line: readonly PointMm[], point: PointMm): number => {
  let leastMm = Infinity
  for (const [index, end] of line.entries()) {
    const start = line[index - 1]
    if (start === undefined) continue
    const [x, y, z] = [end.xMm - start.xMm, end.yMm - start.yMm, end.zMm - start.zMm]
    const squared = x * x + y * y + z * z
    const dot = (point.xMm - start.xMm) * x + (point.yMm - start.yMm) * y + (point.zMm - start.zMm) * z
    const share = squared === 0 ? 0 : Math.min(1, Math.max(0, dot / squared))
    const foot = { xMm: start.xMm + share * x, yMm: start.yMm + share * y, zMm: start.zMm + share * z }
    leastMm = Math.min(leastMm, apartMm(foot, point))
  }
  return leastMm
}

/**
 * P lies on the strap, N on the centre line of a tube, and no tube is nearer to P than that one. The tube that the strap is fixed to
 * counts only where the strap would run into it.
 */
const checkTube = ({ quantity, explanation, sitting, layout }: Explained): void => {
  if (quantity.id !== 'tube-clearance') return
  const [strap, tube] = ['P', 'N'].map((letter) => explanation.points.find((each) => each.letter === letter))
  const path = sitting.paths.find((each) => each.strap === quantity.subject)
  if (strap === undefined || tube === undefined || path === undefined) throw new Error('no nearest points')
  expect(offLineMm(path.polyline, strap.point)).toBeLessThan(1e-6)
  const place = layout.places.find(({ id }) => id === sitting.sitting.placeId)
  const host = place?.anchors.find((anchor) => anchor.strap === quantity.subject)?.mount.tubeId
  const others = layout.tubes.filter(
    ({ id, points }) => id !== host || (quantity.value < 0 && offLineMm(points, tube.point) < 1e-6),
  )
  const gapMm = others.map(
    ({ points, outsideDiameterMm }) => offLineMm(points, strap.point) - outsideDiameterMm / 2,
  )
  expect(Math.min(...gapMm)).toBeCloseTo(quantity.value, 6)
  const near = others.filter(({ points }) => offLineMm(points, tube.point) < 1e-6)
  const reached = near.map(
    ({ outsideDiameterMm }) => apartMm(strap.point, tube.point) - outsideDiameterMm / 2,
  )
  expect(reached.some((mm) => Math.abs(mm - quantity.value) < 1e-6)).toBe(true)
}

/** M lies on a middle line of the body's core, N on that of a tube, and what is between their surfaces is the number. */
const checkPerson = ({ quantity, explanation, sitting, layout }: Explained): void => {
  if (quantity.id !== 'body-clearance') return
  const [person, tube] = ['M', 'N'].map((letter) => explanation.points.find((each) => each.letter === letter))
  if (person === undefined || tube === undefined) throw new Error('no nearest points')
  const radii = sitting.body.core.flatMap(({ from, to, radiusMm }) =>
    offLineMm([from, to], person.point) < 1e-6 ? [radiusMm] : [],
  )
  const onStrap = sitting.paths.some(({ polyline }) => offLineMm(polyline, person.point) < 1e-6)
  const reached = layout.tubes
    .filter(({ points }) => offLineMm(points, tube.point) < 1e-6)
    .flatMap(({ outsideDiameterMm }) =>
      [...radii, ...(onStrap ? [0] : [])].map(
        (radiusMm) => apartMm(person.point, tube.point) - outsideDiameterMm / 2 - radiusMm,
      ),
    )
  expect(reached.some((mm) => Math.abs(mm - quantity.value) < 1e-6)).toBe(true)
}

const check = (explained: Explained): void => {
  checkPerson(explained)
  checkValue(explained)
  checkContacts(explained)
  checkTube(explained)
}

const numRuns = Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 5)

describe('named points of an explanation', () => {
  it('give the value when they are put into the definition, and are the very contacts of the solved strap', () => {
    const seen = new Set<QuantityId>()
    for (const layout of EXAMPLES)
      for (const explained of explainedOf(layout)) {
        seen.add(explained.quantity.id)
        check(explained)
      }
    for (const layout of OUTFITTED)
      for (const explained of explainedOf(layout, 1)) {
        seen.add(explained.quantity.id)
        check(explained)
      }
    expect(Object.keys(ON_POINTS).filter((id) => !seen.has(id as QuantityId))).toEqual([])
    expect(Object.keys(CONTACT_LETTERS).filter((id) => !seen.has(id as QuantityId))).toEqual([])
  })

  it('do so for cars with anchors, seat and outfit moved about', () => {
    let count = 0
    fc.assert(
      fc.property(disturbedArb, (layout) => {
        for (const explained of explainedOf(layout, 1)) {
          check(explained)
          count += 1
        }
      }),
      { numRuns },
    )
    // A random car has at least its spacings and its helmet's room.
    expect(count).toBeGreaterThan(numRuns)
  })
})

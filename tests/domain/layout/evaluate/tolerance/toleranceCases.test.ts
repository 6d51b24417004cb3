import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import type { Layout } from '../../../../../src/domain/layout/document/layout'
import { quantityFindings } from '../../../../../src/domain/layout/evaluate/quantityFindings'
import { zoneCases } from '../../../../../src/domain/layout/evaluate/ruleContexts'
import { quantityIn, solvedSittings } from '../../../../../src/domain/layout/evaluate/solvedSittings'
import { withToleranceCases } from '../../../../../src/domain/layout/evaluate/tolerance/toleranceCases'
import { isWithin, marginInside } from '../../../../../src/domain/rules/check'
import type { QuantityRule } from '../../../../../src/domain/rules/rule'
import type { ToleranceCase, WeldTolerance } from '../../../../../src/domain/rules/tolerance'
import type { Anchor } from '../../../../../src/domain/straps/anchor'
import type { Subject } from '../../../../../src/domain/straps/quantity'
import { flatLayout, flatPlace, tabPair } from '../../../../support/flatLayout'
import { plausibleLayout } from '../../../../support/plausibleLayouts'
import { quantityRule } from '../../../zones/zoneCases'

const tolerance = (change: Partial<WeldTolerance>): WeldTolerance => ({
  xMm: 0,
  yMm: 0,
  zMm: 0,
  tabDeg: 0,
  reclineDeg: 0,
  spread: 'even',
  ...change,
})

/** What the tolerance makes of one rule on one subject. */
const caseOf = (layout: Layout, rule: QuantityRule, subject: Subject): ToleranceCase => {
  const [place] = layout.places
  if (place === undefined) throw new Error('no place')
  const sittings = solvedSittings(layout, place)
  const placeCase = {
    layout,
    place,
    sittings,
    zoneCases: zoneCases(layout, place, sittings),
    rules: [rule],
    extent: 'what-moves',
  } as const
  const found = withToleranceCases(placeCase, quantityFindings(placeCase, rule))
  const result = found.find((finding) => finding.subject === subject)?.withinTolerance
  if (result === undefined) throw new Error(`nothing said about ${subject}`)
  return result
}

const lapLayout = (change: Partial<WeldTolerance>): Layout =>
  flatLayout([flatPlace({ anchors: tabPair('lap', { xMm: 200, yMm: 250, zMm: -250 }) })], {
    tolerance: tolerance(change),
  })

describe('the worst case within a weld error', () => {
  it('of an angle to a fixed point is that of a corner of the box', () => {
    // Tab 200 behind and 250 below the hip point, ± 5 mm: steepest atan(255/195) = 52.595°, flattest atan(245/205) = 50.0796°.
    const layout = lapLayout({ xMm: 5, zMm: 5 })
    expect(caseOf(layout, quantityRule('lap-angle', null, 52), 'lap-left')).toMatchObject({ canLeave: true })
    expect(caseOf(layout, quantityRule('lap-angle', null, 52), 'lap-left').worstValue).toBeCloseTo(52.595, 3)
    expect(caseOf(layout, quantityRule('lap-angle', 50, null), 'lap-left').worstValue).toBeCloseTo(50.08, 3)
  })

  it('flips exactly at the limit', () => {
    const layout = lapLayout({ xMm: 5, zMm: 5 })
    const worstDeg = (Math.atan2(255, 195) * 180) / Math.PI
    expect(caseOf(layout, quantityRule('lap-angle', null, worstDeg + 1e-6), 'lap-left').canLeave).toBe(false)
    expect(caseOf(layout, quantityRule('lap-angle', null, worstDeg - 1e-6), 'lap-left').canLeave).toBe(true)
  })

  it('takes the tabs of a pair to be off each by itself, also where they are drawn mirrored', () => {
    // 500 mm apart, each ± 3 mm across: 494 at least. Mirrored in x and z as drawn, but 2·4 = 8 mm apart along x at worst.
    expect(caseOf(lapLayout({ yMm: 3 }), quantityRule('lap-spacing', 495, null), 'lap-pair')).toMatchObject({
      worstValue: 494,
      canLeave: true,
    })
    expect(caseOf(lapLayout({ xMm: 4 }), quantityRule('lap-mirror', null, 7), 'lap-pair')).toMatchObject({
      worstValue: 8,
      canLeave: true,
    })
  })

  it('turns the torso with a recline read wrongly', () => {
    // The shoulder arc turns about the hip point; straps over it to a bar behind change their drop, the lap straps do not.
    const shoulders = tabPair('shoulder', { xMm: 400, yMm: 80, zMm: 500 })
    const laps = tabPair('lap', { xMm: 200, yMm: 250, zMm: -250 })
    const layout = flatLayout([flatPlace({ anchors: [...shoulders, ...laps] })], {
      tolerance: tolerance({ reclineDeg: 2 }),
    })
    const reclined = (reclineDeg: number): number => {
      const [place] = layout.places
      if (place === undefined) return Number.NaN
      const range = { uprightDeg: reclineDeg, reclinedDeg: reclineDeg }
      const seat = { ...place.seat, reclineDeg, reclineRange: range }
      const [solved] = solvedSittings(layout, { ...place, seat })
      return (solved && quantityIn(solved, 'shoulder-drop', 'shoulder-left')) ?? Number.NaN
    }
    const found = caseOf(layout, quantityRule('shoulder-drop', null, 10), 'shoulder-left')
    expect(found.worstValue).toBeCloseTo(Math.max(reclined(18), reclined(22)), 9)
    const lap = caseOf(layout, quantityRule('lap-angle', null, 60), 'lap-left')
    expect(lap.worstValue).toBeCloseTo((Math.atan2(250, 200) * 180) / Math.PI, 9)
  })

  it('turns a tab by its angles as well as moving it', () => {
    // Pull in the plane x–z after the strap has left sideways is not needed: the tab alone turned ± 3° in plan and lean must be at
    // least 3° worse than as drawn for one of the four corners.
    const layout = lapLayout({ tabDeg: 3 })
    const rule = quantityRule('tab-twist', null, 1)
    const [place] = layout.places
    const [solved] = place === undefined ? [] : solvedSittings(layout, place)
    const drawnDeg = (solved && quantityIn(solved, 'tab-twist', 'lap-left')) ?? Number.NaN
    const { worstValue } = caseOf(layout, rule, 'lap-left')
    expect(worstValue ?? 0).toBeGreaterThan(drawnDeg + 2)
    expect(worstValue ?? 0).toBeLessThan(drawnDeg + 3 * Math.SQRT2 + 1e-9)
  })

  it('is what it is as drawn where every error is 0', () => {
    const found = caseOf(lapLayout({}), quantityRule('lap-angle', null, 52), 'lap-left')
    expect(found.worstValue).toBeCloseTo((Math.atan2(250, 200) * 180) / Math.PI, 9)
    expect(found).toMatchObject({ canLeave: false, chance: 0 })
  })
})

/** Van der Corput's sequence: points spread evenly without chance. Source: van der Corput 1935 (from memory). */
const radicalInverse = (index: number, base: number): number => {
  let rest = index
  let share = 0
  for (let size = 1 / base; rest > 0; size /= base) {
    share += (rest % base) * size
    rest = Math.floor(rest / base)
  }
  return share
}

const PRIMES = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37, 41] as const

/** The layout with every anchor, tab and recline off by a point of the sequence. */
const offLayout = (layout: Layout, index: number): Layout => {
  const error = layout.tolerance
  if (error === undefined) throw new Error('no tolerance')
  let used = 0
  const off = (half: number): number => {
    const base = PRIMES[used % PRIMES.length] ?? 2
    used += 1
    return half * (2 * radicalInverse(index + 409 * Math.floor(used / PRIMES.length), base) - 1)
  }
  return {
    ...layout,
    places: layout.places.map((place) => {
      const reclineDeg = place.seat.reclineDeg + off(error.reclineDeg)
      return {
        ...place,
        seat: {
          ...place.seat,
          reclineDeg,
          reclineRange: { uprightDeg: reclineDeg, reclinedDeg: reclineDeg },
        },
        anchors: place.anchors.map((anchor): Anchor => {
          const { point } = anchor.mount
          const to = {
            xMm: point.xMm + off(error.xMm),
            yMm: point.yMm + off(error.yMm),
            zMm: point.zMm + off(error.zMm),
          }
          const { mount } = anchor
          if (mount.kind !== 'tab') return { ...anchor, mount: { ...mount, point: to } }
          const planDeg = mount.planDeg + off(error.tabDeg)
          const leanDeg = mount.leanDeg + off(error.tabDeg)
          return { ...anchor, mount: { ...mount, point: to, planDeg, leanDeg } }
        }),
      }
    }),
  }
}

/** The worst margin of each off layout over its sittings; null where a number is missing. */
const worstMargin = (layout: Layout, rule: QuantityRule, subject: Subject): number | null => {
  const [place] = layout.places
  const sittings = place === undefined ? [] : solvedSittings(layout, place)
  const values = sittings.map((solved) => quantityIn(solved, rule.quantity, subject))
  return values.includes(null)
    ? null
    : Math.min(...values.map((value) => (value === null ? 0 : marginInside(value, rule))))
}

const ASKED = [
  { quantity: 'shoulder-drop', subject: 'shoulder-left', halfWidth: 2 },
  { quantity: 'shoulder-to-spine', subject: 'shoulder-right', halfWidth: 2 },
  { quantity: 'shoulder-spacing', subject: 'shoulder-pair', halfWidth: 6 },
  { quantity: 'lap-angle', subject: 'lap-left', halfWidth: 1 },
  { quantity: 'lap-over-asis', subject: 'lap-right', halfWidth: 2 },
  { quantity: 'lap-mirror', subject: 'lap-pair', halfWidth: 6 },
  { quantity: 'sub-to-vertical', subject: 'sub-left', halfWidth: 1 },
  { quantity: 'sub-spacing', subject: 'sub-pair', halfWidth: 4 },
  { quantity: 'tab-twist', subject: 'lap-left', halfWidth: 2 },
] as const

describe('worst case and chance against many welded cars', () => {
  it('never find a car worse than the worst, and about as many bad ones as the chance says', () => {
    const tried = { chances: 0, worst: 0 }
    fc.assert(
      fc.property(
        plausibleLayout,
        fc.constantFrom(...ASKED),
        fc.double({ min: -0.2, max: 1, noNaN: true }),
        (car, asked, share) => {
          const layout = {
            ...car,
            tolerance: tolerance({ xMm: 4, yMm: 3, zMm: 5, tabDeg: 1.5, reclineDeg: 1 }),
          }
          const [place] = layout.places
          const drawn = place === undefined ? [] : solvedSittings(layout, place)
          const values = drawn.map((solved) => quantityIn(solved, asked.quantity, asked.subject))
          fc.pre(values.length > 0 && !values.includes(null))
          // A limit somewhere near the largest value, so that it is reached in some cars and not in others.
          const limit = Math.max(...values.map((value) => value ?? 0)) + share * asked.halfWidth
          const rule = quantityRule(asked.quantity, null, limit)
          const found = caseOf(layout, rule, asked.subject)
          const count = 300
          const margins = Array.from({ length: count }, (_, index) =>
            worstMargin(offLayout(layout, index + 1), rule, asked.subject),
          )
          const isLost = margins.includes(null)
          const worst = Math.min(...margins.map((margin) => margin ?? Number.POSITIVE_INFINITY))
          const bad = margins.filter((margin) => margin === null || margin < 0).length
          // A car without a number could leave; a number is never worse than the worst.
          expect(isLost && !found.canLeave).toBe(false)
          const saidWorst = found.worstValue === null ? -Infinity : marginInside(found.worstValue, rule)
          expect(worst).toBeGreaterThanOrEqual(saidWorst - 1e-6)
          expect(found.canLeave).toBe(found.worstValue === null || !isWithin(found.worstValue, rule))
          // 300 cars tell a share to some hundredths; the errors that the method leaves out are small beside those it counts.
          expect(found.chance === null ? 0 : Math.abs(found.chance - bad / count)).toBeLessThan(0.06)
          tried.worst += found.worstValue === null ? 0 : 1
          tried.chances += found.chance === null ? 0 : 1
        },
      ),
      { numRuns: 30 },
    )
    expect(tried.worst).toBeGreaterThan(20)
    expect(tried.chances).toBeGreaterThan(15)
  }, 120_000)
})

describe('the chance of leaving the limits', () => {
  it('is the share of the box outside the line, for an even error', () => {
    // The line of 52° through the hip point cuts the box of ± 5 mm about (200, −250): its share by 1,000 × 1,000 points.
    const limitDeg = 52
    let outside = 0
    for (let i = 0; i < 1000; i += 1)
      for (let k = 0; k < 1000; k += 1) {
        const xMm = 195 + (i + 0.5) / 100
        const zMm = 245 + (k + 0.5) / 100
        if (zMm > xMm * Math.tan((limitDeg * Math.PI) / 180)) outside += 1
      }
    const found = caseOf(lapLayout({ xMm: 5, zMm: 5 }), quantityRule('lap-angle', null, limitDeg), 'lap-left')
    expect(found.chance).toBeCloseTo(outside / 1e6, 3)
  })

  it('of a spacing is that of the difference of two even errors, a triangle', () => {
    // d = e₁ − e₂ on ± 2·5 mm; less than 497 of 500 is d < −3: (10 − 3)² / (2·10²) = 0.245.
    const found = caseOf(lapLayout({ yMm: 5 }), quantityRule('lap-spacing', 497, null), 'lap-pair')
    expect(found.chance).toBeCloseTo(0.245, 2)
  })

  it('is smaller for errors that are mostly small, when the limit is more than half of the ± away', () => {
    const rule = quantityRule('lap-spacing', 496, null)
    const chanceOf = (spread: 'even' | 'mostly-small'): number | null =>
      caseOf(lapLayout({ yMm: 5, spread }), rule, 'lap-pair').chance
    // Difference of two even errors: (10 − 4)²/200 = 0.18.
    expect(chanceOf('even')).toBeCloseTo(0.18, 2)
    // Each normal with σ = 2.5 mm: the difference has σ = 3.536 mm and 4 mm is 1.131 of it: 1 − Φ(1.131) = 0.129 by the table of the
    // standard normal distribution. Cutting both at 2σ takes away from the tail.
    const small = chanceOf('mostly-small') ?? 1
    expect(small).toBeLessThan(0.129)
    expect(small).toBeGreaterThan(0.09)
  })

  it('is not given when only the worst is asked for', () => {
    const layout = lapLayout({ xMm: 5, zMm: 5, spread: 'worst-case' })
    expect(caseOf(layout, quantityRule('lap-angle', null, 52), 'lap-left').chance).toBeNull()
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import type { Layout, Place } from '../../../src/domain/layout/document/layout'
import { ruleSetMatrix } from '../../../src/domain/layout/evaluate/ruleSetMatrix'
import type { PointMm } from '../../../src/domain/geometry/point'
import type { Anchor } from '../../../src/domain/straps/anchor'
import { mirroredStrap, type StrapId } from '../../../src/domain/straps/strap'
import { plausibleLayout } from '../../support/plausibleLayouts'

/*
 * A car is the same car wherever its datum is and whichever side is called left: what every rule set says about it may not change.
 * Derived: none of the documents speaks of a side or of the place of a datum.
 */

const movedPoint = (point: PointMm, by: PointMm): PointMm => ({
  xMm: point.xMm + by.xMm,
  yMm: point.yMm + by.yMm,
  zMm: point.zMm + by.zMm,
})

const withPoints = (layout: Layout, at: (point: PointMm) => PointMm): Layout => ({
  ...layout,
  tubes: layout.tubes.map((tube) => ({ ...tube, points: tube.points.map(at) })),
  places: layout.places.map((place): Place => ({
    ...place,
    seat: { ...place.seat, hipPoint: at(place.seat.hipPoint) },
    anchors: place.anchors.map((anchor): Anchor => ({
      ...anchor,
      mount: { ...anchor.mount, point: at(anchor.mount.point) },
    })),
  })),
})

const otherSide = (strap: StrapId): StrapId => mirroredStrap(strap) ?? strap

/** Left is right: points and tabs mirrored about the middle plane, each strap under the other's name. */
const mirrored = (layout: Layout): Layout => {
  const across = withPoints(layout, (point) => ({ ...point, yMm: -point.yMm }))
  return {
    ...across,
    places: across.places.map((place): Place => ({
      ...place,
      anchors: place.anchors.map(({ mount, ...anchor }): Anchor => ({
        ...anchor,
        strap: otherSide(anchor.strap),
        mount: mount.kind === 'tab' ? { ...mount, planDeg: -mount.planDeg, leanDeg: -mount.leanDeg } : mount,
      })),
    })),
  }
}

type Said = ReadonlyMap<string, { readonly verdict: string; readonly value: number | string | null }>

const saidAbout = (layout: Layout, named: (subject: string) => string): Said => {
  const [place] = layout.places
  if (place === undefined) throw new Error('no place')
  return new Map(
    ruleSetMatrix(layout, place).rows.flatMap(({ subject, entries }) =>
      entries.map(
        ({ rule, verdict, value }) => [`${rule.id}/${named(subject)}`, { verdict, value }] as const,
      ),
    ),
  )
}

/** Verdicts that differ and values that are more than 1e-6 apart, by rule and part; empty for one and the same car. */
const differences = (before: Said, after: Said): readonly string[] =>
  [...new Set([...before.keys(), ...after.keys()])].filter((key) => {
    const [one, other] = [before.get(key), after.get(key)]
    if (one === undefined || other === undefined || one.verdict !== other.verdict) return true
    return typeof one.value === 'number' && typeof other.value === 'number'
      ? Math.abs(one.value - other.value) > 1e-6
      : one.value !== other.value
  })

const side = (subject: string): string =>
  subject.replace(/left|right/, (word) => (word === 'left' ? 'right' : 'left'))

describe('one car drawn in two ways', () => {
  it('is under every rule set the same wherever the datum is, also ahead of and below the seat', () => {
    const offset = fc.integer({ min: -3000, max: 3000 })
    fc.assert(
      fc.property(plausibleLayout, fc.record({ xMm: offset, yMm: offset, zMm: offset }), (layout, by) => {
        const moved = withPoints(layout, (point) => movedPoint(point, by))
        expect(differences(saidAbout(layout, String), saidAbout(moved, String))).toEqual([])
      }),
      { numRuns: 25 },
    )
  }, 60_000)

  it('is under every rule set the same with left and right exchanged', () => {
    fc.assert(
      fc.property(plausibleLayout, (layout) => {
        expect(differences(saidAbout(layout, String), saidAbout(mirrored(layout), side))).toEqual([])
      }),
      { numRuns: 25 },
    )
  }, 60_000)
})

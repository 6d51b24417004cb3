import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { nearestOnPolyline } from '../../../../src/domain/geometry/segment'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import { appliedRemedy } from '../../../../src/domain/layout/edit/remedy'
import { evaluateLayout, layoutNumbers } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { findingSentence } from '../../../../src/domain/layout/wording/findingSentence'
import type { Finding, Remedy } from '../../../../src/domain/rules/finding'
import { exampleLayout } from '../../../support/exampleLayouts'
import { crossTube } from '../../../support/flatLayout'
import { plausibleLayout } from '../../../support/plausibleLayouts'

const findingsOf = (layout: Layout): readonly Finding[] =>
  evaluateLayout(layout).places.flatMap(({ findings }) => findings)

/** What is kept in a layout, by its numbers alone: no rooms are worked out. */
const keptIds = (layout: Layout): ReadonlySet<string> =>
  new Set(
    layoutNumbers(layout).places.flatMap(({ findings }) =>
      findings.filter(({ verdict }) => verdict === 'kept' || verdict === 'clear').map(({ id }) => id),
    ),
  )

const isKept = ({ verdict }: Finding): boolean => verdict === 'clear' || verdict === 'tight'

const claimsToBreakNothing = (remedy: Remedy): boolean =>
  remedy.kind === 'combined' ||
  ((remedy.kind === 'move-anchors' || remedy.kind === 'move-tube') && remedy.breaks === undefined)

const isMove = ({ kind }: Remedy): boolean =>
  kind === 'combined' || kind === 'move-anchors' || kind === 'move-tube' || kind === 'turn-tab'

/** The car with its bar ending so far beyond the outer shoulder anchor, and its lap tabs above a floor tube of the same length or not. */
const onTubes = (layout: Layout, endMm: number, hasFloorTube: boolean): Layout => {
  const points = layout.places.flatMap(({ anchors }) => anchors.map(({ mount }) => mount.point))
  const lap = layout.places[0]?.anchors.find(({ strap }) => strap === 'lap-left')?.mount.point
  if (lap === undefined) throw new Error('a car without lap straps')
  const halfMm = Math.max(...points.map(({ yMm }) => Math.abs(yMm))) + endMm
  const floor = hasFloorTube ? [crossTube('floor', lap.xMm, lap.zMm - 45, 'floor')] : []
  return {
    ...layout,
    tubes: [...layout.tubes, ...floor].map((tube) => ({
      ...tube,
      points: tube.points.map((point) => ({ ...point, yMm: Math.sign(point.yMm) * halfMm })),
    })),
    places: layout.places.map((place) => ({
      ...place,
      anchors: place.anchors.map((anchor) =>
        hasFloorTube && anchor.strap.startsWith('lap') && anchor.mount.kind === 'tab'
          ? { ...anchor, mount: { ...anchor.mount, tubeId: 'floor' } }
          : anchor,
      ),
    })),
  }
}

/** How far each anchor on a tube is from its centre line, and whether it lies between its ends. */
const standings = ({ places, tubes }: Layout) =>
  places.flatMap(({ anchors }) =>
    anchors.flatMap(({ id, mount }) => {
      const tube = tubes.find((each) => each.id === mount.tubeId)
      if (tube === undefined) return []
      const { distanceMm, share } = nearestOnPolyline(tube.points, mount.point)
      return [{ id, distanceMm, isBetween: share > 0 && share < 1 }]
    }),
  )

/** Anchors that a change has put beside or off their tubes. */
const putOffTubes = (before: Layout, after: Layout): readonly string[] => {
  const now = new Map(standings(after).map((each) => [each.id, each]))
  return standings(before).flatMap(({ id, distanceMm, isBetween }) => {
    const then = now.get(id)
    const isSame = then !== undefined && Math.abs(then.distanceMm - distanceMm) < 1.01
    return isSame && (then.isBetween || !isBetween) ? [] : [id]
  })
}

describe('a remedy, carried out and evaluated anew', () => {
  it('clears its finding, breaks nothing when it claims so, leaves tabs on their tubes, in plain words, in random cars', () => {
    const seen = { moves: 0, combined: 0, none: 0, contradictions: 0 }
    const texts: string[] = []
    fc.assert(
      fc.property(
        plausibleLayout,
        fc.integer({ min: 5, max: 300 }),
        fc.boolean(),
        (car, endMm, isOnFloor) => {
          const layout = onTubes(car, endMm, isOnFloor)
          const before = findingsOf(layout)
          const wrong: string[] = []
          for (const finding of before) {
            const { remedy } = finding
            if (remedy?.kind === 'none') {
              seen.none += 1
              if (remedy.contradiction !== undefined) seen.contradictions += 1
            }
            if (
              remedy?.kind === 'combined' ||
              (remedy?.kind === 'none' && remedy.contradiction !== undefined)
            )
              texts.push(findingSentence(finding, layout).remedy ?? '')
            if (remedy === null || !isMove(remedy)) continue
            seen.moves += 1
            if (remedy.kind === 'combined') seen.combined += 1
            const mended = appliedRemedy(layout, finding)
            if (!parseLayout(mended).ok) wrong.push(`${finding.id}: no layout`)
            const off = putOffTubes(layout, mended)
            if (off.length > 0)
              wrong.push(`${finding.id}: ${off.join()} off the tube by ${JSON.stringify(remedy)}`)
            const after = keptIds(mended)
            if (!after.has(finding.id)) wrong.push(`${finding.id}: not cleared by ${JSON.stringify(remedy)}`)
            if (!claimsToBreakNothing(remedy)) continue
            for (const each of before)
              if (isKept(each) && !after.has(each.id))
                wrong.push(`${finding.id}: breaks ${each.id} by ${JSON.stringify(remedy)}`)
          }
          expect(wrong).toEqual([])
        },
      ),
      { numRuns: 40 },
    )
    // Each kind was really met.
    expect(seen.moves).toBeGreaterThan(100)
    expect(seen.combined).toBeGreaterThan(10)
    expect(seen.contradictions).toBeGreaterThan(0)
    // Plain words for what is combined and for what contradicts.
    for (const text of texts) expect(text).toMatch(/^(All of this together: .+; .+|No place for the .+)\.$/)
  }, 240_000)

  it('does not put tabs beside the end of their bar when the strap runs through it', () => {
    // Tabs behind their own bar: the strap runs through it. The nearest way out across is past both ends of the bar (−28 … 748 mm).
    const rock = exampleLayout('rock-buggy.layout.json')
    const layout = {
      ...rock,
      places: rock.places.map((place) => ({
        ...place,
        anchors: place.anchors.map((anchor) =>
          anchor.strap.startsWith('shoulder')
            ? { ...anchor, mount: { ...anchor.mount, point: { ...anchor.mount.point, xMm: 1690, zMm: 612 } } }
            : anchor,
        ),
      })),
    }
    const through = findingsOf(layout).filter(({ ruleId }) => ruleId === 'workshop-clear-of-tubes')
    const broken = through.filter(({ verdict }) => verdict === 'broken')
    expect(broken.map(({ subject }) => subject)).toEqual(['shoulder-left', 'shoulder-right'])
    for (const finding of broken) {
      expect(finding.remedy).toMatchObject({ kind: 'move-tube', tubeId: 'harness-bar' })
      const mended = appliedRemedy(layout, finding)
      expect(putOffTubes(layout, mended)).toEqual([])
      expect(keptIds(mended).has(finding.id)).toBe(true)
    }
  })
})

import Flatten from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CircleMm } from '../../../src/domain/geometry/circle'
import { projected, type PlanePointMm } from '../../../src/domain/geometry/plane'
import type { PointMm } from '../../../src/domain/geometry/point'
import { mountCircle } from '../../../src/domain/straps/mount'
import type { PathContact, StrapPath } from '../../../src/domain/straps/path'
import { vehiclePoint } from '../../../src/domain/body/pose'
import type { StrapScene } from '../../../src/domain/straps/scene'
import { slotCorners } from '../../../src/domain/straps/slotGate'
import { solvePlace } from '../../../src/domain/straps/solve'
import { strapFamily, type StrapId } from '../../../src/domain/straps/strap'
import { anyScene } from './arbitraryScenes'
import { belt, lapTabs, pathOf, plane, point, scene, slot, tab } from './scenes'

const mm = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true })
const flat = (at: PlanePointMm): Flatten.Point => new Flatten.Point(at.uMm, at.vMm)
const side = (at: PointMm): Flatten.Point => flat(projected(at, 'side'))

/** Distance from a circle's centre to the infinite line through two points, by a general geometry library. */
const centreToLineMm = (centre: PlanePointMm, a: PointMm, b: PointMm): number =>
  flat(centre).distanceTo(new Flatten.Line(side(a), side(b)))[0]

/** The round parts of the body that a strap lies on; lap straps have none in side view. */
const roundOf = (given: StrapScene, strap: StrapId): CircleMm | null => {
  switch (strapFamily(strap)) {
    case 'shoulder':
      return given.body.shoulderArc
    case 'sub':
      return given.body.groinArc
    case 'lap':
      return null
  }
}

interface Piece {
  readonly from: PathContact
  readonly to: PathContact
}

/** The straight pieces of a path: all but those from one body contact to the next. */
const straightPieces = (path: StrapPath): readonly Piece[] =>
  path.contacts.slice(1).flatMap((to, index) => {
    const from = path.contacts[index]
    return from === undefined || (from.on === 'body' && to.on === 'body') ? [] : [{ from, to }]
  })

/** How far each piece that should be tangent to something round is from being so, mm. */
const tangencyErrorsMm = (given: StrapScene, path: StrapPath): readonly number[] => {
  const errorMm = (circle: CircleMm, { from, to }: Piece): number =>
    Math.abs(centreToLineMm(circle.centre, from.point, to.point) - circle.radiusMm)
  const pieces = straightPieces(path)
  const anchor = given.anchors.find(({ strap }) => strap === path.strap)
  const tube = anchor ? mountCircle(anchor.mount, given.tubes) : null
  const [first] = pieces
  const atTube = tube === null || tube.radiusMm === 0 || first === undefined ? [] : [errorMm(tube, first)]
  const round = roundOf(given, path.strap)
  const atBody = pieces.filter(({ from, to }) => from.on === 'body' || to.on === 'body')
  return [...atTube, ...(round === null ? [] : atBody.map((piece) => errorMm(round, piece)))]
}

describe('a solved path against a general geometry library', () => {
  it('leaves every round part along a tangent', () => {
    let checked = 0
    fc.assert(
      fc.property(anyScene, (given) => {
        const errorsMm = solvePlace(given).paths.flatMap((path) => tangencyErrorsMm(given, path))
        checked += errorsMm.length
        expect(Math.max(0, ...errorsMm)).toBeLessThan(1e-6)
      }),
    )
    expect(checked).toBeGreaterThan(500)
  })

  it('never cuts into the round parts of the body', () => {
    fc.assert(
      fc.property(anyScene, (given) => {
        const depthsMm = solvePlace(given).paths.flatMap((path) => {
          const round = roundOf(given, path.strap)
          if (round === null) return []
          return straightPieces(path).map(({ from, to }) => {
            const piece = new Flatten.Segment(side(from.point), side(to.point))
            return round.radiusMm - flat(round.centre).distanceTo(piece)[0]
          })
        })
        expect(Math.max(0, ...depthsMm)).toBeLessThan(1e-6)
      }),
    )
  })

  it('bends on the slot it is led through and nowhere beside it', () => {
    let bent = 0
    fc.assert(
      fc.property(anyScene, (given) => {
        const awayMm = solvePlace(given).paths.flatMap((path) => {
          const own = given.seat.slots.find(({ straps }) => straps.includes(path.strap))
          const held = path.contacts.find(({ on }) => on === 'slot')
          if (own === undefined || held === undefined) return []
          const corners = slotCorners(own).map((corner) => side(vehiclePoint(given.pose, corner)))
          // Seen from the side a slot in the back or the cushion is a straight piece, one in a side wall a rectangle.
          const outline =
            own.face === 'side'
              ? new Flatten.Polygon(corners)
              : new Flatten.Segment(corners[0] ?? side(held.point), corners[2] ?? side(held.point))
          return [side(held.point).distanceTo(outline)[0]]
        })
        bent += awayMm.length
        expect(Math.max(0, ...awayMm)).toBeLessThan(1e-6)
      }),
    )
    expect(bent).toBeGreaterThan(100)
  })
})

/** Samples of a gate from end to end, the open rim up to 1 m above. */
const gateSamples = (given: StrapScene): readonly PlanePointMm[] => {
  const { slots, backrestRim } = given.seat
  const [own] = slots
  const inVehicle = (xMm: number, zMm: number): PlanePointMm =>
    projected(vehiclePoint(given.pose, point(xMm, 0, zMm)), 'side')
  const rim = inVehicle(backrestRim.xMm, backrestRim.zMm)
  const lower = own ? inVehicle(own.centre.xMm, own.centre.zMm - own.heightMm / 2) : rim
  const upper = own
    ? inVehicle(own.centre.xMm, own.centre.zMm + own.heightMm / 2)
    : plane(rim.uMm, rim.vMm + 1000)
  return Array.from({ length: 2001 }, (_, index) =>
    plane(
      lower.uMm + ((upper.uMm - lower.uMm) * index) / 2000,
      lower.vMm + ((upper.vMm - lower.vMm) * index) / 2000,
    ),
  )
}

const apart = (a: PlanePointMm, b: PlanePointMm): number => Math.hypot(b.uMm - a.uMm, b.vMm - a.vMm)

const STEP_DEG = 0.25

/** A point of the arc, and whether a straight strap from `from` reaches it without going through the arc. */
const arcPoint = (arc: CircleMm, deg: number): PlanePointMm => {
  const rad = (deg * Math.PI) / 180
  return plane(arc.centre.uMm + arc.radiusMm * Math.cos(rad), arc.centre.vMm + arc.radiusMm * Math.sin(rad))
}
const isReached = (arc: CircleMm, from: PlanePointMm, at: PlanePointMm): boolean =>
  (from.uMm - at.uMm) * (at.uMm - arc.centre.uMm) + (from.vMm - at.vMm) * (at.vMm - arc.centre.vMm) >= 0

/**
 * Shortest strap anchor → gate sample → arc sample → over the arc → arc sample → buckle, by trying them all. The rear contact
 * lies from −60° (low behind) to 180°, the front one ahead of it up to 300°, counted anticlockwise from rearward.
 */
const bruteForceMm = (given: StrapScene, anchor: PlanePointMm, buckle: PlanePointMm): number => {
  const arc = given.body.shoulderArc
  const gate = gateSamples(given)
  let best = Infinity
  let bestRear = Infinity // the shortest way to the present angle along the arc, less the arc up to there
  for (let deg = -60; deg <= 300; deg += STEP_DEG) {
    const at = arcPoint(arc, deg)
    const alongMm = (arc.radiusMm * deg * Math.PI) / 180
    if (deg <= 180)
      for (const through of gate) {
        if (!isReached(arc, through, at)) continue
        bestRear = Math.min(bestRear, apart(anchor, through) + apart(through, at) - alongMm)
      }
    // A strap over the shoulder leaves it ahead of its top, never underneath.
    if (deg >= 60 && isReached(arc, buckle, at)) best = Math.min(best, bestRear + alongMm + apart(at, buckle))
  }
  return best
}

describe('a shoulder path against a search of all sampled ways', () => {
  it('is as short as the shortest and has no shorter one', () => {
    const anyCase = fc.record({
      anchorX: mm(260, 700),
      anchorZ: mm(150, 800),
      reclineDeg: mm(0, 30),
      openingMm: mm(20, 80),
      centreUpMm: mm(480, 660),
      radiusMm: mm(40, 110),
      isRim: fc.boolean(),
    })
    let bent = 0
    fc.assert(
      fc.property(anyCase, (one) => {
        const back = slot({
          straps: ['shoulder-left'],
          face: 'back',
          centre: point(150, 0, one.centreUpMm),
          lengthMm: 200,
          heightMm: one.openingMm,
        })
        const given = scene({
          reclineDeg: one.reclineDeg,
          shoulderHalfSpacingMm: 0,
          shoulderRadiusMm: one.radiusMm,
          seat: {
            backrestRim: { xMm: 150, zMm: one.centreUpMm },
            slots: one.isRim ? [] : [back],
          },
          anchors: [...lapTabs, tab('shoulder-left', point(300 + one.anchorX, 0, one.anchorZ))],
        })
        const solved = solvePlace(given)
        fc.pre(solved.paths.some(({ strap }) => strap === 'shoulder-left'))
        const path = pathOf(solved, 'shoulder-left')
        // Every strap here passes its gate: the anchors lie well behind it.
        if (path.contacts.some(({ on }) => on === 'slot' || on === 'rim')) bent += 1
        const [anchor] = path.contacts
        const buckle = path.contacts.at(-1)
        if (anchor === undefined || buckle === undefined) throw new Error('no ends')
        const shortestMm = bruteForceMm(
          given,
          projected(anchor.point, 'side'),
          projected(buckle.point, 'side'),
        )
        // Samples 0.5 mm and 0.25° apart: at the best samples the length is off by second order, under 0.05 mm here.
        expect(path.lengthMm).toBeLessThan(shortestMm + 1e-9)
        expect(path.lengthMm).toBeGreaterThan(shortestMm - 0.05)
      }),
      { numRuns: 25 },
    )
    expect(bent).toBeGreaterThan(5)
  })
})

describe('an anti-submarine path against a search of all sampled ways', () => {
  it('is as short as the shortest round the groin', () => {
    let round = 0
    fc.assert(
      fc.property(mm(-260, 160), mm(-450, -160), mm(40, 105), (xMm, zMm, radiusMm) => {
        const given = scene({
          belt: belt(5),
          groinRadiusMm: radiusMm,
          anchors: [...lapTabs, tab('sub-centre', point(xMm, 0, zMm))],
        })
        const solved = solvePlace(given)
        const path = pathOf(solved, 'sub-centre')
        if (path.contacts.length > 2) round += 1
        const anchor = plane(xMm, zMm)
        const buckle = plane(solved.buckle?.xMm ?? 0, solved.buckle?.zMm ?? 0)
        const arc = given.body.groinArc
        // Straight if it passes ahead of the arc; otherwise down the front, from 100° (front and up) to 300° (below and behind).
        const piece = new Flatten.Segment(flat(anchor), flat(buckle))
        const isClear = flat(arc.centre).distanceTo(piece)[0] >= radiusMm
        let best = isClear && crossesAhead(anchor, buckle) ? apart(anchor, buckle) : Infinity
        let bestTop = Infinity
        for (let deg = 80; deg <= 330; deg += 0.05) {
          const at = arcPoint(arc, deg)
          const alongMm = (radiusMm * deg * Math.PI) / 180
          // A strap over the shoulder leaves it ahead of its top, never underneath.
          if (deg >= 60 && isReached(arc, buckle, at))
            bestTop = Math.min(bestTop, apart(buckle, at) - alongMm)
          if (isReached(arc, anchor, at)) best = Math.min(best, bestTop + alongMm + apart(at, anchor))
        }
        expect(path.lengthMm).toBeLessThan(best + 1e-6)
        expect(path.lengthMm).toBeGreaterThan(best - 0.01)
      }),
      { numRuns: 60 },
    )
    expect(round).toBeGreaterThan(10)
  })
})

/** Whether the straight line from below to above passes ahead (at smaller x) of the hip point at the origin. */
const crossesAhead = (low: PlanePointMm, high: PlanePointMm): boolean =>
  low.uMm + ((high.uMm - low.uMm) * (0 - low.vMm)) / (high.vMm - low.vMm) < 0

describe('a strap across the seat', () => {
  it('passes a slot edge where the strap in space is shortest', () => {
    const given = scene({
      shoulderRadiusMm: 0,
      shoulderHalfSpacingMm: 60,
      seat: {
        slots: [slot({ straps: ['shoulder-left'], face: 'back', centre: point(120, 0, 590), lengthMm: 600 })],
      },
      anchors: [...lapTabs, tab('shoulder-left', point(420, 90, 300))],
    })
    const [anchor, edge, body] = pathOf(solvePlace(given), 'shoulder-left').contacts
    if (anchor === undefined || edge === undefined || body === undefined) throw new Error('no bend')
    const lengthAt = (yMm: number): number =>
      [anchor.point, body.point].reduce(
        (sum, end) => sum + Math.hypot(end.xMm - edge.point.xMm, end.yMm - yMm, end.zMm - edge.point.zMm),
        0,
      )
    const tried = Array.from({ length: 15_001 }, (_, index) => -60 + index / 100)
    const best = tried.reduce((found, yMm) => (lengthAt(yMm) < lengthAt(found) ? yMm : found))
    expect(edge.on).toBe('slot')
    expect(Math.abs(edge.point.yMm - best)).toBeLessThan(0.02)
  })
})

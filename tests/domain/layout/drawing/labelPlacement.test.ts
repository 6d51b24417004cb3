import Flatten from '@flatten-js/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PlanePointMm } from '../../../../src/domain/geometry/plane'
import {
  type Box,
  boxAbout,
  boxContains,
  boxesOverlap,
  drawingBounds,
  labelBox,
  segmentMeetsBox,
} from '../../../../src/domain/layout/drawing/box'
import { type LabelWish, placedLabels } from '../../../../src/domain/layout/drawing/labelPlacement'
import type { Primitive } from '../../../../src/domain/layout/drawing/primitive'

const TEXT_HEIGHT_MM = 10
const point = fc.record({
  uMm: fc.integer({ min: 0, max: 300 }),
  vMm: fc.integer({ min: 0, max: 200 }),
})
const wish = (at: PlanePointMm, key: string, need: LabelWish['need']): LabelWish => ({
  key,
  part: null,
  at,
  text: 'left lap tab',
  weight: 'plain',
  need,
})
const FREE = { blocked: [], lines: [], textHeightMm: TEXT_HEIGHT_MM, within: null }

const boxesOf = (primitives: readonly Primitive[]): Box[] =>
  primitives.flatMap((primitive) => (primitive.kind === 'label' ? [labelBox(primitive, TEXT_HEIGHT_MM)] : []))

describe('segmentMeetsBox', () => {
  it('agrees with a general geometry library', () => {
    const box = boxAbout({ uMm: 150, vMm: 100 }, 120, 80)
    const general = new Flatten.Polygon(new Flatten.Box(90, 60, 210, 140))
    fc.assert(
      fc.property(point, point, (from, to) => {
        fc.pre(from.uMm !== to.uMm || from.vMm !== to.vMm)
        const segment = Flatten.segment(from.uMm, from.vMm, to.uMm, to.vMm)
        const meets = segment.intersect(general).length > 0 || general.contains(segment.start)
        expect(segmentMeetsBox(from, to, box)).toBe(meets)
      }),
    )
  })
})

describe('boxesOverlap and boxContains', () => {
  const box = boxAbout({ uMm: 0, vMm: 0 }, 10, 10)

  it('do not count boxes that only touch as overlapping, nor an edge in common as outside', () => {
    expect(boxesOverlap(box, boxAbout({ uMm: 10, vMm: 0 }, 10, 10))).toBe(false)
    expect(boxesOverlap(box, boxAbout({ uMm: 9.9, vMm: 0 }, 10, 10))).toBe(true)
    expect(boxContains(box, boxAbout({ uMm: 1, vMm: 0 }, 8, 10))).toBe(true)
    expect(boxContains(box, boxAbout({ uMm: 1.1, vMm: 0 }, 8, 10))).toBe(false)
  })
})

describe('placedLabels', () => {
  it('puts a lone label close to the right of its point, without a leader', () => {
    const placed = placedLabels([wish({ uMm: 0, vMm: 0 }, 'a', 'must')], FREE)
    expect(placed).toMatchObject([{ kind: 'label', align: 'left', at: { vMm: 0 } }])
  })

  it('never lets labels that may stay away cover one another', () => {
    fc.assert(
      fc.property(fc.array(point, { maxLength: 25 }), (points) => {
        const wishes = points.map((at, index) => wish(at, `${index}`, index % 2 === 0 ? 'may' : 'if-free'))
        const boxes = boxesOf(placedLabels(wishes, FREE))
        boxes.forEach((box, index) => {
          expect(boxes.slice(index + 1).some((other) => boxesOverlap(box, other))).toBe(false)
        })
      }),
    )
  })

  it('places every label that must be there, on a leader where it has to go further away', () => {
    const crowd = Array.from({ length: 12 }, (_, index) => wish({ uMm: 0, vMm: 0 }, `${index}`, 'must'))
    const placed = placedLabels(crowd, FREE)
    expect(boxesOf(placed)).toHaveLength(12)
    expect(placed.some((primitive) => primitive.key.endsWith('/leader'))).toBe(true)
  })

  it('keeps in sight', () => {
    const within = boxAbout({ uMm: 0, vMm: 0 }, 140, 60)
    const atEdge = wish({ uMm: 68, vMm: 0 }, 'a', 'must')
    const [box] = boxesOf(placedLabels([atEdge], { ...FREE, within }))
    expect(box !== undefined && boxContains(within, box)).toBe(true)
  })

  it('leaves a label out where it would cross a line, if it may only stand where it is free', () => {
    const fan = Array.from({ length: 24 }, (_, index) => {
      const turn = (index * Math.PI) / 12
      return [
        { uMm: 0, vMm: 0 },
        { uMm: 200 * Math.cos(turn), vMm: 200 * Math.sin(turn) },
      ]
    })
    const surroundings = { ...FREE, lines: fan }
    expect(placedLabels([wish({ uMm: 0, vMm: 0 }, 'a', 'if-free')], surroundings)).toEqual([])
    expect(boxesOf(placedLabels([wish({ uMm: 0, vMm: 0 }, 'a', 'must')], surroundings))).toHaveLength(1)
  })
})

describe('drawingBounds', () => {
  it('holds whole circles and whole texts, and leaves zones out', () => {
    const bounds = drawingBounds(
      [
        { kind: 'circle', key: 'c', part: null, centre: { uMm: 0, vMm: 0 }, radiusMm: 50, style: 'tube' },
        {
          kind: 'zone',
          key: 'z',
          part: null,
          region: [[{ uMm: 3000, vMm: 3000 }]],
          edges: [],
          hatchDeg: 45,
        },
      ],
      TEXT_HEIGHT_MM,
    )
    expect(bounds).toEqual({ min: { uMm: -50, vMm: -50 }, max: { uMm: 50, vMm: 50 } })
  })

  it('of nothing is still a place to stand', () => {
    const { min, max } = drawingBounds([], TEXT_HEIGHT_MM)
    expect(max.uMm - min.uMm).toBeGreaterThan(0)
    expect(max.vMm - min.vMm).toBeGreaterThan(0)
  })
})

import Flatten from '@flatten-js/core'
import fc from 'fast-check'
import polygonClipping from 'polygon-clipping'
import { describe, expect, it } from 'vitest'
import { pointMm } from '../../../../src/domain/geometry/point'
import { spatial } from '../../../../src/domain/shop/tab/tabPlates'
import { tabOutline } from '../../../../src/domain/shop/tab/tabOutline'
import { surfaceAt, tubeSlice, type TubeSlice } from '../../../../src/domain/shop/tab/tubeSlice'
import { cosDeg, sinDeg } from '../../../../src/domain/units/angle'
import { anyTab, offTube, outlineOf, RADIUS_MM, SIZE, slanted, sliceOf } from './plates'

describe('tabOutline', () => {
  it('has every place of its foot on the tube and in the plate', () => {
    fc.assert(
      fc.property(anyTab, (given) => {
        const slice = sliceOf(given)
        fc.pre(slice !== null && slice.reachMm < 150)
        const outline = tabOutline(slice, SIZE)
        fc.pre(!('kind' in outline))
        for (const at of outline.edge) {
          const point = spatial(given.hole, slice, at)
          const offset = {
            x: point.xMm - given.hole.xMm,
            y: point.yMm - given.hole.yMm,
            z: point.zMm - given.hole.zMm,
          }
          expect(Math.abs(offTube(given, offset))).toBeLessThan(1e-9)
          const depthMm = offset.x * given.normal.x + offset.y * given.normal.y + offset.z * given.normal.z
          expect(Math.abs(depthMm - at.depthMm)).toBeLessThan(1e-9)
          expect(Math.abs(at.depthMm)).toBeLessThanOrEqual(SIZE.thicknessMm / 2)
        }
      }),
    )
  })

  it('never cuts into the tube, at either face or between them (areas by a general polygon library)', () => {
    fc.assert(
      fc.property(anyTab, (given) => {
        const slice = sliceOf(given)
        fc.pre(slice !== null && slice.reachMm < 100)
        const outline = tabOutline(slice, SIZE)
        fc.pre(!('kind' in outline))
        const plate = [outline.points.map(({ xMm, yMm }): [number, number] => [xMm, yMm])]
        const reach = (lowMm: number): number =>
          Math.max(
            ...[-2.5, -1, 0, 1.7, 2.5].map((depthMm) => {
              const tube = sectionPolygon(slice, depthMm, lowMm)
              return tube.length < 3 ? 0 : areaOf(polygonClipping.intersection([plate], [[tube]]))
            }),
          )
        // Chords of the foot lie under their arcs by less than 0.01 mm over 40 mm.
        expect(reach(0)).toBeLessThan(0.4)
        // Raised by 0.1 mm the tube does reach the plate: the foot is not cut short.
        expect(reach(0.1)).toBeGreaterThan(0.4)
      }),
      { numRuns: 40 },
    )
  })

  it('leaves no gap under a plate square across, and the crescent of the slant under a slanted one', () => {
    const square = outlineOf(slanted(90))
    expect(square.gapMm.near).toBeCloseTo(0, 9)
    expect(square.gapMm.far).toBeCloseTo(0, 9)
    // A plate at 45° to a bar along y: a place (x, y) of its face at depth d is |x − d|·sin 45° beside the axis and 45 + y above it.
    const turned = outlineOf(slanted(45))
    const largest = (depthMm: number): number =>
      Math.max(
        ...turned.edge.map(
          ({ xMm, yMm }) => Math.hypot((xMm - depthMm) * Math.SQRT1_2, 45 + yMm) - RADIUS_MM,
        ),
      )
    expect(turned.gapMm.near).toBeCloseTo(largest(2.5), 9)
    expect(turned.gapMm.far).toBeCloseTo(largest(-2.5), 9)
    expect(turned.gapMm.far).toBeGreaterThan(1)
  })

  it('has straight sides that touch its round head (circle and lines by a general geometry library)', () => {
    const outline = outlineOf(slanted(90))
    const head = new Flatten.Circle(new Flatten.Point(0, 0), 20)
    const [left, right] = [outline.edge[0], outline.edge.at(-1)]
    const afterFoot = outline.points[outline.edge.length]
    if (left === undefined || right === undefined || afterFoot === undefined) throw new Error('no foot')
    const line = new Flatten.Line(
      new Flatten.Point(right.xMm, right.yMm),
      new Flatten.Point(afterFoot.xMm, afterFoot.yMm),
    )
    expect(new Flatten.Point(0, 0).distanceTo(line)[0]).toBeCloseTo(20, 6)
    expect(head.contains(new Flatten.Point(afterFoot.xMm * 0.999_999, afterFoot.yMm * 0.999_999))).toBe(true)
    // The surface of a round tube has turned 60° where x = r sin 60°.
    expect(right.xMm).toBeCloseTo(20 * sinDeg(60), 6)
    expect(left.xMm).toBeCloseTo(-20 * sinDeg(60), 6)
    // The chords of the drawn head lie 0.003 mm under its arc: 20·(1 − cos 1°).
    expect(outline.rimMm).toBeCloseTo(14, 2)
    expect(Math.max(...outline.points.map(({ yMm }) => yMm))).toBeCloseTo(20, 9)
  })

  it('keeps the full width along a tube, with parallel sides', () => {
    const along = outlineOf(slanted(0))
    expect(along.footWidthMm).toBeCloseTo(40, 9)
    // The crest lies under the plate's thickness: touched in the middle, 25 below the hole.
    expect(along.edge.every(({ yMm }) => Math.abs(yMm + 25) < 1e-9)).toBe(true)
    // Both faces stand √ off: at 2.5 mm beside the crest the tube is 20 − √(400 − 6.25) lower; square to it less.
    expect(along.gapMm.near).toBeCloseTo(Math.hypot(2.5, 20) - 20, 9)
    const xs = along.points.map(({ xMm }) => xMm)
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([expect.closeTo(-20, 9), expect.closeTo(20, 9)])
  })

  it('finds the crest of the tube between the faces of a plate along it', () => {
    const slice = tubeSlice({
      hole: pointMm(1.5, 0, 45),
      normal: { x: 1, y: 0, z: 0 },
      onAxis: pointMm(0, 0, 0),
      axis: { x: 0, y: 1, z: 0 },
      radiusMm: RADIUS_MM,
    })
    if (typeof slice === 'string') throw new Error(slice)
    // 1.5 mm from the mid-plane of a 5 mm plate the tube is 20 mm high; in the mid-plane it is lower.
    for (const { yMm, depthMm } of outlineOf(slice).edge) {
      expect(yMm).toBeCloseTo(-25, 9)
      expect(depthMm).toBeCloseTo(-1.5, 6)
    }
  })

  it('ends at its edge distance whether that is less or more than half its width', () => {
    for (const edgeDistanceMm of [14, 20, 33]) {
      const outline = outlineOf(slanted(90), { ...SIZE, edgeDistanceMm })
      expect(Math.max(...outline.points.map(({ yMm }) => yMm))).toBeCloseTo(edgeDistanceMm, 9)
      expect(Math.max(...outline.points.map(({ xMm }) => xMm))).toBeCloseTo(20, 2)
    }
  })

  it('is refused, with numbers, when the hole is too near to the tube or to the edge', () => {
    // Hole edge 10.999 − 6 = 4.999 mm from the tube under a 5 mm plate.
    const near = tabOutline(slanted(90, pointMm(0, 0, 30.999)), SIZE)
    expect(near).toMatchObject({ kind: 'hole-at-tube', neededMm: 5 })
    expect('roomMm' in near ? near.roomMm : Number.NaN).toBeCloseTo(4.999, 9)
    expect('kind' in tabOutline(slanted(90, pointMm(0, 0, 31)), SIZE)).toBe(false)
    expect(tabOutline(slanted(90), { ...SIZE, edgeDistanceMm: 6 })).toEqual({ kind: 'no-rim', rimMm: 0 })
    expect('kind' in tabOutline(slanted(90), { ...SIZE, edgeDistanceMm: 6.1 })).toBe(false)
  })

  it('is refused where the tube runs steeply past the hole, and tells the least distance of hole and foot whichever way', () => {
    // A nearly level plate under a rail, 2° out of the rail's direction: its 6 mm carry the section 170 mm along.
    const [planDeg, leanDeg] = [-14.765, 80.315]
    const normal = {
      x: -sinDeg(planDeg) * cosDeg(leanDeg),
      y: cosDeg(planDeg) * cosDeg(leanDeg),
      z: sinDeg(leanDeg),
    }
    const kinds = [12.69, -12.69].map((offMm) => {
      const slice = tubeSlice({
        hole: pointMm(offMm * normal.x, 13.895 + offMm * normal.y, -35.38 + offMm * normal.z),
        normal,
        onAxis: pointMm(0, 0, 0),
        axis: { x: 1, y: 0, z: 0 },
        radiusMm: 19.05,
      })
      if (typeof slice === 'string') return slice
      const outline = tabOutline(slice, {
        widthMm: 39.13,
        edgeDistanceMm: 19.56,
        thicknessMm: 6,
        holeDiameterMm: 9.13,
      })
      return 'kind' in outline ? outline.kind : 'drawn'
    })
    expect(kinds).toContain('steep-foot')
    fc.assert(
      fc.property(anyTab, (given) => {
        const slice = sliceOf(given)
        fc.pre(slice !== null)
        const outline = tabOutline(slice, { ...SIZE, thicknessMm: 8 })
        fc.pre(!('kind' in outline))
        const ends = [outline.edge[0]?.yMm ?? 0, outline.edge.at(-1)?.yMm ?? 0]
        expect(Math.max(...ends)).toBeLessThan(0)
        const hole = new Flatten.Circle(new Flatten.Point(0, 0), 6)
        const least = Math.min(
          ...outline.edge.slice(1).map(({ xMm, yMm }, index) => {
            const before = outline.edge[index] ?? { xMm, yMm }
            const piece = new Flatten.Segment(
              new Flatten.Point(before.xMm, before.yMm),
              new Flatten.Point(xMm, yMm),
            )
            return hole.distanceTo(piece)[0]
          }),
        )
        expect(outline.holeToTubeMm).toBeCloseTo(least, 6)
      }),
      { numRuns: 60 },
    )
  })

  it('is refused when a large head would swallow a thin tube', () => {
    const thin = tubeSlice({
      hole: pointMm(0, 0, 16),
      normal: { x: 0, y: 1, z: 0 },
      onAxis: pointMm(0, 0, 0),
      axis: { x: 0, y: 1, z: 0 },
      radiusMm: 4,
    })
    if (typeof thin === 'string') throw new Error(thin)
    expect(tabOutline(thin, { ...SIZE, widthMm: 60, edgeDistanceMm: 30 })).toEqual({ kind: 'no-foot' })
  })

  it('is a simple anticlockwise loop', () => {
    fc.assert(
      fc.property(anyTab, (given) => {
        const slice = sliceOf(given)
        fc.pre(slice !== null && slice.reachMm < 100)
        const outline = tabOutline(slice, SIZE)
        fc.pre(!('kind' in outline))
        const face = new Flatten.Polygon(outline.points.map(({ xMm, yMm }) => new Flatten.Point(xMm, yMm)))
        expect(face.isValid()).toBe(true)
        expect([...face.faces][0]?.orientation()).toBe(Flatten.ORIENTATION.CCW)
        expect(Math.hypot(slice.up.x, slice.up.y, slice.up.z)).toBeCloseTo(1, 9)
      }),
      { numRuns: 40 },
    )
  })
})

/** The upper half of the tube's section at a depth, raised by `raisedMm` and closed far below. */
const sectionPolygon = (slice: TubeSlice, depthMm: number, raisedMm: number): [number, number][] => {
  const top: [number, number][] = []
  for (let xMm = -60; xMm <= 60; xMm += 0.25) {
    const yMm = surfaceAt(slice, xMm, depthMm)
    if (yMm !== null) top.push([xMm, yMm + raisedMm])
  }
  const [first, last] = [top[0], top.at(-1)]
  return first === undefined || last === undefined ? [] : [...top, [last[0], -400], [first[0], -400]]
}

const areaOf = (polygons: [number, number][][][]): number =>
  polygons.reduce(
    (sum, [ring = []]) =>
      sum +
      Math.abs(
        ring.reduce((twice, [x, y], index) => {
          const [nx, ny] = ring[(index + 1) % ring.length] ?? [x, y]
          return twice + x * ny - nx * y
        }, 0) / 2,
      ),
    0,
  )

import { Point, Polygon } from '@flatten-js/core'
import { describe, expect, it } from 'vitest'
import type { PosedBody } from '../../../../src/domain/body/posedBody'
import type { PointMm } from '../../../../src/domain/geometry/point'
import { solvedSittings } from '../../../../src/domain/layout/evaluate/solvedSittings'
import type { StrapPath } from '../../../../src/domain/straps/path'
import { EXAMPLES, OUTFITTED } from './explain/explainedLayouts'

/** Outlines are drawn by chords of up to 10°, which lie up to 0.4 % of a radius of some 150 mm inside the curve; no more is allowed. */
const CHORD_MM = 1

const polygonOf = (body: PosedBody, elevation: 'side' | 'top', part: string): Polygon => {
  const outline = body.outlines[elevation].find((each) => each.part === part)
  return new Polygon((outline?.points ?? []).map(({ uMm, vMm }): [number, number] => [uMm, vMm]))
}

const side = ({ xMm, zMm }: PointMm): Point => new Point(xMm, zMm)

interface Strapped {
  readonly body: PosedBody
  readonly path: StrapPath
}

/** Every strap of the family in the outer sittings of the examples, as they are and with side-wall slots that can be reached. */
const strapped = (family: string): readonly Strapped[] =>
  [...EXAMPLES, ...OUTFITTED].flatMap((layout) =>
    layout.places.flatMap((place) => {
      const solved = solvedSittings(layout, place)
      return [solved[0], solved.at(-1)].flatMap((each) =>
        each === undefined
          ? []
          : each.solved.paths
              .filter(({ strap, contacts }) => strap.startsWith(family) && contacts.at(-1)?.on === 'buckle')
              .map((path) => ({ body: each.scene.body, path })),
      )
    }),
  )

describe('the drawn body under its straps', () => {
  it('has the shoulder straps lying on its outline from behind the shoulder to the lower end of the chest', () => {
    const straps = strapped('shoulder')
    const onChest = straps.filter(({ path }) => path.contacts.filter(({ on }) => on === 'body').length === 4)
    expect(onChest.length).toBeGreaterThan(4)
    for (const { body, path } of straps) {
      const trunk = polygonOf(body, 'side', 'trunk')
      const first = path.polyline.indexOf(path.bodyContact)
      const lastOnBody = path.contacts.findLast(({ on }) => on === 'body')?.point ?? path.bodyContact
      for (const point of path.polyline.slice(first, path.polyline.indexOf(lastOnBody) + 1)) {
        const [apartMm] = side(point).distanceTo(trunk)
        const isInside = trunk.contains(side(point))
        const boundaryMm = isInside
          ? Math.min(...[...trunk.edges].map((edge) => side(point).distanceTo(edge.shape)[0]))
          : apartMm
        expect(boundaryMm).toBeLessThan(CHORD_MM)
      }
    }
  })

  it('never reaches beyond the chest that the straps are solved on', () => {
    for (const { body } of strapped('shoulder')) {
      const trunk = polygonOf(body, 'side', 'trunk')
      const { centre, acrossMm, alongMm } = body.chest
      const turn = (body.reclineDeg * Math.PI) / 180
      // The front half of the section: rearward across the torso line is the direction (cos β, −sin β).
      for (let deg = 90; deg <= 270; deg += 15) {
        const a = acrossMm * Math.cos((deg * Math.PI) / 180)
        const b = alongMm * Math.sin((deg * Math.PI) / 180)
        const point = new Point(
          centre.uMm + a * Math.cos(turn) + b * Math.sin(turn),
          centre.vMm - a * Math.sin(turn) + b * Math.cos(turn),
        )
        expect(trunk.contains(point) ? 0 : point.distanceTo(trunk)[0]).toBeLessThan(CHORD_MM)
      }
    }
  })

  it('has the lap straps outside the hips seen from above but where they lie across them', () => {
    const straps = strapped('lap')
    expect(straps.length).toBeGreaterThan(4)
    for (const { body, path } of straps) {
      const hips = polygonOf(body, 'top', 'hips')
      // Behind the first contact with the body the strap is clear of the outline.
      const outside = path.contacts.slice(
        0,
        path.contacts.findIndex(({ on }) => on === 'body'),
      )
      for (const { point } of outside) expect(hips.contains(new Point(point.xMm, point.yMm))).toBe(false)
      const front = path.contacts.at(-2)?.point ?? path.bodyContact
      expect(Math.hypot(front.xMm - body.hip.xMm, front.zMm - body.hip.zMm)).toBeCloseTo(
        body.lapArc.radiusMm,
        6,
      )
    }
  })
})

import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bodyOf } from '../../../src/domain/body/body'
import { posedBody } from '../../../src/domain/body/posed'
import { STUDENT_TEMPLATE_MEASURES } from '../../../src/domain/body/template'
import { vehiclePoint } from '../../../src/domain/body/pose'
import {
  QUANTITY_IDS,
  type QuantityId,
  quantityUnit,
  type Subject,
} from '../../../src/domain/straps/quantity'
import type { Anchor } from '../../../src/domain/straps/anchor'
import { seatPose } from '../../../src/domain/straps/seatPose'
import { solvePlace } from '../../../src/domain/straps/solve'
import { mirroredStrap, STRAP_IDS, strapsOf, type StrapId } from '../../../src/domain/straps/strap'
import { anyScene, mirrored, movedAndScaled } from './arbitraryScenes'
import { bar, belt, lapTabs, point, scene, tab, valueOf } from './scenes'

const otherSubject = (subject: Subject): Subject => {
  const strap = STRAP_IDS.find((id) => id === subject)
  return strap === undefined ? subject : (mirroredStrap(strap) ?? subject)
}

/** Quantities taken to points that the law puts at fixed lengths from the hip point. */
const BY_LAW = new Set<QuantityId>(['lap-shifted-angle', 'shoulder-behind-fk', 'shoulder-reference-plan'])

describe('solvePlace', () => {
  it('gives finite numbers only, each once, and a path or a reason for every strap', () => {
    fc.assert(
      fc.property(anyScene, (given) => {
        const solved = solvePlace(given)
        const names = solved.quantities.map(({ id, subject }) => `${id} of ${subject}`)
        expect(new Set(names).size).toBe(names.length)
        for (const { value } of solved.quantities) expect(Number.isFinite(value)).toBe(true)
        for (const path of solved.paths) {
          expect(Number.isFinite(path.lengthMm)).toBe(true)
          for (const at of path.polyline)
            expect([at.xMm, at.yMm, at.zMm].every((part) => Number.isFinite(part))).toBe(true)
        }
        for (const strap of strapsOf(given.belt)) {
          const isSolved = solved.paths.some((path) => path.strap === strap)
          const isExplained = solved.problems.some((problem) => problem.strap === strap)
          expect(isSolved || isExplained).toBe(true)
        }
      }),
    )
  })

  it('meets most random cockpits with a full set of numbers', () => {
    const scenes = fc.sample(anyScene, 200)
    const full = scenes.filter((given) => solvePlace(given).problems.length === 0).length
    expect(full).toBeGreaterThan(100) // otherwise the properties here would say little
  })

  it('sees the same in a mirror, left and right exchanged', () => {
    fc.assert(
      fc.property(anyScene, (given) => {
        const solved = solvePlace(given)
        const seen = solvePlace(mirrored(given))
        expect(seen.quantities.length).toBe(solved.quantities.length)
        for (const { id, subject, value } of solved.quantities)
          expect(Math.abs(valueOf(seen, id, otherSubject(subject)) - value)).toBeLessThan(1e-6)
      }),
    )
  })

  it('does not depend on where the datum is, and scales lengths but no angle', () => {
    fc.assert(
      fc.property(
        anyScene,
        fc.double({ min: -2000, max: 2000, noNaN: true }),
        fc.double({ min: 0.2, max: 4, noNaN: true }),
        (given, shiftMm, factor) => {
          const solved = solvePlace(given)
          const other = solvePlace(movedAndScaled(given, point(shiftMm, -shiftMm / 2, shiftMm / 3), factor))
          expect(other.quantities.length).toBe(solved.quantities.length)
          for (const { id, subject, value } of solved.quantities) {
            // Points at lengths fixed by law (64 and 10 mm; 260 mm; 530 mm) do not scale.
            if (BY_LAW.has(id) && factor !== 1) continue
            const expected = quantityUnit(id) === 'mm' ? value * factor : value
            expect(Math.abs(valueOf(other, id, subject) - expected)).toBeLessThan(1e-5)
          }
        },
      ),
    )
  })

  it('keeps shoulder-to-spine when seat, body and shoulder anchors recline together', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 30, noNaN: true }),
        fc.double({ min: 150, max: 600, noNaN: true }),
        fc.double({ min: 450, max: 640, noNaN: true }),
        (reclineDeg, xMm, zMm) => {
          const toSpine = (deg: number): number => {
            const pose = { hip: point(0, 0, 0), reclineDeg: deg }
            // Rim along with the seat, low enough to stay clear of the strap at every recline.
            return valueOf(
              solvePlace(
                scene({
                  reclineDeg: deg,
                  seat: { backrestRim: { xMm: 120, zMm: 100 } },
                  anchors: [...lapTabs, tab('shoulder-left', vehiclePoint(pose, point(xMm, -80, zMm)))],
                }),
              ),
              'shoulder-to-spine',
              'shoulder-left',
            )
          }
          expect(toSpine(reclineDeg)).toBeCloseTo(toSpine(0), 6)
        },
      ),
    )
  })

  it('says which anchors of the arrangement are missing and leaves out what the belt does not have', () => {
    const solved = solvePlace(
      scene({
        belt: belt(5),
        anchors: [...lapTabs, tab('sub-left', point(0, -50, -300)), tab('sub-right', point(0, 50, -300))],
      }),
    )
    const missing = solved.problems.filter(({ kind }) => kind === 'anchor-missing').map(({ strap }) => strap)
    expect(missing).toEqual<StrapId[]>(['shoulder-left', 'shoulder-right', 'sub-centre'])
    expect(solved.quantities.some(({ id }) => id.startsWith('sub-'))).toBe(false)
  })

  it('treats a wrap round a tube that is not there like a missing anchor', () => {
    const given = scene({ tubes: [] })
    const [first] = given.anchors
    if (first === undefined) throw new Error('no anchor')
    const gone = {
      ...first,
      mount: { kind: 'wrap', tubeId: 'gone', point: first.mount.point, over: 'over', guideHoops: false },
    } as const
    const solved = solvePlace({ ...given, anchors: [gone, ...given.anchors.slice(1)] })
    expect(solved.problems).toContainEqual({ kind: 'anchor-missing', strap: 'lap-left' })
  })

  it('refuses a shoulder anchor in or ahead of the shoulder, and one so high that the strap lifts off', () => {
    const kindAt = (xMm: number, zMm: number, reclineDeg = 0): string | undefined =>
      solvePlace(
        scene({
          reclineDeg,
          seat: { backrestRim: { xMm: 120, zMm: 0 } },
          anchors: [...lapTabs, tab('shoulder-left', point(xMm, -80, zMm))],
        }),
      ).problems.find(({ strap }) => strap === 'shoulder-left')?.kind
    expect(kindAt(30, 520)).toBe('anchor-inside-body')
    expect(kindAt(-200, 700)).toBe('anchor-ahead-of-shoulder')
    expect(kindAt(300, 590)).toBeUndefined()
    expect(kindAt(700, 700, 80)).toBe('clear-of-shoulder')
  })

  it('gives every quantity for a full seven-point place', () => {
    const given = scene({
      belt: belt(7),
      seat: {
        slots: [
          {
            id: 'back',
            straps: ['shoulder-left', 'shoulder-right'],
            face: 'back',
            centre: point(130, 0, 590),
            lengthMm: 400,
            heightMm: 60,
            turnDeg: 0,
          },
        ],
      },
      anchors: [
        ...lapTabs,
        {
          id: 'w',
          strap: 'shoulder-left',
          mount: { kind: 'wrap', tubeId: 'bar', point: point(400, -80, 570), over: 'over', guideHoops: true },
        },
        tab('shoulder-right', point(400, 80, 590)),
        tab('sub-left', point(20, -50, -300)),
        tab('sub-right', point(20, 50, -300)),
        tab('sub-centre', point(-100, 0, -300)),
      ],
      tubes: [
        {
          id: 'bar',
          name: 'harness bar',
          role: 'harness-bar',
          points: [point(400, -500, 570), point(400, 500, 570)],
          outsideDiameterMm: 40,
          wallMm: 2,
        },
      ],
    })
    // The same with both shoulder straps on one tail that hangs on an eye bolt, and adjusters.
    const eye = (strap: 'shoulder-left' | 'shoulder-right'): Anchor => ({
      id: strap,
      strap,
      mount: {
        kind: 'eye',
        point: point(600, 0, 570),
        planDeg: 180,
        riseDeg: 0,
        threadDiameterMm: 12,
        eyeDiameterMm: 30,
        tubeId: null,
      },
    })
    const joined = {
      ...given,
      belt: belt(7, { shoulderTailMm: 150, adjusters: { lap: { fromAnchorMm: 100, lengthMm: 50 } } }),
      // The bar lowered out of the tail's way.
      tubes: [bar(400, 300, 40)],
      anchors: [
        ...given.anchors.filter(({ strap }) => !strap.startsWith('shoulder')),
        eye('shoulder-left'),
        eye('shoulder-right'),
      ],
    }
    const solved = [solvePlace(given), solvePlace(joined)]
    expect(solved.flatMap(({ problems }) => problems)).toEqual([])
    const ids = new Set(solved.flatMap(({ quantities }) => quantities.map(({ id }) => id)))
    expect(QUANTITY_IDS.filter((id) => !ids.has(id))).toEqual([])
  })
})

describe('solvePlace with the published flat figure', () => {
  // Formula SAE Rules 2026 V1, F.5.6: shoulder circle Ø200, centre 490 mm from the hip centre. At 30° recline the centre is
  // 245.0 mm behind and 424.4 mm above the hip centre; a level strap leaves its top, 100 mm above that, at 0°, and is 30° from
  // square to the spine.
  it('finds a level strap on top of the shoulder circle', () => {
    const body = bodyOf({
      id: 'figure',
      name: 'figure',
      sex: 'male',
      statureMm: 1870,
      massKg: 100,
      measured: STUDENT_TEMPLATE_MEASURES,
    })
    const given = scene()
    const pose = seatPose({ ...given.seat, hipPoint: point(0, 0, 0) }, 0, 30)
    const posed = posedBody(body, pose, 100)
    const solved = solvePlace({
      ...given,
      pose,
      body: posed,
      anchors: [...lapTabs, tab('shoulder-left', point(600, -80, 524.4))],
    })
    expect(Math.abs(valueOf(solved, 'shoulder-drop', 'shoulder-left'))).toBeLessThan(0.01)
    expect(Math.abs(valueOf(solved, 'shoulder-to-spine', 'shoulder-left') + 30)).toBeLessThan(0.01)
    const contact = solved.paths.find(({ strap }) => strap === 'shoulder-left')?.bodyContact
    expect(Math.abs((contact?.xMm ?? 0) - 245)).toBeLessThan(0.1)
    expect(Math.abs((contact?.zMm ?? 0) - 524.4)).toBeLessThan(0.1)
  })
})

describe('seatPose', () => {
  it('slides rearward with +, and keeps the hip point when it reclines', () => {
    const { seat } = scene({ seat: { hipPoint: point(100, 20, 30) } })
    expect(seatPose(seat, -40, 12)).toEqual({ hip: point(60, 20, 30), reclineDeg: 12 })
  })
})

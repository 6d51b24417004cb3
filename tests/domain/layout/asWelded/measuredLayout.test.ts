import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { pointDistanceMm } from '../../../../src/domain/geometry/point'
import { measuredLayout } from '../../../../src/domain/layout/asWelded/measuredLayout'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { layoutNumbers } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import type { Mount } from '../../../../src/domain/straps/anchor'
import { coordinatesAt, measuredAt, planOfExample, recordWith } from '../../../support/asWelded'
import { exampleIndex } from '../../../support/exampleLayouts'

const BUGGY = planOfExample('rock-buggy.layout.json')
const TWO_SEATS = planOfExample('trail-car-two-seat.layout.json')
const JOINED = planOfExample('hill-climber-joined-straps.layout.json')

const mountsOf = ({ places }: Layout): readonly Mount[] =>
  places.flatMap(({ anchors }) => anchors.map(({ mount }) => mount))

const isLapLeft = ({ strap }: { readonly strap: string }): boolean => strap === 'lap-left'

describe('measuredLayout', () => {
  it.each(exampleIndex.map(({ file }) => file))(
    'measured as planned %s has the findings of the plan',
    (file) => {
      const plan = planOfExample(file)
      const record = recordWith(plan, (entry) => measuredAt(entry, plan))
      const measured = measuredLayout(plan, record)
      expect(measured.layout).toEqual(plan)
      expect(layoutNumbers(measured.layout)).toEqual(layoutNumbers(plan))
      expect(
        measured.anchors.every(({ standing, isReplanned }) => standing === 'measured' && !isReplanned),
      ).toBe(true)
      expect(measured.gone).toEqual([])
    },
  )

  it('puts whatever was measured where it was measured, leaves the rest as planned, and never touches the plan', () => {
    const copy = structuredClone(TWO_SEATS)
    const count = mountsOf(TWO_SEATS).length
    const offMm = fc.double({ min: -30, max: 30, noNaN: true })
    const off = fc.option(fc.record({ xMm: offMm, yMm: offMm, zMm: offMm }))
    fc.assert(
      fc.property(fc.array(off, { minLength: count, maxLength: count }), (offs) => {
        let at = -1
        const record = recordWith(TWO_SEATS, (entry) => {
          at += 1
          const by = offs[at] ?? null
          return by === null ? entry : measuredAt(entry, TWO_SEATS, by)
        })
        const { layout, anchors } = measuredLayout(TWO_SEATS, record)
        const planned = mountsOf(copy)
        const awayMm = mountsOf(layout).map((mount, index) => {
          const { xMm = 0, yMm = 0, zMm = 0 } = offs[index] ?? {}
          const { point, ...rest } = planned[index] ?? mount
          expect({ ...rest, point: mount.point }).toEqual(mount)
          return pointDistanceMm(mount.point, {
            xMm: point.xMm + xMm,
            yMm: point.yMm + yMm,
            zMm: point.zMm + zMm,
          })
        })
        expect(Math.max(...awayMm)).toBeLessThan(1e-9)
        expect(anchors.map(({ standing }) => standing)).toEqual(
          offs.map((by) => (by === null ? 'not-measured' : 'measured')),
        )
        expect(TWO_SEATS).toEqual(copy)
      }),
    )
  })

  it('has the numbers of a layout whose anchors were moved by hand', () => {
    const off = { xMm: 6, yMm: -4, zMm: 9 }
    const record = recordWith(BUGGY, (entry) =>
      entry.strap === 'lap-left' || entry.strap === 'sub-right'
        ? { ...entry, measurement: coordinatesAt(entry.planned.point, off) }
        : entry,
    )
    const byHand: Layout = {
      ...BUGGY,
      places: BUGGY.places.map((place) => ({
        ...place,
        anchors: place.anchors.map((anchor) => {
          if (anchor.strap !== 'lap-left' && anchor.strap !== 'sub-right') return anchor
          const { xMm, yMm, zMm } = anchor.mount.point
          const point = { xMm: xMm + 6, yMm: yMm - 4, zMm: zMm + 9 }
          return { ...anchor, mount: { ...anchor.mount, point } }
        }),
      })),
    }
    const { layout } = measuredLayout(BUGGY, record)
    expect(layout).toEqual(byHand)
    expect(layoutNumbers(layout)).toEqual(layoutNumbers(byHand))
    expect(layoutNumbers(layout)).not.toEqual(layoutNumbers(BUGGY))
  })

  it('turns a tab as it was measured, averaged over ±180° too, and nothing else', () => {
    const record = recordWith(BUGGY, (entry) =>
      isLapLeft(entry) ? { ...entry, planDeg: [179, -178], leanDeg: [2, 3] } : entry,
    )
    const { layout, anchors } = measuredLayout(BUGGY, record)
    const lap = anchors.find(({ anchor }) => isLapLeft(anchor))
    expect(lap?.standing).toBe('not-measured')
    const mount = lap?.mount
    if (mount?.kind !== 'tab') throw new Error('the example has no lap tab')
    // The mean of 179° and 182° is 180.5°: the plane of half a turn less, 0.5°, with the lean the other way round. The plan has −31°.
    expect(mount.planDeg).toBeCloseTo(0.5, 9)
    expect(mount.leanDeg).toBe(-2.5)
    const others = (all: Layout) => mountsOf(all).filter((other) => other.point !== mount.point)
    expect(others(layout)).toEqual(others(BUGGY))
  })

  it('keeps the planned lean of a tab whose turn alone was measured, whichever way that was written', () => {
    const leaning = (planDeg: number, leanDeg: number) => ({ planDeg, leanDeg })
    const plan: Layout = {
      ...BUGGY,
      places: BUGGY.places.map((place) => ({
        ...place,
        anchors: place.anchors.map((anchor) =>
          isLapLeft(anchor) && anchor.mount.kind === 'tab'
            ? { ...anchor, mount: { ...anchor.mount, ...leaning(0, 20) } }
            : anchor,
        ),
      })),
    }
    const planeOf = (planDeg: number) => {
      const record = recordWith(plan, (entry) =>
        isLapLeft(entry) ? { ...entry, planDeg: [planDeg] } : entry,
      )
      const mount = measuredLayout(plan, record).anchors.find(({ anchor }) => isLapLeft(anchor))?.mount
      if (mount?.kind !== 'tab') throw new Error('the example has no lap tab')
      return leaning(mount.planDeg, mount.leanDeg)
    }
    // 178° is −2° seen from the other end of the same line.
    expect(planeOf(178)).toEqual(leaning(-2, 20))
    expect(planeOf(-2)).toEqual(leaning(-2, 20))
  })

  it('takes the plan where readings give no position, and says so', () => {
    const record = recordWith(BUGGY, (entry) =>
      isLapLeft(entry)
        ? { ...entry, measurement: { kind: 'coordinates', xMm: [1350], yMm: [], zMm: [38] } }
        : entry,
    )
    const { layout, anchors } = measuredLayout(BUGGY, record)
    expect(layout).toEqual(BUGGY)
    expect(anchors.find(({ anchor }) => isLapLeft(anchor))?.standing).toBe('bad-measurement')
  })

  it('puts both joined shoulder straps on the one anchor that was measured', () => {
    const record = recordWith(JOINED, (entry) =>
      entry.strap === 'shoulder-left' ? measuredAt(entry, JOINED, { zMm: -7 }) : entry,
    )
    const { anchors } = measuredLayout(JOINED, record)
    const shoulders = anchors.filter(({ anchor }) => anchor.strap.startsWith('shoulder'))
    expect(shoulders.map(({ standing }) => standing)).toEqual(['measured', 'measured'])
    expect(shoulders[0]?.mount.point).toEqual(shoulders[1]?.mount.point)
    expect(shoulders[0]?.mount.point.zMm).toBeCloseTo((shoulders[0]?.anchor.mount.point.zMm ?? 0) - 7, 9)
  })

  it('has what is held to the outside of a wrapped bar tell where its centre line is', () => {
    // Straight above the centre line of a level bar by half its diameter: a square and a tape, no other way to see it.
    const wrap = JOINED.places[0]?.anchors.find(({ mount }) => mount.kind === 'wrap')?.mount
    const bar = JOINED.tubes.find(({ id }) => id === wrap?.tubeId)
    if (wrap === undefined || bar === undefined) throw new Error('the example has no wrap')
    const top = { ...wrap.point, zMm: wrap.point.zMm + bar.outsideDiameterMm / 2 }
    const record = recordWith(JOINED, (entry) =>
      entry.planned === wrap ? { ...entry, measurement: coordinatesAt(top) } : entry,
    )
    const { anchors } = measuredLayout(JOINED, record)
    const measured = anchors.find(({ anchor }) => anchor.mount === wrap)
    expect(pointDistanceMm(measured?.mount.point ?? top, wrap.point)).toBeLessThan(1e-9)
    expect(measured?.offBarMm).toBeLessThan(1e-6)
  })

  it('leaves a wrap where it was measured and says how far its bar is from where it was planned', () => {
    const wrap = mountsOf(TWO_SEATS).find(({ kind }) => kind === 'wrap')
    if (wrap === undefined) throw new Error('the example has no wrap')
    const record = recordWith(TWO_SEATS, (entry) =>
      entry.planned === wrap ? measuredAt(entry, TWO_SEATS, { xMm: -3, zMm: 4 }) : entry,
    )
    const { anchors } = measuredLayout(TWO_SEATS, record)
    const measured = anchors.find(({ anchor }) => anchor.mount === wrap)
    const { xMm, yMm, zMm } = wrap.point
    expect(
      pointDistanceMm(measured?.mount.point ?? wrap.point, { xMm: xMm - 3, yMm, zMm: zMm + 4 }),
    ).toBeLessThan(1e-9)
    // The bar runs straight across the car, so both components are square to it: 3, 4, 5.
    expect(measured?.offBarMm).toBeCloseTo(5, 6)
  })

  it('keeps what was measured of an anchor that is gone, and knows one whose id came back for another strap', () => {
    const record = recordWith(BUGGY, (entry) => ({
      ...entry,
      measurement: coordinatesAt(entry.planned.point, { xMm: 5 }),
    }))
    const changed: Layout = {
      ...BUGGY,
      places: BUGGY.places.map((place) => ({
        ...place,
        anchors: place.anchors.flatMap((anchor) => {
          if (anchor.strap === 'lap-left') return []
          if (anchor.strap === 'sub-left') return [{ ...anchor, strap: 'sub-centre' as const }]
          return [anchor]
        }),
      })),
    }
    const { gone, anchors } = measuredLayout(changed, record)
    expect(gone.map(({ strap }) => strap)).toEqual(['lap-left', 'sub-left'])
    const centre = anchors.find(({ anchor }) => anchor.strap === 'sub-centre')
    expect(centre?.standing).toBe('not-in-record')
    expect(centre?.mount).toBe(centre?.anchor.mount)
  })

  it('knows an anchor that was planned anew after the record was begun', () => {
    const record = recordWith(BUGGY, (entry) => ({
      ...entry,
      measurement: coordinatesAt(entry.planned.point),
    }))
    const moved: Layout = {
      ...BUGGY,
      places: BUGGY.places.map((place) => ({
        ...place,
        anchors: place.anchors.map((anchor) =>
          isLapLeft(anchor)
            ? { ...anchor, mount: { ...anchor.mount, point: { ...anchor.mount.point, zMm: 45 } } }
            : anchor,
        ),
      })),
    }
    const { anchors } = measuredLayout(moved, record)
    expect(anchors.filter(({ isReplanned }) => isReplanned).map(({ anchor }) => anchor.strap)).toEqual([
      'lap-left',
    ])
    // What was measured stays where it was measured.
    expect(anchors.find(({ anchor }) => isLapLeft(anchor))?.mount.point.zMm).toBe(38)
  })
})

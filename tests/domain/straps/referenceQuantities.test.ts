import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { ruleSetMatrix } from '../../../src/domain/layout/evaluate/ruleSetMatrix'
import { planePoint } from '../../../src/domain/geometry/plane'
import { behindFkMm, pointB, pointZ } from '../../../src/domain/straps/referenceQuantities'
import { flatLayout, flatPlace, tabPair } from '../../support/flatLayout'

const HIP = planePoint(0, 0)

// Source: 76/115/EEC as amended to 96/38/EC, Annex I 4.4.4: BR = 260 mm + S, Z at 530 mm; worked out for a torso line 25° back:
// B at 400·(sin 25°, cos 25°) = (169.05, 362.52), Z at 530·(sin 25°, cos 25°) = (223.99, 480.34).
describe('the points on the torso line', () => {
  it('puts B 400 mm up the line for an anchorage 140 mm from the middle', () => {
    const b = pointB(HIP, 25, 140)
    expect(b.uMm).toBeCloseTo(169.0, 0)
    expect(b.uMm).toBeCloseTo(400 * 0.422618, 3)
    expect(b.vMm).toBeCloseTo(400 * 0.906308, 3)
  })

  it('puts B 560 mm up the line for an anchorage 300 mm from the middle', () => {
    const b = pointB(HIP, 25, 300)
    expect(Math.hypot(b.uMm, b.vMm)).toBeCloseTo(560, 9)
  })

  it('puts Z 530 mm up the line', () => {
    const z = pointZ(planePoint(1000, 200), 25)
    expect(z.uMm - 1000).toBeCloseTo(530 * 0.422618, 3)
    expect(z.vMm - 200).toBeCloseTo(530 * 0.906308, 3)
  })
})

describe('behindFkMm', () => {
  const hip = { xMm: 0, yMm: 0, zMm: 0 }

  it('is 0 on B itself and all along the plane, at any height', () => {
    const b = pointB(HIP, 25, 140)
    expect(behindFkMm(hip, 25, { xMm: b.uMm, yMm: 140, zMm: b.vMm })).toBeCloseTo(0, 9)
    // The plane runs on 120° from the torso line, at 145° from vertical: 100 mm along it is (57.358, −81.915).
    const on = { xMm: b.uMm + 57.357_644, yMm: -140, zMm: b.vMm - 81.915_204 }
    expect(behindFkMm(hip, 25, on)).toBeCloseTo(0, 5)
  })

  it('meets the torso line at 120°: 10 mm further up it lies 10·sin 60° behind', () => {
    const b = pointB(HIP, 25, 140)
    const up = { xMm: b.uMm + 4.226_183, yMm: 140, zMm: b.vMm + 9.063_078 }
    expect(behindFkMm(hip, 25, up)).toBeCloseTo(8.660_254, 5)
  })

  it('asks more of an anchorage further from the middle', () => {
    const at = (yMm: number) => behindFkMm(hip, 25, { xMm: 300, yMm, zMm: 450 })
    // BR grows by as much as S: 10 mm more S costs 10·sin 60°.
    expect(at(140) - at(150)).toBeCloseTo(8.660_254, 5)
    expect(at(-140)).toBeCloseTo(at(140), 9)
  })
})

/** A place whose hip point is the datum, its rim low and out of the way: the tab's hole is the last contact before the body. */
const withTabs = (aftMm: number, upMm: number, outMm: number, lapOutMm = 230): Layout => {
  const place = flatPlace({
    anchors: [
      ...tabPair('lap', { xMm: 180, yMm: lapOutMm, zMm: -200 }),
      ...tabPair('shoulder', { xMm: aftMm, yMm: outMm, zMm: upMm }),
    ],
  })
  return flatLayout([{ ...place, seat: { ...place.seat, backrestRim: { xMm: 130, zMm: 200 } } }])
}

const verdictOf = (
  layout: Layout,
  ruleId: string,
): { readonly value: unknown; readonly verdict: unknown } => {
  const [place] = layout.places
  if (place === undefined) throw new Error('no place')
  const entries = ruleSetMatrix(layout, place).rows.flatMap((row) => row.entries)
  const entry = entries.find(({ rule }) => rule.id === ruleId)
  return { value: entry?.value, verdict: entry?.verdict }
}

describe('a layout built to sit on a limit', () => {
  it.each([
    {
      ruleId: 'eu-bus-upper-height',
      on: withTabs(450, 450, 90),
      beyond: withTabs(450, 449.9, 90),
      limit: 450,
    },
    {
      ruleId: 'uk-iva-upper-height',
      on: withTabs(450, 450, 90),
      beyond: withTabs(450, 449.9, 90),
      limit: 450,
    },
    {
      ruleId: 'us-school-bus-torso',
      on: withTabs(450, 520, 90),
      beyond: withTabs(450, 519.9, 90),
      limit: 520,
    },
    {
      ruleId: 'eu-bus-lap-off-centre',
      on: withTabs(450, 520, 90, 120),
      beyond: withTabs(450, 520, 90, 119.9),
      limit: 120,
    },
    {
      ruleId: 'eu-bus-lap-spacing',
      on: withTabs(450, 520, 90, 175),
      beyond: withTabs(450, 520, 90, 174.9),
      limit: 350,
    },
  ])('keeps $ruleId at $limit mm and breaks it 0.1 mm short', ({ ruleId, on, beyond, limit }) => {
    expect(verdictOf(on, ruleId)).toEqual({ value: limit, verdict: 'clear' })
    expect(verdictOf(beyond, ruleId).verdict).toBe('broken')
  })

  it('keeps the wedge of the light vehicles on both its sides and breaks it just outside', () => {
    // From (530·sin 20°, 120) = (181.271, 120) to a hole at x = 481.271: 300 mm back; 20° inward is 109.191 mm, 10° outward 52.898 mm.
    const aftMm = 530 * Math.sin((20 * Math.PI) / 180) + 300
    const at = (outMm: number) => verdictOf(withTabs(aftMm, 520, outMm), 'eu-light-vehicle-wedge')
    const inwardMm = 120 - 300 * Math.tan((20 * Math.PI) / 180)
    const outwardMm = 120 + 300 * Math.tan((10 * Math.PI) / 180)
    expect(at(inwardMm)).toMatchObject({ verdict: 'clear' })
    expect(at(inwardMm).value).toBeCloseTo(20, 9)
    expect(at(inwardMm - 0.1).verdict).toBe('broken')
    expect(at(outwardMm).value).toBeCloseTo(-10, 9)
    expect(at(outwardMm)).toMatchObject({ verdict: 'clear' })
    expect(at(outwardMm + 0.1).verdict).toBe('broken')
  })

  it('keeps the plane FK on it and breaks it just ahead of it', () => {
    // Recline 20°: B = 350·(sin 20°, cos 20°) for S = 90 mm; back along the plane, 140° from vertical, by 200 mm.
    const rad = Math.PI / 180
    const x = 350 * Math.sin(20 * rad) + 200 * Math.sin(140 * rad)
    const z = 350 * Math.cos(20 * rad) + 200 * Math.cos(140 * rad)
    const on = verdictOf(withTabs(x + 1e-9, z + 1e-9, 90), 'eu-bus-upper-plane')
    expect(on.value).toBeCloseTo(0, 6)
    expect(on.verdict).toBe('clear')
    expect(verdictOf(withTabs(x - 0.1, z, 90), 'eu-bus-upper-plane').verdict).toBe('broken')
  })
})

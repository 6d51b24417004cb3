import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

import { emptyLayout } from '../../../../src/domain/layout/document/empty'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { parseLayout } from '../../../../src/domain/layout/document/parseLayout'
import {
  backLengthLimits,
  isShellAsMade,
  rimBelowTopLimits,
  SHELL_LIMITS,
  shellOf,
  type ShellSizes,
  shellSizes,
  withShellSizes,
} from '../../../../src/domain/layout/edit/seatShell'
import type { Seat } from '../../../../src/domain/straps/seat'
import { layoutArb } from '../../../support/arbitraries'
import { exampleLayout } from '../../../support/exampleLayouts'

const HIP_HEIGHT_MM = 100
const SQUARE: ShellSizes = {
  backLengthMm: 600,
  hipToBackMm: 150,
  thicknessMm: 40,
  cushionLengthMm: 500,
  backToCushionDeg: 90,
  hipWidthMm: 420,
  shoulderWidthMm: 480,
  rimBelowTopMm: 20,
  rimBehindFrontMm: 25,
}

const within = (limits: { readonly min: number; readonly max: number }): fc.Arbitrary<number> =>
  fc.double({ ...limits, noNaN: true })

const sizesArb: fc.Arbitrary<ShellSizes> = within(SHELL_LIMITS.backLengthMm).chain((backLengthMm) =>
  fc.record({
    backLengthMm: fc.constant(backLengthMm),
    hipToBackMm: within(SHELL_LIMITS.hipToBackMm),
    thicknessMm: within(SHELL_LIMITS.thicknessMm),
    cushionLengthMm: within(SHELL_LIMITS.cushionLengthMm),
    backToCushionDeg: within(SHELL_LIMITS.backToCushionDeg),
    hipWidthMm: within(SHELL_LIMITS.hipWidthMm),
    shoulderWidthMm: within(SHELL_LIMITS.shoulderWidthMm),
    rimBelowTopMm: within(rimBelowTopLimits({ ...SQUARE, backLengthMm })),
    rimBehindFrontMm: within(SHELL_LIMITS.rimBehindFrontMm),
  }),
)
const hipHeightArb = fc.double({ min: 20, max: 300, noNaN: true })

const seatOf = (layout: Layout): Seat => {
  const seat = layout.places[0]?.seat
  if (seat === undefined) throw new Error('no place')
  return seat
}

const withHipHeight = (hipHeightMm: number): Layout => {
  const layout = emptyLayout()
  return {
    ...layout,
    places: layout.places.map((place) => ({ ...place, seat: { ...place.seat, hipHeightMm } })),
  }
}

const expectNear = (got: object | undefined, expected: Readonly<Record<string, number>>): void => {
  const values = { ...got } as Record<string, number>
  expect(Object.keys(values).toSorted()).toEqual(Object.keys(expected).toSorted())
  for (const [key, value] of Object.entries(expected)) expect(values[key]).toBeCloseTo(value, 6)
}

describe('shellOf', () => {
  it('draws a square seat as a rule and a square would', () => {
    const { sideOutline, topOutline, backrestRim } = shellOf(SQUARE, HIP_HEIGHT_MM)
    // Cushion 100 below the hip point, back 150 behind it: they meet at (150, −100). Corner cut 60 each way.
    const side = [
      [150 - 500, -100],
      [150 - 60, -100],
      [150, -100 + 60],
      [150, -100 + 600],
      [150 + 40, -100 + 600],
      [150 + 40, -100 - 40 + 60],
      [150 + 40 - 60, -100 - 40],
      [150 - 500, -100 - 40],
    ] as const
    expect(sideOutline).toHaveLength(8)
    side.forEach(([xMm, zMm], index) => expectNear(sideOutline[index], { xMm, zMm }))
    const top = [
      [-350, -210],
      [0, -210],
      [150, -240],
      [190, -240],
      [190, 240],
      [150, 240],
      [0, 210],
      [-350, 210],
    ] as const
    expect(topOutline).toHaveLength(8)
    top.forEach(([xMm, yMm], index) => expectNear(topOutline[index], { xMm, yMm }))
    expectNear(backrestRim, { xMm: 150 + 25, zMm: 500 - 20 })
  })

  it('opens the cushion by 30° as a 30-60-90 triangle says', () => {
    const { sideOutline, backrestRim } = shellOf({ ...SQUARE, backToCushionDeg: 120 }, HIP_HEIGHT_MM)
    // 120° is 30° below level toward the front: 150 behind the hip point the cushion is 150 · tan 30° = 86.6025 higher.
    const cornerZ = -100 + 150 / Math.sqrt(3)
    expect(sideOutline).toHaveLength(8)
    const frontX = 150 - (500 * Math.sqrt(3)) / 2
    const frontZ = cornerZ - 250
    expectNear(sideOutline[0], { xMm: frontX, zMm: frontZ })
    // Square to that slope: forward-down 30° has its underside 40 · sin 30° = 20 rearward and 40 · cos 30° = 34.641 below.
    expectNear(sideOutline[7], { xMm: frontX + 20, zMm: frontZ - 20 * Math.sqrt(3) })
    expectNear(sideOutline[3], { xMm: 150, zMm: cornerZ + 600 })
    // Underside 40 / cos 30° lower at the same x, met by the outer face at x = 190; then 60 up.
    expectNear(sideOutline[5], { xMm: 190, zMm: -100 - 80 / Math.sqrt(3) + 190 / Math.sqrt(3) + 60 })
    expectNear(backrestRim, { xMm: 175, zMm: cornerZ + 580 })
  })

  it('makes a top outline that is its own mirror image', () => {
    fc.assert(
      fc.property(sizesArb, hipHeightArb, (sizes, hipHeightMm) => {
        const { topOutline } = shellOf(sizes, hipHeightMm)
        expect(topOutline.map(({ xMm, yMm }) => ({ xMm, yMm: 0 - yMm })).toReversed()).toEqual(topOutline)
      }),
    )
  })
})

describe('shellSizes', () => {
  it('reads from a made shell exactly the sizes it was made from', () => {
    fc.assert(
      fc.property(sizesArb, hipHeightArb, (sizes, hipHeightMm) => {
        const seat = { ...seatOf(withHipHeight(hipHeightMm)), ...shellOf(sizes, hipHeightMm) }
        expectNear(shellSizes(seat), { ...sizes })
        expect(isShellAsMade(seat)).toBe(true)
      }),
    )
  })

  it('reads finite sizes within their limits, the rim aside, from any outline', () => {
    fc.assert(
      fc.property(layoutArb, (layout) => {
        const sizes = shellSizes(seatOf(layout))
        for (const key of Object.keys(SHELL_LIMITS) as (keyof ShellSizes)[]) {
          expect(Number.isFinite(sizes[key])).toBe(true)
          if (key.startsWith('rim')) continue
          expect(sizes[key]).toBeGreaterThanOrEqual(SHELL_LIMITS[key].min)
          expect(sizes[key]).toBeLessThanOrEqual(SHELL_LIMITS[key].max)
        }
      }),
    )
  })

  it('reads the starting seat as a tape would', () => {
    // Its outline: front of the back at x 150, 150 to 185 at the top, sides 235 to 250 out; top of the back at 480, rim (165, 480).
    const sizes = shellSizes(seatOf(emptyLayout()))
    expect(sizes.hipToBackMm).toBeCloseTo(150, 6)
    expect(sizes.thicknessMm).toBeCloseTo(35, 0)
    expect(sizes.shoulderWidthMm).toBeCloseTo(500, 0)
    expect(sizes.hipWidthMm).toBeCloseTo(2 * (235 + (15 * 400) / 590), 6)
    expect(sizes.rimBelowTopMm).toBeCloseTo(0, 6)
    expect(sizes.rimBehindFrontMm).toBeCloseTo(15, 6)
    expect(isShellAsMade(seatOf(emptyLayout()))).toBe(false)
  })
})

describe('withShellSizes', () => {
  const rock = exampleLayout('rock-buggy.layout.json')
  const placeId = rock.places[0]?.id ?? ''

  it('leaves the rim, which straps pass over, where it was when a size that does not carry it changes', () => {
    for (const layout of [rock, emptyLayout(), exampleLayout('trail-car-two-seat.layout.json')]) {
      const id = layout.places[0]?.id ?? ''
      const made = seatOf(withShellSizes(layout, id, { hipWidthMm: 444, cushionLengthMm: 555 }))
      expectNear(made.backrestRim, { ...seatOf(layout).backrestRim })
      expect(made.slots).toBe(seatOf(layout).slots)
      expect(shellSizes(made).hipWidthMm).toBeCloseTo(444, 6)
      expect(shellSizes(made).cushionLengthMm).toBeCloseTo(555, 6)
    }
  })

  it('raises the rim with the back', () => {
    const before = shellSizes(seatOf(rock))
    const made = seatOf(withShellSizes(rock, placeId, { backLengthMm: before.backLengthMm + 37 }))
    const rim = seatOf(rock).backrestRim
    expect(shellSizes(made).backLengthMm).toBeCloseTo(before.backLengthMm + 37, 6)
    expectNear(made.backrestRim, { xMm: rim.xMm, zMm: rim.zMm + 37 })
  })

  it('always leaves a layout that can be saved and opened again', () => {
    fc.assert(
      fc.property(sizesArb, hipHeightArb, (sizes, hipHeightMm) => {
        const made = withShellSizes(withHipHeight(hipHeightMm), 'place-1', sizes)
        expect(parseLayout(made)).toEqual({ ok: true, value: made })
      }),
    )
  })

  it('changes nothing for a place that does not exist', () => {
    expect(withShellSizes(rock, 'nobody', { hipWidthMm: 400 })).toBe(rock)
  })
})

describe('limits that depend on each other', () => {
  it('keep the rim 100 mm above the corner of back and cushion, whichever of the two is typed', () => {
    expect(rimBelowTopLimits({ ...SQUARE, backLengthMm: 600 }).max).toBe(500)
    expect(backLengthLimits({ ...SQUARE, rimBelowTopMm: 500 }).min).toBe(600)
    expect(backLengthLimits({ ...SQUARE, rimBelowTopMm: 0 }).min).toBe(200)
  })
})

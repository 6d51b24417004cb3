import { describe, expect, it } from 'vitest'
import { isSeatAdjustable, sittingsOf } from '../../../../src/domain/layout/evaluate/sittings'
import { flatPlace } from '../../../support/flatLayout'

const place = flatPlace()
const second = { id: 'ove', name: 'Ove', sex: 'male', statureMm: 1900, massKg: 100, measured: {} } as const
const withSeat = (change: Partial<typeof place.seat>) => flatPlace({ seat: { ...place.seat, ...change } })

describe('sittingsOf', () => {
  it('has one sitting for one person in a fixed seat', () => {
    expect(sittingsOf(place)).toEqual([
      { id: 'driver/marla/0/20', placeId: 'driver', occupantId: 'marla', slideMm: 0, reclineDeg: 20 },
    ])
  })

  it('starts with the drawn position of the first person', () => {
    const adjustable = withSeat({
      slide: { forwardMm: 60, rearwardMm: 40 },
      reclineRange: { uprightDeg: 10, reclinedDeg: 35 },
    })
    const sittings = sittingsOf({ ...adjustable, occupants: [...adjustable.occupants, second] })
    expect(sittings[0]).toMatchObject({ occupantId: 'marla', slideMm: 0, reclineDeg: 20 })
    // 2 people × 3 slides × 3 reclines
    expect(sittings).toHaveLength(18)
    expect(new Set(sittings.map(({ id }) => id)).size).toBe(18)
    expect(sittings[9]).toMatchObject({ occupantId: 'ove', slideMm: 0, reclineDeg: 20 })
    expect(new Set(sittings.map(({ slideMm }) => slideMm))).toEqual(new Set([0, -60, 40]))
    expect(new Set(sittings.map(({ reclineDeg }) => reclineDeg))).toEqual(new Set([20, 10, 35]))
  })

  it('does not count an end of travel twice when the seat is drawn there', () => {
    const atTheEnd = withSeat({
      slide: { forwardMm: 0, rearwardMm: 40 },
      reclineRange: { uprightDeg: 20, reclinedDeg: 35 },
    })
    expect(sittingsOf(atTheEnd)).toHaveLength(4)
    expect(sittingsOf(atTheEnd).every(({ slideMm }) => !Object.is(slideMm, -0))).toBe(true)
  })
})

describe('isSeatAdjustable', () => {
  it('is so when the seat slides either way or its back reclines', () => {
    expect(isSeatAdjustable(place.seat)).toBe(false)
    expect(isSeatAdjustable({ ...place.seat, slide: { forwardMm: 1, rearwardMm: 0 } })).toBe(true)
    expect(isSeatAdjustable({ ...place.seat, slide: { forwardMm: 0, rearwardMm: 1 } })).toBe(true)
    expect(isSeatAdjustable({ ...place.seat, reclineRange: { uprightDeg: 19, reclinedDeg: 20 } })).toBe(true)
  })
})

import { describe, expect, it } from 'vitest'

import type { Layout, Place } from '../../../../src/domain/layout/document/layout'
import { layoutNumbers } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import { plainDifferences, plainTurns } from '../../../../src/domain/layout/wording/plainDifferences'
import { plainFindings } from '../../../../src/domain/layout/wording/plainFinding'
import { findingsOfPart } from '../../../../src/domain/layout/wording/plainPartFindings'
import type { Anchor } from '../../../../src/domain/straps/anchor'
import { strapFamily } from '../../../../src/domain/straps/strap'
import { exampleIndex, exampleLayout } from '../../../support/exampleLayouts'

const rockBuggy = exampleLayout('rock-buggy.layout.json')

const withAnchors = (layout: Layout, change: (anchor: Anchor) => Anchor): Layout => ({
  ...layout,
  places: layout.places.map((place) => ({ ...place, anchors: place.anchors.map(change) })),
})

const withPlace = (layout: Layout, change: (place: Place) => Place): Layout => ({
  ...layout,
  places: layout.places.map((place, index) => (index === 0 ? change(place) : place)),
})

const lapMoved = (byXMm: number, byZMm = 0): Layout =>
  withAnchors(rockBuggy, (anchor) => {
    if (strapFamily(anchor.strap) !== 'lap') return anchor
    const { point } = anchor.mount
    return {
      ...anchor,
      mount: { ...anchor.mount, point: { ...point, xMm: point.xMm + byXMm, zMm: point.zMm + byZMm } },
    }
  })

describe('plainDifferences', () => {
  it('says nothing of what is the same, nor of a name', () => {
    expect(plainDifferences(rockBuggy, rockBuggy)).toEqual([])
    const renamed = { ...rockBuggy, tubes: rockBuggy.tubes.map((tube) => ({ ...tube, name: 'Another' })) }
    expect(plainDifferences(rockBuggy, renamed)).toEqual([])
  })

  it('says how far both sides of the lap belt lie off, in one sentence', () => {
    // x is rearward and z up (ISO 4130), so +30 in x and −10 in z is further back and lower.
    expect(plainDifferences(rockBuggy, lapMoved(30, -10))).toEqual([
      'Where the left lap belt is fixed and where the right lap belt is fixed: 30 mm further back and 10 mm lower.',
    ])
    expect(plainDifferences(lapMoved(30), rockBuggy)).toEqual([
      'Where the left lap belt is fixed and where the right lap belt is fixed: 30 mm further forward.',
    ])
  })

  it('counts sideways from the middle of the seat: further out is further out on both sides', () => {
    const middleYMm = rockBuggy.places[0]?.seat.hipPoint.yMm ?? 0
    // The datum of the rock buggy is at its left floor rail, so both sides lie to the right of it.
    expect(middleYMm).toBeGreaterThan(100)
    const wider = withAnchors(rockBuggy, (anchor) => {
      if (strapFamily(anchor.strap) !== 'lap') return anchor
      const { point } = anchor.mount
      return {
        ...anchor,
        mount: {
          ...anchor.mount,
          point: { ...point, yMm: point.yMm + 20 * Math.sign(point.yMm - middleYMm) },
        },
      }
    })
    expect(plainDifferences(rockBuggy, wider)).toEqual([
      'Where the left lap belt is fixed and where the right lap belt is fixed: 20 mm further out.',
    ])
  })

  it('counts from the middle of the own seat, wherever the datum is: of two seats side by side too', () => {
    const car = exampleLayout('trail-car-two-seat.layout.json')
    const [driver] = car.places
    if (driver === undefined) throw new Error('no driver')
    const middleYMm = driver.seat.hipPoint.yMm
    // Both lap belts of the driver lie on the same side of the datum.
    expect(Math.abs(middleYMm)).toBeGreaterThan(250)
    const wider = withPlace(car, (place) => ({
      ...place,
      anchors: place.anchors.map((anchor) => {
        if (strapFamily(anchor.strap) !== 'lap') return anchor
        const { point } = anchor.mount
        const yMm = point.yMm + 20 * Math.sign(point.yMm - middleYMm)
        return { ...anchor, mount: { ...anchor.mount, point: { ...point, yMm } } }
      }),
    }))
    const words = plainDifferences(car, wider)
    expect(words).toHaveLength(1)
    expect(words[0]).toMatch(
      /left lap belt is fixed and .* right lap belt is fixed: .*20 mm.* further out\.$/,
    )
  })

  it('moves tubes and seats to the right or left, not out or in', () => {
    const aside = withPlace(rockBuggy, (place) => ({
      ...place,
      seat: { ...place.seat, hipPoint: { ...place.seat.hipPoint, yMm: place.seat.hipPoint.yMm + 12 } },
    }))
    // y is to the occupant's right (ISO 4130).
    expect(plainDifferences(rockBuggy, aside)).toEqual(['The seat: 12 mm further right.'])
  })

  it('names seats, people, belts, tubes, and what is in one only', () => {
    const changed = withPlace(
      { ...rockBuggy, tubes: rockBuggy.tubes.slice(1) },
      ({ seat, occupants, belt, anchors, ...place }) => ({
        ...place,
        seat: { ...seat, hipPoint: { ...seat.hipPoint, zMm: seat.hipPoint.zMm + 15 } },
        occupants: occupants.map((person) => ({ ...person, massKg: person.massKg + 1 })),
        belt: { ...belt, material: belt.material === 'nylon' ? 'polyester' : 'nylon' },
        anchors,
      }),
    )
    const text = plainDifferences(rockBuggy, changed).join(' ')
    expect(text).toContain('The seat: 15 mm higher.')
    expect(text).toContain('other people, or others of their measurements.')
    expect(text).toContain('The belts themselves: other belts.')
    expect(text).toMatch(/not here\./)
    expect(plainDifferences(changed, rockBuggy).join(' ')).toMatch(/only here\./)
  })
})

describe('plainTurns', () => {
  const plainOf = (layout: Layout) =>
    plainFindings(
      layoutNumbers(layout).places.flatMap(({ findings }) => findings),
      layout,
    )

  it('turns round when the variants do, and is empty against itself', () => {
    const before = plainOf(rockBuggy)
    // Far forward the lap belt stands too steep.
    const after = plainOf(lapMoved(-120))
    const turns = plainTurns(before, after)
    expect(turns.broken).toContain('How the lap belt holds your hips')
    expect(plainTurns(after, before)).toEqual({ mended: turns.broken, broken: turns.mended })
    expect(plainTurns(before, before)).toEqual({ mended: [], broken: [] })
  })
})

describe('findingsOfPart', () => {
  it('gives a lap anchor what is found about that belt and about both, and nothing of a shoulder belt', () => {
    for (const { file } of exampleIndex) {
      const layout = exampleLayout(file)
      const plain = plainFindings(
        layoutNumbers(layout).places.flatMap(({ findings }) => findings),
        layout,
      )
      for (const place of layout.places) {
        for (const { id, strap } of place.anchors) {
          const own = findingsOfPart(plain, `anchor:${place.id}:${id}`, layout)
          const family = strapFamily(strap)
          for (const { cases } of own)
            expect(
              cases.some(
                ({ finding }) =>
                  finding.placeId === place.id && [strap, `${family}-pair`].includes(finding.subject),
              ),
            ).toBe(true)
        }
      }
    }
  })

  it('gives a part that is gone nothing', () => {
    expect(findingsOfPart([], 'anchor:nowhere:none', rockBuggy)).toEqual([])
  })
})

import fc from 'fast-check'
import type { Layout } from '../../../../../src/domain/layout/document/layout'
import { explanationOf } from '../../../../../src/domain/layout/drawing/explain/explain'
import type { Explanation } from '../../../../../src/domain/layout/drawing/explain/explanation'
import type { SittingEvaluation } from '../../../../../src/domain/layout/evaluate/evaluation'
import { solvedSittings, sittingEvaluation } from '../../../../../src/domain/layout/evaluate/solvedSittings'
import type { QuantityValue } from '../../../../../src/domain/straps/quantity'
import { exampleIndex, exampleLayout } from '../../../../support/exampleLayouts'

/** One number of one sitting with its drawing. */
export interface Explained {
  readonly layout: Layout
  readonly sitting: SittingEvaluation
  readonly quantity: QuantityValue
  readonly explanation: Explanation
}

/** Every number of every sitting of a layout with its drawing. Room and remedies are not needed, so only the straps are solved. */
export const explainedOf = (layout: Layout, sittings = Number.POSITIVE_INFINITY): readonly Explained[] =>
  layout.places.flatMap((place) =>
    solvedSittings(layout, place)
      .slice(0, sittings)
      .flatMap((solved) => {
        const sitting = sittingEvaluation(solved)
        return sitting.quantities.map((quantity) => {
          const explanation = explanationOf({
            place,
            sitting,
            tubes: layout.tubes,
            lengthUnit: layout.units.length,
            ...quantity,
          })
          if (explanation === null) throw new Error(`${quantity.id} of ${quantity.subject} is not drawn`)
          return { layout, sitting, quantity, explanation }
        })
      }),
  )

export const EXAMPLES = exampleIndex.map(({ file }) => exampleLayout(file))

/** Lap tabs this far out lie beyond the side walls of every example. */
const lapOutsideMm = (strap: string, hipMm: number, outMm: number): number =>
  hipMm + (strap === 'lap-left' ? -outMm : outMm)

interface Outfit {
  readonly shellThicknessMm: number
  readonly shoulderTailMm?: number
  readonly adjusterMm: number
  readonly lapOutMm: number
  readonly isEye: boolean
}

/** A layout with what the examples need not have: a thick shell, adjusters, lap anchors beyond the shell, eye bolts, a joined tail. */
const outfitted = (layout: Layout, outfit: Outfit): Layout => {
  const { shellThicknessMm, shoulderTailMm, adjusterMm, lapOutMm, isEye } = outfit
  const adjuster = { fromAnchorMm: adjusterMm, lengthMm: 70 }
  return {
    ...layout,
    places: layout.places.map((place) => {
      const shared = place.anchors.find(({ strap }) => strap === 'shoulder-left')?.mount
      return {
        ...place,
        seat: { ...place.seat, shellThicknessMm },
        belt: {
          ...place.belt,
          adjusters: { shoulder: adjuster, lap: adjuster },
          ...(shoulderTailMm === undefined ? {} : { shoulderTailMm }),
        },
        anchors: place.anchors.map((anchor) => {
          const { strap, mount } = anchor
          if (strap === 'shoulder-right' && shoulderTailMm !== undefined && shared !== undefined)
            return { ...anchor, mount: shared }
          if (strap !== 'lap-left' && strap !== 'lap-right') return anchor
          const yMm = lapOutsideMm(strap, place.seat.hipPoint.yMm, lapOutMm)
          const point = { ...mount.point, yMm }
          return {
            ...anchor,
            mount: isEye
              ? {
                  kind: 'eye' as const,
                  point,
                  planDeg: 160,
                  riseDeg: 40,
                  threadDiameterMm: 11.1,
                  eyeDiameterMm: 23,
                  tubeId: null,
                }
              : { ...mount, point },
          }
        }),
      }
    }),
  }
}

const OUTFITS: readonly Outfit[] = [
  { shellThicknessMm: 12, adjusterMm: 90, lapOutMm: 300, isEye: true },
  { shellThicknessMm: 0, shoulderTailMm: 120, adjusterMm: 160, lapOutMm: 270, isEye: false },
  { shellThicknessMm: 30, adjusterMm: 2000, lapOutMm: 330, isEye: false },
]

export const OUTFITTED = EXAMPLES.flatMap((layout) => OUTFITS.map((outfit) => outfitted(layout, outfit)))

const outfitArb: fc.Arbitrary<Outfit> = fc.record(
  {
    shellThicknessMm: fc.constantFrom(0, 8, 40),
    shoulderTailMm: fc.double({ min: 60, max: 250, noNaN: true }),
    adjusterMm: fc.double({ min: 0, max: 900, noNaN: true }),
    lapOutMm: fc.double({ min: 250, max: 340, noNaN: true }),
    isEye: fc.boolean(),
  },
  { requiredKeys: ['shellThicknessMm', 'adjusterMm', 'lapOutMm', 'isEye'] },
)

/** An example whose anchors, seat and tabs are somewhere near where they were: random, but with straps that have a path. */
export const disturbedArb: fc.Arbitrary<Layout> = fc
  .record({
    example: fc
      .tuple(fc.constantFrom(...EXAMPLES), outfitArb)
      .map(([layout, outfit]) => outfitted(layout, outfit)),
    shifts: fc.array(fc.tuple(...[60, 40, 60].map((mm) => fc.double({ min: -mm, max: mm, noNaN: true }))), {
      minLength: 7,
      maxLength: 7,
    }),
    turns: fc.tuple(
      fc.double({ min: -90, max: 90, noNaN: true }),
      fc.double({ min: -90, max: 90, noNaN: true }),
    ),
    reclineDeg: fc.double({ min: 5, max: 50, noNaN: true }),
  })
  .map(({ example, shifts, turns, reclineDeg }) => ({
    ...example,
    places: example.places.map((place) => ({
      ...place,
      seat: { ...place.seat, reclineDeg, reclineRange: { uprightDeg: reclineDeg, reclinedDeg: reclineDeg } },
      anchors: place.anchors.map((anchor, index) => {
        const { mount } = anchor
        // Joined straps keep their common anchor.
        const isShared = place.belt.shoulderTailMm !== undefined && anchor.strap.startsWith('shoulder')
        const [x = 0, y = 0, z = 0] = shifts[isShared ? 0 : index] ?? []
        const { xMm, yMm, zMm } = mount.point
        const point = { xMm: xMm + x, yMm: yMm + y, zMm: zMm + z }
        if (mount.kind === 'wrap') return { ...anchor, mount: { ...mount, point } }
        if (mount.kind === 'eye')
          return { ...anchor, mount: { ...mount, point, planDeg: 2 * turns[0], riseDeg: turns[1] } }
        return { ...anchor, mount: { ...mount, point, planDeg: turns[0], leanDeg: turns[1] } }
      }),
    })),
  }))

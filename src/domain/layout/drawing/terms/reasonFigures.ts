import {
  deflectionRatio,
  doubleShearArmMm,
  plateStressRatio,
  singleShearArmMm,
} from '../../../shop/reasons/bending'
import { GROWTH_LIMITS, growthMm, KEPT_STRENGTH } from '../../../shop/reasons/webbing'
import type { QuantityId, Subject } from '../../../straps/quantity'
import { angleText } from '../../../units/angle'
import { type LengthUnit, lengthWithUnit } from '../../../units/length'
import { tenthsText } from '../../../units/numberText'
import { valueText } from '../../wording/amounts'
import type { ReasonId } from '../../wording/reasons'
import { quantityName } from '../../wording/quantities'
import { capitalised } from '../../wording/words'
import { drawnSitting, type Evaluated, evaluated, numberOf, numberPicture } from './carPictures'
import { arrow, type Picture, pictureOf, rectangle, ring, stroke, words } from './picture'
import { type SceneShift, sceneLayout } from './sceneLayout'
import { shearSection } from './sections'

/** What may be tried in a reason: a length or an angle between two ends. */
export interface Trial {
  readonly words: string
  readonly unit: 'mm' | 'deg'
  readonly min: number
  readonly max: number
  readonly step: number
  readonly start: number
}

/** A reason's drawing at one value of what is tried, with what was computed for it. */
export interface ReasonFigure {
  readonly picture: Picture
  /** What it comes to, one line each. */
  readonly readings: readonly string[]
}

interface ReasonDrawing {
  readonly trial: Trial | null
  readonly figure: (value: number, unit: LengthUnit) => ReasonFigure
}

const reading = (car: Evaluated, id: QuantityId, subject: Subject, unit: LengthUnit): string => {
  const value = numberOf(car, id, subject)
  return `${capitalised(quantityName(id))}: ${value === null ? 'cannot be said here' : valueText(id, value, unit)}`
}

/** A reason that is a number of the car with something moved. */
const moved = (
  trial: Omit<Trial, 'unit' | 'step'>,
  change: (byMm: number) => SceneShift,
  shown: readonly [QuantityId, Subject, description: string],
  others: readonly (readonly [QuantityId, Subject])[] = [],
  more: (car: Evaluated, unit: LengthUnit) => readonly string[] = () => [],
): ReasonDrawing => ({
  trial: { ...trial, unit: 'mm', step: 5 },
  figure: (value, unit) => {
    const car = evaluated(sceneLayout(change(value)))
    const [id, subject, description] = shown
    return {
      picture: numberPicture(car, id, subject, description),
      readings: [
        ...[...others, [id, subject] as const].map(([each, of]) => reading(car, each, of, unit)),
        ...more(car, unit),
      ],
    }
  },
})

const stretchLines = (car: Evaluated, unit: LengthUnit): readonly string[] => {
  const lengthMm = numberOf(car, 'shoulder-free-length', 'shoulder-left')
  return lengthMm === null
    ? []
    : [GROWTH_LIMITS.road, GROWTH_LIMITS.crash].map(
        (limit) =>
          `Grows by up to ${lengthWithUnit(growthMm(lengthMm, limit), unit)} at the limit of a ${limit.words}`,
      )
}

/** The plate of the example, mm. Our own numbers. */
const EXAMPLE_PLATE = { heightMm: 25, thicknessMm: 5 } as const

const pull: ReasonDrawing = {
  trial: { words: 'Pull out of the plane', unit: 'deg', min: 0, max: 30, step: 1, start: 10 },
  figure: (offDeg) => {
    const ratio = plateStressRatio(EXAMPLE_PLATE, offDeg)
    return {
      picture: pictureOf(
        [
          rectangle('tube', [0, -10], [90, 20], 'tube'),
          rectangle('plate', [0, 18], [5, 36]),
          stroke(
            'plane',
            [
              [0, 25],
              [0, 78],
            ],
            'hidden',
          ),
          ...arrow('pull', [0, 25], 90 - offDeg, 50, offDeg === 0 ? 'focus' : 'broken'),
          ring('hole', [0, 25], 2),
          words('plane-words', [-5, 74], 'plane of the plate', 'right', 'plain'),
        ],
        `A plate on a tube seen edge on; the strap pulls ${angleText(offDeg)} out of its plane.`,
      ),
      readings: [
        `Pull ${angleText(offDeg)} out of the plane: ${tenthsText(ratio)} times the stress at the foot of a straight pull.`,
      ],
    }
  },
}

/** Plate and fitting of the example, mm. Our own numbers. */
const EXAMPLE_PIN = { plateMm: 5, fittingMm: 5 } as const

const shear: ReasonDrawing = {
  trial: { words: 'Gap between fitting and plate', unit: 'mm', min: 0, max: 10, step: 1, start: 0 },
  figure: (gapMm) => {
    const single = singleShearArmMm({ ...EXAMPLE_PIN, gapMm })
    const double = doubleShearArmMm({ ...EXAMPLE_PIN, gapMm: 0 })
    return {
      picture: pictureOf(
        shearSection([[5 + gapMm, 5]], [-6, 10 + gapMm]),
        'A bolt cut through lengthwise: one plate, and the fitting beside it with the gap that was chosen.',
      ),
      readings: [
        `One plate: bent by the pull times ${tenthsText(single)} mm. Two plates without a gap: times ${tenthsText(double)} mm.`,
        `That is ${tenthsText(single / double)} times as much.`,
      ],
    }
  },
}

const measure: ReasonDrawing = {
  trial: { words: 'Stature', unit: 'mm', min: 1525, max: 1870, step: 5, start: 1755 },
  figure: (statureMm, unit) => {
    const layout = sceneLayout()
    const places = layout.places.map((place) => ({
      ...place,
      occupants: place.occupants.map((occupant) => ({ ...occupant, statureMm })),
    }))
    const car = evaluated({ ...layout, places })
    const { shoulderPoint, hip } = drawnSitting(car).body
    return {
      picture: numberPicture(
        car,
        'shoulder-to-spine',
        'shoulder-left',
        'The shoulder strap against square to the spine for a person of this stature.',
      ),
      readings: [
        `Shoulder ${lengthWithUnit(shoulderPoint.left.zMm - hip.zMm, unit)} above the hip point`,
        reading(car, 'shoulder-to-spine', 'shoulder-left', unit),
      ],
    }
  },
}

const age: ReasonDrawing = {
  trial: null,
  figure: () => ({
    picture: pictureOf(
      KEPT_STRENGTH.flatMap(({ id, words: name, share }, index) => {
        const u = index * 60
        return [
          rectangle(`bar/${id}`, [u, share * 50], [34, share * 100], index === 0 ? 'outline' : 'focus'),
          words(`share/${id}`, [u, share * 100 + 10], `${Math.round(100 * share)} %`),
          words(`name/${id}`, [u, -12], name, 'centre', 'plain'),
        ]
      }),
      `Strength to be kept: ${KEPT_STRENGTH.map(({ words: name, share }) => `${name} ${Math.round(100 * share)} %`).join(', ')}.`,
    ),
    readings: KEPT_STRENGTH.slice(1).map(
      ({ words: name, share, source }) => `After ${name}: ${Math.round(100 * share)} % (${source})`,
    ),
  }),
}

/** The span that others are held against, mm. Our own number. */
const REFERENCE_SPAN_MM = 800

/** How far the middle of the reference bar is drawn to move, mm; for the eye. */
const DRAWN_SAG_MM = 40

const straight: ReasonDrawing = {
  trial: { words: 'Span', unit: 'mm', min: 400, max: 1200, step: 50, start: 1000 },
  figure: (spanMm, unit) => {
    const ratio = deflectionRatio(spanMm, REFERENCE_SPAN_MM)
    const half = spanMm / 2
    // Shape of a bar on two supports with its load in the middle: 3x/L − 4(x/L)³ up to the middle, which is 1 there.
    const shape = Array.from({ length: 21 }, (_, index): [number, number] => {
      const x = Math.min(index, 20 - index) / 20
      return [-half + (index / 20) * spanMm, -DRAWN_SAG_MM * ratio * (3 * x - 4 * x ** 3)]
    })
    return {
      picture: pictureOf(
        [
          stroke(
            'straight',
            [
              [-half, 0],
              [half, 0],
            ],
            'hidden',
          ),
          stroke('bent', shape, 'focus'),
          ring('left', [-half, 0], 14),
          ring('right', [half, 0], 14),
          ...arrow('pull', [0, -DRAWN_SAG_MM * ratio], -90, 120),
          // Keeps every span at one scale.
          stroke(
            'widest',
            [
              [-600, 0],
              [-596, 0],
            ],
            'ghost',
          ),
          stroke(
            'widest-right',
            [
              [596, 0],
              [600, 0],
            ],
            'ghost',
          ),
        ],
        'A bar on two supports, sagging under a pull in its middle; drawn far too large.',
      ),
      readings: [
        `${lengthWithUnit(spanMm, unit)} between the supports: the middle moves ${ratio < 10 ? tenthsText(ratio) : Math.round(ratio)} times as far as with ${lengthWithUnit(REFERENCE_SPAN_MM, unit)}.`,
      ],
    }
  },
}

const DRAWINGS: Readonly<Record<ReasonId, ReasonDrawing>> = {
  square: moved(
    { words: 'Harness bar, up', min: -60, max: 120, start: 0 },
    (barUpMm) => ({ barUpMm }),
    [
      'spine-load-share',
      'shoulder-pair',
      'Both parts of the shoulder strap as forces, and what of them runs down the torso line.',
    ],
    [['shoulder-to-spine', 'shoulder-left']],
  ),
  pelvis: moved(
    { words: 'Lap tabs, rearward', min: -100, max: 100, start: 0 },
    (lapBackMm) => ({ lapBackMm }),
    ['lap-angle', 'lap-left', 'The line from the lap tab to the hip point and its angle above level.'],
    [['lap-over-asis', 'lap-left']],
  ),
  short: moved(
    { words: 'Harness bar, rearward', min: 0, max: 400, start: 0 },
    (barBackMm) => ({ barBackMm }),
    [
      'shoulder-free-length',
      'shoulder-left',
      'The free length of the shoulder strap from the shoulder to the bar.',
    ],
    [],
    stretchLines,
  ),
  pull,
  shear,
  sub: moved({ words: 'Thigh tabs, rearward', min: -60, max: 40, start: 0 }, (subBackMm) => ({ subBackMm }), [
    'sub-to-vertical',
    'sub-left',
    'The strap under the thigh against straight down.',
  ]),
  measure,
  age,
  straight,
}

/** What may be tried in a reason; null where nothing moves. */
export const reasonTrial = (id: ReasonId): Trial | null => DRAWINGS[id].trial

/** A reason's drawing at a value of what is tried; where nothing moves the value is not looked at. */
export const reasonFigure = (id: ReasonId, value: number, unit: LengthUnit): ReasonFigure =>
  DRAWINGS[id].figure(value, unit)

import { lengthText, type LengthUnit, MM_PER_INCH } from '../../domain/units/length'
import { KG_PER_LB, massText, type MassUnit } from '../../domain/units/mass'

/** The picture in its own units, which are CSS pixels at its natural size. */
export const PICTURE = { width: 340, height: 250, left: 46, right: 8, top: 8, bottom: 40 } as const

/** A straight scale from values to the picture, and the values marked on it. */
export interface PictureScale {
  readonly at: (value: number) => number
  readonly ticks: readonly { readonly at: number; readonly words: string }[]
}

export interface PictureScales {
  /** Stature to the right. */
  readonly x: PictureScale
  /** Mass upward. */
  readonly y: PictureScale
}

interface Sized {
  readonly statureMm: number
  readonly massKg: number
}

/** More marks than this on one axis run into each other at the width of a phone. Our judgement. */
const MOST_TICKS = 6

interface Axis {
  readonly values: readonly number[]
  readonly step: number
  readonly start: number
  readonly end: number
  readonly words: (value: number) => string
}

const scaleOf = ({ values, step, start, end, words }: Axis): PictureScale => {
  const spread = (size: number): number =>
    Math.ceil(Math.max(...values) / size) - Math.floor(Math.min(...values) / size)
  // Doubled until the marks have room.
  const size =
    [1, 2, 4, 8, 16].map((times) => times * step).find((each) => spread(each) <= MOST_TICKS) ?? 32 * step
  const low = Math.floor(Math.min(...values) / size) * size
  const count = Math.max(1, spread(size))
  const at = (value: number): number => start + ((value - low) / (count * size)) * (end - start)
  const marked = Array.from({ length: count + 1 }, (_, index) => low + index * size)
  return { at, ticks: marked.map((value) => ({ at: at(value), words: words(value) })) }
}

/** Scales that hold everybody; the steps are round numbers of the unit shown. */
export const pictureScales = (
  people: readonly Sized[],
  units: { readonly length: LengthUnit; readonly mass: MassUnit },
): PictureScales => ({
  x: scaleOf({
    values: people.map(({ statureMm }) => statureMm),
    step: units.length === 'mm' ? 100 : 4 * MM_PER_INCH,
    start: PICTURE.left,
    end: PICTURE.width - PICTURE.right,
    words: (statureMm) => lengthText(statureMm, units.length),
  }),
  y: scaleOf({
    values: people.map(({ massKg }) => massKg),
    step: units.mass === 'kg' ? 20 : 40 * KG_PER_LB,
    start: PICTURE.height - PICTURE.bottom,
    end: PICTURE.top,
    words: (massKg) => massText(massKg, units.mass),
  }),
})

/** The shapes of marks: each tells its meaning without its colour. */
export type MarkShape = 'ring' | 'cross' | 'triangle' | 'diamond'

const tenth = (value: number): string => (Math.round(value * 10) / 10).toString()

/** One mark as a piece of an SVG path about (x, y). */
export const markPath = (shape: MarkShape, x: number, y: number): string => {
  const from = (dx: number, dy: number): string => `${tenth(x + dx)} ${tenth(y + dy)}`
  switch (shape) {
    case 'ring':
      return `M${from(-1.6, 0)}a1.6 1.6 0 1 0 3.2 0a1.6 1.6 0 1 0 -3.2 0`
    case 'cross':
      return `M${from(-2.6, -2.6)}l5.2 5.2M${from(-2.6, 2.6)}l5.2 -5.2`
    case 'triangle':
      return `M${from(-2.8, 2.2)}h5.6l-2.8 -4.8z`
    case 'diamond':
      return `M${from(0, -6)}l6 6l-6 6l-6 -6z`
  }
}

/** All these people as one path. */
export const marksPath = (shape: MarkShape, people: readonly Sized[], scales: PictureScales): string =>
  people.map(({ statureMm, massKg }) => markPath(shape, scales.x.at(statureMm), scales.y.at(massKg))).join('')

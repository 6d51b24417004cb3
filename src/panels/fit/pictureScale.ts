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

/** More numbers than this on one axis run into each other at the width of a phone. Our judgement. */
const MOST_TICKS = 7

/** Room left beyond the outermost people, as a share of what they span. Our judgement. */
const MARGIN_SHARE = 0.04

interface Axis {
  readonly values: readonly number[]
  readonly step: number
  readonly start: number
  readonly end: number
  readonly words: (value: number) => string
}

/** Where the scale begins and ends: beyond all people, and never less than two steps apart. */
const rangeOf = ({ values, step }: Axis): { readonly low: number; readonly high: number } => {
  const least = Math.min(...values)
  const most = Math.max(...values)
  const margin = Math.max(step, MARGIN_SHARE * (most - least))
  return { low: least - margin, high: most + margin }
}

const scaleOf = (axis: Axis): PictureScale => {
  const { step, start, end, words } = axis
  const { low, high } = rangeOf(axis)
  const at = (value: number): number => start + ((value - low) / (high - low)) * (end - start)
  const ticksBy = (size: number): readonly number[] => {
    const first = Math.ceil(low / size)
    return Array.from({ length: Math.floor(high / size) - first + 1 }, (_, index) => (first + index) * size)
  }
  // Doubled until the numbers have room.
  const marked = [1, 2, 4, 8].map((times) => ticksBy(times * step)).find(({ length }) => length <= MOST_TICKS)
  return {
    at,
    ticks: (marked ?? ticksBy(16 * step)).map((value) => ({ at: at(value), words: words(value) })),
  }
}

/** Scales that hold everybody; the steps are round numbers of the unit shown. */
export const pictureScales = (
  people: readonly Sized[],
  units: { readonly length: LengthUnit; readonly mass: MassUnit },
): PictureScales => ({
  x: scaleOf({
    values: people.map(({ statureMm }) => statureMm),
    step: units.length === 'mm' ? 50 : 2 * MM_PER_INCH,
    start: PICTURE.left,
    end: PICTURE.width - PICTURE.right,
    words: (statureMm) => lengthText(statureMm, units.length),
  }),
  y: scaleOf({
    values: people.map(({ massKg }) => massKg),
    step: units.mass === 'kg' ? 10 : 20 * KG_PER_LB,
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
      return `M${from(-2, 0)}a2 2 0 1 0 4 0a2 2 0 1 0 -4 0`
    case 'cross':
      return `M${from(-2, -2)}l4 4M${from(-2, 2)}l4 -4`
    case 'triangle':
      return `M${from(-2.5, 2)}h5l-2.5 -4.3z`
    case 'diamond':
      return `M${from(0, -6)}l6 6l-6 6l-6 -6z`
  }
}

/** All these people as one path. */
export const marksPath = (shape: MarkShape, people: readonly Sized[], scales: PictureScales): string =>
  people.map(({ statureMm, massKg }) => markPath(shape, scales.x.at(statureMm), scales.y.at(massKg))).join('')

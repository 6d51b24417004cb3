import { startingMount } from '../edit/startingMount'
import type { PointMm } from '../../geometry/point'
import type { Tube } from '../../geometry/tube'
import { strapsOf } from '../../straps/strap'
import { atan2Deg, cosDeg, sinDeg } from '../../units/angle'
import type { Layout } from '../document/layout'
import { LIMITS, type NumberLimits } from '../document/limits'
import { STARTING_SECTION, withTube } from '../edit/changeTubes'
import { barFigure, floorTubeFigure } from './figure/tubeFigures'
import { FLOOR_TUBES, type FloorTubes, floorTubesOf, withFloorTubes } from './floorTubes'
import { askedPlace } from './askedPlace'
import {
  type Ask,
  type Begun,
  choiceAsk,
  FROM_DATUM,
  keptAsk,
  numberAsk,
  type Question,
  whole,
  YES_NO,
} from './question'
import {
  barOf,
  crossTubeOf,
  frontMm,
  halfMm,
  middleMm,
  sideTubesOf,
  topMm,
  withBar,
  withDiameter,
  withHalf,
  heldAt,
  withFront,
  withMiddle,
  withTop,
  withoutBar,
} from './tubeTape'

/**
 * Half the reach of a harness bar. Our judgement: at least half a metre in all, so that two shoulder straps as far apart as a layout
 * can hold still lie on it.
 */
const HALF_BAR: NumberLimits = { min: 250, max: 3_000, unit: 'mm' }
const STARTING_HALF_MM = 450

/** From the centre of a hole to the surface of the tube its tab stands on: room for the end fitting. A starting value, our judgement. */
const HOLE_OFF_TUBE_MM = 25

/** A wall is at most half of the diameter. */
const wallLimits = (tube: Tube): NumberLimits => ({
  ...LIMITS.wallMm,
  max: Math.min(LIMITS.wallMm.max, tube.outsideDiameterMm / 2),
})

/** Where the shoulder straps would end with nothing in their way: the bar starts there. */
const shoulderStart = (layout: Layout): PointMm => {
  const place = askedPlace(layout)
  return startingMount(place, strapsOf(place.belt)[0] ?? 'shoulder-left').point
}

export const lapStart = (layout: Layout): PointMm => startingMount(askedPlace(layout), 'lap-left').point

/** Where the hole of a tab on a tube starts: off its surface toward `to`, in the side plane. */
export const holeOnTube = (layout: Layout, tube: Tube, to: PointMm): Pick<PointMm, 'xMm' | 'zMm'> => {
  const middle = heldAt(layout, tube)
  const towardDeg = atan2Deg(to.zMm - middle.zMm, to.xMm - middle.xMm)
  const offMm = tube.outsideDiameterMm / 2 + HOLE_OFF_TUBE_MM
  return {
    xMm: middle.xMm + offMm * cosDeg(towardDeg),
    zMm: middle.zMm + offMm * sinDeg(towardDeg),
  }
}

type FindTubes = (layout: Layout) => readonly Tube[]

interface TubeNumber {
  readonly id: string
  readonly words: string
  readonly letter?: string
  readonly hint?: string
  readonly limits: NumberLimits
  readonly read: (tube: Tube, layout: Layout) => number
  readonly write: (layout: Layout, tube: Tube, mm: number) => Layout
  readonly derived?: (layout: Layout) => number
}

/** A number of a tube, or of two that are alike; read at the first. */
const tubeAsk = (find: FindTubes, { read, write, ...ask }: TubeNumber): Ask =>
  numberAsk({
    ...ask,
    kind: 'length',
    read: (layout) => {
      const tube = find(layout)[0]
      return tube === undefined ? 0 : read(tube, layout)
    },
    write: (layout, mm) =>
      find(layout).reduce((made, { id }) => {
        const tube = made.tubes.find((candidate) => candidate.id === id)
        return tube === undefined ? made : write(made, tube, mm)
      }, layout),
  })

const sectionAsks = (
  id: string,
  find: FindTubes,
  layout: Layout,
  letters: readonly string[],
): readonly Ask[] => {
  const tube = find(layout)[0]
  if (tube === undefined) return []
  const [diameterLetter] = letters
  return [
    tubeAsk(find, {
      id: `${id}.diameter`,
      words: 'Outside diameter',
      hint: 'Across the tube, with a caliper.',
      ...(diameterLetter === undefined ? {} : { letter: diameterLetter }),
      limits: LIMITS.outsideDiameterMm,
      read: (read) => read.outsideDiameterMm,
      write: withDiameter,
      derived: () => STARTING_SECTION.outsideDiameterMm,
    }),
    tubeAsk(find, {
      id: `${id}.wall`,
      words: 'Wall',
      hint: 'At an open end, or as it was ordered.',
      limits: wallLimits(tube),
      read: (read) => read.wallMm,
      write: (write, { id: tubeId }, wallMm) => withTube(write, tubeId, { wallMm }),
      derived: (read) => Math.min(STARTING_SECTION.wallMm, (find(read)[0] ?? tube).outsideDiameterMm / 2),
    }),
  ]
}

/** Where a tube across the car is, as a tape meets it; `start` is what both start with. */
const frontAndTopAsks = (
  find: FindTubes,
  ids: { readonly front: string; readonly top: string },
  start: (layout: Layout) => Pick<PointMm, 'xMm' | 'zMm'>,
): readonly Ask[] => [
  tubeAsk(find, {
    id: ids.front,
    words: 'Rearward to its front edge',
    hint: 'Level, from the datum; at the middle of the seat.',
    letter: 'A',
    limits: FROM_DATUM,
    read: (tube, layout) => frontMm(layout, tube),
    write: withFront,
    derived: (read) => whole(start(read).xMm),
  }),
  tubeAsk(find, {
    id: ids.top,
    words: 'Up to its top',
    hint: 'Plumb, from the height of the datum.',
    letter: 'B',
    limits: FROM_DATUM,
    read: (tube, layout) => topMm(layout, tube),
    write: withTop,
    derived: (read) => whole(start(read).zMm),
  }),
]

const bars: FindTubes = (layout) => {
  const bar = barOf(layout)
  return bar === null ? [] : [bar]
}

/** The middle of tubes across the car, which nobody is asked for: that of the seat. */
const middleAsk = (id: string, find: FindTubes): Ask => {
  const middle = (layout: Layout): number => {
    const ys = find(layout).map((tube) => middleMm(tube, 'yMm'))
    return ys.length === 0 ? 0 : (Math.min(...ys) + Math.max(...ys)) / 2
  }
  return keptAsk({
    id,
    read: middle,
    write: (layout, mm) => {
      const byMm = Number(mm) - middle(layout)
      return find(layout).reduce((made, tube) => withMiddle(made, tube, middleMm(tube, 'yMm') + byMm), layout)
    },
    derived: (layout) => askedPlace(layout).seat.hipPoint.yMm,
  })
}

const barAsks = (layout: Layout): readonly Ask[] =>
  barOf(layout) === null
    ? []
    : [
        ...sectionAsks('bar', bars, layout, ['D']),
        middleAsk('bar.middle', bars),
        ...frontAndTopAsks(bars, { front: 'bar.front', top: 'bar.top' }, shoulderStart),
        tubeAsk(bars, {
          id: 'bar.half',
          words: 'From its middle to one end',
          hint: 'Half of its length between the uprights.',
          letter: 'C',
          limits: HALF_BAR,
          read: halfMm,
          write: withHalf,
          derived: () => STARTING_HALF_MM,
        }),
      ]

export const barQuestion: Question = {
  id: 'bar',
  title: 'Where is the harness bar?',
  how: 'The tube behind the seat that the shoulder straps go to. If there is none yet, keep the starting values and drag it later.',
  isAsked: () => true,
  asks: (layout, begun) => [
    choiceAsk({
      id: 'bar.has',
      words: 'There is, or will be, a harness bar',
      choices: YES_NO,
      read: (read) => (barOf(read) === null ? 'no' : 'yes'),
      write: (write, value) => (value === 'yes' ? withBar(write, begun) : withoutBar(write)),
      derived: () => 'yes',
    }),
    ...barAsks(layout),
  ],
  figures: barFigure,
}

const crossTubes: FindTubes = (layout) => {
  const tube = crossTubeOf(layout)
  return tube === null ? [] : [tube]
}

const sideTubes: FindTubes = (layout) => Object.values(sideTubesOf(layout) ?? {})

const crossAsks = (layout: Layout): readonly Ask[] => [
  ...sectionAsks('tubes.cross', crossTubes, layout, []),
  middleAsk('tubes.cross-middle', crossTubes),
  ...frontAndTopAsks(crossTubes, { front: 'tubes.cross-front', top: 'tubes.cross-top' }, (read) => {
    const { xMm, zMm } = lapStart(read)
    return { xMm, zMm: zMm - HOLE_OFF_TUBE_MM }
  }),
]

/** The two side tubes this far apart about their middle. */
const withSidesApart = (layout: Layout, mm: number): Layout => {
  const sides = sideTubesOf(layout)
  if (sides === null) return layout
  const middle = (middleMm(sides.left, 'yMm') + middleMm(sides.right, 'yMm')) / 2
  const left = withMiddle(layout, sides.left, middle - mm / 2)
  return withMiddle(left, sides.right, middle + mm / 2)
}

/** Centre lines of the side tubes apart: at least a seat's width, our judgement. */
const SIDES_APART: NumberLimits = { min: 200, max: 3_000, unit: 'mm' }

const sideAsks = (layout: Layout): readonly Ask[] => [
  ...sectionAsks('tubes.sides', sideTubes, layout, []),
  middleAsk('tubes.sides-middle', sideTubes),
  numberAsk({
    id: 'tubes.sides-apart',
    kind: 'length',
    words: 'Between their middles',
    letter: 'A',
    limits: SIDES_APART,
    read: (read) => {
      const sides = sideTubesOf(read)
      return sides === null ? 0 : middleMm(sides.right, 'yMm') - middleMm(sides.left, 'yMm')
    },
    write: withSidesApart,
    derived: (read) => 2 * whole(Math.abs(lapStart(read).yMm - askedPlace(read).seat.hipPoint.yMm)),
  }),
  tubeAsk(sideTubes, {
    id: 'tubes.sides-top',
    words: 'Up to their top',
    hint: 'Plumb, from the height of the datum.',
    letter: 'B',
    limits: FROM_DATUM,
    read: (tube, layout) => topMm(layout, tube),
    write: withTop,
    derived: (read) => whole(lapStart(read).zMm - HOLE_OFF_TUBE_MM),
  }),
]

const FLOOR_TUBE_ASKS: Readonly<Record<FloorTubes, (layout: Layout) => readonly Ask[]>> = {
  none: () => [],
  cross: crossAsks,
  sides: sideAsks,
}

export const tubesQuestion: Question = {
  id: 'tubes',
  title: 'Is there a tube for the lap tabs?',
  how: 'Lap tabs can be welded to a tube across the car behind the seat, or to one on each side of it. With neither they stand on the floor or on a plate.',
  isAsked: () => true,
  asks: (layout, begun: Begun) => [
    choiceAsk({
      id: 'tubes.kind',
      words: 'Tubes beside or below the seat',
      choices: FLOOR_TUBES,
      read: floorTubesOf,
      write: (write, value) => withFloorTubes(write, value as FloorTubes, begun),
    }),
    ...FLOOR_TUBE_ASKS[floorTubesOf(layout)](layout),
  ],
  figures: floorTubeFigure,
}

import type { PointMm } from '../../geometry/point'
import type { Tube } from '../../geometry/tube'
import type { Mount } from '../../straps/anchor'
import { areShoulderStrapsJoined, strapSide } from '../../straps/strap'
import type { Layout } from '../document/layout'
import type { NumberLimits } from '../document/limits'
import { asTab } from '../edit/changeAnchors'
import { shoulderMidPoint } from '../edit/handles'
import { withPlaceChanged } from '../edit/replace'
import { startingMount } from '../edit/startingMount'
import { pointOnTube } from '../edit/tubeMove'
import { tubeName } from '../wording/names'
import { anchorsOf, completed, isComplete, sideStraps, type StrapGroup } from './anchorTape'
import { centre, family, type GroupAsks, groupAsks, hasGroup, type Straps } from './groupAsks'
import { anchorFigure } from './figure/anchorFigures'
import { askedPlace } from './askedPlace'
import { type Ask, choiceAsk, keptAsk, type Question } from './question'
import { holeOnTube, lapStart } from './tubeQuestions'
import { barOf, crossTubeOf, heldAt, middleMm, sideTubesOf } from './tubeTape'

/** Limits of what is measured between two holes; our judgement: from side by side to the width of a car. */
const LAP_APART: NumberLimits = { min: 100, max: 2_000, unit: 'mm' }
const SHOULDER_APART: NumberLimits = { min: 40, max: 500, unit: 'mm' }
const SUB_APART: NumberLimits = { min: 20, max: 1_000, unit: 'mm' }

/** The mounts of a group with the tube they are welded to; the right one of a pair of side tubes is another. */
const withTubeOf = (layout: Layout, straps: StrapGroup, tubeId: string | null): Layout => {
  const sides = sideTubesOf(layout)
  return withPlaceChanged(layout, askedPlace(layout).id, (place) => ({
    ...place,
    anchors: place.anchors.map((anchor) => {
      if (!straps.includes(anchor.strap) || anchor.mount.kind === 'wrap') return anchor
      const isOnRight = tubeId === sides?.left.id && strapSide(anchor.strap) === 'right'
      return { ...anchor, mount: { ...anchor.mount, tubeId: isOnRight ? (sides?.right.id ?? null) : tubeId } }
    }),
  }))
}

const FLOOR = 'floor-or-plate'

/** Tubes that tabs may stand on, and the floor. */
const tubeAsk = (layout: Layout, id: string, straps: Straps, start: (layout: Layout) => Tube | null): Ask => {
  const hidden = sideTubesOf(layout)?.right.id
  return choiceAsk({
    id: `${id}.tube`,
    words: 'The tabs are welded to',
    isList: true,
    choices: [
      { value: FLOOR, words: 'The floor or a plate' },
      ...layout.tubes
        .filter((tube) => tube.id !== hidden)
        .map((tube) => ({
          value: tube.id,
          words:
            tube.id === sideTubesOf(layout)?.left.id
              ? 'The floor tubes on each side'
              : tubeName(tube.id, layout),
        })),
    ],
    read: (read) => {
      const place = askedPlace(read)
      return anchorsOf(place, straps(place))[0]?.mount.tubeId ?? FLOOR
    },
    write: (write, value) => withTubeOf(write, straps(askedPlace(write)), value === FLOOR ? null : value),
    derived: (read) => start(read)?.id ?? FLOOR,
  })
}

const lapTube = (layout: Layout): Tube | null => crossTubeOf(layout) ?? sideTubesOf(layout)?.left ?? null

/** On the cross tube toward the hip, above the side tubes, else where lap tabs start with nothing to stand on. */
const lapOnTube = (layout: Layout): PointMm => {
  const plain = lapStart(layout)
  const { hipPoint } = askedPlace(layout).seat
  const cross = crossTubeOf(layout)
  if (cross !== null) return { ...plain, ...holeOnTube(layout, cross, hipPoint) }
  const left = sideTubesOf(layout)?.left
  return left === undefined
    ? plain
    : {
        xMm: plain.xMm,
        yMm: hipPoint.yMm - Math.abs(middleMm(left, 'yMm') - hipPoint.yMm),
        zMm: holeOnTube(layout, left, { ...plain, xMm: heldAt(layout, left).xMm, zMm: 1e6 }).zMm,
      }
}

/** The first of what is asked about anchors: that every strap has one. Whoever takes one away by hand has it stay away. */
const everyAnchor = (begun: Parameters<Question['asks']>[1]): Ask =>
  keptAsk({
    id: 'anchors.every',
    isAlwaysDerived: true,
    read: (layout) => (isComplete(askedPlace(layout)) ? 'yes' : 'no'),
    write: (layout, value) => (value === 'yes' ? completed(layout, begun) : layout),
    derived: () => 'yes',
  })

export const lapQuestion: Question = {
  id: 'lap',
  title: 'Where do the lap tabs go?',
  how: 'If they are there already, measure to the bolt holes. If not, keep the starting values, which are worked out for the first person, and drag them later.',
  isAsked: () => true,
  asks: (layout, begun) => {
    const group: GroupAsks = {
      id: 'lap',
      straps: family('lap'),
      apart: LAP_APART,
      start: lapOnTube,
      letters: ['A', 'B'],
      isOnTube: false,
    }
    return [
      everyAnchor(begun),
      ...(hasGroup(askedPlace(layout), group.straps(askedPlace(layout)))
        ? [tubeAsk(layout, 'lap', group.straps, lapTube)]
        : []),
      ...groupAsks(layout, group),
    ]
  },
  figures: anchorFigure('lap'),
}

type ShoulderKind = 'wrap' | 'bar-tab' | 'tab'

const SHOULDER_KINDS = [
  { value: 'wrap', words: 'Wrapped round the bar' },
  { value: 'bar-tab', words: 'Tabs on the bar' },
  { value: 'tab', words: 'Tabs elsewhere' },
] as const satisfies readonly { readonly value: ShoulderKind; readonly words: string }[]

const shoulderKind = (layout: Layout): ShoulderKind => {
  const place = askedPlace(layout)
  const mount = anchorsOf(place, sideStraps(place, 'shoulder'))[0]?.mount
  if (mount?.kind === 'wrap') return 'wrap'
  return mount !== undefined && mount.tubeId === barOf(layout)?.id ? 'bar-tab' : 'tab'
}

const shoulderStart = (layout: Layout): PointMm => {
  const place = askedPlace(layout)
  const plain = startingMount(place, sideStraps(place, 'shoulder')[0] ?? 'shoulder-left').point
  const bar = barOf(layout)
  const isOnBar = bar !== null && shoulderKind(layout) === 'bar-tab'
  return isOnBar ? { ...plain, ...holeOnTube(layout, bar, shoulderMidPoint(place) ?? plain) } : plain
}

const withShoulderKind = (layout: Layout, kind: string): Layout => {
  const place = askedPlace(layout)
  const bar = barOf(layout)
  if (shoulderKind(layout) === kind || (bar === null && kind !== 'tab')) return layout
  const straps = sideStraps(place, 'shoulder')
  return withPlaceChanged(layout, place.id, (changed) => ({
    ...changed,
    anchors: changed.anchors.map((anchor) => {
      if (!straps.includes(anchor.strap)) return anchor
      if (kind === 'wrap' && bar !== null) return { ...anchor, mount: wrapOn(layout, bar, anchor.mount) }
      const tab = asTab(place, anchor, 'plate')
      return { ...anchor, mount: { ...tab, tubeId: kind === 'bar-tab' ? (bar?.id ?? null) : null } }
    }),
  }))
}

/** Over the top of the bar and between guide hoops, at the place nearest to where the strap ended. */
const wrapOn = (layout: Layout, bar: Tube, { point }: Mount): Mount => ({
  kind: 'wrap',
  tubeId: bar.id,
  point: pointOnTube(bar.points, { ...heldAt(layout, bar), yMm: point.yMm }),
  over: 'over',
  guideHoops: true,
})

export const shoulderQuestion: Question = {
  id: 'shoulder',
  title: 'Where do the shoulder straps end?',
  how: 'Wrapped straps go over the top of the bar and through a three-bar slide, between guide hoops. For tabs measure to the bolt holes.',
  isAsked: () => true,
  asks: (layout) => {
    const place = askedPlace(layout)
    const straps = family('shoulder')
    if (!hasGroup(place, straps(place))) return []
    const isJoined = areShoulderStrapsJoined(place.belt)
    const group: GroupAsks = {
      id: 'shoulder',
      straps,
      apart: isJoined ? null : SHOULDER_APART,
      start: shoulderStart,
      letters: ['A', 'B'],
      isOnTube: shoulderKind(layout) === 'wrap',
    }
    return [
      choiceAsk({
        id: 'shoulder.kind',
        words: 'The shoulder straps are',
        isList: true,
        choices: barOf(layout) === null ? SHOULDER_KINDS.slice(2) : SHOULDER_KINDS,
        read: shoulderKind,
        write: withShoulderKind,
        derived: (read) => (barOf(read) === null ? 'tab' : 'wrap'),
      }),
      ...groupAsks(layout, group),
    ]
  },
  figures: anchorFigure('shoulder'),
}

/** The starting point of a strap between the legs; the seat's lean is in it. */
const subStart =
  (straps: Straps) =>
  (layout: Layout): PointMm => {
    const place = askedPlace(layout)
    return startingMount(place, straps(place)[0] ?? 'sub-centre').point
  }

export const subQuestion: Question = {
  id: 'sub',
  title: 'Where do the straps between the legs end?',
  how: 'They keep the lap strap from riding up. Their tabs sit under the cushion. If they are not there yet, keep the starting values.',
  isAsked: (layout) => askedPlace(layout).belt.arrangement > 4,
  asks: (layout) => [
    ...groupAsks(layout, {
      id: 'sub',
      straps: family('sub'),
      apart: SUB_APART,
      start: subStart(family('sub')),
      letters: ['A', 'B'],
      isOnTube: false,
    }),
    ...groupAsks(layout, {
      id: 'sub-centre',
      straps: centre,
      apart: null,
      start: subStart(centre),
      letters: ['D', 'E'],
      isOnTube: false,
    }),
  ],
  figures: anchorFigure('sub'),
}

import { planeDistanceMm, type PlanePointMm, planePoint } from '../../geometry/plane'
import {
  type Direction,
  directionBetween,
  directionDot,
  pointDifference,
  type PointMm,
  pointSum,
} from '../../geometry/point'
import { convexHull } from '../../geometry/hull'
import { clockLines } from '../../shop/tab/clock'
import type { TabOnTube } from '../../shop/tab/tabOnTube'
import { spatial, tabPlates } from '../../shop/tab/tabPlates'
import { type Way, wayOf } from '../../shop/tab/way'
import type { EyeMount, Mount, TabMount } from '../../straps/anchor'
import { tabForm } from '../../straps/anchor'
import { eyeNormal, shankAxis } from '../../straps/eyeShank'
import { lineOfPull } from '../../straps/lineOfPull'
import type { StrapPath } from '../../straps/path'
import { tabNormal } from '../../straps/tabPlane'
import { tabSize } from '../../straps/tabSize'
import { angleText } from '../../units/angle'
import { type LengthUnit, lengthText } from '../../units/length'
import type { Primitive } from './primitive'
import { ringPoints } from './ring'

/** What a detail of one anchor is drawn from. */
export interface DetailInput {
  readonly mount: Mount
  /** How it sits on its tube; null for one that stands on something else. */
  readonly on: TabOnTube | null
  /** Its strap in the sitting as drawn; null when it has no path. */
  readonly path: StrapPath | null
  readonly lengthUnit: LengthUnit
  /** Height of a line of text in mm of the car. */
  readonly textHeightMm: number
}

/** One anchor looked at along its tube, as a list of primitives about the tube's centre line (about the anchor where there is none). */
export interface AnchorDetail {
  /** The way the one who looks is facing: along the tube from its first point on, or forward. */
  readonly facing: Way
  /** What is at the top of the figure and at its right. */
  readonly up: Way
  readonly right: Way
  readonly primitives: readonly Primitive[]
}

interface Frame {
  readonly centre: PointMm
  readonly facing: Direction
  readonly up: Direction
  readonly right: Direction
}

/** Along the tube from its first point, its top (of a steep one its front) upward; without a tube from behind the car. */
const frameOf = ({ on, mount }: DetailInput): Frame => {
  if (on === null)
    return {
      centre: mount.point,
      facing: { x: -1, y: 0, z: 0 },
      up: { x: 0, y: 0, z: 1 },
      right: { x: 0, y: 1, z: 0 },
    }
  const { zero, quarter } = clockLines(on.axis)
  return { centre: on.foot, facing: on.axis, up: zero, right: quarter }
}

const seen = (frame: Frame, point: PointMm): PlanePointMm => {
  const from = pointDifference(point, frame.centre)
  return planePoint(directionDot(from, frame.right), directionDot(from, frame.up))
}

const line = (
  key: string,
  points: readonly PlanePointMm[],
  style: Extract<Primitive, { kind: 'polyline' }>['style'],
  closed = false,
): Primitive => ({ kind: 'polyline', key, part: null, points, closed, style })

/** One anchor as a welder sees it who looks along the tube: the tube cut through, what is welded or wrapped on it, and which way it pulls. */
export const anchorDetail = (input: DetailInput): AnchorDetail => {
  const frame = frameOf(input)
  return {
    facing: wayOf(frame.facing),
    up: wayOf(frame.up),
    right: wayOf(frame.right),
    primitives: [
      ...tubeCut(input),
      ...mountLines(input, frame),
      ...clockLinesOf(input, frame),
      ...pullLine(input, frame),
      ...standoff(input, frame),
    ],
  }
}

const ORIGIN = planePoint(0, 0)

const tubeCut = ({ on }: DetailInput): readonly Primitive[] => {
  if (on === null) return []
  const { outsideDiameterMm, wallMm } = on.tube
  const circle = (key: string, radiusMm: number, style: 'outline' | 'tube'): Primitive => ({
    kind: 'circle',
    key,
    part: null,
    centre: ORIGIN,
    radiusMm,
    style,
  })
  const insideMm = outsideDiameterMm / 2 - wallMm
  return [
    circle('detail/tube', outsideDiameterMm / 2, 'outline'),
    ...(insideMm > 0 ? [circle('detail/bore', insideMm, 'tube')] : []),
  ]
}

const mountLines = (input: DetailInput, frame: Frame): readonly Primitive[] => {
  const { mount } = input
  switch (mount.kind) {
    case 'tab':
      return tabLines(mount, input.on, frame)
    case 'eye':
      return eyeLines(mount, input.on, frame)
    case 'wrap':
      return wrapLines(input)
  }
}

/** A thing between two parallel faces as the outline of all its corners. */
const silhouette = (key: string, corners: readonly PointMm[], frame: Frame): Primitive =>
  line(key, convexHull(corners.map((corner) => seen(frame, corner))), 'outline', true)

const tabLines = (mount: TabMount, on: TabOnTube | null, frame: Frame): readonly Primitive[] => {
  const normal = tabNormal(mount)
  const holeAt = (offsetMm: number): readonly PointMm[] =>
    ringPoints(pointSum(mount.point, normal, offsetMm), normal, mount.holeDiameterMm / 2)
  const bore = line(
    'detail/hole',
    convexHull(
      [...holeAt(mount.thicknessMm / 2), ...holeAt(-mount.thicknessMm / 2)].map((at) => seen(frame, at)),
    ),
    'hidden',
    true,
  )
  const made = on === null || tabForm(mount) === 'insert' ? null : tabPlates(mount, on)
  if (made !== null && !('kind' in made))
    return [
      ...made.plates.map(({ which, outline, hole, slice }) =>
        silhouette(
          `detail/plate/${which}`,
          [mount.thicknessMm / 2, -mount.thicknessMm / 2].flatMap((depthMm) =>
            outline.points.map((point) => spatial(hole, slice, { ...point, depthMm })),
          ),
          frame,
        ),
      ),
      bore,
    ]
  return [silhouette('detail/plate', blankCorners(mount, normal), frame), bore]
}

/** Without a foot to draw: a round plate about the hole, or an insert from its face back to its other end. */
const blankCorners = (mount: TabMount, normal: Direction): readonly PointMm[] => {
  const { widthMm, edgeDistanceMm } = tabSize(mount)
  const isInsert = tabForm(mount) === 'insert'
  const radiusMm = isInsert ? widthMm / 2 : edgeDistanceMm
  const faces = isInsert ? [0, -mount.thicknessMm] : [mount.thicknessMm / 2, -mount.thicknessMm / 2]
  return faces.flatMap((offsetMm) => ringPoints(pointSum(mount.point, normal, offsetMm), normal, radiusMm))
}

/** Thread diameters of shank drawn where there is no tube to draw it down to. A drawing convention of ours. */
const SHANK_THREADS = 2

const eyeLines = (mount: EyeMount, on: TabOnTube | null, frame: Frame): readonly Primitive[] => {
  const { eyeDiameterMm, threadDiameterMm } = mount
  const axis = shankAxis(mount)
  const ring = (radiusMm: number): readonly PlanePointMm[] =>
    ringPoints(mount.point, eyeNormal(mount), radiusMm).map((point) => seen(frame, point))
  const outsideMm = eyeDiameterMm / 2 + threadDiameterMm
  const shankMm =
    on?.standoffMm == null ? outsideMm + SHANK_THREADS * threadDiameterMm : Math.max(outsideMm, on.standoffMm)
  const shank = [outsideMm, shankMm].flatMap((alongMm) =>
    ringPoints(pointSum(mount.point, axis, -alongMm), axis, threadDiameterMm / 2),
  )
  return [
    line('detail/eye', ring(eyeDiameterMm / 2), 'outline', true),
    line('detail/eye-outside', ring(outsideMm), 'outline', true),
    silhouette('detail/shank', shank, frame),
  ]
}

/** Webbing is drawn standing off the tube by its own thickness, about 1.2 mm, doubled for visibility. A drawing convention of ours. */
const WEBBING_STANDOFF_MM = 2.5

const wrapLines = ({ on }: DetailInput): readonly Primitive[] =>
  on === null
    ? []
    : [
        {
          kind: 'circle',
          key: 'detail/wrap',
          part: null,
          centre: ORIGIN,
          radiusMm: on.tube.outsideDiameterMm / 2 + WEBBING_STANDOFF_MM,
          style: 'strap',
        },
      ]

/** How far the zero line reaches beyond the tube's surface, in radii. */
const ZERO_REACH = 0.45

/** The line that angles round the tube are counted from, the line through the hole, and the arc between them. */
const clockLinesOf = (input: DetailInput, frame: Frame): readonly Primitive[] => {
  const { on, mount } = input
  if (on === null) return []
  const radiusMm = on.tube.outsideDiameterMm / 2
  const zero = line('detail/zero', [ORIGIN, planePoint(0, (1 + ZERO_REACH) * radiusMm)], 'centre')
  if (on.clock === null) return [zero]
  const { clockDeg } = on.clock
  const toDeg = 90 - clockDeg
  return [
    zero,
    line('detail/through', [ORIGIN, seen(frame, mount.point)], 'centre'),
    ...(Math.abs(clockDeg) < LEAST_ARC_DEG
      ? []
      : [
          {
            kind: 'angle' as const,
            key: 'detail/clock',
            part: null,
            apex: ORIGIN,
            radiusMm: 0.35 * radiusMm,
            fromDeg: Math.min(90, toDeg),
            toDeg: Math.max(90, toDeg),
            text: angleText(Math.abs(clockDeg)),
          },
        ]),
  ]
}

/** A smaller angle has no room for an arc; it stands in the words. Our judgement. */
const LEAST_ARC_DEG = 4

/** A pull that is seen this much shortened runs along the tube and is not drawn. Our judgement. */
const LEAST_SEEN = 0.2
const PULL_RADII = 1.3
const PULL_BARE_MM = 30

/** The strap's first stretch in the sitting as drawn. */
const pullLine = (input: DetailInput, frame: Frame): readonly Primitive[] => {
  const { path, on } = input
  const contact = path?.contacts[0]?.point
  if (path == null || contact === undefined) return []
  const from = ontoWebbing(contact, input, frame)
  const pull = lineOfPull(path)
  const across = Math.hypot(directionDot(pull, frame.right), directionDot(pull, frame.up))
  if (across < LEAST_SEEN) return []
  const lengthMm = on === null ? PULL_BARE_MM : PULL_RADII * (on.tube.outsideDiameterMm / 2)
  const to = pointSum(from, pull, lengthMm / across)
  return [line('detail/pull', [seen(frame, from), seen(frame, to)], 'strap')]
}

/** A wrapped strap leaves the tube where its webbing is drawn. */
const ontoWebbing = (contact: PointMm, { mount, on }: DetailInput, frame: Frame): PointMm => {
  if (mount.kind !== 'wrap' || on === null) return contact
  const outward = directionBetween(frame.centre, contact)
  return outward === null ? contact : pointSum(contact, outward, WEBBING_STANDOFF_MM)
}

/** From the tube's surface to the middle of the hole or eye, on the side away from the zero line. */
const standoff = (input: DetailInput, frame: Frame): readonly Primitive[] => {
  const { on, mount, textHeightMm } = input
  if (on?.standoffMm == null || on.standoffMm <= 0 || on.clock === null) return []
  const hole = seen(frame, mount.point)
  const share = on.tube.outsideDiameterMm / 2 / planeDistanceMm(ORIGIN, hole)
  const side = on.clock.clockDeg < 0 ? 1 : -1
  const offsetMm = side * (halfWidthMm(mount) + 0.8 * textHeightMm)
  const foot = planePoint(hole.uMm * share, hole.vMm * share)
  return [
    { kind: 'dimension', key: 'detail/standoff', part: null, from: foot, to: hole, offsetMm, text: '' },
    besideDimension({ foot, hole, offsetMm }, lengthText(on.standoffMm, input.lengthUnit), textHeightMm),
  ]
}

/** The number of the short dimension, beyond its line, where it covers neither the line nor the plate. */
const besideDimension = (
  {
    foot,
    hole,
    offsetMm,
  }: { readonly foot: PlanePointMm; readonly hole: PlanePointMm; readonly offsetMm: number },
  text: string,
  textHeightMm: number,
): Primitive => {
  const lengthMm = planeDistanceMm(foot, hole)
  const outward = {
    u: (-(hole.vMm - foot.vMm) / lengthMm) * Math.sign(offsetMm),
    v: ((hole.uMm - foot.uMm) / lengthMm) * Math.sign(offsetMm),
  }
  const reachMm = Math.abs(offsetMm) + 0.9 * textHeightMm
  const align = outward.u > LEVEL_SHARE ? 'left' : outward.u < -LEVEL_SHARE ? 'right' : 'centre'
  return {
    kind: 'label',
    key: 'detail/standoff-text',
    part: null,
    at: planePoint(
      (foot.uMm + hole.uMm) / 2 + outward.u * reachMm,
      (foot.vMm + hole.vMm) / 2 + outward.v * reachMm,
    ),
    text,
    align,
    weight: 'plain',
  }
}

/** Beyond this share sideways a number begins or ends at its place instead of standing about it. Our judgement. */
const LEVEL_SHARE = 0.4

const halfWidthMm = (mount: Mount): number => {
  switch (mount.kind) {
    case 'tab':
      return tabSize(mount).widthMm / 2
    case 'eye':
      return mount.eyeDiameterMm / 2 + mount.threadDiameterMm
    case 'wrap':
      return 0
  }
}

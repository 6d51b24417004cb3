import type { PointMm } from '../geometry/point'
import { err, type Result } from '../result'
import type { SubEnd } from './bodyEnd'
import { joinedRuns } from './joinedShoulders'
import { lapRun, lapStrap, type LapRun } from './lapPath'
import { mountEndOf } from './mountEnd'
import type { PathProblem } from './path'
import { placeFrame, type PlaceFrame, type StrapFrame } from './placeFrame'
import type { StrapScene } from './scene'
import { shoulderEnd, shoulderRun, shoulderStrap, type ShoulderFront } from './shoulderPath'
import { frontRun } from './shoulderFront'
import { strapFamily, type StrapId } from './strap'
import type { SolvedStrap } from './strapPath'
import { subEnd, subRun, subStrap } from './subPath'

/** What the lap straps decide for all others. */
export interface PlaceMiddle {
  /** Where the straps meet; null while no lap strap has a path. */
  readonly buckle: PointMm | null
  readonly front: ShoulderFront
  readonly subEnd: SubEnd | null
}

/** All straps of one place in one sitting, before anything is measured on them. */
export interface PlaceStraps {
  readonly frame: PlaceFrame
  readonly middle: PlaceMiddle
  readonly lapLeft: LapRun | null
  readonly lapRight: LapRun | null
  /** In the order of `strapsOf`. */
  readonly straps: readonly SolvedStrap[]
  readonly problems: readonly PathProblem[]
}

/** The buckle lies midway between the front contacts of the lap straps, in the middle of the seat. */
export const buckleOf = ({ body }: StrapScene, left: LapRun | null, right: LapRun | null): PointMm | null => {
  const first = left ?? right
  if (first === null) return null
  const a = first.reach.front
  const b = (right ?? first).reach.front
  return { xMm: (a.xMm + b.xMm) / 2, yMm: body.hip.yMm, zMm: (a.zMm + b.zMm) / 2 }
}

/** Where the shoulder straps end: the buckle or, of a belt of 3 points, the front contact of the lap strap on the other side. */
const shoulderBuckle = (
  { scene }: PlaceFrame,
  buckle: PointMm | null,
  left: LapRun | null,
  right: LapRun | null,
): PointMm | null => {
  if (scene.belt.arrangement !== 3) return buckle
  return (scene.belt.diagonal === 'right' ? left : right)?.reach.front ?? null
}

/** What follows from the lap straps. */
const placeMiddle = (frame: PlaceFrame, left: LapRun | null, right: LapRun | null): PlaceMiddle => {
  const buckle = buckleOf(frame.scene, left, right)
  const end = shoulderBuckle(frame, buckle, left, right)
  return {
    buckle,
    front: end && (frontRun(frame.scene.body, end) ?? 'inside-shoulder'),
    subEnd: buckle && subEnd(frame.scene, buckle),
  }
}

/** One lap strap with its mount at `point`. */
export const lapRunAt = (
  place: PlaceFrame,
  strap: StrapFrame,
  point: PointMm,
): Result<LapRun, PathProblem> => {
  const mount = mountEndOf(strap.anchor.mount, place.scene.tubes, point)
  return mount === null ? err({ kind: 'anchor-missing', strap: strap.strap }) : lapRun(place, strap, mount)
}

/** One shoulder or anti-submarine strap with its mount at `point`. */
export const otherStrapAt = (
  place: PlaceFrame,
  strap: StrapFrame,
  point: PointMm,
  middle: PlaceMiddle,
): Result<SolvedStrap, PathProblem> => {
  const mount = mountEndOf(strap.anchor.mount, place.scene.tubes, point)
  if (mount === null) return err({ kind: 'anchor-missing', strap: strap.strap })
  if (strapFamily(strap.strap) === 'shoulder') {
    const run = shoulderRun(strap, mount, shoulderEnd(place, strap.strap))
    return run.ok ? shoulderStrap(place, strap, run.value, middle.front, null) : run
  }
  const end = middle.subEnd
  if (end === null) return err({ kind: 'buckle-unknown', strap: strap.strap })
  const run = subRun(place, strap, mount, end)
  return run.ok ? subStrap(strap, end, run.value) : run
}

export const frameOf = ({ straps }: PlaceFrame, strap: StrapId): StrapFrame | null => {
  for (const each of straps) if (each.strap === strap) return each.frame
  return null
}

/** Length of the tail of a belt whose two shoulder straps are joined; null for separate straps. */
export const tailMmOf = ({ belt }: StrapScene): number | null =>
  belt.arrangement === 3 ? null : (belt.shoulderTailMm ?? null)

/** Both joined shoulder straps with their mounts at the two places; what keeps one of them from its path keeps both. */
export const joinedStrapsAt = (
  place: PlaceFrame,
  tailMm: number,
  left: { readonly framed: StrapFrame; readonly point: PointMm },
  right: { readonly framed: StrapFrame; readonly point: PointMm },
  { front }: PlaceMiddle,
): readonly Result<SolvedStrap, PathProblem>[] => {
  const joined = joinedRuns(place, tailMm, left, right)
  if (!joined.ok) return [left, right].map(({ framed }) => err({ ...joined.error, strap: framed.strap }))
  const { contact } = joined.value
  return [
    shoulderStrap(place, left.framed, joined.value.left, front, contact),
    shoulderStrap(place, right.framed, joined.value.right, front, contact),
  ]
}

const joinedStraps = (
  place: PlaceFrame,
  middle: PlaceMiddle,
): readonly Result<SolvedStrap, PathProblem>[] | null => {
  const tailMm = tailMmOf(place.scene)
  const left = frameOf(place, 'shoulder-left')
  const right = frameOf(place, 'shoulder-right')
  if (tailMm === null || left === null || right === null) return null
  return joinedStrapsAt(
    place,
    tailMm,
    { framed: left, point: left.anchor.mount.point },
    { framed: right, point: right.anchor.mount.point },
    middle,
  )
}

/** One lap strap as placed; null, and its problem added, when it has no path. */
const lapOf = (problems: PathProblem[], frame: PlaceFrame, strap: StrapId): LapRun | null => {
  const framed = frameOf(frame, strap)
  const run = framed && lapRunAt(frame, framed, framed.anchor.mount.point)
  if (run === null) return null
  if (run.ok) return run.value
  problems.push(run.error)
  return null
}

/** The paths of all straps of the belt, and the buckle they meet at. */
export const placeStraps = (scene: StrapScene): PlaceStraps => {
  const frame = placeFrame(scene)
  const problems: PathProblem[] = []
  for (const { strap, frame: framed } of frame.straps)
    if (framed === null) problems.push({ kind: 'anchor-missing', strap })
  const lapLeft = lapOf(problems, frame, 'lap-left')
  const lapRight = lapOf(problems, frame, 'lap-right')
  const middle = placeMiddle(frame, lapLeft, lapRight)
  const joined = joinedStraps(frame, middle)
  const straps: SolvedStrap[] = []
  for (const { strap, frame: framed } of frame.straps) {
    if (framed === null) continue
    if (strapFamily(strap) === 'lap') {
      const run = strap === 'lap-left' ? lapLeft : lapRight
      if (run !== null && middle.buckle !== null) straps.push(lapStrap(frame, framed, run, middle.buckle))
      continue
    }
    const solved =
      (strapFamily(strap) === 'shoulder' ? joined?.[strap === 'shoulder-left' ? 0 : 1] : undefined) ??
      otherStrapAt(frame, framed, framed.anchor.mount.point, middle)
    if (solved.ok) straps.push(solved.value)
    else problems.push(solved.error)
  }
  addFrontless(problems, straps, middle)
  return { frame, middle, lapLeft, lapRight, straps, problems }
}

/** Shoulder straps whose front part cannot be led anywhere have a path all the same, and a problem. */
const addFrontless = (
  problems: PathProblem[],
  straps: readonly SolvedStrap[],
  { front }: PlaceMiddle,
): void => {
  if (front !== null) return
  for (const { anchor } of straps)
    if (strapFamily(anchor.strap) === 'shoulder')
      problems.push({ kind: 'buckle-unknown', strap: anchor.strap })
}

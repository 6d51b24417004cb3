import type { PosedBody } from '../../../src/domain/body/posedBody'
import { vehiclePoint } from '../../../src/domain/body/pose'
import type { PlanePointMm } from '../../../src/domain/geometry/plane'
import type { PointMm } from '../../../src/domain/geometry/point'
import type { Tube } from '../../../src/domain/geometry/tube'
import type { Anchor, TabMount } from '../../../src/domain/straps/anchor'
import type { PathProblem, StrapPath } from '../../../src/domain/straps/path'
import type { QuantityId, Subject } from '../../../src/domain/straps/quantity'
import type { StrapScene } from '../../../src/domain/straps/scene'
import type { Seat, Slot } from '../../../src/domain/straps/seat'
import type { SolvedPlace } from '../../../src/domain/straps/solve'
import type { Arrangement, Belt, StrapId } from '../../../src/domain/straps/strap'

/** An invented belt, seat and body of round numbers, built so that answers can be worked out by hand. */

export const point = (xMm: number, yMm: number, zMm: number): PointMm => ({ xMm, yMm, zMm })
export const plane = (uMm: number, vMm: number): PlanePointMm => ({ uMm, vMm })

export const belt = (arrangement: Arrangement, changes: Partial<Belt> = {}): Belt => ({
  arrangement,
  webbingMm: { shoulder: 76, lap: 76, sub: 50 },
  material: 'polyester',
  buckle: 'latch-and-link',
  lapAdjuster: 'pull-up',
  headAndNeckRestraint: false,
  adjusterTailMm: 150,
  wrapReturnMm: 120,
  ...changes,
})

export const tab = (strap: StrapId, at: PointMm, changes: Partial<TabMount> = {}): Anchor => ({
  id: strap,
  strap,
  mount: {
    kind: 'tab',
    point: at,
    planDeg: 0,
    leanDeg: 0,
    thicknessMm: 5,
    holeDiameterMm: 12,
    shear: 'double',
    tubeId: null,
    ...changes,
  },
})

export const wrap = (strap: StrapId, at: PointMm, over: 'over' | 'under', tubeId = 'bar'): Anchor => ({
  id: strap,
  strap,
  mount: { kind: 'wrap', tubeId, point: at, over, guideHoops: true },
})

/** A straight bar across the car at x, z. */
export const bar = (xMm: number, zMm: number, outsideDiameterMm: number, id = 'bar'): Tube => ({
  id,
  name: id,
  role: 'harness-bar',
  points: [point(xMm, -600, zMm), point(xMm, 600, zMm)],
  outsideDiameterMm,
  wallMm: 2,
})

interface BodyChoice {
  readonly hip?: PointMm
  readonly reclineDeg?: number
  readonly hipToShoulderMm?: number
  readonly shoulderRadiusMm?: number
  readonly shoulderHalfSpacingMm?: number
  readonly lapRadiusMm?: number
  readonly lapLowestDeg?: number
  readonly groinRadiusMm?: number
  /** Front hip bone ahead of and above the hip point, and from the middle. */
  readonly bone?: { readonly aheadMm: number; readonly aboveMm: number; readonly halfMm: number }
  readonly hipHalfBreadthMm?: number
  /** What no tube can be in; nothing unless a test puts it there. */
  readonly core?: PosedBody['core']
  /** The chest, up the torso line and ahead of it; nothing in the strap's way unless a test puts it there. */
  readonly chest?: {
    readonly upMm: number
    readonly aheadMm: number
    readonly acrossMm: number
    readonly alongMm: number
  }
}

/** A body of circles: shoulder point `hipToShoulderMm` up the torso line, the arc below it. */
const body = (choice: BodyChoice = {}): PosedBody => {
  const hip = choice.hip ?? point(0, 0, 0)
  const reclineDeg = choice.reclineDeg ?? 0
  const up = choice.hipToShoulderMm ?? 590
  const radiusMm = choice.shoulderRadiusMm ?? 100
  const half = choice.shoulderHalfSpacingMm ?? 80
  const bone = choice.bone ?? { aheadMm: 20, aboveMm: 80, halfMm: 115 }
  const at = (xMm: number, yMm: number, zMm: number): PointMm =>
    vehiclePoint({ hip, reclineDeg }, point(xMm, yMm, zMm))
  const centre = at(0, 0, up - radiusMm)
  const chest = choice.chest ?? { upMm: 300, aheadMm: 0, acrossMm: 0, alongMm: 0 }
  const chestCentre = at(-chest.aheadMm, 0, chest.upMm)
  const bonePoint = (yMm: number): PointMm =>
    point(hip.xMm - bone.aheadMm, hip.yMm + yMm, hip.zMm + bone.aboveMm)
  return {
    hip,
    reclineDeg,
    shoulderPoint: { left: at(0, -half, up), right: at(0, half, up) },
    shoulderArc: { centre: plane(centre.xMm, centre.zMm), radiusMm },
    chest: {
      centre: plane(chestCentre.xMm, chestCentre.zMm),
      acrossMm: chest.acrossMm,
      alongMm: chest.alongMm,
    },
    frontHipBone: { left: bonePoint(-bone.halfMm), right: bonePoint(bone.halfMm) },
    lapArc: { centre: plane(hip.xMm, hip.zMm), radiusMm: choice.lapRadiusMm ?? 110 },
    lapLowestDeg: choice.lapLowestDeg ?? 20,
    groinArc: { centre: plane(hip.xMm, hip.zMm), radiusMm: choice.groinRadiusMm ?? 97 },
    hipHalfBreadthMm: choice.hipHalfBreadthMm ?? 170,
    core: choice.core ?? [],
    helmet: { centre: at(0, 0, 770), radiusMm: 150 },
    outlines: { side: [], top: [] },
  }
}

/** The rim is low and far ahead unless a test moves it, so that it does not get in the way. */
const seat = (changes: Partial<Seat> = {}): Seat => ({
  hipPoint: point(0, 0, 0),
  hipHeightMm: 97,
  reclineDeg: 0,
  slide: { forwardMm: 0, rearwardMm: 0 },
  reclineRange: { uprightDeg: 0, reclinedDeg: 0 },
  sideOutline: [],
  topOutline: [],
  backrestRim: { xMm: 110, zMm: 300 },
  slots: [],
  ...changes,
})

export const slot = (changes: Partial<Slot> & Pick<Slot, 'straps' | 'face' | 'centre'>): Slot => ({
  id: 'slot',
  lengthMm: 100,
  heightMm: 40,
  turnDeg: 0,
  ...changes,
})

export interface SceneChoice extends BodyChoice {
  readonly seat?: Partial<Seat>
  readonly belt?: Belt
  readonly anchors?: readonly Anchor[]
  readonly tubes?: readonly Tube[]
}

export const lapTabs: readonly Anchor[] = [
  tab('lap-left', point(200, -250, -200)),
  tab('lap-right', point(200, 250, -200)),
]

/** A four-point place: lap tabs at 45° and shoulder tabs level with the shoulder, unless changed. */
export const scene = (choice: SceneChoice = {}): StrapScene => {
  const hip = choice.hip ?? point(0, 0, 0)
  return {
    seat: seat(choice.seat),
    pose: { hip, reclineDeg: choice.reclineDeg ?? 0 },
    body: body(choice),
    belt: choice.belt ?? belt(4),
    anchors: choice.anchors ?? [
      ...lapTabs,
      tab('shoulder-left', point(400, -80, 590)),
      tab('shoulder-right', point(400, 80, 590)),
    ],
    tubes: choice.tubes ?? [],
  }
}

export const valueOf = (solved: SolvedPlace, id: QuantityId, subject: Subject): number => {
  const found = solved.quantities.find((value) => value.id === id && value.subject === subject)
  if (found === undefined) throw new Error(`no ${id} of ${subject}: ${JSON.stringify(solved.problems)}`)
  return found.value
}

export const hasValue = (solved: SolvedPlace, id: QuantityId, subject: Subject): boolean =>
  solved.quantities.some((value) => value.id === id && value.subject === subject)

export const pathOf = (solved: SolvedPlace, strap: StrapId): StrapPath => {
  const found = solved.paths.find((path) => path.strap === strap)
  if (found === undefined) throw new Error(`no path of ${strap}: ${JSON.stringify(solved.problems)}`)
  return found
}

export const problemOf = (solved: SolvedPlace, strap: StrapId): PathProblem | undefined =>
  solved.problems.find((problem) => problem.strap === strap)

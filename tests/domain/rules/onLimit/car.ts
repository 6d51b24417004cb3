import type { Layout, Place } from '../../../../src/domain/layout/document/layout'
import type { Tube } from '../../../../src/domain/geometry/tube'
import type { Anchor, TabMount } from '../../../../src/domain/straps/anchor'
import type { Slot } from '../../../../src/domain/straps/seat'
import {
  type Arrangement,
  type StrapFamily,
  strapFamily,
  strapsOf,
} from '../../../../src/domain/straps/strap'
import { solvedSittings } from '../../../../src/domain/layout/evaluate/solvedSittings'
import { seatPoint } from '../../../../src/domain/body/pose'
import type { PointMm } from '../../../../src/domain/geometry/point'
import { crossTube, flatLayout, flatPlace, tabAt } from '../../../support/flatLayout'

/** What decides whether a rule speaks. */
export interface Facets {
  readonly reclineDeg: number
  readonly points: Arrangement
  readonly restraint: boolean
  readonly thigh: 'rearward' | 'under-thighs'
  readonly diagonal: 'left' | 'right'
  readonly adjustable: boolean
  readonly mount: Anchor['mount']['kind']
  readonly tube: 'none' | Tube['role']
  readonly dusty: boolean
}

/** One point of a family's anchors, mirrored to the other side, with the tube through it turned in plan. */
interface AnchorAt {
  readonly xMm: number
  readonly yMm: number
  readonly zMm: number
  readonly tubeYawDeg: number
  readonly tabPlanDeg: number
}

/** Every typed number that is driven; plausible values of a cockpit whose hip point is the datum. */
export interface Numbers {
  readonly shoulder: AnchorAt
  readonly lap: AnchorAt
  readonly sub: AnchorAt
  readonly rimHeightMm: number
  readonly webbingMm: number
  readonly tabThicknessMm: number
  readonly outsideDiameterMm: number
  readonly wallMm: number
  readonly slotLengthMm: number
  readonly eyeThreadMm: number
  /** How far each shank rises above its strap's line of pull. */
  readonly shankOffDeg: number
  /** Both shoulder straps are joined into one tail this long; they are separate when null. */
  readonly tailMm: number | null
  /** Middle of every adjuster from its anchor; none when null. */
  readonly adjusterMm: number | null
  /** How much further back the right anchors are than the left ones. */
  readonly askewMm: number
  /** How far below its tabs the middle of each tube runs. */
  readonly tubeBelowMm: number
  /** Where a tube across the car runs, from the hip point; none when null. */
  readonly nearTube: { readonly xMm: number; readonly zMm: number } | null
  /** Slots are cut for this family; for none when null. */
  readonly slotted: StrapFamily | null
}

export const FACETS: Facets = {
  reclineDeg: 20,
  points: 6,
  restraint: false,
  thigh: 'rearward',
  diagonal: 'left',
  adjustable: false,
  mount: 'tab',
  tube: 'none',
  dusty: false,
}

export const NUMBERS: Numbers = {
  shoulder: { xMm: 430, yMm: 100, zMm: 480, tubeYawDeg: 0, tabPlanDeg: 0 },
  lap: { xMm: 180, yMm: 260, zMm: -215, tubeYawDeg: 0, tabPlanDeg: 0 },
  sub: { xMm: 40, yMm: 50, zMm: -350, tubeYawDeg: 0, tabPlanDeg: 0 },
  rimHeightMm: 200,
  webbingMm: 75,
  tabThicknessMm: 5,
  outsideDiameterMm: 38,
  wallMm: 2.5,
  slotLengthMm: 80,
  eyeThreadMm: 11.1,
  shankOffDeg: 0,
  tailMm: null,
  adjusterMm: null,
  askewMm: 0,
  tubeBelowMm: 0,
  nearTube: null,
  slotted: null,
}

const sin = (deg: number): number => Math.sin((deg * Math.PI) / 180)
const degrees = (radians: number): number => (radians * 180) / Math.PI
const cos = (deg: number): number => Math.cos((deg * Math.PI) / 180)

const pointOf = (strap: Anchor['strap'], at: AnchorAt, askewMm: number): Anchor['mount']['point'] => {
  const side = strap.endsWith('left') ? -1 : strap.endsWith('right') ? 1 : 0
  // The tube turns about its middle, in the middle of the seat; the anchors stay on it.
  const yMm = side * at.yMm
  const backMm = side > 0 ? askewMm : 0
  return { xMm: at.xMm + backMm + yMm * sin(at.tubeYawDeg), yMm: yMm * cos(at.tubeYawDeg), zMm: at.zMm }
}

const tubeOf = (
  family: StrapFamily,
  { role, ...numbers }: Numbers & { readonly role: Tube['role'] },
): Tube => {
  const { xMm, tubeYawDeg } = numbers[family]
  const zMm = numbers[family].zMm - numbers.tubeBelowMm
  const end = (yMm: number) => ({ xMm: xMm + yMm * sin(tubeYawDeg), yMm: yMm * cos(tubeYawDeg), zMm })
  const { outsideDiameterMm, wallMm } = numbers
  const tube = crossTube(family, xMm, zMm, role)
  return { ...tube, points: [end(-600), end(600)], outsideDiameterMm, wallMm }
}

const mountOf = (facets: Facets, numbers: Numbers, family: StrapFamily, tab: TabMount): Anchor['mount'] => {
  const { point } = tab
  const tubeId = facets.tube === 'none' ? null : family
  switch (facets.mount) {
    case 'wrap':
      return { kind: 'wrap', tubeId: family, point, over: 'over', guideHoops: true }
    case 'eye':
      return {
        kind: 'eye',
        point,
        planDeg: 180,
        riseDeg: 0,
        threadDiameterMm: numbers.eyeThreadMm,
        eyeDiameterMm: 25,
        tubeId,
      }
    case 'tab':
      return { ...tab, planDeg: numbers[family].tabPlanDeg, thicknessMm: numbers.tabThicknessMm, tubeId }
  }
}

const anchorsOf = (facets: Facets, numbers: Numbers): readonly Anchor[] =>
  strapsOf({ arrangement: facets.points, diagonal: facets.diagonal }).map((strap) => {
    const family = strapFamily(strap)
    const { mount, ...anchor } = tabAt(strap, pointOf(strap, numbers[family], numbers.askewMm))
    if (mount.kind !== 'tab') throw new Error(mount.kind)
    return { ...anchor, mount: mountOf(facets, numbers, family, mount) }
  })

/** The side walls are this far from the seat's middle. */
const SIDE_WALL_MM = 220

/** Where the free lap strap of the numbers above goes through the side wall, in the seat. */
const lapSlotCentre = (): PointMm => {
  const layout = flatLayout([placeOf(FACETS, NUMBERS)])
  const [place] = layout.places
  const [first] = place === undefined ? [] : solvedSittings(layout, place)
  const [from, to] = first?.solved.paths.find(({ strap }) => strap === 'lap-right')?.contacts ?? []
  if (first === undefined || from === undefined || to === undefined) throw new Error('no lap strap')
  const share = (SIDE_WALL_MM - from.point.yMm) / (to.point.yMm - from.point.yMm)
  return seatPoint(first.scene.pose, {
    xMm: from.point.xMm + share * (to.point.xMm - from.point.xMm),
    yMm: SIDE_WALL_MM,
    zMm: from.point.zMm + share * (to.point.zMm - from.point.zMm),
  })
}

/** Lap straps through the side walls, thigh straps through the cushion. */
const slotsOf = (facets: Facets, { slotted, slotLengthMm }: Numbers): readonly Slot[] =>
  strapsOf({ arrangement: facets.points, diagonal: facets.diagonal })
    .filter((strap) => strapFamily(strap) === slotted)
    .map((strap) => {
      const side = strap.endsWith('left') ? -1 : strap.endsWith('right') ? 1 : 0
      const common = {
        id: `${strap}-slot`,
        straps: [strap],
        lengthMm: slotLengthMm,
        heightMm: 12,
        turnDeg: 0,
      }
      return slotted === 'lap'
        ? { ...common, face: 'side', centre: { ...lapSlotCentre(), yMm: side * SIDE_WALL_MM } }
        : { ...common, face: 'cushion', centre: { xMm: 10, yMm: side * 50, zMm: -140 } }
    })

const person = (id: string, statureMm: number) =>
  ({
    id,
    name: id,
    sex: 'male',
    statureMm,
    massKg: 85,
    measured: { hipHeightMm: 97, shoulderArcRadiusMm: 60 },
  }) as const

/**
 * A place for two people of nearly one size. The seat is a narrow plate behind the back that no strap but a shoulder strap can meet.
 * Source: invented here; nothing in it is advice.
 */
const placeOf = (facets: Facets, numbers: Numbers): Place => {
  const base = flatPlace()
  const { reclineDeg, adjustable, points, restraint, thigh, diagonal } = facets
  const { rimHeightMm, webbingMm } = numbers
  return {
    ...base,
    occupants: [person('marla', 1755), person('ove', 1765)],
    seat: {
      ...base.seat,
      reclineDeg,
      reclineRange: { uprightDeg: reclineDeg, reclinedDeg: reclineDeg },
      slide: { forwardMm: 0, rearwardMm: adjustable ? 4 : 0 },
      sideOutline: [
        { xMm: 120, zMm: 150 },
        { xMm: 120, zMm: rimHeightMm },
        { xMm: 100, zMm: rimHeightMm },
        { xMm: 100, zMm: 150 },
      ],
      topOutline: [
        { xMm: 120, yMm: -150 },
        { xMm: 120, yMm: 150 },
        { xMm: 100, yMm: 150 },
        { xMm: 100, yMm: -150 },
      ],
      backrestRim: { xMm: 120, zMm: rimHeightMm },
      slots: slotsOf(facets, numbers),
    },
    belt: {
      ...base.belt,
      arrangement: points,
      headAndNeckRestraint: restraint,
      webbingMm: { shoulder: webbingMm, lap: webbingMm, sub: webbingMm },
      ...(points >= 6 ? { thighStraps: thigh } : {}),
      ...(points === 3 ? { diagonal } : {}),
      ...(numbers.tailMm === null ? {} : { shoulderTailMm: numbers.tailMm }),
      ...(numbers.adjusterMm === null
        ? {}
        : {
            adjusters: {
              shoulder: { fromAnchorMm: numbers.adjusterMm, lengthMm: 60 },
              lap: { fromAnchorMm: numbers.adjusterMm, lengthMm: 60 },
            },
          }),
    },
    anchors: anchorsOf(facets, numbers),
  }
}

/** Every eye bolt with its shank along the line of pull of the first person's strap, risen by the car's number. */
const withShanksInLine = (layout: Layout, { shankOffDeg }: Numbers): Layout => {
  const [place] = layout.places
  const [first] = place === undefined ? [] : solvedSittings(layout, place)
  if (place === undefined || first === undefined) throw new Error('no sitting')
  const anchors = place.anchors.map((anchor): Anchor => {
    const path = first.solved.paths.find(({ strap }) => strap === anchor.strap)
    const [from, to] = path?.contacts ?? []
    if (anchor.mount.kind !== 'eye' || from === undefined || to === undefined) return anchor
    const [x, y, z] = [
      to.point.xMm - from.point.xMm,
      to.point.yMm - from.point.yMm,
      to.point.zMm - from.point.zMm,
    ]
    const riseDeg = degrees(Math.atan2(z, Math.hypot(x, y))) + shankOffDeg
    return { ...anchor, mount: { ...anchor.mount, planDeg: degrees(Math.atan2(y, x)), riseDeg } }
  })
  return { ...layout, places: [{ ...place, anchors }] }
}

/** The car with these facets and numbers under a rule set. */
export const carOf = (ruleSetId: string, facets: Facets, numbers: Numbers): Layout => {
  const role = facets.tube === 'none' ? 'harness-bar' : facets.tube
  const isOnTubes = facets.tube !== 'none' || facets.mount === 'wrap'
  const layout = flatLayout([placeOf(facets, numbers)], {
    ruleSetId,
    dustyOrMuddyUse: facets.dusty,
    tubes: [
      ...(isOnTubes
        ? (['shoulder', 'lap', 'sub'] as const).map((family) => tubeOf(family, { ...numbers, role }))
        : []),
      ...(numbers.nearTube === null
        ? []
        : [crossTube('near', numbers.nearTube.xMm, numbers.nearTube.zMm, 'cage')]),
    ],
  })
  return facets.mount === 'eye' ? withShanksInLine(layout, numbers) : layout
}

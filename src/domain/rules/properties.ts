import type { Tube } from '../geometry/tube'
import { tubeAreaMm2, tubeSecondMomentMm4 } from '../geometry/tubeSection'
import { type Anchor, anchorForm } from '../straps/anchor'
import type { Subject } from '../straps/quantity'
import type { Seat } from '../straps/seat'
import { areShoulderStrapsJoined, type Belt, type StrapFamily, strapFamily, strapsOf } from '../straps/strap'
import { shoulderAnchorages, slotSpares, strapsCrossed, subToLap, tabToTube } from './placeProperties'
import type { PropertyId } from './rule'

/** What a place has typed about its belt, its anchors, the tubes of the car and the slots of its seat. */
export interface PropertyScene {
  readonly belt: Belt
  readonly anchors: readonly Anchor[]
  readonly tubes: readonly Tube[]
  readonly seat: Pick<Seat, 'slots'>
}

/** One typed or directly derived value; numbers in mm, mm², mm⁴ or a plain count, words otherwise. */
export interface PropertyValue {
  readonly subject: Subject | 'belt' | `tube:${string}`
  readonly value: number | string
}

const yesOrNo = (isSo: boolean): string => (isSo ? 'yes' : 'no')

const ofBelt = (value: number | string): readonly PropertyValue[] => [{ subject: 'belt', value }]

/** The straps of a family as one subject: the pair, or the centre strap where there is no pair; null where there are none. */
const familySubject = (belt: Belt, family: StrapFamily): Subject | null => {
  const straps = strapsOf(belt).filter((strap) => strapFamily(strap) === family)
  if (straps.length === 0) return null
  return straps.length === 1 ? (straps[0] ?? null) : `${family}-pair`
}

const webbingWidths = (belt: Belt, family: StrapFamily | null): readonly PropertyValue[] =>
  (['shoulder', 'lap', 'sub'] as const)
    .filter((each) => family === null || each === family)
    .flatMap((each) => {
      const subject = familySubject(belt, each)
      return subject === null ? [] : [{ subject, value: belt.webbingMm[each] }]
    })

/** The anchors of straps that the arrangement has, of one family or of all. */
const usedAnchors = ({ belt, anchors }: PropertyScene, family: StrapFamily | null): readonly Anchor[] =>
  anchors.filter(
    ({ strap }) => strapsOf(belt).includes(strap) && (family === null || strapFamily(strap) === family),
  )

/**
 * The tubes that carry this place's shoulder straps, whatever they are called; while no shoulder strap is on a tube, every
 * tube drawn as a harness bar, so that a bar is checked before the straps are put on it.
 */
const shoulderBars = (scene: PropertyScene): readonly Tube[] => {
  const tubeIds = new Set(usedAnchors(scene, 'shoulder').map(({ mount }) => mount.tubeId))
  const carrying = scene.tubes.filter((tube) => tubeIds.has(tube.id))
  return carrying.length > 0 ? carrying : scene.tubes.filter((tube) => tube.role === 'harness-bar')
}

const ofBars = (scene: PropertyScene, valueOf: (tube: Tube) => number): readonly PropertyValue[] =>
  shoulderBars(scene).map((tube) => ({ subject: `tube:${tube.id}`, value: valueOf(tube) }))

const ofAnchors = (
  anchors: readonly Anchor[],
  valueOf: (mount: Anchor['mount']) => number | string | null,
): readonly PropertyValue[] =>
  anchors.flatMap(({ strap, mount }) => {
    const value = valueOf(mount)
    return value === null ? [] : [{ subject: strap, value }]
  })

/** A value of the tube that each wrapped strap is wrapped round. */
const ofWrappedTubes = (
  scene: PropertyScene,
  family: StrapFamily | null,
  valueOf: (tube: Tube) => number | string,
): readonly PropertyValue[] =>
  ofAnchors(usedAnchors(scene, family), (mount) => {
    const tube = mount.kind === 'wrap' ? scene.tubes.find(({ id }) => id === mount.tubeId) : undefined
    return tube === undefined ? null : valueOf(tube)
  })

/** Whether each strap is led through a slot of the seat. */
const strapSlots = ({ belt, seat }: PropertyScene, family: StrapFamily | null): readonly PropertyValue[] =>
  strapsOf(belt)
    .filter((strap) => family === null || strapFamily(strap) === family)
    .map((strap) => ({
      subject: strap,
      value: yesOrNo(seat.slots.some((slot) => slot.straps.includes(strap))),
    }))

/**
 * Every value of a property at one place, each with what it belongs to; empty where nothing has it. Webbing widths belong to
 * the pair (or the centre strap), bar values to the tubes that carry the shoulder straps, tab and wrap values to the straps.
 * Source of area and second moment: the tube formulas in geometry/tubeSection.ts; everything else is as typed.
 */
export const propertyValues = (
  property: PropertyId,
  family: StrapFamily | null,
  scene: PropertyScene,
): readonly PropertyValue[] => {
  const { belt } = scene
  const anchors = usedAnchors(scene, family)
  switch (property) {
    case 'belt-points':
      return ofBelt(belt.arrangement)
    case 'belt-buckle':
      return ofBelt(belt.buckle)
    case 'belt-material':
      return ofBelt(belt.material)
    case 'belt-lap-adjuster':
      return ofBelt(belt.lapAdjuster)
    case 'belt-head-and-neck':
      return ofBelt(yesOrNo(belt.headAndNeckRestraint))
    case 'belt-joined':
      return belt.arrangement === 3 ? [] : ofBelt(yesOrNo(areShoulderStrapsJoined(belt)))
    case 'straps-crossed':
      return strapsCrossed(scene, family)
    case 'webbing-width':
      return webbingWidths(belt, family)
    case 'wrap-guide-hoops':
      return ofAnchors(anchors, (mount) => (mount.kind === 'wrap' ? yesOrNo(mount.guideHoops) : null))
    case 'wrap-bar-diameter':
      return ofWrappedTubes(scene, family, (tube) => tube.outsideDiameterMm)
    case 'wrap-tube-role':
      return ofWrappedTubes(scene, family, (tube) => tube.role)
    case 'strap-slot':
      return strapSlots(scene, family)
    case 'slot-spare':
      return slotSpares(scene, family)
    case 'tab-to-tube':
      return tabToTube(scene, family)
    case 'sub-to-lap':
      return subToLap(scene)
    case 'shoulder-anchorages':
      return shoulderAnchorages(scene)
    case 'anchor-form':
      return ofAnchors(anchors, anchorForm)
    case 'eye-thread':
      return ofAnchors(anchors, (mount) => (mount.kind === 'eye' ? mount.threadDiameterMm : null))
    case 'tab-thickness':
      return ofAnchors(anchors, (mount) => (mount.kind === 'tab' ? mount.thicknessMm : null))
    case 'tab-shear':
      return ofAnchors(anchors, (mount) => (mount.kind === 'tab' ? mount.shear : null))
    case 'bar-diameter':
      return ofBars(scene, (tube) => tube.outsideDiameterMm)
    case 'bar-wall':
      return ofBars(scene, (tube) => tube.wallMm)
    case 'bar-area':
      return ofBars(scene, (tube) => tubeAreaMm2(tube.outsideDiameterMm, tube.wallMm))
    case 'bar-second-moment':
      return ofBars(scene, (tube) => tubeSecondMomentMm4(tube.outsideDiameterMm, tube.wallMm))
  }
}

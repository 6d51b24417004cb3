import { seatPoint, vehiclePoint } from '../../body/pose'
import { type Elevation, type PlanePointMm, projected } from '../../geometry/plane'
import { pointBetween, type PointMm, pointMm } from '../../geometry/point'
import { tangentPoint } from '../../geometry/tangent'
import type { Seat, Slot } from '../../straps/seat'
import type { PathContact, StrapPath } from '../../straps/path'
import type { QuantityId } from '../../straps/quantity'
import { strapSide } from '../../straps/strap'
import { atan2Deg } from '../../units/angle'
import type { SittingEvaluation } from '../evaluate/evaluation'

/** An angle as drawn: where its apex is, the direction it is counted from and the value counted clockwise or anticlockwise. */
export interface DrawnAngle {
  readonly apex: PlanePointMm
  /** Direction that counts as 0, anticlockwise from +u. */
  readonly zeroDeg: number
  /** +1: the value is counted anticlockwise on the drawing, −1: clockwise. */
  readonly turn: 1 | -1
}

/** The strap whose angle is drawn, in its sitting. */
export interface AngleScene {
  readonly path: StrapPath
  readonly sitting: SittingEvaluation
  readonly seat: Seat
}

const contactOn = (path: StrapPath, on: readonly PathContact['on'][]): PointMm | null =>
  path.contacts.find((contact) => on.includes(contact.on))?.point ?? null

const planAngle = ({ path }: AngleScene): DrawnAngle => ({
  apex: projected(path.bodyContact, 'top'),
  zeroDeg: 0,
  // Converging is toward +y (up the drawing) for the left strap and toward −y for the right one.
  turn: strapSide(path.strap) === 'right' ? -1 : 1,
})

/** Where a joined strap on its straight way to the junction passes its slot in the backrest, on the side of the junction. */
const joinedPass = (
  { path, sitting: { pose }, seat }: AngleScene,
  slot: Slot,
  junction: PointMm,
): PointMm => {
  const [body, end] = [seatPoint(pose, path.bodyContact), seatPoint(pose, junction)]
  const wallMm = slot.centre.xMm + (seat.shellThicknessMm ?? 0) / 2
  return pointBetween(path.bodyContact, junction, (wallMm - body.xMm) / (end.xMm - body.xMm))
}

/**
 * The drop behind the gate is counted where the strap bends at its slot or on the rim. A strap that passes its slot clean keeps the
 * direction it has at the shoulder, a joined one up to the junction; one that clears the rim is still measured from the rim itself.
 */
const rimAngle = (scene: AngleScene): DrawnAngle => {
  const { path, sitting, seat } = scene
  const slot = seat.slots.find(({ straps }) => straps.includes(path.strap))
  const junction = contactOn(path, ['junction'])
  const rim = vehiclePoint(sitting.pose, pointMm(seat.backrestRim.xMm, 0, seat.backrestRim.zMm))
  const clean = (): PointMm => {
    if (slot === undefined) return rim
    return junction !== null && slot.face === 'back' ? joinedPass(scene, slot, junction) : path.bodyContact
  }
  const apex = contactOn(path, ['slot', 'rim']) ?? clean()
  return { apex: projected(apex, 'side'), zeroDeg: 0, turn: -1 }
}

/**
 * Counted at the buckle from the chest line carried on downward: the straight line from the shoulder arc to the buckle, whether or not
 * the chest bends the straps. Rearward is anticlockwise when pointing down.
 */
const chestAngle = ({ path, sitting }: AngleScene): DrawnAngle | null => {
  const buckle = sitting.buckle && projected(sitting.buckle, 'side')
  const chest = buckle && tangentPoint(sitting.body.shoulderArc, buckle, 'right')
  if (buckle === null || chest === null) return null
  const zeroDeg = atan2Deg(buckle.vMm - chest.vMm, buckle.uMm - chest.uMm)
  return { apex: projected(path.bodyContact, 'side'), zeroDeg, turn: 1 }
}

/**
 * How an angle of a strap lies in its elevation, after the definitions in straps/README.md; null for quantities that are no angle
 * in a drawn plane, or live in the other elevation.
 */
export const drawnAngle = (id: QuantityId, scene: AngleScene, elevation: Elevation): DrawnAngle | null => {
  const { path, sitting } = scene
  if (elevation === 'top') return id === 'shoulder-plan' ? planAngle(scene) : null
  const at = (point: PointMm): PlanePointMm => projected(point, elevation)
  switch (id) {
    // Below horizontal, rearward of the shoulder: clockwise from +u.
    case 'shoulder-drop':
      return { apex: at(path.bodyContact), zeroDeg: 0, turn: -1 }
    // From square to the spine, which points β below horizontal rearward.
    case 'shoulder-to-spine':
      return { apex: at(path.bodyContact), zeroDeg: -sitting.body.reclineDeg, turn: -1 }
    case 'shoulder-rim-drop':
      return rimAngle(scene)
    // Above horizontal, forward of the anchor: clockwise from −u.
    case 'lap-angle':
    case 'lap-run-angle':
    case 'lap-shifted-angle':
      return { apex: at(path.effectiveAnchor), zeroDeg: 180, turn: -1 }
    // From vertical, + with the anchor rearward: the strap leans forward going up, anticlockwise from +v.
    case 'sub-to-vertical':
      return { apex: at(path.effectiveAnchor), zeroDeg: 90, turn: 1 }
    case 'sub-to-chest':
      return chestAngle(scene)
    case 'shoulder-plan':
    case 'slot-bend':
    case 'wrap-square':
    case 'tab-twist':
    case 'spine-load-share':
    case 'shoulder-height':
    case 'shoulder-spacing':
    case 'shoulder-mirror':
    case 'sub-mirror':
    case 'shoulder-free-length':
    case 'shoulder-length-behind-seat':
    case 'lap-spacing':
    case 'lap-mirror':
    case 'lap-over-asis':
    case 'shoulder-above-hip':
    case 'shoulder-behind-hip':
    case 'shoulder-behind-fk':
    case 'shoulder-reference-plan':
    case 'lap-off-centre':
    case 'sub-spacing':
    case 'shank-angle':
    case 'shoulder-junction':
    case 'adjuster-clearance':
    case 'tube-clearance':
    case 'helmet-clearance':
    case 'body-clearance':
    case 'strap-length':
      return null
  }
}

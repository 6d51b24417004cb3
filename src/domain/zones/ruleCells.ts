import { movedInPlane, projected, type Elevation, type PlanePointMm } from '../geometry/plane'
import type { QuantityRule } from '../rules/rule'
import type { QuantityId } from '../straps/quantity'
import { strapFamily } from '../straps/strap'
import { outOfPelvis } from './besideHip'
import { bandCell, type Cells, cellsOverlap, levelCut, NOTHING } from './cells'
import { laneCells } from './lane'
import { mirrorCells, offCentreCells, shoulderSpacingCells, spacingCells } from './pairCells'
import { heldSlotBendCells } from './slotBend'
import { ANY_PATH, isHeldAcross, sideLimitOf, type StrapModel } from './strapModel'
import { ruleSubject } from './subject'
import { tracedCells, WITHHELD } from './traced'
import { isKeptAt } from './trial'
import type { ZoneCase, ZoneScene } from './zone'

/** Quantities that depend on directions, on the body or on a whole tube: no position in a drawn plane decides them alone. */
const NOT_OF_POSITION: ReadonlySet<QuantityId> = new Set<QuantityId>([
  'spine-load-share',
  'wrap-square',
  'tab-twist',
  'helmet-clearance',
  'strap-length',
])

/** The plane a rule lives in: the one in which the room is measured. */
export const homeElevation = (rule: QuantityRule, mirrored: boolean): Elevation => {
  switch (rule.quantity) {
    case 'shoulder-plan':
    case 'shoulder-reference-plan':
    case 'lap-off-centre':
    case 'lap-spacing':
    case 'sub-spacing':
      return 'top'
    case 'shoulder-spacing':
      return mirrored ? 'top' : 'side'
    case 'shoulder-drop':
    case 'shoulder-to-spine':
    case 'shoulder-rim-drop':
    case 'shoulder-height':
    case 'shoulder-free-length':
    case 'shoulder-length-behind-seat':
    case 'shoulder-above-hip':
    case 'shoulder-behind-hip':
    case 'shoulder-behind-fk':
    case 'spine-load-share':
    case 'lap-angle':
    case 'lap-run-angle':
    case 'lap-shifted-angle':
    case 'lap-mirror':
    case 'lap-over-asis':
    case 'sub-to-chest':
    case 'sub-to-vertical':
    case 'slot-bend':
    case 'wrap-square':
    case 'tab-twist':
    case 'shank-angle':
    case 'shoulder-junction':
    case 'adjuster-clearance':
    case 'tube-clearance':
    case 'helmet-clearance':
    case 'strap-length':
      return 'side'
  }
}

/** What one rule is asked about: one anchor in one sitting. */
export interface Question {
  readonly rule: QuantityRule
  readonly zoneScene: ZoneScene
  readonly zoneCase: ZoneCase
  readonly model: StrapModel
}

/** The region found by looking, for what has no straight-line description. */
const traced = ({ rule, zoneScene, zoneCase, model }: Question, elevation: Elevation): Cells => {
  const subject = ruleSubject(rule, zoneCase)
  if (subject === null) return NOTHING
  if (zoneCase.tracing === 'withheld' && strapFamily(zoneCase.anchor.strap) === 'shoulder') return WITHHELD
  const { point } = zoneCase.anchor.mount
  const { body } = model.scene
  const from: PlanePointMm =
    elevation === 'side' && strapFamily(zoneCase.anchor.strap) === 'shoulder'
      ? body.shoulderArc.centre
      : projected(body.hip, elevation)
  return tracedCells(
    (at) => isKeptAt(rule, subject, zoneScene, zoneCase, movedInPlane(point, at, elevation)),
    from,
  )
}

/** Side cells as the elevation shows them: as they are, or cut along the level of the anchor into strips of x. */
const shown = (cells: Cells, { model }: Question, elevation: Elevation): Cells => {
  if (strapFamily(model.anchor.strap) === 'lap') return outOfPelvis(cells, model, elevation)
  return elevation === 'side' ? cells : levelCut(cells, model.anchor.mount.point.zMm)
}

/** Shoulder point minus anchor height, for a tab: a band of z. */
const heightCells = ({ rule, model }: Question, elevation: Elevation): Cells => {
  const { left, right } = model.scene.body.shoulderPoint
  const shoulderMm = (model.anchor.strap === 'shoulder-left' ? left : right).zMm
  const band = bandCell(
    'v',
    rule.max === null ? null : shoulderMm - rule.max,
    rule.min === null ? null : shoulderMm - rule.min,
  )
  const paths = laneCells(model.lanes ?? [], ANY_PATH)
  const cells = cellsOverlap(paths, [band])
  return elevation === 'side' ? cells : levelCut(cells, model.anchor.mount.point.zMm)
}

const slotCells = (question: Question, elevation: Elevation): Cells | null => {
  const { rule, model } = question
  if (model.gate?.on !== 'slot') return null
  const isPlain = rule.min === null && rule.max !== null && model.lanes !== null
  if (!isPlain || rule.max === null || strapFamily(model.anchor.strap) === 'lap')
    return traced(question, elevation)
  return heldSlotBendCells(model, rule.max, elevation)
}

/** What the side plane decides alone. */
const sideCells = (question: Question, elevation: Elevation): Cells | null => {
  const { rule, model } = question
  if (rule.quantity === 'slot-bend' && (model.gate?.on !== 'slot' || isHeldAcross(model)))
    return slotCells(question, elevation)
  const limit = sideLimitOf(rule, model)
  if (limit === undefined || limit === null || model.lanes === null) return traced(question, elevation)
  return shown(laneCells(model.lanes, limit), question, elevation)
}

const spacedShoulderCells = (question: Question, elevation: Elevation): Cells | null => {
  const { rule, zoneScene, zoneCase, model } = question
  if (!zoneCase.mirrored && model.anchor.mount.kind === 'wrap') return traced(question, elevation)
  const cells = shoulderSpacingCells(rule, zoneScene, zoneCase, elevation)
  if (cells === null || model.lanes === null) return cells
  return cellsOverlap(shown(laneCells(model.lanes, ANY_PATH), question, elevation), cells)
}

/**
 * Where the anchor keeps one rule in one sitting, in one elevation; null when its position in that plane does not matter to it.
 */
export const ruleCells = (question: Question, elevation: Elevation): Cells | null => {
  const { rule, zoneScene, zoneCase, model } = question
  const { quantity } = rule
  if (NOT_OF_POSITION.has(quantity)) return null
  if (quantity === 'lap-spacing' || quantity === 'sub-spacing')
    return spacingCells(rule, zoneScene, zoneCase, elevation)
  if (quantity === 'lap-off-centre') return offCentreCells(rule, zoneScene, zoneCase, elevation)
  if (quantity === 'lap-mirror') return mirrorCells(rule, zoneScene, zoneCase, elevation)
  if (quantity === 'shoulder-spacing') return spacedShoulderCells(question, elevation)
  if (quantity !== 'shoulder-height') return sideCells(question, elevation)
  return model.anchor.mount.kind === 'wrap' || model.lanes === null
    ? traced(question, elevation)
    : heightCells(question, elevation)
}

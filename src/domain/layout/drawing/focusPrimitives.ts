import { type Elevation, type PlanePointMm, planePoint, projected } from '../../geometry/plane'
import type { PointMm } from '../../geometry/point'
import type { Tube } from '../../geometry/tube'
import type { ShownFinding } from '../../rules/finding'
import { strapsOfPair } from '../../rules/subjects'
import type { StrapPath } from '../../straps/path'
import { QUANTITY_IDS, type QuantityId } from '../../straps/quantity'
import { STRAP_IDS, type StrapId, strapSide, strapsOf } from '../../straps/strap'
import type { LengthUnit } from '../document/layout'
import type { SittingEvaluation } from '../evaluate/evaluation'
import { limitText, outsideText, valueText } from '../wording/amounts'
import { propertyName } from '../wording/propertyNames'
import { quantityName } from '../wording/quantities'
import { verdictWord } from '../wording/words'
import { angleFigure, ray } from './anglePrimitives'
import { figurePrimitives } from './bodyPrimitives'
import { drawnAngle } from './drawnAngle'
import type { DrawnPlace } from './drawnPlace'
import type { LabelWish } from './labelPlacement'
import type { LineStyle, Primitive } from './primitive'
import { tubePrimitives } from './tubePrimitives'

/** A finding with everything needed to draw it. */
export interface FocusScene {
  readonly finding: ShownFinding
  readonly drawn: DrawnPlace
  /** The sitting it is worst in; the shown one for findings that hold in every sitting. */
  readonly sitting: SittingEvaluation
  readonly tubes: readonly Tube[]
  readonly elevation: Elevation
  readonly lengthUnit: LengthUnit
  readonly textHeightMm: number
}

/** What a focused finding adds to the drawing: lines, and one text that must be read. */
export interface FocusDrawing {
  /** The quantity it draws; null without a focused finding. */
  readonly quantity: ShownFinding['quantity'] | null
  readonly primitives: readonly Primitive[]
  readonly labels: readonly LabelWish[]
}

const isStrap = (subject: string): subject is StrapId => STRAP_IDS.some((strap) => strap === subject)
const isQuantity = (id: string): id is QuantityId => QUANTITY_IDS.some((quantity) => quantity === id)

const strapsConcerned = ({ finding, drawn }: FocusScene): readonly StrapId[] => {
  const { subject } = finding
  if (isStrap(subject)) return [subject]
  if (subject === 'belt') return strapsOf(drawn.place.belt)
  if (subject === 'shoulder-pair' || subject === 'lap-pair' || subject === 'sub-pair')
    return strapsOfPair(subject)
  return []
}

/** Only what is broken is drawn broken; a finding that holds is shown by a plain heavy line. */
const lineOf = (finding: ShownFinding): LineStyle => (finding.verdict === 'broken' ? 'broken' : 'focus')

/** The worst value as the findings list shows it; a broken one with enough decimals to look broken. */
const shownValue = (finding: ShownFinding, unit: LengthUnit): string => {
  const { quantity, value } = finding
  if (value === null) return ''
  return finding.verdict === 'broken'
    ? outsideText(quantity, value, finding.limit, unit)
    : valueText(quantity, value, unit)
}

/** "lap angle 38.2°, broken: 45° to 60°" */
const tagText = (finding: ShownFinding, unit: LengthUnit): string => {
  const { quantity } = finding
  const name = isQuantity(quantity) ? quantityName(quantity) : propertyName(quantity)
  const value = shownValue(finding, unit)
  const verdict = verdictWord(finding.verdict)
  const limit = limitText(finding.quantity, finding.limit, unit)
  return `${value === '' ? name : `${name} ${value}`}, ${verdict}: ${limit}`
}

const keyOf = (scene: FocusScene): string => `focus/${scene.finding.id}`

const strapLines = (scene: FocusScene, paths: readonly StrapPath[]): Primitive[] =>
  paths.map((path) => ({
    kind: 'polyline',
    key: `${keyOf(scene)}/${path.strap}`,
    part: scene.finding.id,
    points: path.polyline.map((point) => projected(point, scene.elevation)),
    closed: false,
    style: lineOf(scene.finding),
  }))

const restyled = (primitives: readonly Primitive[], scene: FocusScene): Primitive[] =>
  primitives.flatMap((primitive): Primitive[] =>
    primitive.kind === 'polyline' || primitive.kind === 'circle'
      ? [
          {
            ...primitive,
            key: `${keyOf(scene)}/${primitive.key}`,
            part: scene.finding.id,
            style: lineOf(scene.finding),
          },
        ]
      : [],
  )

const tubeLines = (scene: FocusScene): Primitive[] => {
  const tube = scene.tubes.find((candidate) => scene.finding.subject === `tube:${candidate.id}`)
  if (tube === undefined) return []
  const lines = tubePrimitives([tube], scene.elevation).filter(
    (primitive) => !(primitive.kind === 'polyline' && primitive.style === 'centre'),
  )
  return restyled(lines, scene)
}

/** The helmet of the worst sitting, or the whole figure. */
const headLines = (scene: FocusScene): Primitive[] =>
  scene.finding.subject === 'body'
    ? restyled(figurePrimitives(scene.sitting.body, scene.elevation, 'ghost', 'body'), scene)
    : scene.finding.subject === 'head'
      ? restyled(
          figurePrimitives(scene.sitting.body, scene.elevation, 'ghost', 'head').filter(
            (primitive) => primitive.kind === 'circle',
          ),
          scene,
        )
      : []

/** The angle with its value, and a ray at each limit. */
const angleLines = (scene: FocusScene, paths: readonly StrapPath[]): Primitive[] => {
  const { finding, elevation, textHeightMm } = scene
  const path = paths[0]
  if (path === undefined || typeof finding.value !== 'number' || !isQuantity(finding.quantity)) return []
  const angle = drawnAngle(
    finding.quantity,
    { path, sitting: scene.sitting, seat: scene.drawn.place.seat },
    elevation,
  )
  if (angle === null) return []
  const key = keyOf(scene)
  const radiusMm = 9 * textHeightMm
  const limits = [finding.limit.min, finding.limit.max].flatMap((limit, index): Primitive[] =>
    limit === null
      ? []
      : [
          ray(
            `${key}/limit/${index}`,
            finding.id,
            angle.apex,
            angle.zeroDeg + angle.turn * limit,
            radiusMm * 1.6,
            'limit',
          ),
        ],
  )
  const arc = angleFigure({
    key: `${key}/angle`,
    part: finding.id,
    angle,
    valueDeg: finding.value,
    text: shownValue(finding, scene.lengthUnit),
    radiusMm,
  })
  return [...limits, ...arc]
}

interface Measured {
  readonly from: PlanePointMm
  readonly to: PlanePointMm
}

const anchorContact = (path: StrapPath): PointMm => path.contacts[0]?.point ?? path.effectiveAnchor

/** Where joined shoulder straps become one tail; null for separate ones. */
const junctionOf = (path: StrapPath): PointMm | null =>
  path.contacts.find(({ on }) => on === 'junction')?.point ?? null

/** Between the two anchors of a pair, as the top elevation shows it. */
const pairDistance = (paths: readonly StrapPath[], elevation: Elevation): Measured | null => {
  const [left, right] = paths
  if (elevation !== 'top' || left === undefined || right === undefined) return null
  return { from: projected(anchorContact(left), 'top'), to: projected(anchorContact(right), 'top') }
}

/** How a length lies in its elevation; null for lengths along a strap and those of the other elevation. */
const measuredLength = (scene: FocusScene, paths: readonly StrapPath[]): Measured | null => {
  const path = paths[0]
  const { finding, sitting, elevation } = scene
  if (path === undefined || typeof finding.value !== 'number') return null
  const { quantity } = finding
  if (quantity === 'shoulder-spacing' || quantity === 'lap-spacing' || quantity === 'sub-spacing')
    return pairDistance(paths, elevation)
  if (elevation !== 'side') return null
  const upward = (from: PlanePointMm, byMm: number): Measured => ({
    from,
    to: planePoint(from.uMm, from.vMm + byMm),
  })
  const junction = junctionOf(path)
  if (quantity === 'shoulder-height') return upward(projected(anchorContact(path), 'side'), finding.value)
  if (quantity === 'shoulder-junction' && junction !== null) {
    const to = projected(junction, 'side')
    return { from: planePoint(to.uMm - finding.value, to.vMm), to }
  }
  if (quantity !== 'lap-over-asis') return null
  const side = strapSide(path.strap) === 'right' ? 'right' : 'left'
  return upward(projected(sitting.body.frontHipBone[side], 'side'), finding.value)
}

const lengthLines = (scene: FocusScene, paths: readonly StrapPath[]): Primitive[] => {
  const { finding, textHeightMm } = scene
  const measured = measuredLength(scene, paths)
  if (measured === null || typeof finding.value !== 'number') return []
  return [
    {
      kind: 'dimension',
      key: `${keyOf(scene)}/length`,
      part: finding.id,
      ...measured,
      offsetMm: -2 * textHeightMm,
      text: shownValue(finding, scene.lengthUnit),
    },
  ]
}

/** Where the text of a finding stands: at its strap's anchor, its tube, the helmet, or the hip point for the belt as a whole. */
const tagPoint = (
  scene: FocusScene,
  paths: readonly StrapPath[],
  lines: readonly Primitive[],
): PlanePointMm => {
  const { finding, drawn, sitting, elevation } = scene
  if (finding.subject === 'head') return projected(sitting.body.helmet.centre, elevation)
  const first = lines[0]
  if (finding.subject.startsWith('tube:') && first !== undefined) {
    if (first.kind === 'circle') return first.centre
    if (first.kind === 'polyline') return first.points[0] ?? projected(sitting.body.hip, elevation)
  }
  const strap = strapsConcerned(scene)[0]
  const anchor = drawn.place.anchors.find((candidate) => candidate.strap === strap)
  if (anchor !== undefined && finding.subject !== 'belt') return projected(anchor.mount.point, elevation)
  return projected(paths[0]?.bodyContact ?? sitting.body.hip, elevation)
}

/**
 * A finding made visible in both elevations: its straps, tube or helmet as a heavy line in the sitting where it is worst, the value
 * where it can be measured on the drawing, the limits, and a text, so that nothing hangs on colour or line alone.
 */
export const focusDrawing = (scene: FocusScene): FocusDrawing => {
  const { finding, drawn, sitting, elevation } = scene
  const concerned = strapsConcerned(scene)
  const paths = concerned.flatMap((strap) => sitting.paths.filter((path) => path.strap === strap))
  const figure =
    sitting === drawn.shown ? [] : figurePrimitives(sitting.body, elevation, 'ghost', `${keyOf(scene)}/body`)
  const lines = [...strapLines(scene, paths), ...tubeLines(scene), ...headLines(scene)]
  return {
    quantity: finding.quantity,
    primitives: [...figure, ...lines, ...angleLines(scene, paths), ...lengthLines(scene, paths)],
    labels: [
      {
        key: `${keyOf(scene)}/tag`,
        part: finding.id,
        at: tagPoint(scene, paths, lines),
        text: tagText(finding, scene.lengthUnit),
        weight: 'strong',
        need: 'must',
      },
    ],
  }
}

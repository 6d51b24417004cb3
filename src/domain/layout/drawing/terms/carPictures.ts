import type { Elevation } from '../../../geometry/plane'
import type { Mount } from '../../../straps/anchor'
import type { QuantityId, Subject } from '../../../straps/quantity'
import type { StrapId } from '../../../straps/strap'
import { tabOnTube } from '../../../shop/tab/tabOnTube'
import type { Layout } from '../../document/layout'
import type { ShownEvaluation, SittingEvaluation } from '../../evaluate/evaluation'
import { layoutNumbers } from '../../evaluate/evaluateLayout'
import { anchorDetail } from '../anchorDetail'
import type { Box } from '../box'
import { elevationDrawing } from '../elevationDrawing'
import { explanationOf } from '../explain/explain'
import { type DrawingOptions, PLAIN_DRAWING } from '../options'
import type { LineStyle, Primitive } from '../primitive'
import { type Picture, pictureOf } from './picture'
import { sceneLayout } from './sceneLayout'

/** A car with everything computed of it. */
export interface Evaluated {
  readonly layout: Layout
  readonly evaluation: ShownEvaluation
}

export const evaluated = (layout: Layout): Evaluated => ({ layout, evaluation: layoutNumbers(layout) })

/** The car of the guide as it stands. */
export const SCENE: Evaluated = evaluated(sceneLayout())

/** How the first place is sat in as drawn; throws where a car has no place, which no layout can be. */
export const drawnSitting = ({ evaluation }: Evaluated): SittingEvaluation => {
  const sitting = evaluation.places[0]?.sittings[0]
  if (sitting === undefined) throw new Error('a car without a place')
  return sitting
}

/** One number of the car as drawn; null where it has none. */
export const numberOf = (car: Evaluated, id: QuantityId, subject: Subject): number | null =>
  drawnSitting(car).quantities.find((each) => each.id === id && each.subject === subject)?.value ?? null

/** Everything that is not meant steps back, so that what is meant stands out. */
const QUIET: Readonly<Partial<Record<LineStyle, LineStyle>>> = {
  outline: 'ghost',
  strap: 'ghost',
  body: 'ghost',
  tube: 'ghost',
  centre: 'ghost',
}

const isPart = (key: string, parts: readonly string[]): boolean => parts.some((part) => key.includes(part))

const picked = (primitive: Primitive, parts: readonly string[]): Primitive => {
  if (primitive.kind !== 'polyline' && primitive.kind !== 'circle') return primitive
  const style = isPart(primitive.key, parts) ? 'focus' : (QUIET[primitive.style] ?? primitive.style)
  return { ...primitive, style }
}

/** What is shown of a car, and what of it is meant. */
export interface CarView {
  readonly elevation: Elevation
  /** Pieces of the keys of what is meant; nothing: the whole drawing as it is. */
  readonly parts: readonly string[]
  readonly bounds?: Box
  /** Lines and texts on top. */
  readonly extra?: readonly Primitive[]
  readonly options?: Partial<DrawingOptions>
}

/** An elevation of a car with the part that is meant picked out. Marks are shown for the parts alone. */
export const carPicture = (car: Evaluated, view: CarView, description: string): Picture => {
  const { primitives } = elevationDrawing(car.layout, car.evaluation, view.elevation, {
    ...PLAIN_DRAWING,
    labels: false,
    lengthUnit: 'mm',
    ...view.options,
  })
  const shown =
    view.parts.length === 0
      ? primitives
      : primitives
          .filter(({ kind, key }) => kind !== 'mark' || isPart(key, view.parts))
          .map((primitive) => picked(primitive, view.parts))
  return pictureOf([...shown, ...(view.extra ?? [])], description, view.bounds)
}

/** What a number is measured between, drawn for the car; throws where the car has no such number, which tests hold. */
export const numberPicture = (
  car: Evaluated,
  id: QuantityId,
  subject: Subject,
  description: string,
): Picture => {
  const value = numberOf(car, id, subject)
  const place = car.layout.places[0]
  const explanation =
    value === null || place === undefined
      ? null
      : explanationOf({
          place,
          sitting: drawnSitting(car),
          tubes: car.layout.tubes,
          id,
          subject,
          value,
          lengthUnit: 'mm',
        })
  const figure = explanation?.figures[0]
  if (figure === undefined) throw new Error(`${id} of ${subject} has no drawing`)
  const { primitives, bounds, textHeightMm } = figure
  return { primitives, bounds, textHeightMm, description }
}

/** One anchor looked at along its tube, as it is or as another kind of mount in its place. */
export const detailPicture = (
  strap: StrapId,
  description: string,
  change: (mount: Mount) => Mount = (mount) => mount,
  extra: readonly Primitive[] = [],
): Picture => {
  const { layout } = SCENE
  const anchor = layout.places[0]?.anchors.find((each) => each.strap === strap)
  if (anchor === undefined) throw new Error(`the car of the guide has no ${strap}`)
  const mount = change(anchor.mount)
  const { primitives } = anchorDetail({
    mount,
    on: tabOnTube({ mount }, layout.tubes),
    path: drawnSitting(SCENE).paths.find((path) => path.strap === strap) ?? null,
    lengthUnit: 'mm',
    textHeightMm: 5,
  })
  return pictureOf([...primitives, ...extra], description)
}

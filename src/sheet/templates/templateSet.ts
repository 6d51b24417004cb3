import type { Layout, Place } from '../../domain/layout/document/layout'
import { anchorName, placeName } from '../../domain/layout/wording/names'
import { templateProblemText } from '../../domain/layout/wording/tabText'
import { capitalised } from '../../domain/layout/wording/words'
import type { CheckedEvaluation } from '../../domain/layout/evaluate/evaluation'
import { type AnchorRow, anchorRows } from '../../domain/shop/anchorRows'
import type { FlatFigure } from '../../domain/shop/flat/flatFigure'
import { insertCope } from '../../domain/shop/tab/insertCope'
import { tabOnTube } from '../../domain/shop/tab/tabOnTube'
import { tabPlates } from '../../domain/shop/tab/tabPlates'
import { tubeStrips, type StripAnchor } from '../../domain/shop/tab/tubeStrip'
import { tabForm } from '../../domain/straps/anchor'
import { lineOfPull } from '../../domain/straps/lineOfPull'
import type { StrapPath } from '../../domain/straps/path'
import { areShoulderStrapsJoined, strapFamily } from '../../domain/straps/strap'
import type { Direction } from '../../domain/geometry/point'
import { MM_PER_INCH } from '../../domain/units/length'
import { blankTemplate } from './blankTemplate'
import { checkShapes } from './checkShapes'
import { gaugeTemplates } from './gaugeTemplates'
import { insertTemplate } from './insertTemplate'
import { stripTemplate } from './stripTemplate'
import { tabTemplates } from './tabTemplate'
import type { Template, TemplateSet } from './template'

/** Longest strip, mm: it goes on both papers in one piece. */
const LONGEST_STRIP_MM = 245

/** One place with its anchors numbered as on the mount sheet. */
interface NumberedPlace {
  readonly place: Place
  readonly rows: readonly AnchorRow[]
  /** Of the drawn sitting; none where nothing was evaluated. */
  readonly paths: readonly StrapPath[]
}

/** Everything of a layout in true size; lines of pull only where an evaluation is given. */
export const templateSet = (layout: Layout, evaluation: CheckedEvaluation | null): TemplateSet => {
  const places = numbered(layout, evaluation)
  const own = places.flatMap((each) =>
    each.rows.filter(({ sameAsItem }) => sameAsItem === null).map((row) => ofAnchor(row, each, layout)),
  )
  const setting = {
    tubes: layout.tubes,
    stepMm: layout.units.length === 'mm' ? 5 : MM_PER_INCH / 4,
    mostMm: LONGEST_STRIP_MM,
  }
  const strips = layout.tubes.flatMap((tube, tubeIndex) =>
    tubeStrips(tube, places.flatMap(stripAnchors), setting).map((strip, index) =>
      stripTemplate(strip, `strip-${tubeIndex + 1}-${index + 1}`, layout),
    ),
  )
  return {
    templates: [...own.flatMap(({ templates }) => templates), ...strips, ...gaugeTemplates(places, layout)],
    without: own.flatMap(({ without }) => without),
  }
}

/** The same figures for files, each with bars that show whether the file kept its size. */
export const templateFigures = (
  layout: Layout,
  evaluation: CheckedEvaluation | null = null,
): readonly FlatFigure[] =>
  templateSet(layout, evaluation).templates.map(({ figure }) => ({
    ...figure,
    shapes: [...figure.shapes, ...checkShapes(figure.shapes)],
  }))

const numbered = (layout: Layout, evaluation: CheckedEvaluation | null): readonly NumberedPlace[] => {
  let firstItemNumber = 1
  return layout.places.map((place) => {
    const sittings = evaluation?.places.find(({ placeId }) => placeId === place.id)?.sittings ?? []
    const rows = anchorRows({
      anchors: place.anchors,
      tubes: layout.tubes,
      pathsBySitting: sittings.map(({ paths }) => paths),
      areShoulderStrapsJoined: areShoulderStrapsJoined(place.belt),
      firstItemNumber,
    })
    firstItemNumber += rows.length
    return { place, rows, paths: sittings[0]?.paths ?? [] }
  })
}

const stripAnchors = ({ place, rows }: NumberedPlace): readonly StripAnchor[] =>
  rows
    .filter(({ sameAsItem }) => sameAsItem === null)
    .map(({ itemNumber, anchor }) => ({
      label: String(itemNumber),
      anchor,
      webbingMm: place.belt.webbingMm[strapFamily(anchor.strap)],
    }))

const pullOf = ({ anchor }: AnchorRow, { paths }: NumberedPlace): Direction | null => {
  const path = paths.find(({ strap }) => strap === anchor.strap)
  return path === undefined ? null : lineOfPull(path)
}

/** The templates of one anchor, or why it has none. */
const ofAnchor = (row: AnchorRow, numberedPlace: NumberedPlace, layout: Layout): TemplateSet => {
  const { anchor, itemNumber } = row
  const { mount } = anchor
  const placeWords = layout.places.length > 1 ? `, ${placeName(numberedPlace.place.id, layout)}` : ''
  const name = `${itemNumber}  ${capitalised(anchorName(anchor))}${placeWords}`
  const none = (why: string): TemplateSet => ({ templates: [], without: [{ name, why }] })
  const some = (templates: readonly Template[]): TemplateSet => ({ templates, without: [] })
  if (mount.kind === 'wrap') return some([])
  if (mount.kind === 'eye')
    return none('An eye bolt is bought: nothing to cut. Where it has a tube, its strip shows its middle.')
  const on = tabOnTube(anchor, layout.tubes)
  const task = { layout, itemNumber, placeWords, anchor, mount }
  if (on === null) {
    if (tabForm(mount) === 'insert')
      return none('It stands on no tube, so that the shape of its foot is not known.')
    const blank = blankTemplate(task)
    return blank === null ? none(templateProblemText({ kind: 'no-rim', rimMm: 0 }, layout)) : some([blank])
  }
  const full = { ...task, on, pull: pullOf(row, numberedPlace) }
  if (tabForm(mount) === 'insert') {
    const cope = insertCope(mount, on)
    return 'kind' in cope ? none(templateProblemText(cope, layout)) : some([insertTemplate(full, cope)])
  }
  const plates = tabPlates(mount, on)
  return 'kind' in plates ? none(templateProblemText(plates, layout)) : some(tabTemplates(full, plates))
}

import { type Elevation, projected } from '../../domain/geometry/plane'
import type { PointMm } from '../../domain/geometry/point'
import type { Layout, Place } from '../../domain/layout/document/layout'
import type { Handle } from '../../domain/layout/edit/handle'
import { handlesOfPlace } from '../../domain/layout/edit/handles'
import type { ShownPlace, SittingEvaluation } from '../../domain/layout/evaluate/evaluation'
import { valueText } from '../../domain/layout/wording/amounts'
import { findingSentence } from '../../domain/layout/wording/findingSentence'
import { anchorName, sittingName, subjectName } from '../../domain/layout/wording/names'
import { findingsOfPart, worstFinding } from '../../domain/layout/wording/partFindings'
import { problemText } from '../../domain/layout/wording/problemText'
import { quantityName } from '../../domain/layout/wording/quantities'
import { capitalised, verdictWord } from '../../domain/layout/wording/words'
import { zoneText } from '../../domain/layout/wording/zoneText'
import type { Subject } from '../../domain/straps/quantity'
import { angleText } from '../../domain/units/angle'
import { lengthText, lengthWithUnit } from '../../domain/units/length'

/** A part that can be taken hold of on the drawing. */
export interface ListedPart {
  readonly handle: Handle
  /** The worst that is found of it, when it is more than within the limits. */
  readonly worst: string | null
}

/** One thing and what is so about it. */
export interface ListedLine {
  readonly key: string
  readonly name: string
  readonly text: string
}

export interface ListedGroup {
  readonly key: string
  readonly name: string
  readonly lines: readonly ListedLine[]
}

/** Everything that the drawing of one place shows, as text. */
export interface BoardList {
  readonly parts: readonly ListedPart[]
  readonly people: readonly ListedLine[]
  /** Every strap, pair, the head and the body with all their numbers in the drawn sitting. */
  readonly straps: readonly ListedGroup[]
  readonly zones: readonly ListedLine[]
}

const pointText = ({ xMm, yMm, zMm }: PointMm, unit: Layout['units']['length']): string =>
  `x ${lengthText(xMm, unit)}, y ${lengthText(yMm, unit)}, z ${lengthWithUnit(zMm, unit)}`

const listedParts = (layout: Layout, place: Place, shown: ShownPlace | undefined): readonly ListedPart[] =>
  handlesOfPlace(layout, place.id).map((handle) => {
    const worst = worstFinding(findingsOfPart(layout, handle.ref, shown?.findings ?? []))
    const isFine = worst === null || worst.verdict === 'clear' || worst.verdict === 'kept'
    return {
      handle,
      worst: isFine
        ? null
        : `${capitalised(verdictWord(worst.verdict))}: ${findingSentence(worst, layout).what}`,
    }
  })

const listedPeople = (
  layout: Layout,
  shown: ShownPlace,
  sitting: SittingEvaluation,
): readonly ListedLine[] => {
  const unit = layout.units.length
  const { body, buckle } = sitting
  const others = shown.sittings.filter((other) => other !== sitting)
  const at = (key: string, name: string, point: PointMm): ListedLine => ({
    key,
    name,
    text: pointText(point, unit),
  })
  return [
    { key: 'sitting', name: 'Drawn', text: sittingName(sitting.sitting, layout) },
    { key: 'recline', name: 'Recline', text: angleText(body.reclineDeg) },
    at('hip', 'Hip point', body.hip),
    at('shoulder-left', 'Left shoulder point', body.shoulderPoint.left),
    at('shoulder-right', 'Right shoulder point', body.shoulderPoint.right),
    at('hip-bone-left', 'Left front hip bone', body.frontHipBone.left),
    at('hip-bone-right', 'Right front hip bone', body.frontHipBone.right),
    at('helmet', 'Middle of the helmet', body.helmet.centre),
    ...(buckle === null ? [] : [at('buckle', 'Buckle', buckle)]),
    ...others.map((other): ListedLine => ({
      key: other.sitting.id,
      name: 'Thin outline',
      text: sittingName(other.sitting, layout),
    })),
  ]
}

const listedStraps = (layout: Layout, sitting: SittingEvaluation): readonly ListedGroup[] => {
  const unit = layout.units.length
  const subjects = [
    ...new Set<Subject>([
      ...sitting.paths.map(({ strap }) => strap),
      ...sitting.problems.map(({ strap }) => strap),
      ...sitting.quantities.map(({ subject }) => subject),
    ]),
  ]
  return subjects.map((subject) => ({
    key: subject,
    name: capitalised(subjectName(subject, layout)),
    lines: [
      ...sitting.problems
        .filter(({ strap }) => strap === subject)
        .map((problem) => ({
          key: problem.kind,
          name: 'Not computed',
          text: problemText(problem, layout),
        })),
      ...sitting.quantities
        .filter((quantity) => quantity.subject === subject)
        .map(({ id, value }) => ({
          key: id,
          name: capitalised(quantityName(id)),
          text: valueText(id, value, unit),
        })),
    ],
  }))
}

const ELEVATIONS: readonly Elevation[] = ['side', 'top']

const listedZones = (layout: Layout, place: Place, shown: ShownPlace): readonly ListedLine[] =>
  shown.zones.flatMap((zone) => {
    const anchor = place.anchors.find(({ id }) => id === zone.anchorId)
    const hip = shown.sittings[0]?.body.hip
    if (anchor === undefined || hip === undefined) return []
    return ELEVATIONS.map((elevation) => ({
      key: `${anchor.id}/${elevation}`,
      name: `${capitalised(anchorName(anchor))}, ${elevation} elevation`,
      text: zoneText(
        zone[elevation],
        projected(anchor.mount.point, elevation),
        projected(hip, elevation),
        elevation,
        layout.units.length,
      ),
    }))
  })

/** What the drawing shows of a place in one sitting; without a sitting only the parts, as on the drawing. */
export const boardList = (
  layout: Layout,
  place: Place,
  shown: ShownPlace | undefined,
  sitting: SittingEvaluation | undefined,
): BoardList => ({
  parts: listedParts(layout, place, shown),
  people: shown === undefined || sitting === undefined ? [] : listedPeople(layout, shown, sitting),
  straps: sitting === undefined ? [] : listedStraps(layout, sitting),
  zones: shown === undefined ? [] : listedZones(layout, place, shown),
})

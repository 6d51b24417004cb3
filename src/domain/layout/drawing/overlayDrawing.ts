import {
  planeDistanceMm,
  type Elevation,
  type PlanePointMm,
  planePoint,
  projected,
} from '../../geometry/plane'
import type { PointMm } from '../../geometry/point'
import { pointToSegmentMm } from '../../geometry/segment'
import { type Anchor, anchorForm } from '../../straps/anchor'
import { comparedParts } from '../compare/comparedParts'
import { type ComparedPart, shiftMm } from '../compare/comparedPart'
import type { EvaluatedVariant } from '../compare/comparedFindings'
import type { LengthUnit } from '../document/layout'
import { familyWord, formsWord } from '../wording/names'
import { comparedPartName } from '../wording/compareWords'
import { capitalised } from '../wording/words'
import { judgedLength } from '../wording/weldedWords'
import { boxAbout, drawingBounds } from './box'
import { elevationDrawing } from './elevationDrawing'
import { placedLabels } from './labelPlacement'
import { PLAIN_DRAWING } from './options'
import type { Drawing, Primitive } from './primitive'

/** Two variants in one drawing. */
export interface Overlay {
  /** The variant that is drawn solid. */
  readonly solid: EvaluatedVariant
  /** The other, of which only what is not there in the solid one is drawn, dotted and with rhombs for marks. */
  readonly dotted: EvaluatedVariant
  readonly lengthUnit: LengthUnit
  readonly textHeightMm: number
}

/** Less than this nobody sees apart on a drawing; mm. Our judgement. */
const APART_MM = 0.5

/** Half of what lengths are shown to. */
const SHOWN_MM = 0.05

/** Half the diagonal of a rhomb, as a share of the lettering. A drawing convention of ours. */
const RHOMB_SHARE = 0.45

/** A primitive by what it looks like and where, to half a millimetre, whatever it is called. */
const lookOf = (primitive: Primitive): string =>
  JSON.stringify(primitive, (name, value: unknown) => {
    if (name === 'key' || name === 'part') return undefined
    return typeof value === 'number' ? Math.round(value / APART_MM) : value
  })

type Line = Extract<Primitive, { kind: 'polyline' }>

interface Piece {
  readonly from: PlanePointMm
  readonly to: PlanePointMm
}

const piecesOf = ({ points, closed }: Line): readonly Piece[] => {
  const [first] = points
  const ends = closed && first !== undefined ? [...points, first] : points
  return ends.slice(1).map((to, index) => ({ from: ends[index] ?? to, to }))
}

const inSpace = ({ uMm, vMm }: PlanePointMm): PointMm => ({ xMm: uMm, yMm: 0, zMm: vMm })

const isNear = (at: PlanePointMm, { from, to }: Piece): boolean =>
  at.uMm >= Math.min(from.uMm, to.uMm) - APART_MM &&
  at.uMm <= Math.max(from.uMm, to.uMm) + APART_MM &&
  at.vMm >= Math.min(from.vMm, to.vMm) - APART_MM &&
  at.vMm <= Math.max(from.vMm, to.vMm) + APART_MM &&
  pointToSegmentMm(inSpace(at), inSpace(from), inSpace(to)) <= APART_MM

/** Whether a piece lies on the solid lines: both its ends and its middle do. An arc may be divided otherwise there. */
const isCovered = ({ from, to }: Piece, solid: readonly Piece[]): boolean =>
  [from, planePoint((from.uMm + to.uMm) / 2, (from.vMm + to.vMm) / 2), to].every((at) =>
    solid.some((piece) => isNear(at, piece)),
  )

/** The runs of a line of which no piece lies on a solid one: a strap that is moved at one end is dotted there only. */
const freeRuns = (line: Line, solid: readonly Piece[]): readonly (readonly PlanePointMm[])[] => {
  const runs: PlanePointMm[][] = []
  let run: PlanePointMm[] = []
  const close = (): void => {
    if (run.length > 1) runs.push(run)
    run = []
  }
  for (const piece of piecesOf(line)) {
    if (isCovered(piece, solid)) close()
    else run.push(...(run.length === 0 ? [piece.from] : []), piece.to)
  }
  close()
  return runs
}

/** The pieces of the solid lines, those of one style together: a strap is not hidden by a tube that it runs along. */
const piecesByStyle = (solid: readonly Primitive[]): ReadonlyMap<string, readonly Piece[]> => {
  const pieces = new Map<string, Piece[]>()
  for (const primitive of solid) {
    if (primitive.kind !== 'polyline') continue
    pieces.set(primitive.style, [...(pieces.get(primitive.style) ?? []), ...piecesOf(primitive)])
  }
  return pieces
}

const rhomb = (key: string, { uMm, vMm }: PlanePointMm, halfMm: number): Primitive => ({
  kind: 'polyline',
  key,
  part: null,
  points: [
    planePoint(uMm - halfMm, vMm),
    planePoint(uMm, vMm + halfMm),
    planePoint(uMm + halfMm, vMm),
    planePoint(uMm, vMm - halfMm),
  ],
  closed: true,
  style: 'other',
})

/** What the other variant has elsewhere, in its own line: told from the solid one by pattern and mark, not by colour alone. */
const dottedPrimitives = (
  dotted: readonly Primitive[],
  solid: readonly Primitive[],
  textHeightMm: number,
): readonly Primitive[] => {
  const there = new Set(solid.map(lookOf))
  const pieces = piecesByStyle(solid)
  return dotted.flatMap((primitive): readonly Primitive[] => {
    if (there.has(lookOf(primitive))) return []
    const key = `other/${primitive.key}`
    if (primitive.kind === 'polyline')
      return freeRuns(primitive, pieces.get(primitive.style) ?? []).map((points, index) => ({
        kind: 'polyline',
        key: `${key}/${index}`,
        part: null,
        points,
        closed: false,
        style: 'other',
      }))
    if (primitive.kind === 'circle') return [{ ...primitive, key, part: null, style: 'other' }]
    return primitive.kind === 'mark' ? [rhomb(key, primitive.at, RHOMB_SHARE * textHeightMm)] : []
  })
}

/** A part that lies elsewhere, from where to where, and by how much. */
interface Shift {
  readonly part: ComparedPart
  readonly from: PointMm
  readonly to: PointMm
  readonly byMm: number
}

/** Of a tube the point that moved furthest. A slot's is in the seat frame, and the drawing says nothing of it. */
const shiftsOf = ({ solid, dotted }: Overlay): readonly Shift[] =>
  comparedParts([solid.layout, dotted.layout]).flatMap((part): readonly Shift[] => {
    if (part.kind === 'slot') return []
    const byMm = shiftMm(part, 0, 1)
    if (byMm === null || byMm < APART_MM) return []
    const pairs = (part.parts[0]?.points ?? []).map((from, index) => ({
      from,
      to: part.parts[1]?.points[index] ?? from,
    }))
    const apart = ({ from, to }: (typeof pairs)[number]): number =>
      Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm, to.zMm - from.zMm)
    const [furthest] = pairs.toSorted((a, b) => apart(b) - apart(a))
    return furthest === undefined ? [] : [{ part, ...furthest, byMm }]
  })

/** "Lap tabs" for both of a pair that shift alike, as one sees them on top of each other from the side. */
const groupName = (shifts: readonly Shift[], { solid, dotted }: Overlay): string => {
  const anchors = shifts.map(({ part }) => anchorOf(part, dotted) ?? anchorOf(part, solid))
  const [first, ...others] = anchors
  if (first === undefined || first === null || others.length === 0)
    return shifts.map(({ part }) => comparedPartName(part, [solid.layout, dotted.layout])).join(', ')
  const family = familyWord(first.strap)
  const isPair = others.every((other) => other !== null && familyWord(other.strap) === family)
  return isPair
    ? capitalised(`${family} ${formsWord(anchorForm(first.mount))}`)
    : shifts.map(({ part }) => comparedPartName(part, [solid.layout, dotted.layout])).join(', ')
}

const anchorOf = ({ kind, parts }: ComparedPart, { layout }: EvaluatedVariant): Anchor | null => {
  const part = kind === 'anchor' ? parts.find((each) => each !== null) : undefined
  return (
    layout.places
      .find(({ id }) => id === part?.placeId)
      ?.anchors.find(({ strap }) => strap === part?.strap) ?? null
  )
}

/** Shifts that one sees as one, from the same point to the same point of the drawing, and that are as far through space: one label is of all. */
const groupedShifts = (shifts: readonly Shift[], elevation: Elevation): readonly (readonly Shift[])[] => {
  const groups: Shift[][] = []
  for (const shift of shifts) {
    const isSame = ({ from, to, byMm }: Shift): boolean =>
      Math.abs(byMm - shift.byMm) < SHOWN_MM &&
      planeDistanceMm(projected(from, elevation), projected(shift.from, elevation)) < APART_MM &&
      planeDistanceMm(projected(to, elevation), projected(shift.to, elevation)) < APART_MM
    const group = groups.find(([first]) => first !== undefined && isSame(first))
    if (group === undefined) groups.push([shift])
    else group.push(shift)
  }
  return groups
}

/**
 * Two variants over each other: the solid one as every elevation is drawn, the other dotted where it is not the same, with how far each
 * anchor, seat and tube lies elsewhere, straight through space and not only in this plane.
 */
export const overlayDrawing = (overlay: Overlay, elevation: Elevation): Drawing => {
  const { solid, dotted, lengthUnit, textHeightMm } = overlay
  const plain = { ...PLAIN_DRAWING, labels: false, lengthUnit, textHeightMm }
  const base = elevationDrawing(solid.layout, solid.evaluation, elevation, plain).primitives
  const over = elevationDrawing(dotted.layout, dotted.evaluation, elevation, plain).primitives
  const others = dottedPrimitives(over, base, textHeightMm)
  const groups = groupedShifts(shiftsOf(overlay), elevation)
  const ways = groups.flatMap(([shift]): readonly Primitive[] =>
    shift === undefined
      ? []
      : [
          {
            kind: 'polyline',
            key: `way/${shift.part.kind}/${shift.part.parts[0]?.placeId ?? ''}/${shift.part.parts[0]?.id ?? ''}`,
            part: null,
            points: [projected(shift.from, elevation), projected(shift.to, elevation)],
            closed: false,
            style: 'focus',
          },
        ],
  )
  const labels = placedLabels(
    groups.flatMap((group) => {
      const [first] = group
      if (first === undefined) return []
      const text = `${groupName(group, overlay)} ${judgedLength(first.byMm, lengthUnit)}`
      const at = projected(first.to, elevation)
      const key = `shift/${first.part.kind}/${first.part.parts[0]?.placeId ?? ''}/${first.part.parts[0]?.id ?? ''}`
      return [{ key, part: null, at, text, weight: 'strong', need: 'must' } as const]
    }),
    {
      blocked: [...base, ...others].flatMap((primitive) =>
        primitive.kind === 'mark' ? [boxAbout(primitive.at, 0.8 * textHeightMm, 0.8 * textHeightMm)] : [],
      ),
      lines: [...base, ...others].flatMap((primitive) =>
        primitive.kind === 'polyline' && ['strap', 'other', 'tube'].includes(primitive.style)
          ? [primitive.points]
          : [],
      ),
      textHeightMm,
      within: null,
    },
  )
  const primitives = [...base, ...others, ...ways, ...labels]
  return { elevation, bounds: drawingBounds(primitives, textHeightMm), primitives }
}

import { type PlanePointMm, planePoint } from '../../../geometry/plane'
import { pointDistanceMm } from '../../../geometry/point'
import { mountCircle } from '../../../straps/mount'
import type { StrapPath } from '../../../straps/path'
import { behindSeatPoints } from '../../../straps/shoulderQuantities'
import { type StrapFamily, strapFamily } from '../../../straps/strap'
import { type SolvedStrap, type Touch, touchLengthMm } from '../../../straps/strapPath'
import { valueText } from '../../wording/amounts'
import type { Primitive } from '../primitive'
import { SIDE_PLANE } from './drawnPlane'
import type { Explanation, ExplainScene, NamedPoint } from './explanation'
import { figureOf, line } from './figure'
import { anchorNamed, bodyNamed, labelled, named, outsideNamed } from './names'
import { elevationScenery, strapScenery } from './scenery'
import { solvedStrapOf, strapScene } from './solvedStrap'

/** A part of a length, in words that follow the one before. */
interface Piece {
  readonly words: string
  readonly lengthMm: number
}

/** The strip's rows are this share of its length apart. Our judgement: two lines of text. */
const ROW_SHARE = 0.11

/** A strip of no length still needs a size. Our judgement. */
const LEAST_STRIP_MM = 100

/** Width of a letter and the margin beside the strip, as shares of the strip's length as it is framed. Measured on the drawing. */
const LETTER_SHARE = 0.029
const MARGIN_SHARE = 0.2

/** How far to the right a name has to end so that it begins within the figure. */
const leastEndMm = (text: string, totalMm: number): number =>
  (LETTER_SHARE * text.length - MARGIN_SHARE) * Math.max(LEAST_STRIP_MM, totalMm)

interface Strip {
  readonly lines: readonly Primitive[]
  readonly labels: readonly Primitive[]
  readonly bottom: { readonly from: PlanePointMm; readonly to: PlanePointMm }
}

/** The pieces one after another, each a row lower than the one before so that all can be read. */
const stripOf = (pieces: readonly Piece[], scene: ExplainScene): Strip => {
  const totalMm = pieces.reduce((sum, { lengthMm }) => sum + lengthMm, 0)
  const rowMm = ROW_SHARE * Math.max(LEAST_STRIP_MM, totalMm)
  const lines: Primitive[] = []
  const labels: Primitive[] = []
  let startMm = 0
  for (const [index, { words, lengthMm }] of pieces.entries()) {
    const vMm = -index * rowMm
    const endMm = startMm + lengthMm
    const isLate = startMm + lengthMm / 2 > totalMm / 2
    lines.push(line(`piece/${index}`, [planePoint(startMm, vMm), planePoint(endMm, vMm)], 'focus'))
    if (index > 0)
      lines.push(
        line(`step/${index}`, [planePoint(startMm, vMm + rowMm), planePoint(startMm, vMm)], 'dimension'),
      )
    const text = `${words} ${valueText('strap-length', lengthMm, scene.lengthUnit)}`
    labels.push({
      kind: 'label',
      key: `explain/piece-name/${index}`,
      part: null,
      at: planePoint(isLate ? Math.max(endMm, leastEndMm(text, totalMm)) : startMm, vMm + 0.35 * rowMm),
      text,
      align: isLate ? 'right' : 'left',
      weight: 'plain',
    })
    startMm = endMm
  }
  const vMm = -(pieces.length + 0.6) * rowMm
  return { lines, labels, bottom: { from: planePoint(0, vMm), to: planePoint(startMm, vMm) } }
}

interface StripParts {
  readonly path: StrapPath
  readonly points: readonly NamedPoint[]
  readonly pieces: readonly Piece[]
}

/** The strap where it runs in side elevation, and what is added up laid out straight. */
const stripExplanation = (scene: ExplainScene, { path, points, pieces }: StripParts): Explanation => {
  const strip = stripOf(pieces, scene)
  const side = figureOf(
    {
      view: 'side',
      measure: null,
      points: labelled(points, SIDE_PLANE),
      lines: [],
      scenery: [...elevationScenery(scene, 'side'), ...strapScenery([path], SIDE_PLANE)],
    },
    scene,
  )
  const straight = figureOf(
    {
      view: 'strip',
      measure: { kind: 'length', ...strip.bottom, isOnPoints: true },
      points: [],
      lines: strip.lines,
      scenery: strip.labels,
    },
    scene,
  )
  return { figures: [side, straight], points }
}

/** The straight pieces from each point to the next. */
const piecesBetween = (points: readonly NamedPoint[]): readonly Piece[] =>
  points.slice(1).flatMap((to, index) => {
    const from = points[index]
    if (from === undefined) return []
    const words = `${from.letter} ${from.words} to ${to.letter} ${to.words}`
    return [{ words, lengthMm: pointDistanceMm(from.point, to.point) }]
  })

/** From the shoulder over every edge and the junction to the anchor contact. */
export const explainFreeLength = (scene: ExplainScene, path: StrapPath): Explanation => {
  const points = [bodyNamed(path, 'shoulder'), ...outsideNamed(scene, path)]
  return stripExplanation(scene, { path, points, pieces: piecesBetween(points) })
}

/** Where the strap leaves the seat's back. */
const leavesAt = ({ pass }: SolvedStrap): string => {
  if (pass === null) return 'shoulder'
  return pass.gate.on === 'slot' ? 'slot' : 'rim'
}

/** From the slot or rim, over the junction of joined straps, to the anchor contact; nothing where the anchor is ahead of the rim. */
export const explainBehindSeat = (scene: ExplainScene, path: StrapPath): Explanation | null => {
  const solved = solvedStrapOf(scene, path.strap)
  if (solved === null) return null
  const anchor = anchorNamed(scene, path)
  const [from, ...behind] = behindSeatPoints(strapScene(scene), solved)
  if (from === undefined)
    return stripExplanation(scene, {
      path,
      points: [anchor],
      pieces: [{ words: 'nothing behind the rim', lengthMm: 0 }],
    })
  const over = behind.slice(0, -1).map((point) => named('J', 'junction', point))
  const points = [named('G', leavesAt(solved), from), ...over, anchor]
  return stripExplanation(scene, { path, points, pieces: piecesBetween(points) })
}

const BODY_WORDS: Readonly<Record<StrapFamily, string>> = {
  shoulder: 'shoulder',
  lap: 'hip',
  sub: 'groin',
}

/** What a contact is; a shoulder strap's first two contacts with the body are on the shoulder, the others on the chest. */
const touchWords = (touches: readonly Touch[], touch: Touch, family: StrapFamily): string => {
  if (touch.on === 'seat-side') return 'shell'
  if (touch.on !== 'body') return touch.on
  const place = touches.filter(({ on }) => on === 'body').indexOf(touch)
  return family === 'shoulder' && place > 1 ? 'chest' : BODY_WORDS[family]
}

const BODY_PIECE_WORDS: Readonly<Record<StrapFamily, string>> = {
  shoulder: 'over the shoulder',
  lap: 'round the hip',
  sub: 'over the groin',
}

/** The straight pieces by their ends, and in one what lies between the first and the last contact with the body. */
const pathPieces = ({ path, touches }: SolvedStrap): readonly Piece[] => {
  const family = strapFamily(path.strap)
  const pieces: Piece[] = []
  let onBodyMm = 0
  for (const [index, to] of touches.entries()) {
    const from = touches[index - 1]
    if (from === undefined) continue
    const lengthMm = touchLengthMm(from, to)
    if (from.on === 'body' && to.on === 'body') {
      onBodyMm += lengthMm
      continue
    }
    const fromWords = touchWords(touches, from, family)
    if (from.on === 'body' && onBodyMm > 0) {
      const words = `${BODY_PIECE_WORDS[family]}${fromWords === 'chest' ? ' and chest' : ''}`
      pieces.push({ words, lengthMm: onBodyMm })
    }
    pieces.push({ words: `${fromWords} to ${touchWords(touches, to, family)}`, lengthMm })
  }
  const last = touches.at(-1)
  // A strap without a buckle ends on the body.
  if (last?.on === 'body' && onBodyMm > 0)
    pieces.push({ words: BODY_PIECE_WORDS[family], lengthMm: onBodyMm })
  return pieces
}

/** The whole strap as it is ordered: its pieces, a wrap's loop and return, and the adjuster's tail. */
export const explainStrapLength = (scene: ExplainScene, path: StrapPath): Explanation | null => {
  const solved = solvedStrapOf(scene, path.strap)
  const buckle = path.contacts.at(-1)
  if (solved === null || buckle === undefined) return null
  const { anchor } = solved
  const { adjusterTailMm, wrapReturnMm } = scene.place.belt
  const circle = mountCircle(anchor.mount, scene.tubes)
  const wrap =
    anchor.mount.kind === 'wrap' && circle !== null
      ? [
          { words: 'once round the tube', lengthMm: 2 * Math.PI * circle.radiusMm },
          { words: 'woven back', lengthMm: wrapReturnMm },
        ]
      : []
  return stripExplanation(scene, {
    path,
    points: [anchorNamed(scene, path), named('K', 'buckle', buckle.point)],
    pieces: [...wrap, ...pathPieces(solved), { words: 'adjuster tail', lengthMm: adjusterTailMm }],
  })
}

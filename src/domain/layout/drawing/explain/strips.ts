import { type PlanePointMm, planePoint } from '../../../geometry/plane'
import { pointDistanceMm } from '../../../geometry/point'
import { anchorOf, mountCircle } from '../../../straps/mount'
import type { PathContact, StrapPath } from '../../../straps/path'
import { behindSeatFrom } from '../../../straps/shoulderQuantities'
import { type StrapFamily, strapFamily } from '../../../straps/strap'
import { valueText } from '../../wording/amounts'
import type { Primitive } from '../primitive'
import { SIDE_PLANE } from './drawnPlane'
import type { Explanation, ExplainScene, NamedPoint } from './explanation'
import { figureOf, line } from './figure'
import { anchorNamed, bodyNamed, effectiveAnchorNamed, labelled, named } from './names'
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
    labels.push({
      kind: 'label',
      key: `explain/piece-name/${index}`,
      part: null,
      at: planePoint(isLate ? endMm : startMm, vMm + 0.35 * rowMm),
      text: `${words} ${valueText('strap-length', lengthMm, scene.lengthUnit)}`,
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

/** From the shoulder over the slot or rim to the anchor contact. */
export const explainFreeLength = (scene: ExplainScene, path: StrapPath): Explanation => {
  const body = bodyNamed(path, 'shoulder')
  const end = effectiveAnchorNamed(scene, path)
  const anchor = anchorNamed(scene, path)
  const isDirect = end.point === anchor.point
  const first = {
    words: `T ${body.words} to E ${end.words}`,
    lengthMm: pointDistanceMm(body.point, end.point),
  }
  const second = {
    words: `E ${end.words} to A ${anchor.words}`,
    lengthMm: pointDistanceMm(end.point, anchor.point),
  }
  return stripExplanation(scene, {
    path,
    points: isDirect ? [body, end] : [body, end, anchor],
    pieces: isDirect ? [first] : [first, second],
  })
}

/** From the slot or rim to the anchor contact; nothing where the anchor is ahead of the rim. */
export const explainBehindSeat = (scene: ExplainScene, path: StrapPath): Explanation | null => {
  const solved = solvedStrapOf(scene, path.strap)
  if (solved === null) return null
  const from = behindSeatFrom(strapScene(scene), solved)
  const anchor = anchorNamed(scene, path)
  if (from === null)
    return stripExplanation(scene, {
      path,
      points: [anchor],
      pieces: [{ words: 'nothing behind the rim', lengthMm: 0 }],
    })
  const words = solved.pass?.gate.on === 'slot' ? 'slot' : 'rim'
  return stripExplanation(scene, {
    path,
    points: [named('G', words, from), anchor],
    pieces: [{ words: `G ${words} to A ${anchor.words}`, lengthMm: pointDistanceMm(from, anchor.point) }],
  })
}

const BODY_WORDS: Readonly<Record<StrapFamily, string>> = {
  shoulder: 'shoulder',
  lap: 'hip',
  sub: 'groin',
}

const contactWords = ({ on }: PathContact, family: StrapFamily): string => {
  switch (on) {
    case 'anchor':
      return 'anchor'
    case 'slot':
      return 'slot'
    case 'rim':
      return 'rim'
    case 'body':
      return BODY_WORDS[family]
    case 'buckle':
      return 'buckle'
  }
}

/** The straight pieces by their ends, and what lies on the body in one. */
const pathPieces = (path: StrapPath): readonly Piece[] => {
  const family = strapFamily(path.strap)
  const pieces: Piece[] = []
  let straightMm = 0
  let hasArc = false
  for (const [index, to] of path.contacts.entries()) {
    const from = path.contacts[index - 1]
    if (from === undefined) continue
    if (from.on === 'body' && to.on === 'body' && from.bendDeg > 0) {
      hasArc = true
      pieces.push({ words: `over the ${BODY_WORDS[family]}`, lengthMm: 0 })
      continue
    }
    const lengthMm = pointDistanceMm(from.point, to.point)
    straightMm += lengthMm
    pieces.push({ words: `${contactWords(from, family)} to ${contactWords(to, family)}`, lengthMm })
  }
  const onBodyMm = path.lengthMm - straightMm
  return hasArc
    ? pieces.map((piece) => (piece.words.startsWith('over the') ? { ...piece, lengthMm: onBodyMm } : piece))
    : pieces
}

/** The whole strap as it is ordered: its pieces, a wrap's loop and return, and the adjuster's tail. */
export const explainStrapLength = (scene: ExplainScene, path: StrapPath): Explanation | null => {
  const anchor = anchorOf(scene.place.anchors, path.strap)
  const buckle = path.contacts.at(-1)
  if (anchor === null || buckle === undefined) return null
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
    pieces: [...wrap, ...pathPieces(path), { words: 'adjuster tail', lengthMm: adjusterTailMm }],
  })
}

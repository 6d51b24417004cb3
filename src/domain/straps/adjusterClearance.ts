import { pointBetween, pointDistanceMm, type PointMm } from '../geometry/point'
import type { PathContact } from './path'
import type { StrapScene } from './scene'
import { beyondMm } from './portal'
import { strapFamily } from './strap'
import { touchLengthMm, type GatePass, type SolvedStrap } from './strapPath'

/** A stretch of strap that lies on something, mm from the contact at the anchor; both ends alike where it only touches. */
interface Stretch {
  readonly on: PathContact['on']
  readonly fromMm: number
  readonly toMm: number
  readonly from: PointMm
  readonly to: PointMm
}

/** What an adjuster must not lie on: edges it runs over, the slot it passes even clean, what lies on the body, the buckle. */
const stretches = ({ touches, pass }: SolvedStrap): readonly Stretch[] => {
  const found: Stretch[] = []
  const passesOnTail =
    pass !== null && touches.some(({ on, point }) => on === 'junction' && beyondMm(pass.gate, point) <= 0)
  let alongMm = 0
  let before: PointMm | null = null
  for (const [index, touch] of touches.entries()) {
    const next = touches[index + 1]
    const pieceMm = next === undefined ? 0 : touchLengthMm(touch, next)
    if (touch.on !== 'anchor' && touch.on !== 'junction') {
      const arcMm = touch.arcToNext === null ? 0 : pieceMm
      const to = touch.arcToNext === null || next === undefined ? touch.point : next.point
      found.push({ on: touch.on, fromMm: alongMm, toMm: alongMm + arcMm, from: touch.point, to })
    } else before = touch.point
    if (
      before === touch.point &&
      pass !== null &&
      !pass.touches &&
      next !== undefined &&
      (next.on === 'junction') === passesOnTail
    )
      found.push(passStretch(pass, touch.point, next.point, alongMm))
    alongMm += pieceMm
  }
  return found
}

/** A slot that the strap passes clean on its way from one contact to the next, through the whole shell. */
const passStretch = ({ gate, point }: GatePass, before: PointMm, next: PointMm, startMm: number): Stretch => {
  const pieceMm = pointDistanceMm(before, next)
  const fromMm = startMm + pointDistanceMm(before, point)
  const slant = Math.abs(alongNormal(gate.normal, before, next)) / pieceMm
  const throughMm = slant > 0 ? gate.depthMm / slant : 0
  const onMm = pointDistanceMm(point, next)
  const to = pointBetween(point, next, onMm > throughMm ? throughMm / onMm : 1)
  return { on: gate.on, fromMm, toMm: fromMm + throughMm, from: point, to }
}

const alongNormal = (
  { x, y, z }: { readonly x: number; readonly y: number; readonly z: number },
  from: PointMm,
  to: PointMm,
): number => x * (to.xMm - from.xMm) + y * (to.yMm - from.yMm) + z * (to.zMm - from.zMm)

/** The adjuster's body on its strap and what it is nearest to, mm along the strap from the contact at the anchor. */
export interface AdjusterRoom {
  readonly fromMm: number
  readonly toMm: number
  readonly nearest: Stretch
  readonly clearanceMm: number
}

/**
 * Least distance along the strap between the adjuster's body and a pass through a slot or over an edge, the body or the buckle;
 * negative by as much as it overlaps, or as it reaches beyond the strap's end. Null where no adjuster is given. Source: derived here.
 */
export const adjusterRoom = (scene: StrapScene, strap: SolvedStrap): AdjusterRoom | null => {
  const adjuster = scene.belt.adjusters?.[strapFamily(strap.anchor.strap)]
  if (adjuster === undefined) return null
  const fromMm = adjuster.fromAnchorMm - adjuster.lengthMm / 2
  const toMm = adjuster.fromAnchorMm + adjuster.lengthMm / 2
  const { lengthMm } = strap.path
  const end = strap.path.contacts.at(-1)?.point ?? strap.anchorContact
  let nearest: Stretch = { on: 'buckle', fromMm: lengthMm, toMm: lengthMm, from: end, to: end }
  let clearanceMm = lengthMm - toMm
  for (const stretch of stretches(strap)) {
    const roomMm = Math.max(fromMm - stretch.toMm, stretch.fromMm - toMm)
    if (roomMm >= clearanceMm) continue
    nearest = stretch
    clearanceMm = roomMm
  }
  return { fromMm, toMm, nearest, clearanceMm }
}

/** The least of those distances alone, mm; null where no adjuster is given. */
export const adjusterClearanceMm = (scene: StrapScene, strap: SolvedStrap): number | null =>
  adjusterRoom(scene, strap)?.clearanceMm ?? null

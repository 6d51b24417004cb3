import type { HeldAt } from '../../shop/tape/heldPoint'
import type { AnchorChecks, TapeCheckTable } from '../../shop/tape/tapeChecks'
import type { TapePlace } from '../../shop/tape/tapePlace'
import type { Axis } from '../../geometry/spheres'
import { facing, largestAxis } from '../../geometry/spheres'
import { pointDifference } from '../../geometry/point'
import type { Layout } from '../document/layout'
import { tubeName } from './names'

type Named = Pick<Layout, 'tubes' | 'tapePoints' | 'datum'>

/** A place that a tape can be held to, by where a welder finds it. */
export const tapePlaceName = ({ source }: Pick<TapePlace, 'source'>, layout: Named): string => {
  switch (source.kind) {
    case 'datum':
      return layout.datum.trim() === '' ? 'Datum' : `Datum: ${layout.datum.trim()}`
    case 'datum-mark':
      return `Punch mark on the ${source.side} of ${tubeName(source.tubeId, layout)}, ${source.side === 'top' ? 'plumb above' : 'level ahead of'} the datum, which lies inside the tube`
    case 'named': {
      const name = (layout.tapePoints ?? []).find(({ id }) => id === source.tapePointId)?.name.trim() ?? ''
      return name === '' ? `Tape point ${source.tapePointId}` : name
    }
    case 'tube-end': {
      const where =
        source.meets === null ? '' : `, plumb above the middle of ${tubeName(source.meets, layout)}`
      return `Punch mark on the ${source.side} of ${tubeName(source.tubeId, layout)} at its ${source.end} end${source.side === 'top' ? where : ''}`
    }
  }
}

/** What a tape to an anchor is held to. */
export const heldAtText = (heldAt: HeldAt): string => {
  switch (heldAt) {
    case 'hole':
      return 'middle of the hole, at the middle of the plate'
    case 'eye':
      return 'middle of the eye'
    case 'tube-mark':
      return 'outside of the bar in the middle of the webbing: its highest line, or its foremost where the bar stands near plumb'
  }
}

const SIDES: Readonly<Record<Axis, readonly [string, string]>> = {
  x: ['behind', 'ahead of'],
  y: ['to the right of', 'to the left of'],
  z: ['above', 'below'],
}

/** What the distances of one anchor cannot tell, and what to name or look at; null where they tell its position. */
export const toldText = ({ told, held }: Pick<AnchorChecks, 'told' | 'held'>): string | null => {
  switch (told.kind) {
    case 'determined':
      return null
    case 'mirror-only': {
      const across = pointDifference(held, told.mirror)
      const normal = facing(across)
      const [same, other] = SIDES[largestAxis(normal)]
      const [side, wrong] = normal === across ? [same, other] : [other, same]
      return `Two places fit these distances: the right one is ${side} the plane of the points, the wrong one ${wrong} it. Name a tape point well out of that plane to tell them apart.`
    }
    case 'not-enough-points':
      return notEnoughText(told.because)
  }
}

const notEnoughText = (because: 'fewer-than-three' | 'in-line' | 'badly-placed'): string => {
  switch (because) {
    case 'fewer-than-three':
      return 'Fewer than three points can be reached by a straight tape. Name tape points around this anchor: seat bolts, punch marks, tube crossings, some low, some high, on both sides.'
    case 'in-line':
      return 'All points that a straight tape reaches lie in one line. Name a tape point well off that line.'
    case 'badly-placed':
      return 'The points that a straight tape reaches lie so that a small error in the tapes moves the position far. Name a tape point in another direction from this anchor: above or below it, or to its other side.'
  }
}

/** What can be said of the whole table before it is used. */
export const tapeTableText = (table: TapeCheckTable): string => {
  const open = table.rows.filter(({ told }) => told.kind !== 'determined').length
  if (table.rows.length === 0) return 'No anchors yet, so there is nothing to check with a tape.'
  const held =
    'Tapes are pulled straight between the points as named. The lines pass through no tube of the drawing; whether the seat or anything else is in the way is not known here.'
  return open === 0
    ? `Every anchor’s position can be told from its distances alone. ${held}`
    : `${open} of ${table.rows.length} anchors cannot be told from their distances alone: see beside each. ${held}`
}

/** What a tape point is for, beside the fields where one is typed. */
export const TAPE_POINT_HINT =
  'Places on the car that a tape can be held to: a seat bolt, a punch mark, the crossing of two tubes. The mount sheet gives straight distances from them to every anchor, and what was welded can be measured from them. Measure each from the datum.'

/** A tape point that lies at the datum is not used until it is placed. */
export const TAPE_POINT_UNPLACED =
  'Still at the datum: type where it is, until then nothing is measured from it.'

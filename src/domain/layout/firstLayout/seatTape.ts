import { planeSegmentIntersection } from '../../geometry/segment'
import { planePoint } from '../../geometry/plane'
import type { Seat } from '../../straps/seat'
import { cosDeg, tanDeg } from '../../units/angle'
import type { Layout } from '../document/layout'
import { withSeat } from '../edit/change'
import { movedHandle } from '../edit/move'
import { withPlaceChanged } from '../edit/replace'
import { askedPlace } from './askedPlace'

/*
 * The hip point lies inside a person and no tape reaches it. What a tape does reach is the face of the back and the cushion; the
 * hip point follows from them. Derived here: with the recline β, the hip height h up the torso line and the back's face a depth d
 * behind it, the cushion lies at z = hip − h · cos β, and a level tape r above the cushion meets the straight edge along the back at
 * x = hip + d / cos β + (r − h · cos β) · tan β.
 */

/** Where the depth of the back is read, up the torso line from the cushion: about half way up a bucket seat's back. Our judgement. */
const BACK_READ_MM = 300

/** Hip point ahead of the back where an outline has no back there. Source: public dummy models, 147–150 mm. */
const PLAIN_DEPTH_MM = 148

/** How far above the cushion the tape is held to the back, mm: a hand's breadth, about where the hips are. Our judgement. */
export const READ_ABOVE_CUSHION_MM = 100

/** Looked no further rearward than this for the back. Our judgement. */
const FAR_MM = 3_000

/** The torso line ahead of the face of the back, square to it, mm. */
export const backDepthMm = ({ sideOutline, hipHeightMm }: Seat): number => {
  const zMm = BACK_READ_MM - hipHeightMm
  const crossings = sideOutline.flatMap((end, index) => {
    const start = sideOutline.at(index - 1)
    const met =
      start &&
      planeSegmentIntersection(
        planePoint(0, zMm),
        planePoint(FAR_MM, zMm),
        planePoint(start.xMm, start.zMm),
        planePoint(end.xMm, end.zMm),
      )
    return met === undefined || met === null ? [] : [met.uMm]
  })
  return crossings.length === 0 ? PLAIN_DEPTH_MM : Math.min(...crossings)
}

/** Rearward from the hip point to where the tape meets the straight edge along the back. */
const backBehindHipMm = (seat: Seat): number => {
  const { reclineDeg, hipHeightMm } = seat
  const aboveHipMm = READ_ABOVE_CUSHION_MM - hipHeightMm * cosDeg(reclineDeg)
  return backDepthMm(seat) / cosDeg(reclineDeg) + aboveHipMm * tanDeg(reclineDeg)
}

/** From the datum rearward to the face of the back, level, a hand's breadth above the cushion. */
export const backMm = (layout: Layout): number => {
  const { seat } = askedPlace(layout)
  return seat.hipPoint.xMm + backBehindHipMm(seat)
}

export const withBack = (layout: Layout, mm: number): Layout => {
  const { id, seat } = askedPlace(layout)
  return movedHandle(layout, { kind: 'hip', placeId: id }, { xMm: mm - backBehindHipMm(seat) })
}

/** From the datum up to the pressed-down cushion under the hip point. */
export const cushionMm = (layout: Layout): number => {
  const { hipPoint, hipHeightMm, reclineDeg } = askedPlace(layout).seat
  return hipPoint.zMm - hipHeightMm * cosDeg(reclineDeg)
}

export const withCushion = (layout: Layout, mm: number): Layout => {
  const { id, seat } = askedPlace(layout)
  const zMm = mm + seat.hipHeightMm * cosDeg(seat.reclineDeg)
  return movedHandle(layout, { kind: 'hip', placeId: id }, { zMm })
}

/** The same readings of back and cushion after another change of the seat: what was typed stays what it was. */
const withReadingsOf = (before: Layout, after: Layout): Layout =>
  withCushion(withBack(after, backMm(before)), cushionMm(before))

export const withRecline = (layout: Layout, reclineDeg: number): Layout =>
  withReadingsOf(layout, withSeat(layout, askedPlace(layout).id, { reclineDeg }))

/** Another hip height over the same cushion: the shell stays where it is, so it goes down by as much in the hip point's frame. */
export const withHipHeight = (layout: Layout, hipHeightMm: number): Layout => {
  const { id, seat } = askedPlace(layout)
  const downMm = hipHeightMm - seat.hipHeightMm
  const lowered = <Point extends { readonly zMm: number }>(point: Point): Point => ({
    ...point,
    zMm: point.zMm - downMm,
  })
  const changed = withPlaceChanged(layout, id, (place) => ({
    ...place,
    seat: {
      ...seat,
      hipHeightMm,
      sideOutline: seat.sideOutline.map(lowered),
      backrestRim: lowered(seat.backrestRim),
      slots: seat.slots.map((slot) => ({ ...slot, centre: lowered(slot.centre) })),
    },
  }))
  return withReadingsOf(layout, changed)
}

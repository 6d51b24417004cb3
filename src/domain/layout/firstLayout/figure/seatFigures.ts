import { vehiclePoint } from '../../../body/pose'
import { planePoint, projected } from '../../../geometry/plane'
import { pointMm } from '../../../geometry/point'
import { angleText } from '../../../units/angle'
import type { Layout } from '../../document/layout'
import type { Primitive } from '../../drawing/primitive'
import { drawnPose } from '../../edit/handles'
import { seatShellPrimitives } from '../../drawing/seatPrimitives'
import { askedPlace } from '../askedPlace'
import { backDepthMm, backMm, cushionMm, READ_ABOVE_CUSHION_MM } from '../seatTape'
import { DATUM, datumPrimitives, figureOf, label, line, point, type QuestionFigure } from './figure'

const shell = (layout: Layout, elevation: 'side' | 'top'): readonly Primitive[] => {
  const place = askedPlace(layout)
  return seatShellPrimitives(place, drawnPose(place), elevation, 'outline').map((primitive) => ({
    ...primitive,
    part: null,
  }))
}

/** Lengths of the arrows that show the directions; our judgement. */
const ARROW_MM = 260

const arrow = (key: string, du: number, dv: number): readonly Primitive[] => {
  const end = planePoint(ARROW_MM * du, ARROW_MM * dv)
  const barb = (sign: number) =>
    planePoint(end.uMm - 40 * du + sign * 18 * dv, end.vMm - 40 * dv + sign * 18 * du)
  return [line(`${key}/shaft`, [DATUM, end], 'focus'), line(`${key}/head`, [barb(1), end, barb(-1)], 'focus')]
}

export const datumFigure = (layout: Layout): readonly QuestionFigure[] => {
  const { seat } = askedPlace(layout)
  const hip = projected(seat.hipPoint, 'side')
  return [
    figureOf({
      layout,
      elevation: 'side',
      caption: 'The datum and the ways that count plus',
      taped: [],
      focus: [
        ...arrow('rearward', 1, 0),
        ...arrow('up', 0, 1),
        point('datum', DATUM),
        label('datum-word', planePoint(0, -90), 'datum'),
        label('rearward-word', planePoint(ARROW_MM + 30, 0), 'rearward +', 'left'),
        label('up-word', planePoint(0, ARROW_MM + 60), 'up +'),
      ],
      inView: [hip, planePoint(hip.uMm + 350, hip.vMm + 500)],
    }),
  ]
}

/** How far above the rim the straight edge along the back stands out. Our judgement. */
const EDGE_OVER_MM = 60

export const seatFigure = (layout: Layout): readonly QuestionFigure[] => {
  const place = askedPlace(layout)
  const { seat } = place
  const { hipPoint, backrestRim } = seat
  const pose = drawnPose(place)
  const depthMm = backDepthMm(seat)
  const at = (zMm: number) => projected(vehiclePoint(pose, pointMm(depthMm, 0, zMm)), 'side')
  const under = projected(vehiclePoint(pose, pointMm(0, 0, -seat.hipHeightMm)), 'side')
  const cushion = cushionMm(layout)
  const back = planePoint(backMm(layout), cushion + READ_ABOVE_CUSHION_MM)
  return [
    figureOf({
      layout,
      elevation: 'side',
      caption: 'Side: rearward to the back (A), up to the cushion (B)',
      taped: [
        { letter: 'A', valueMm: back.uMm, from: DATUM, to: back, way: 'level', at: back.vMm },
        {
          letter: 'B',
          valueMm: cushion,
          from: planePoint(under.uMm, 0),
          to: under,
          way: 'plumb',
          at: under.uMm,
        },
      ],
      focus: [
        ...shell(layout, 'side'),
        line('edge', [back, at(backrestRim.zMm + EDGE_OVER_MM)], 'focus'),
        line('level', [DATUM, planePoint(under.uMm + 60, 0)], 'hidden'),
        ...datumPrimitives(),
      ],
    }),
    figureOf({
      layout,
      elevation: 'top',
      caption: 'From above: sideways to the seat’s middle (C)',
      taped: [
        {
          letter: 'C',
          valueMm: hipPoint.yMm,
          from: planePoint(hipPoint.xMm, 0),
          to: projected(hipPoint, 'top'),
          way: 'plumb',
          at: hipPoint.xMm - 250,
        },
      ],
      focus: [
        ...shell(layout, 'top'),
        line('datum-line', [DATUM, planePoint(hipPoint.xMm + 250, 0)], 'hidden'),
        ...datumPrimitives(),
      ],
    }),
  ]
}

export const reclineFigure = (layout: Layout): readonly QuestionFigure[] => {
  const place = askedPlace(layout)
  const { seat } = place
  const pose = drawnPose(place)
  const depthMm = backDepthMm(seat)
  const at = (zMm: number) => projected(vehiclePoint(pose, pointMm(depthMm, 0, zMm)), 'side')
  const foot = at(0)
  const reachMm = seat.backrestRim.zMm + EDGE_OVER_MM
  const { reclineDeg } = seat
  const text = `A  ${angleText(reclineDeg)}`
  const leansDeg = 90 - reclineDeg
  return [
    {
      ...figureOf({
        layout,
        elevation: 'side',
        caption: 'The angle finder on the straight edge along the back (A)',
        taped: [],
        focus: [
          ...shell(layout, 'side'),
          line('plumb', [foot, planePoint(foot.uMm, foot.vMm + reachMm)], 'hidden'),
          line('edge', [foot, at(reachMm)], 'focus'),
          {
            kind: 'angle',
            key: 'asked/recline',
            part: null,
            apex: foot,
            radiusMm: 0.6 * reachMm,
            fromDeg: Math.min(leansDeg, 90),
            toDeg: Math.max(leansDeg, 90),
            text,
          },
        ],
      }),
      letters: ['A'],
      description: `The angle finder on the straight edge along the back. A: ${angleText(reclineDeg)} from vertical, plus leans rearward.`,
    },
  ]
}

export const hipHeightFigure = (layout: Layout): readonly QuestionFigure[] => {
  const place = askedPlace(layout)
  const { hipPoint, hipHeightMm } = place.seat
  const hip = projected(hipPoint, 'side')
  const under = projected(vehiclePoint(drawnPose(place), pointMm(0, 0, -hipHeightMm)), 'side')
  return [
    figureOf({
      layout,
      elevation: 'side',
      caption: 'From the pressed-down cushion up to the hip point (A)',
      taped: [{ letter: 'A', valueMm: hipHeightMm, from: under, to: hip, way: 'straight', at: 0 }],
      focus: [...shell(layout, 'side'), point('hip', hip)],
    }),
  ]
}

export const slideFigure = (layout: Layout): readonly QuestionFigure[] => {
  const { hipPoint, slide } = askedPlace(layout).seat
  const hip = projected(hipPoint, 'side')
  const along = (byMm: number) => planePoint(hip.uMm + byMm, hip.vMm)
  return [
    figureOf({
      layout,
      elevation: 'side',
      caption: 'From where the seat is now forward (A) and rearward (B)',
      taped: [
        {
          letter: 'A',
          valueMm: slide.forwardMm,
          from: hip,
          to: along(-slide.forwardMm),
          way: 'level',
          at: hip.vMm + 120,
        },
        {
          letter: 'B',
          valueMm: slide.rearwardMm,
          from: hip,
          to: along(slide.rearwardMm),
          way: 'level',
          at: hip.vMm - 260,
        },
      ],
      focus: [...shell(layout, 'side'), point('hip', hip)],
    }),
  ]
}

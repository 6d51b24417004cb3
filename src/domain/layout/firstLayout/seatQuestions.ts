import { LIMITS, type NumberLimits } from '../document/limits'
import { withSeat } from '../edit/change'
import { movedHandle } from '../edit/move'
import type { Seat } from '../../straps/seat'
import { hipHeightFigure, reclineFigure, seatFigure, slideFigure } from './figure/seatFigures'
import { askedPlace } from './askedPlace'
import { type Ask, FROM_DATUM, numberAsk, type Question } from './question'
import { backMm, cushionMm, withBack, withCushion, withHipHeight, withRecline } from './seatTape'

/** A seat to start from, 1,060 mm behind and 158 mm above the datum. Starting values, our judgement: those of a new layout, rounded. */
const STARTING_BACK_MM = 1_060
const STARTING_CUSHION_MM = 158

export const seatQuestion: Question = {
  id: 'seat',
  title: 'Where is the seat?',
  how: 'Hold a straight edge along the face of the back and let it run down to the cushion. A: level, from the datum rearward to the straight edge, a hand’s breadth above the cushion, where the hips are. B: from the datum up to the cushion, pressed down as when somebody sits on it. C: from the datum sideways to the middle of the seat, to the right plus.',
  isAsked: () => true,
  asks: () => [
    numberAsk({
      id: 'seat.back',
      kind: 'length',
      words: 'Rearward to the face of the back',
      letter: 'A',
      limits: FROM_DATUM,
      read: backMm,
      write: withBack,
      derived: () => STARTING_BACK_MM,
    }),
    numberAsk({
      id: 'seat.cushion',
      kind: 'length',
      words: 'Up to the pressed-down cushion',
      letter: 'B',
      limits: FROM_DATUM,
      read: cushionMm,
      write: withCushion,
      derived: () => STARTING_CUSHION_MM,
    }),
    numberAsk({
      id: 'seat.middle',
      kind: 'length',
      words: 'Right to the seat’s middle (left: minus)',
      letter: 'C',
      limits: FROM_DATUM,
      read: (layout) => askedPlace(layout).seat.hipPoint.yMm,
      write: (layout, yMm) => movedHandle(layout, { kind: 'hip', placeId: askedPlace(layout).id }, { yMm }),
    }),
  ],
  figures: seatFigure,
}

/** A back that reclines keeps to its range; a fixed one may be at any recline. */
const reclineLimits = ({ reclineRange: { uprightDeg, reclinedDeg } }: Seat): NumberLimits =>
  uprightDeg === reclinedDeg ? LIMITS.reclineDeg : { min: uprightDeg, max: reclinedDeg, unit: '°' }

export const reclineQuestion: Question = {
  id: 'recline',
  title: 'How far does the back lean?',
  how: 'Lay the angle finder on the straight edge along the face of the back and read from vertical: 0° is upright, + leans rearward. The torso is taken to lie along the back.',
  isAsked: () => true,
  asks: (layout) => [
    numberAsk({
      id: 'seat.recline',
      kind: 'angle',
      words: 'Lean of the back from vertical',
      letter: 'A',
      limits: reclineLimits(askedPlace(layout).seat),
      read: (read) => askedPlace(read).seat.reclineDeg,
      write: withRecline,
    }),
  ],
  figures: reclineFigure,
}

export const hipHeightQuestion: Question = {
  id: 'hip-height',
  title: 'How high are the hips above the cushion?',
  how: 'The hip point is where the thigh turns in the hip: feel for the bony knob at the outside of the hip of somebody who sits in the seat, and measure from the pressed-down cushion up to it, along the back. In a firm bucket seat it is about 100 mm.',
  isAsked: () => true,
  asks: () => [
    numberAsk({
      id: 'seat.hip-height',
      kind: 'length',
      words: 'Hip point above the pressed-down cushion',
      letter: 'A',
      limits: LIMITS.hipHeightMm,
      read: (layout) => askedPlace(layout).seat.hipHeightMm,
      write: withHipHeight,
    }),
  ],
  figures: hipHeightFigure,
}

const slideAsk = (way: 'forwardMm' | 'rearwardMm', words: string, letter: string): Ask =>
  numberAsk({
    id: `seat.slide-${way === 'forwardMm' ? 'forward' : 'rearward'}`,
    kind: 'length',
    words,
    letter,
    limits: LIMITS.slideMm,
    read: (layout) => askedPlace(layout).seat.slide[way],
    write: (layout, mm) => {
      const { id, seat } = askedPlace(layout)
      return withSeat(layout, id, { slide: { ...seat.slide, [way]: mm } })
    },
  })

export const slideQuestion: Question = {
  id: 'slide',
  title: 'Does the seat slide?',
  how: 'Mark the runner where the seat is now, push the seat all the way and measure from the mark, each way. Bolted down: 0 and 0.',
  isAsked: () => true,
  asks: () => [
    slideAsk('forwardMm', 'Forward from here', 'A'),
    slideAsk('rearwardMm', 'Rearward from here', 'B'),
  ],
  figures: slideFigure,
}

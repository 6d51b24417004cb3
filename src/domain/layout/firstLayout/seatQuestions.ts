import { lengthWithUnit } from '../../units/length'
import { LIMITS, type NumberLimits } from '../document/limits'
import { withSeat } from '../edit/change'
import { movedHandle } from '../edit/move'
import type { Seat } from '../../straps/seat'
import { hipHeightFigure, reclineFigure, seatFigure, slideFigure } from './figure/seatFigures'
import { askedPlace } from './askedPlace'
import { type Ask, FROM_DATUM, numberAsk, type Question } from './question'
import {
  backMm,
  cushionMm,
  READ_ABOVE_CUSHION_MM,
  withBack,
  withCushion,
  withHipHeight,
  withRecline,
} from './seatTape'

/** A seat to start from, 1,060 mm behind and 158 mm above the datum. Starting values, our judgement: those of a new layout, rounded. */
const STARTING_BACK_MM = 1_060
const STARTING_CUSHION_MM = 158

export const seatQuestion: Question = {
  id: 'seat',
  title: 'Where is the seat?',
  how: 'Hold a straight edge along the face of the back, down to the cushion, and measure from the datum.',
  isAsked: () => true,
  asks: ({ units }) => [
    numberAsk({
      id: 'seat.back',
      kind: 'length',
      words: 'Rearward to the face of the back',
      hint: `Level, to the straight edge, a hand’s breadth (${lengthWithUnit(READ_ABOVE_CUSHION_MM, units.length)}) above the cushion.`,
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
      hint: 'Plumb, from the height of the datum; the cushion as when somebody sits on it.',
      letter: 'B',
      limits: FROM_DATUM,
      read: cushionMm,
      write: withCushion,
      derived: () => STARTING_CUSHION_MM,
    }),
    numberAsk({
      id: 'seat.middle',
      kind: 'length',
      words: 'Right to the seat’s middle',
      hint: 'Square across the car; to the left counts minus.',
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
  how: 'Lay the angle finder on the straight edge along the back. The torso is taken to lie along it.',
  isAsked: () => true,
  asks: (layout) => [
    numberAsk({
      id: 'seat.recline',
      kind: 'angle',
      words: 'Lean of the back from vertical',
      hint: '0° is upright, plus leans rearward.',
      letter: 'A',
      limits: reclineLimits(askedPlace(layout).seat),
      read: (read) => askedPlace(read).seat.reclineDeg,
      write: withRecline,
    }),
  ],
  figures: reclineFigure,
}

/** Said as a help to find the hip point. Source: public dummy models, 97–103 mm above the compressed cushion. */
const USUAL_HIP_HEIGHT_MM = 100

export const hipHeightQuestion: Question = {
  id: 'hip-height',
  title: 'How high are the hips above the cushion?',
  how: 'The hip point is where the thigh turns in the hip. Feel for the bony knob at the outside of the hip of somebody who sits there.',
  isAsked: () => true,
  asks: ({ units }) => [
    numberAsk({
      id: 'seat.hip-height',
      kind: 'length',
      words: 'Hip point above the pressed-down cushion',
      hint: `In line with the back; about ${lengthWithUnit(USUAL_HIP_HEIGHT_MM, units.length)} in a firm bucket seat.`,
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
  how: 'Mark the runner where the seat is now, push the seat all the way and measure from the mark. Bolted down: 0 and 0.',
  isAsked: () => true,
  asks: () => [
    slideAsk('forwardMm', 'Forward from here', 'A'),
    slideAsk('rearwardMm', 'Rearward from here', 'B'),
  ],
  figures: slideFigure,
}

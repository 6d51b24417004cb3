import { LIMITS, TEXT_LENGTHS } from '../document/limits'
import { withJob, withOccupant, withSettings } from '../edit/change'
import { personFigure } from './figure/personFigure'
import { datumFigure } from './figure/seatFigures'
import type { Occupant } from '../../body/occupant'
import type { Job, Layout } from '../document/layout'
import { askedPlace } from './askedPlace'
import { type Ask, choiceAsk, numberAsk, type Question, textAsk } from './question'

const jobText = (key: keyof Omit<Job, 'revisions'>, words: string): Ask =>
  textAsk({
    id: `job.${key}`,
    words,
    maxLength: TEXT_LENGTHS.name,
    read: ({ job }) => job[key],
    write: (layout, value) => withJob(layout, { [key]: value }),
  })

const lengthUnit = choiceAsk({
  id: 'job.length-unit',
  words: 'Lengths in',
  choices: [
    { value: 'mm', words: 'mm' },
    { value: 'in', words: 'inch' },
  ],
  read: ({ units }) => units.length,
  write: (layout, value) =>
    withSettings(layout, { units: { ...layout.units, length: value === 'in' ? 'in' : 'mm' } }),
})

const massUnit = choiceAsk({
  id: 'people.mass-unit',
  words: 'Body mass in',
  choices: [
    { value: 'kg', words: 'kg' },
    { value: 'lb', words: 'lb' },
  ],
  read: ({ units }) => units.mass,
  write: (layout, value) =>
    withSettings(layout, { units: { ...layout.units, mass: value === 'lb' ? 'lb' : 'kg' } }),
})

export const jobQuestion: Question = {
  id: 'job',
  title: 'What is this job?',
  how: 'These words go on the sheet for the weld shop. The unit is the one on your tape; it can be changed at any time.',
  isAsked: () => true,
  asks: () => [
    jobText('name', 'Job'),
    jobText('car', 'Car'),
    jobText('customer', 'Customer'),
    jobText('preparedBy', 'Prepared by'),
    lengthUnit,
  ],
  figures: () => [],
}

export const datumQuestion: Question = {
  id: 'datum',
  title: 'Where do you hook the tape?',
  how: 'One point that everything is measured from: the datum. Something hard that stays on the car, such as a tube crossing or a bolt, best in the middle of the car and ahead of the seat. Rearward, up and to the occupant’s right count plus.',
  isAsked: () => true,
  asks: () => [
    textAsk({
      id: 'datum.words',
      words: 'The datum, in words a welder can find it by',
      isLong: true,
      maxLength: TEXT_LENGTHS.name,
      read: ({ datum }) => datum,
      write: (layout, datum) => withSettings(layout, { datum }),
    }),
  ],
  figures: datumFigure,
}

const personAsk = (occupant: Occupant) => {
  const read = (layout: Layout): Occupant =>
    askedPlace(layout).occupants.find(({ id }) => id === occupant.id) ?? occupant
  const write = (layout: Layout, patch: Partial<Occupant>): Layout =>
    withOccupant(layout, askedPlace(layout).id, occupant.id, patch)
  return { read, write, id: (field: string): string => `people.${occupant.id}.${field}` }
}

const personAsks = (occupant: Occupant): readonly Ask[] => {
  const { read, write, id } = personAsk(occupant)
  return [
    textAsk({
      id: id('name'),
      words: 'Name',
      maxLength: TEXT_LENGTHS.name,
      read: (layout) => read(layout).name,
      write: (layout, name) => write(layout, { name }),
    }),
    choiceAsk({
      id: id('sex'),
      words: 'Sex in the survey',
      choices: [
        { value: 'female', words: 'Female' },
        { value: 'male', words: 'Male' },
      ],
      read: (layout) => read(layout).sex,
      write: (layout, value) => write(layout, { sex: value === 'female' ? 'female' : 'male' }),
    }),
    numberAsk({
      id: id('stature'),
      kind: 'length',
      words: 'Stature, without shoes',
      hint: 'Heels to a wall, a book flat on the head; to its underside.',
      letter: 'A',
      limits: LIMITS.statureMm,
      read: (layout) => read(layout).statureMm,
      write: (layout, statureMm) => write(layout, { statureMm }),
    }),
    numberAsk({
      id: id('mass'),
      kind: 'mass',
      words: 'Mass',
      limits: LIMITS.massKg,
      read: (layout) => read(layout).massKg,
      write: (layout, massKg) => write(layout, { massKg }),
    }),
  ]
}

export const peopleQuestion: Question = {
  id: 'people',
  title: 'Who sits there?',
  how: 'Everyone who will sit there, the smallest and the largest above all. Shoulders and hips are worked out from these three numbers; measure them on the person later, in the panel “People”.',
  isAsked: () => true,
  asks: (layout) => [...askedPlace(layout).occupants.flatMap(personAsks), massUnit],
  figures: personFigure,
}

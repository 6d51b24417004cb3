import type { Slot } from '../../straps/seat'
import { STRAP_FAMILIES, type StrapFamily, strapFamily, strapsOf } from '../../straps/strap'
import type { Layout, Place } from '../document/layout'
import type { NumberLimits } from '../document/limits'
import { freshId } from '../edit/change'
import { addSlot } from '../edit/changeSlots'
import { withPlaceChanged } from '../edit/replace'
import { crossedFace } from '../edit/startingSlot'
import { slotFigure } from './figure/slotFigure'
import { askedPlace } from './askedPlace'
import { type Ask, type Begun, choiceAsk, keptAsk, numberAsk, type Question, YES_NO } from './question'
import { backDepthMm } from './seatTape'

/** What is measured on a shell; our judgement: no shell is larger. */
const ON_SHELL: NumberLimits = { min: -500, max: 1_500, unit: 'mm' }
const APART: NumberLimits = { min: 0, max: 1_000, unit: 'mm' }

const familySlots = (place: Place, family: StrapFamily): readonly Slot[] =>
  place.seat.slots.filter(({ straps }) => straps.some((strap) => strapFamily(strap) === family))

const familyStraps = (place: Place, family: StrapFamily) =>
  strapsOf(place.belt).filter((strap) => strapFamily(strap) === family)

const withoutSlots = (layout: Layout, family: StrapFamily): Layout =>
  withPlaceChanged(layout, askedPlace(layout).id, (place) => ({
    ...place,
    seat: {
      ...place.seat,
      slots: place.seat.slots.flatMap((slot) => {
        const straps = slot.straps.filter((strap) => strapFamily(strap) !== family)
        return straps.length === 0 ? [] : [straps.length === slot.straps.length ? slot : { ...slot, straps }]
      }),
    },
  }))

/** A slot's centre counted up the torso line from the cushion, where a tape on the shell begins. */
const fromCushion = ({ seat }: Place, { centre }: Slot): Slot['centre'] => ({
  ...centre,
  zMm: centre.zMm + seat.hipHeightMm,
})

/** The slots of a family as the questions began with them, on the shell as it is now; empty in a fresh layout. */
const formerSlots = (layout: Layout, family: StrapFamily, { isFresh, base }: Begun): readonly Slot[] => {
  const { seat, belt } = askedPlace(layout)
  const straps = strapsOf(belt)
  const former = isFresh ? [] : familySlots(askedPlace(base), family)
  return former.every((slot) => slot.straps.every((strap) => straps.includes(strap)))
    ? former.map((slot) => {
        const centre = fromCushion(askedPlace(base), slot)
        return { ...slot, centre: { ...centre, zMm: centre.zMm - seat.hipHeightMm } }
      })
    : []
}

/** With slots for a family: as the questions began with them, else where such slots start. */
const withSlots = (layout: Layout, family: StrapFamily, begun: Begun): Layout => {
  const place = askedPlace(layout)
  const former = formerSlots(layout, family, begun)
  const kept = withPlaceChanged(layout, place.id, (changed) => ({
    ...changed,
    seat: {
      ...changed.seat,
      slots: former.reduce<readonly Slot[]>(
        (slots, slot) => [...slots, { ...slot, id: freshId('slot', slots) }],
        changed.seat.slots,
      ),
    },
  }))
  return familyStraps(place, family).reduce((made, strap) => addSlot(made, place.id, strap), kept)
}

const needsSlots = (layout: Layout, family: StrapFamily): boolean => {
  const bare = withoutSlots(layout, family)
  const place = askedPlace(bare)
  return familyStraps(place, family).some((strap) => crossedFace(bare, place, strap) !== null)
}

/** Finer than any tape: rounding of what is worked out, so that the same opening gives the same text. */
const TEXT_DECIMALS = 6

/** The openings of a family on the shell, as one text to compare and keep. */
const openings = (layout: Layout, family: StrapFamily): string => {
  const place = askedPlace(layout)
  const slots = familySlots(place, family).map(({ id: _id, ...slot }) => ({
    ...slot,
    centre: fromCushion(place, { ...slot, id: '' }),
  }))
  return JSON.stringify(slots, (_key, value: unknown) =>
    typeof value === 'number' ? Number(value.toFixed(TEXT_DECIMALS)) : value,
  )
}

/** The slots of a family with each centre changed. */
const withCentres = (layout: Layout, family: StrapFamily, change: (slot: Slot) => Slot['centre']): Layout =>
  withPlaceChanged(layout, askedPlace(layout).id, (place) => {
    const asked = familySlots(place, family)
    return {
      ...place,
      seat: {
        ...place.seat,
        slots: place.seat.slots.map((slot) =>
          asked.includes(slot) ? { ...slot, centre: change(slot) } : slot,
        ),
      },
    }
  })

const firstCentre = (layout: Layout, family: StrapFamily): Slot['centre'] =>
  familySlots(askedPlace(layout), family)[0]?.centre ?? { xMm: 0, yMm: 0, zMm: 0 }

const upAsk = (family: StrapFamily, words: string): Ask =>
  numberAsk({
    id: `slots.${family}-up`,
    kind: 'length',
    words,
    limits: ON_SHELL,
    read: (layout) => firstCentre(layout, family).zMm + askedPlace(layout).seat.hipHeightMm,
    write: (layout, mm) => {
      const byMm = mm - firstCentre(layout, family).zMm - askedPlace(layout).seat.hipHeightMm
      return withCentres(layout, family, ({ centre }) => ({ ...centre, zMm: centre.zMm + byMm }))
    },
  })

const aheadAsk = (family: StrapFamily, words: string): Ask =>
  numberAsk({
    id: `slots.${family}-ahead`,
    kind: 'length',
    words,
    limits: ON_SHELL,
    read: (layout) => backDepthMm(askedPlace(layout).seat) - firstCentre(layout, family).xMm,
    write: (layout, mm) => {
      const byMm = backDepthMm(askedPlace(layout).seat) - mm - firstCentre(layout, family).xMm
      return withCentres(layout, family, ({ centre }) => ({ ...centre, xMm: centre.xMm + byMm }))
    },
  })

const apartAsk = (family: StrapFamily): Ask =>
  numberAsk({
    id: `slots.${family}-apart`,
    kind: 'length',
    words: 'Between the middles of the two slots',
    limits: APART,
    read: (layout) => 2 * Math.abs(firstCentre(layout, family).yMm),
    write: (layout, mm) =>
      withCentres(layout, family, ({ centre }) => ({
        ...centre,
        yMm: centre.yMm === 0 ? 0 : (Math.sign(centre.yMm) * mm) / 2,
      })),
  })

const MEASURED: Readonly<Record<StrapFamily, (hasPair: boolean) => readonly Ask[]>> = {
  shoulder: (hasPair) => [
    upAsk('shoulder', 'Up the back from the cushion to their middle'),
    ...(hasPair ? [apartAsk('shoulder')] : []),
  ],
  lap: () => [
    aheadAsk('lap', 'Ahead of the face of the back'),
    upAsk('lap', 'Up from the cushion to their middle'),
  ],
  sub: (hasPair) => [aheadAsk('sub', 'Ahead of the face of the back'), ...(hasPair ? [apartAsk('sub')] : [])],
}

const FAMILY_WORDS: Readonly<Record<StrapFamily, string>> = {
  shoulder: 'The shoulder straps pass slots in the back',
  lap: 'The lap straps pass slots in the sides',
  sub: 'The straps between the legs pass slots in the cushion',
}

/** What somebody measured or changed of slots says that there are some, whatever the drawn straps would need. */
const OPENING_FIELDS = ['openings', 'up', 'ahead', 'apart'] as const

const familyAsks = (layout: Layout, family: StrapFamily, begun: Begun): readonly Ask[] => {
  const place = askedPlace(layout)
  if (familyStraps(place, family).length === 0) return []
  const slots = familySlots(place, family)
  const hasPair = slots.filter(({ centre }) => centre.yMm !== 0).length > 1
  const pass = choiceAsk({
    id: `slots.${family}`,
    words: FAMILY_WORDS[family],
    choices: YES_NO,
    read: (read) => (familySlots(askedPlace(read), family).length > 0 ? 'yes' : 'no'),
    write: (write, value) =>
      value === 'yes' ? withSlots(write, family, begun) : withoutSlots(write, family),
    derived: (read) => (needsSlots(read, family) ? 'yes' : 'no'),
    implied: { by: OPENING_FIELDS.map((field) => `slots.${family}-${field}`), answer: 'yes' },
  })
  return slots.length === 0 ? [pass] : [pass, openingsAsk(family, begun), ...MEASURED[family](hasPair)]
}

/** Where slots start follows the straps until somebody says where they are. */
const openingsAsk = (family: StrapFamily, begun: Begun): Ask =>
  keptAsk({
    id: `slots.${family}-openings`,
    read: (layout) => openings(layout, family),
    write: (layout, wanted) =>
      openings(started(layout, family, begun), family) === wanted ? started(layout, family, begun) : layout,
    derived: (layout) => openings(started(layout, family, begun), family),
  })

const started = (layout: Layout, family: StrapFamily, begun: Begun): Layout =>
  withSlots(withoutSlots(layout, family), family, begun)

export const slotQuestion: Question = {
  id: 'slots',
  title: 'Does the shell have slots?',
  how: 'Openings in the seat that straps are led through. Measure on the shell itself. Where the drawn straps would cut through the shell, slots are put to start with.',
  isAsked: () => true,
  asks: (layout, begun) => STRAP_FAMILIES.flatMap((family) => familyAsks(layout, family, begun)),
  figures: slotFigure,
}

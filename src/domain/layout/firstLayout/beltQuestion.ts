import { ARRANGEMENTS, type Arrangement, type Belt, strapsOf } from '../../straps/strap'
import type { StrapFamily } from '../../straps/strap'
import type { Layout } from '../document/layout'
import { LIMITS } from '../document/limits'
import { withBelt } from '../edit/changeBelt'
import { withPlaceChanged } from '../edit/replace'
import { beltFigure } from './figure/beltFigure'
import { askedPlace } from './askedPlace'
import { type Ask, choiceAsk, numberAsk, type Question, YES_NO } from './question'

const ARRANGEMENT_WORDS: Readonly<Record<Arrangement, string>> = {
  3: '3 points: one shoulder strap',
  4: '4 points: two shoulder straps',
  5: '5 points: one between the legs',
  6: '6 points: two between the legs',
  7: '7 points: three between the legs',
}

/** Another arrangement: anchors and slots of straps that it does not have go. */
const withArrangement = (layout: Layout, arrangement: Arrangement): Layout => {
  const { id } = askedPlace(layout)
  return withPlaceChanged(withBelt(layout, id, { arrangement }), id, (place) => {
    const straps = strapsOf(place.belt)
    const slots = place.seat.slots.flatMap((slot) => {
      const left = slot.straps.filter((strap) => straps.includes(strap))
      return left.length === 0 ? [] : [left.length === slot.straps.length ? slot : { ...slot, straps: left }]
    })
    return {
      ...place,
      anchors: place.anchors.filter(({ strap }) => straps.includes(strap)),
      seat: { ...place.seat, slots },
    }
  })
}

const beltOf = (layout: Layout): Belt => askedPlace(layout).belt

const webbing = (family: StrapFamily, words: string): Ask =>
  numberAsk({
    id: `belt.webbing-${family}`,
    kind: 'length',
    words,
    limits: LIMITS.webbingMm,
    read: (layout) => beltOf(layout).webbingMm[family],
    write: (layout, mm) =>
      withBelt(layout, askedPlace(layout).id, {
        webbingMm: { ...beltOf(layout).webbingMm, [family]: mm },
      }),
  })

export const beltQuestion: Question = {
  id: 'belt',
  title: 'Which belt?',
  how: 'Count the straps that meet at the buckle. The width is that of the webbing, without stitching or pads; look at the label if there is one.',
  isAsked: () => true,
  asks: (layout) => [
    choiceAsk({
      id: 'belt.arrangement',
      words: 'Arrangement',
      isList: true,
      choices: ARRANGEMENTS.map((each) => ({ value: String(each), words: ARRANGEMENT_WORDS[each] })),
      read: (read) => String(beltOf(read).arrangement),
      write: (write, value) => {
        const arrangement = ARRANGEMENTS.find((each) => String(each) === value)
        return arrangement === undefined ? write : withArrangement(write, arrangement)
      },
    }),
    webbing('shoulder', 'Shoulder webbing, width'),
    webbing('lap', 'Lap webbing, width'),
    ...(beltOf(layout).arrangement > 4 ? [webbing('sub', 'Webbing between the legs, width')] : []),
    choiceAsk({
      id: 'belt.restraint',
      words: 'Head-and-neck restraint worn',
      choices: YES_NO,
      read: (read) => (beltOf(read).headAndNeckRestraint ? 'yes' : 'no'),
      write: (write, value) =>
        withBelt(write, askedPlace(write).id, { headAndNeckRestraint: value === 'yes' }),
    }),
  ],
  figures: beltFigure,
}

import { limitRule, propertyRule } from './making'
import type { Rule } from '../rule'
import { ownSource } from './workshopSource'

const NAMES = { shoulder: 'shoulder', lap: 'lap', sub: 'thigh strap' } as const

/**
 * What no rule book says because it goes without saying, and without which a drawing that cannot be built would break nothing. All
 * limits are our judgement.
 */
export const WORKSHOP_PLAUSIBLE_RULES: readonly Rule[] = [
  limitRule({
    id: 'workshop-clear-of-person',
    orders: 'should',
    source: ownSource('room for the person'),
    says: 'No tube is where the person is: 0 mm or more between every tube and pelvis, belly, chest, shoulders and thighs, and the straps on them.',
    why: 'A tube in the person is a mistake in the drawing, or a car that nobody fits in; one that is close is hit first.',
    caveat:
      'The 0 mm only says that nothing overlaps, at rest; leave what a body needs that moves in its belts. Arms, shanks, hands on a wheel and padding are not looked at.',
    quantity: 'body-clearance',
    min: 0,
  }),
  ...(
    [
      ['tab', 'The hole of a tab, clevis or insert', 'a tab'],
      ['eye', 'The eye of an eye bolt', 'an eye bolt'],
    ] as const
  ).map(([mount, what, made]) =>
    propertyRule({
      id: `workshop-${mount}-at-tube`,
      orders: 'advice',
      source: ownSource('tabs on tubes'),
      when: { mount },
      says: `${what} on a tube lies 0 mm to 150 mm from the outside of that tube.`,
      why: 'Further away it is fixed to another tube than was typed, or has a long lever that bends it; inside the tube there is no room for it.',
      caveat: `The 150 mm are ours: no rule book that was read limits how far ${made} reaches.`,
      property: 'tab-to-tube',
      min: 0,
      max: 150,
    }),
  ),
  ...(['shoulder', 'lap', 'sub'] as const).map((family) =>
    limitRule({
      id: `workshop-${family}-pair-alike`,
      orders: 'advice',
      source: ownSource('left and right alike'),
      says: `The left and the right ${NAMES[family]} anchor lie within 10 mm of each other fore and aft and in height together.`,
      why: 'From unequal anchors one strap takes up the load before the other, and the body turns.',
      caveat:
        'The 10 mm are ours: twice a weld and measuring error of 5 mm. No rule book that was read limits it; a seat that stands askew may ask for more.',
      ...(family === 'sub' ? { when: { arrangements: [6, 7] } } : {}),
      quantity: `${family}-mirror`,
      family,
      max: 10,
    }),
  ),
]

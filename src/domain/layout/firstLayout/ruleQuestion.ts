import { ruleSetsOf } from '../document/ruleSetOf'
import type { Layout } from '../document/layout'
import { withSettings } from '../edit/change'
import { withPlaceChanged } from '../edit/replace'
import { turnedAlongPull } from '../edit/startingMount'
import { strapsOf } from '../../straps/strap'
import { askedPlace } from './askedPlace'
import { choiceAsk, keptAsk, type Question } from './question'

/** Nearer than this a tab counts as turned along its strap, degrees: rounding, not a tolerance. */
const SAME_TURN_DEG = 1e-6

/**
 * Tabs turned along their straps. They are stood fore-and-aft first: where a strap has no path at all a tab keeps its turn, and the
 * turn must not tell where the tab was before.
 */
const turned = (layout: Layout): Layout =>
  withPlaceChanged(layout, askedPlace(layout).id, (place) => {
    const upright = place.anchors.map((anchor) =>
      anchor.mount.kind === 'tab'
        ? { ...anchor, mount: { ...anchor.mount, planDeg: 0, leanDeg: 0 } }
        : anchor,
    )
    return turnedAlongPull(layout, { ...place, anchors: upright }, strapsOf(place.belt))
  })

const turns = (layout: Layout): readonly number[] =>
  askedPlace(layout).anchors.flatMap(({ mount }) =>
    mount.kind === 'tab' ? [mount.planDeg, mount.leanDeg] : [],
  )

const isAlongPull = (layout: Layout): boolean => {
  const wanted = turns(turned(layout))
  return turns(layout).every((deg, index) => Math.abs(deg - (wanted[index] ?? deg)) <= SAME_TURN_DEG)
}

export const ruleQuestion: Question = {
  id: 'rules',
  title: 'Which rules do you check against?',
  how: 'Choose the rule book of your event, or the workshop’s usual practice. Every figure says where it comes from. It can be changed at any time, and “All rule sets” compares them.',
  isAsked: () => true,
  asks: (layout) => [
    choiceAsk({
      id: 'rules.set',
      words: 'Rule set',
      isList: true,
      choices: ruleSetsOf(layout).map(({ id, name, group }) => ({ value: id, words: name, group })),
      read: ({ ruleSetId }) => ruleSetId,
      write: (write, ruleSetId) => withSettings(write, { ruleSetId }),
    }),
    keptAsk({
      id: 'tabs.turn',
      read: (read) => (isAlongPull(read) ? 'along' : 'own'),
      write: (write, value) => (value === 'along' ? turned(write) : write),
      derived: () => 'along',
    }),
  ],
  figures: () => [],
}

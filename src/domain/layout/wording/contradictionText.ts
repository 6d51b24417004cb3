import type { Contradiction } from '../../rules/finding'
import type { Layout } from '../document/layout'
import { ruleOf } from '../document/ruleSetOf'
import { limitText } from './amounts'
import { anchorName, sittingNameUnder } from './names'
import { quantityName } from './quantities'

const demandText = ({ ruleId, sittingId }: Contradiction['rules'][number], layout: Layout): string => {
  const rule = ruleOf(layout, ruleId)
  const who = sittingNameUnder(ruleId, sittingId, layout)
  if (rule?.kind !== 'quantity') return who
  const limit = limitText(rule.quantity, { min: rule.min, max: rule.max, wanted: null }, layout.units.length)
  return `${quantityName(rule.quantity)} ${limit} (${who})`
}

/** Which rules and sittings contradict each other about one anchor, as one plain sentence. */
export const contradictionText = ({ anchorId, rules }: Contradiction, layout: Layout): string => {
  const anchor = layout.places.flatMap(({ anchors }) => anchors).find(({ id }) => id === anchorId)
  const name = anchor === undefined ? `anchor ${anchorId}` : `the ${anchorName(anchor)}`
  const demands = rules.map((demand) => demandText(demand, layout)).join('; ')
  return rules.length === 1
    ? `No place for ${name}, with everything else as drawn, gives this: ${demands}.`
    : `No place for ${name}, with everything else as drawn, gives all of these at once, and only one of them has to give way: ${demands}.`
}

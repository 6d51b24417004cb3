import type { RuleSet, RuleSource } from '../rule'
import { limitRule, statedRule } from './making'
import { REASON } from './reasons'

const r14 = (): RuleSource => ({
  document: 'UN Regulation 14',
  section: '5.4.2.1',
  edition: 'edition not recorded',
  status: 'memory',
  phrase: null,
})

/** Front seats of cars. Source: UN R14, from memory. */
export const UN_R14_RULES: RuleSet = {
  id: 'un-r14-front',
  name: 'UN R14, front seats of cars',
  edition: 'edition not recorded',
  group: 'Road vehicles',
  about: 'Lap angles and loads for front seats of cars, from memory.',
  rules: [
    limitRule({
      id: 'un-r14-lap',
      orders: 'must',
      source: r14(),
      says: 'The lap strap stands at 30° to 80°.',
      why: REASON.lapAngle,
      caveat:
        'On the buckle side of a 3-point belt 45–80°; a harness with its buckle in the middle has no such side.',
      quantity: 'lap-angle',
      family: 'lap',
      min: 30,
      max: 80,
    }),
    ...(
      [
        ['left', 'lap-right'],
        ['right', 'lap-left'],
      ] as const
    ).map(([diagonal, buckleSide]) =>
      limitRule({
        id: `un-r14-buckle-side-${diagonal}`,
        orders: 'must',
        source: r14(),
        when: { arrangements: [3], diagonal, straps: [buckleSide] },
        says: `With a 3-point belt over the ${diagonal} shoulder, the lap strap on the buckle’s side stands at 45° to 80°.`,
        why: REASON.lapAngle,
        quantity: 'lap-angle',
        family: 'lap',
        min: 45,
        max: 80,
      }),
    ),
    statedRule({
      id: 'un-r14-loads',
      orders: 'must',
      source: { ...r14(), section: '6.3–6.4' },
      says: 'Torso and lap anchorages hold 1,350 ± 20 daN each, lap-only ones 2,225 ± 20 daN.',
      why: REASON.strength,
      caveat: 'Strength is not checked here.',
    }),
  ],
}

/** Kit cars for the road. Source: UK IVA inspection manual, section 31, as quoted in two kit-car forums. */
export const UK_IVA_RULES: RuleSet = {
  id: 'uk-iva-31',
  name: 'UK kit cars, IVA section 31',
  edition: 'edition not recorded',
  group: 'Road vehicles',
  about: 'The inspection of kit cars for the road, quoted second-hand.',
  rules: [
    limitRule({
      id: 'uk-iva-upper-height',
      orders: 'must',
      source: {
        document: 'UK IVA inspection manual',
        section: 'section 31',
        edition: 'edition not recorded',
        status: 'second-hand',
        phrase: 'at least 450mm above the reference point',
      },
      says: 'The effective upper anchorage of a harness or 3-point belt is at least 450 mm above the reference point.',
      why: REASON.shoulderHeight,
      caveat:
        'The inspection measures from a block laid on the seat; the hip point stands in for it. A guide in the seat back becomes the effective anchorage and must then be structural.',
      quantity: 'shoulder-above-hip',
      family: 'shoulder',
      min: 450,
    }),
  ],
}

import * as v from 'valibot'

import { PROPERTY_IDS } from '../../rules/rule'
import { QUANTITY_IDS } from '../../straps/quantity'
import { MOUNT_KINDS } from '../../straps/anchor'
import { ARRANGEMENTS, STRAP_IDS } from '../../straps/strap'
import { COUNTS, LIMITS, TEXT_LENGTHS } from './limits'
import { choice, flag, group, id, limitedNumber, list, text } from './schemaParts'

/*
 * What a layout file holds about rule sets of the builder's own.
 */

const level = (title: string, description = '') => choice(['must', 'should', 'advice'], title, description)

const source = group(
  {
    document: text('document', 'Or, for a limit of your own, who asks for it.'),
    section: text('section'),
    edition: text('edition'),
    status: choice(
      ['read', 'second-hand', 'memory', 'common-practice', 'judgement', 'own'],
      'status',
      'How the figure reached you.',
    ),
    phrase: v.nullable(text('phrase', 'The words that carry the number; null where there are none.')),
  },
  'source',
)

const condition = group(
  {
    reclineAtMostDeg: v.exactOptional(limitedNumber(LIMITS.reclineDeg, 'recline at most')),
    reclineAboveDeg: v.exactOptional(limitedNumber(LIMITS.reclineDeg, 'recline above')),
    headAndNeckRestraint: v.exactOptional(flag('head-and-neck restraint')),
    arrangements: v.exactOptional(
      list(choice(ARRANGEMENTS, 'arrangement'), COUNTS.arrangements, 'arrangements'),
    ),
    thighStraps: v.exactOptional(choice(['rearward', 'under-thighs'], 'thigh straps')),
    diagonal: v.exactOptional(choice(['left', 'right'], 'diagonal')),
    seatAdjustable: v.exactOptional(flag('seat adjustable')),
    mount: v.exactOptional(choice(MOUNT_KINDS, 'mount')),
    tube: v.exactOptional(choice(['cage', 'harness-bar', 'floor'], 'tube of the anchor')),
    straps: v.exactOptional(list(choice(STRAP_IDS, 'strap'), COUNTS.slotStraps, 'straps')),
    dusty: v.exactOptional(flag('dusty')),
  },
  'when it speaks',
  'Every given condition must hold; none means always.',
)

const said = {
  id: id('id'),
  level: level('level'),
  confirmedLevel: v.exactOptional(
    level('confirmed level', 'Taken once the document is among the confirmed ones.'),
  ),
  source,
  when: condition,
  says: text('what it says', '', TEXT_LENGTHS.notes),
  why: text('why', '', TEXT_LENGTHS.notes),
  caveat: v.nullable(text('caveat', '', TEXT_LENGTHS.notes)),
}

const limits = {
  family: v.nullable(choice(['shoulder', 'lap', 'sub'], 'family')),
  min: v.nullable(limitedNumber(LIMITS.ruleLimit, 'least', 'In the unit of what is measured: mm or °.')),
  max: v.nullable(limitedNumber(LIMITS.ruleLimit, 'most', 'In the unit of what is measured: mm or °.')),
}

const kind = <const Kind extends string>(name: Kind) => v.pipe(v.literal(name), v.title('kind'))

const rule = v.pipe(
  v.variant('kind', [
    group(
      { kind: kind('quantity'), ...said, quantity: choice(QUANTITY_IDS, 'quantity'), ...limits },
      'rule',
      'A limit on something computed.',
    ),
    group(
      {
        kind: kind('property'),
        ...said,
        property: choice(PROPERTY_IDS, 'property'),
        ...limits,
        wanted: v.nullable(list(text('word'), COUNTS.wantedWords, 'wanted words')),
      },
      'rule',
      'A limit on something typed.',
    ),
    group({ kind: kind('stated'), ...said }, 'rule', 'Printed and not checked.'),
  ]),
  v.title('rule'),
)

const ownRuleSet = group(
  {
    id: id('id'),
    name: text('name'),
    edition: text('edition'),
    group: choice(['Own'], 'group'),
    about: text('about', '', TEXT_LENGTHS.notes),
    rules: list(rule, COUNTS.rules, 'rules'),
  },
  'rule set',
)

export const ownRuleSets = list(
  ownRuleSet,
  COUNTS.ownRuleSets,
  'own rule sets',
  'Rule sets of your own, beside those of the program; left out when there are none.',
)

export const confirmedDocuments = list(
  text('document'),
  COUNTS.confirmedDocuments,
  'confirmed documents',
  'Documents that you have and have looked up, as "document, edition": rules known only from memory or second-hand then count at the level the document gives them.',
)

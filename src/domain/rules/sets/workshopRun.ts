import type { Rule } from '../rule'
import { REASON } from './reasons'
import { tradeSource } from './workshopSource'

const ADJUSTER_WHY = 'There it cannot be pulled, and under load it is pressed open or into the wearer.'

/** What has to stay clear along a strap and beside it. */
const CLEARANCES: readonly Rule[] = [
  {
    kind: 'quantity',
    id: 'workshop-adjuster-clear',
    level: 'should',
    source: tradeSource('adjusters'),
    when: {},
    says: 'The body of an adjuster is clear of seat slots, rim, hip and buckle: 0 mm or more between them.',
    why: ADJUSTER_WHY,
    caveat:
      'The 0 mm only says that nothing overlaps; leave what the hand needs. Everybody who sits there pulls the strap to another length, so look at every sitting.',
    quantity: 'adjuster-clearance',
    family: null,
    min: 0,
    max: null,
  },
  {
    kind: 'quantity',
    id: 'workshop-clear-of-tubes',
    level: 'should',
    source: tradeSource('straps run free'),
    when: {},
    says: 'A strap runs clear of every tube but its own: 0 mm or more between its middle line and the tube.',
    why: 'A strap that a tube bends straightens under load, gives slack when it is needed least, and chafes.',
    caveat:
      'The 0 mm is the drawn line against the drawn tube; webbing has width and tubes have welds, so leave more than that. A strap led round a tube on purpose is not drawn so by the tool.',
    quantity: 'tube-clearance',
    family: null,
    min: 0,
    max: null,
  },
  {
    kind: 'quantity',
    id: 'workshop-eye-in-line',
    level: 'advice',
    source: {
      document: 'NZ Speedway rule book',
      section: 'mounts',
      edition: '2010',
      status: 'read',
      phrase: null,
    },
    when: { mount: 'eye' },
    says: 'An eye bolt is in line with the strap, within 5°.',
    why: REASON.eye,
    caveat:
      'A rule of another sport’s rule book, here as advice; the 5° is our tolerance, and the line is that of the shank.',
    quantity: 'shank-angle',
    family: null,
    min: null,
    max: 5,
  },
]

/** What the trade says and the tool cannot check from the drawing, so that silence is not taken for approval. */
const STATED: readonly Rule[] = [
  {
    kind: 'stated',
    id: 'workshop-lap-alone',
    level: 'should',
    source: tradeSource('lap strap lies right by itself'),
    when: {},
    says: 'Tightened alone, with nothing else fastened, the lap strap already lies across the hip bones and straight back to its tabs.',
    why: 'The other straps must never be what pulls it into place.',
    caveat: null,
  },
  {
    kind: 'stated',
    id: 'workshop-shoulder-not-low',
    level: 'should',
    source: tradeSource('low shoulder anchors'),
    when: {},
    says: 'Tightening the shoulder straps must not pull the wearer down and forward or open a gap behind the helmet.',
    why: 'That is the spine being loaded; compare the spine load share of two layouts, the lower the better.',
    caveat: 'The trade gives no figure for it.',
  },
  {
    kind: 'stated',
    id: 'workshop-short-webbing',
    level: 'should',
    source: tradeSource('free webbing'),
    when: {},
    says: 'Free webbing behind the shoulders is kept short.',
    why: 'Stretch grows with length, and stretch is how far head and chest travel.',
    caveat:
      'Published limits run opposite ways: at most 250 mm behind the seat (NZ Speedway 2010, read), at least 508 mm along the belt where the seat gives no lateral restraint (a US club rule, quoted second-hand).',
  },
  {
    kind: 'stated',
    id: 'workshop-free-ends',
    level: 'should',
    source: tradeSource('tab ends turn with the strap'),
    when: { mount: 'tab' },
    says: 'Every tab end can turn with the strap as the wearer moves, on a shoulder bolt or a sleeve.',
    why: 'An end that is clamped fast loads one edge of the strap, which starts to tear and goes on.',
    caveat: null,
  },
  {
    kind: 'stated',
    id: 'workshop-adjuster-place',
    level: 'should',
    source: tradeSource('adjusters'),
    when: {},
    says: 'No adjuster lies in a seat slot or under the hip.',
    why: ADJUSTER_WHY,
    caveat: 'Checked once the place of the adjuster is typed under Belt; until then look on the car.',
  },
  {
    kind: 'stated',
    id: 'workshop-three-bar-slide',
    level: 'should',
    source: tradeSource('wraps on the harness bar'),
    when: { mount: 'wrap' },
    says: 'A wrapped strap is secured with a three-bar slide, the webbing woven back through it.',
    why: 'Webbing that goes through once can creep out under load.',
    caveat: null,
  },
  {
    kind: 'stated',
    id: 'workshop-forged-hardware',
    level: 'advice',
    source: tradeSource('hardware'),
    when: {},
    says: 'Forged hardware is preferred over stamped.',
    why: 'Stamped fittings bend and crack earlier.',
    caveat: null,
  },
  {
    kind: 'stated',
    id: 'workshop-comfort',
    level: 'advice',
    source: tradeSource('comfort'),
    when: {},
    says: 'A right layout feels comfortable to every person who sits there.',
    why: 'Discomfort means that something is mounted wrong.',
    caveat: null,
  },
]

/** The part of workshop practice about what a strap runs clear of, and what cannot be checked. Source: common practice, no source. */
export const WORKSHOP_RUN_RULES: readonly Rule[] = [...CLEARANCES, ...STATED]

import { readFileSync } from 'node:fs'
import type { Occupant } from '../../src/domain/body/occupant'
import type { Layout } from '../../src/domain/layout/document/layout'
import { parseLayoutText } from '../../src/domain/layout/document/parseLayout'
import { ruleSetOf } from '../../src/domain/layout/document/ruleSetOf'
import { zoneCases } from '../../src/domain/layout/evaluate/ruleContexts'
import { solvedSittings } from '../../src/domain/layout/evaluate/solvedSittings'
import { solvePlace } from '../../src/domain/straps/solve'
import { ruleRoomMm } from '../../src/domain/zones/room'
import { anchorZone } from '../../src/domain/zones/ruleRegion'
import { quantile } from './pairedRatio'

// `npx tsx tests/bench/zones.bench.ts`: what the zones of all anchors of a place in 12 sittings, and all rooms, cost as a ratio to
// solving the place in all 12 sittings once; processor time of one process, and milliseconds for information.

const ROUNDS = 1

const example = (): Layout => {
  const parsed = parseLayoutText(readFileSync('public/examples/rock-buggy.layout.json', 'utf8'))
  if (!parsed.ok) throw new Error('the example does not parse')
  return parsed.value
}

/** Four people of nearly one size on a seat that slides a little: sittings that leave the anchors a place. */
const inTwelveSittings = (layout: Layout): Layout => {
  const [place] = layout.places
  if (place === undefined) throw new Error('no place')
  const occupants = Array.from({ length: 4 }, (_, index): Occupant => ({
    id: `person-${index}`,
    name: `Person ${index}`,
    sex: index % 2 === 0 ? 'female' : 'male',
    statureMm: 1720 + 12 * index,
    massKg: 72 + 2 * index,
    measured: {},
  }))
  const { reclineDeg } = place.seat
  const seat = {
    ...place.seat,
    slide: { forwardMm: 8, rearwardMm: 8 },
    reclineRange: { uprightDeg: reclineDeg, reclinedDeg: reclineDeg },
  }
  return { ...layout, places: [{ ...place, seat, occupants }] }
}

const layout = inTwelveSittings(example())
const [place] = layout.places
const ruleSet = ruleSetOf(layout)
if (place === undefined || ruleSet === null) throw new Error('no place or no rule set')
const rules = ruleSet.rules.flatMap((rule) => (rule.kind === 'quantity' ? [rule] : []))
const sittings = solvedSittings(layout, place)

let pieces = 0

const userMs = (work: () => void): number => {
  const before = process.cpuUsage().user
  work()
  return (process.cpuUsage().user - before) / 1000
}

const rounds = Array.from({ length: ROUNDS + 1 }, () => {
  const solvedMs = userMs(() => {
    for (const { scene } of sittings) solvePlace(scene)
  })
  // Fresh cases each time, so that nothing is remembered; rooms first, as when something is dragged.
  const cases = [...zoneCases(layout, place, sittings).values()]
  const roomsMs = userMs(() => {
    for (const zoneCase of cases) for (const rule of rules) ruleRoomMm(rule, zoneCase)
  })
  const zonesMs = userMs(() => {
    // Each plane is worked out when it is asked for.
    for (const zoneCase of cases) {
      const { side, top } = anchorZone(rules, zoneCase)
      pieces += side.length + top.length
    }
  })
  return { solvedMs, roomsMs, zonesMs }
}).slice(1)

console.log(`${pieces / (ROUNDS + 1)} pieces of zones`)
for (const what of ['roomsMs', 'zonesMs'] as const) {
  const median = quantile(
    rounds.map((round) => round[what]),
    0.5,
  )
  const ratio = quantile(
    rounds.map((round) => round[what] / Math.max(round.solvedMs, 0.01)),
    0.5,
  )
  console.log(
    `${sittings.length} sittings, ${what}: ${ratio.toFixed(0)} × all sittings solved once, ${median.toFixed(0)} ms`,
  )
}

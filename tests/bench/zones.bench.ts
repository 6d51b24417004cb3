import { readFileSync } from 'node:fs'
import type { Occupant } from '../../src/domain/body/occupant'
import type { Layout } from '../../src/domain/layout/document/layout'
import { parseLayoutText } from '../../src/domain/layout/document/parseLayout'
import { ruleSetOf } from '../../src/domain/layout/document/ruleSetOf'
import { zoneCases } from '../../src/domain/layout/evaluate/ruleContexts'
import { solvedSittings } from '../../src/domain/layout/evaluate/solvedSittings'
import { solvePlace } from '../../src/domain/straps/solve'
import type { Limit } from '../../src/domain/zones/limit'
import { casePlane } from '../../src/domain/zones/caseFields'
import { ruleRoomMm } from '../../src/domain/zones/room'
import { anchorZone } from '../../src/domain/zones/ruleRegion'
import type { ZoneCase } from '../../src/domain/zones/zone'
import { quantile } from './pairedRatio'

// `npx tsx tests/bench/zones.bench.ts`: what the zones of all anchors of a place in 12 sittings, and all rooms, cost as a ratio to
// solving the place in all 12 sittings once; processor time of one process, and milliseconds for information. The straps solved are
// counted: that number is the same on every machine, however busy.

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

/** Straps solved: at corners of triangles, and between them where a limit was followed. */
interface Solutions {
  corners: number
  between: number
}

/** Counts the straps that a case has solved from now on. A pair is two. */
const counted = (zoneCase: ZoneCase): Solutions => {
  const solutions: Solutions = { corners: 0, between: 0 }
  const straps = (of: Limit['of']): number => (of === 'pair' ? 2 : 1)
  for (const elevation of ['side', 'top'] as const)
    for (const { field } of casePlane(zoneCase, elevation).asked.values()) {
      const { answerAt, marginAt } = field
      Object.assign(field, {
        answerAt: (...[of, at]: Parameters<typeof answerAt>) => {
          solutions.corners += straps(of)
          return answerAt(of, at)
        },
        marginAt: (...[limit, at]: Parameters<typeof marginAt>) => {
          solutions.between += straps(limit.of)
          return marginAt(limit, at)
        },
      })
    }
  return solutions
}

const sum = (all: readonly Solutions[]): Solutions => ({
  corners: all.reduce((total, { corners }) => total + corners, 0),
  between: all.reduce((total, { between }) => total + between, 0),
})

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
  const solutions = cases.map(counted)
  const roomsMs = userMs(() => {
    for (const zoneCase of cases) for (const rule of rules) ruleRoomMm(rule, zoneCase)
  })
  const inRooms = sum(solutions)
  const zonesMs = userMs(() => {
    // Each plane is worked out when it is asked for.
    for (const zoneCase of cases) {
      const { side, top } = anchorZone(rules, zoneCase)
      pieces += side.length + top.length
    }
  })
  return { solvedMs, roomsMs, zonesMs, inRooms, inAll: sum(solutions) }
}).slice(1)

console.log(`${pieces / (ROUNDS + 1)} pieces of zones`)
for (const { inRooms, inAll } of rounds) {
  console.log(`straps solved for rooms: ${inRooms.corners} at corners, ${inRooms.between} between`)
  console.log(
    `for zones after them: ${inAll.corners - inRooms.corners} at corners, ${inAll.between - inRooms.between} between`,
  )
}
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

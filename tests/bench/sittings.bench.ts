import { readFileSync } from 'node:fs'
import type { Occupant } from '../../src/domain/body/occupant'
import type { Layout } from '../../src/domain/layout/document/layout'
import { parseLayoutText } from '../../src/domain/layout/document/parseLayout'
import { evaluateLayout } from '../../src/domain/layout/evaluate/evaluateLayout'
import { solvedSittings } from '../../src/domain/layout/evaluate/solvedSittings'
import { quantile } from './pairedRatio'

// `npx tsx tests/bench/sittings.bench.ts`: what one sitting costs where there are 1, 10, 100 and 1,000 of them, as a ratio to what it
// costs where there are 10; in turn in one run, by processor time, so that a busy machine falls on all alike. Flat is 1.

const ROUNDS = 7
const COUNTS = [1, 10, 100, 1000] as const
const BASE = 10

const parsed = parseLayoutText(readFileSync('public/examples/rock-buggy.layout.json', 'utf8'))
if (!parsed.ok) throw new Error('the example does not parse')
const example: Layout = parsed.value

const person = (index: number): Occupant => ({
  id: `person-${index}`,
  name: '',
  sex: index % 2 === 0 ? 'female' : 'male',
  statureMm: 1540 + ((index * 37) % 340),
  massKg: 52 + ((index * 13) % 55),
  measured: {},
})

/** The six-point example with one sitting for each of many people: the seat neither slides nor reclines. */
const withSittings = (count: number, round: number): Layout => {
  const [place] = example.places
  if (place === undefined) throw new Error('the example has no place')
  const { reclineDeg, hipPoint } = place.seat
  const seat = {
    ...place.seat,
    // A little elsewhere each time, so that nothing can be remembered.
    hipPoint: { ...hipPoint, xMm: hipPoint.xMm + (round % 10) / 10 },
    slide: { forwardMm: 0, rearwardMm: 0 },
    reclineRange: { uprightDeg: reclineDeg, reclinedDeg: reclineDeg },
  }
  const occupants = Array.from({ length: count }, (_, index) => person(index))
  return { ...example, places: [{ ...place, seat, occupants }] }
}

/** Processor time of one sitting, µs, over at least 200 of them. */
const sittingUs = (work: (layout: Layout) => unknown, count: number, round: number): number => {
  const times = Math.max(1, Math.ceil(200 / count))
  const layouts = Array.from({ length: times }, (_, index) => withSittings(count, round * times + index))
  const before = process.cpuUsage()
  for (const layout of layouts) work(layout)
  const { user, system } = process.cpuUsage(before)
  return (user + system) / (times * count)
}

const WORKS = [
  ['solved alone', (layout: Layout) => layout.places.map((place) => solvedSittings(layout, place))],
  ['numbers, findings, rooms, zones', (layout: Layout) => evaluateLayout(layout, { extent: 'what-moves' })],
] as const

for (const [name, work] of WORKS) {
  for (const count of COUNTS.slice(0, 3)) sittingUs(work, count, 0)
  const rounds = Array.from({ length: ROUNDS }, (_, round) =>
    COUNTS.map((count) => sittingUs(work, count, round + 1)),
  )
  const base = COUNTS.indexOf(BASE)
  for (const [at, count] of COUNTS.entries()) {
    const ratios = rounds.map((times) => (times[at] ?? NaN) / (times[base] ?? NaN))
    const us = quantile(
      rounds.map((times) => times[at] ?? NaN),
      0.5,
    )
    console.log(
      `${name}, ${count} sitting(s): ${quantile(ratios, 0.5).toFixed(2)} × a sitting of ${BASE} ` +
        `(${Math.min(...ratios).toFixed(2)}…${Math.max(...ratios).toFixed(2)}; median ${us.toFixed(0)} µs each)`,
    )
  }
}

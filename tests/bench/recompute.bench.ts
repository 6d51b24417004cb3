import { readFileSync } from 'node:fs'
import type { Occupant } from '../../src/domain/body/occupant'
import type { Layout } from '../../src/domain/layout/document/layout'
import { parseLayoutText } from '../../src/domain/layout/document/parseLayout'
import { evaluateLayout } from '../../src/domain/layout/evaluate/evaluateLayout'
import { solvePlace } from '../../src/domain/straps/solve'
import { sixPointScenes } from '../support/sixPointScenes'
import { strapSheet } from '../support/strapSheet'
import { pairedRatio } from './pairedRatio'

// `npm run bench`: what a full recompute after one move costs, as a ratio to a general-purpose spreadsheet engine that computes
// the same quantities (and no findings and no zones), both in one run.

const example = (): Layout => {
  const parsed = parseLayoutText(readFileSync('public/examples/rock-buggy.layout.json', 'utf8'))
  if (!parsed.ok) throw new Error('the example does not parse')
  return parsed.value
}

/** The example with so many occupants at fixed or sliding seats that it has the wanted number of sittings. */
const withSittings = (layout: Layout, occupants: number, slides: 1 | 3): Layout => {
  const [place] = layout.places
  if (place === undefined) throw new Error('no place')
  const people: readonly Occupant[] = Array.from({ length: occupants }, (_, index) => ({
    id: `person-${index}`,
    name: `Person ${index}`,
    sex: index % 2 === 0 ? 'female' : 'male',
    statureMm: 1600 + 60 * index,
    massKg: 60 + 8 * index,
    measured: {},
  }))
  const { reclineDeg } = place.seat
  const travelMm = slides === 1 ? 0 : 30
  const seat = {
    ...place.seat,
    slide: { forwardMm: travelMm, rearwardMm: travelMm },
    reclineRange: { uprightDeg: reclineDeg, reclinedDeg: reclineDeg },
  }
  return { ...layout, places: [{ ...place, seat, occupants: people }] }
}

/** The whole car moved along x by a little more each time, so that nothing can be remembered. */
const withHipAt = (layout: Layout, xMm: number): Layout => ({
  ...layout,
  places: layout.places.map((place) => ({
    ...place,
    seat: { ...place.seat, hipPoint: { ...place.seat.hipPoint, xMm } },
  })),
})

for (const { occupants, slides } of [
  { occupants: 1, slides: 1 },
  { occupants: 4, slides: 3 },
] as const) {
  const layout = withSittings(example(), occupants, slides)
  const evaluation = evaluateLayout(layout)
  const scenes = sixPointScenes(layout, evaluation)
  const sheet = strapSheet(scenes)
  const startMm = layout.places[0]?.seat.hipPoint.xMm ?? 0
  let ours = 0
  let theirs = 0
  const recompute = (): void => {
    ours += 1
    evaluateLayout(withHipAt(layout, startMm + (ours % 10) / 10))
  }
  const spreadsheet = (): void => {
    theirs += 1
    sheet.setInput('hipX', startMm + (theirs % 10) / 10)
  }
  const quantitiesOnly = (): void => {
    for (const scene of scenes) solvePlace(scene)
  }
  for (const [name, work] of [
    ['everything (quantities, findings, room, remedies, zones)', recompute],
    ['quantities alone', quantitiesOnly],
  ] as const) {
    const { median, tenthPercentile, ninetiethPercentile, firstMs, secondMs } = pairedRatio(work, spreadsheet)
    console.log(
      `${scenes.length} sitting(s), ${name}: ${median.toFixed(2)} × the spreadsheet's quantities ` +
        `(10 %…90 %: ${tenthPercentile.toFixed(2)}…${ninetiethPercentile.toFixed(2)}; medians ${firstMs.toFixed(2)} ms and ${secondMs.toFixed(2)} ms)`,
    )
  }
}

import { readFileSync } from 'node:fs'
import { parseLayoutText } from '../../src/domain/layout/document/parseLayout'
import { solvedSittings } from '../../src/domain/layout/evaluate/solvedSittings'
import type { StrapScene } from '../../src/domain/straps/scene'
import { solvePlace } from '../../src/domain/straps/solve'
import { preparedPlace, strapQuantitiesAt } from '../../src/domain/straps/strapAt'
import { flatAngles, flatGiven } from './flatAngles'
import { pairedRatio } from './pairedRatio'

// `npm run bench`: what the straps of the six-point example cost in one sitting, as a ratio to a flat loop over plain numbers that
// works out the same angles by their closed forms (no paths to draw, no slot or tube looked at), both in one run; and how the cost
// grows with the number of sittings.

const parsed = parseLayoutText(readFileSync('public/examples/rock-buggy.layout.json', 'utf8'))
if (!parsed.ok) throw new Error('the example does not parse')
const [place] = parsed.value.places
if (place === undefined) throw new Error('no place')
const [sitting] = solvedSittings(parsed.value, place)
if (sitting === undefined) throw new Error('no sitting')

/** The scene with the whole place shifted a little more each time, so that nothing can be remembered. */
const shifted = (scene: StrapScene, byMm: number): StrapScene => ({
  ...scene,
  anchors: scene.anchors.map((anchor) => ({
    ...anchor,
    mount: { ...anchor.mount, point: { ...anchor.mount.point, xMm: anchor.mount.point.xMm + byMm } },
  })),
})

const SCENES = 1000
const scenes = Array.from({ length: SCENES }, (_, index) => shifted(sitting.scene, index / SCENES))
const givens = scenes.map(flatGiven)
let sum = 0

const solveFirst = (count: number) => (): void => {
  for (let index = 0; index < count; index += 1)
    sum += solvePlace(scenes[index] ?? sitting.scene).quantities.length
}

const flatFirst = (count: number) => (): void => {
  for (const given of givens.slice(0, count)) sum += flatAngles(given)
}

for (const count of [1, 10, 100, 1000]) {
  const { median, tenthPercentile, ninetiethPercentile, firstMs, secondMs } = pairedRatio(
    solveFirst(count),
    flatFirst(count),
  )
  console.log(
    `${count} sitting(s): ${median.toFixed(2)} × the flat loop (10 %…90 %: ${tenthPercentile.toFixed(2)}…${ninetiethPercentile.toFixed(2)}); ` +
      `${((firstMs * 1000) / count).toFixed(2)} µs and ${((secondMs * 1000) / count).toFixed(2)} µs a sitting`,
  )
}

/** One sitting after another against ten at once and so on: 1.00 is a cost that grows with the number of sittings alone. */
for (const [few, many] of [
  [1, 10],
  [10, 100],
  [100, 1000],
] as const) {
  const { median } = pairedRatio(solveFirst(many), solveFirst(few))
  console.log(`${many} against ${few} sittings: ${((median * few) / many).toFixed(2)} × the cost a sitting`)
}

const prepared = preparedPlace(sitting.scene)
for (const { strap, mount } of sitting.scene.anchors) {
  const tryOne = (): void => {
    sum += strapQuantitiesAt(prepared, strap, { ...mount.point, zMm: mount.point.zMm + (sum % 10) }).length
  }
  const { median, firstMs } = pairedRatio(tryOne, flatFirst(1))
  console.log(
    `${strap} tried elsewhere: ${(firstMs * 1000).toFixed(2)} µs, ${median.toFixed(2)} × the flat loop`,
  )
}

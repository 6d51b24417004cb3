import { readFileSync } from 'node:fs'
import { type SurveyedPerson, surveyedPeople } from '../../src/domain/body/survey/surveyed'
import type { Layout, Place } from '../../src/domain/layout/document/layout'
import { parseLayoutText } from '../../src/domain/layout/document/parseLayout'
import { ruleSetOf } from '../../src/domain/layout/document/ruleSetOf'
import { fitCase } from '../../src/domain/layout/fit/fitRules'
import { personVerdicts } from '../../src/domain/layout/fit/personVerdicts'
import { whoFits } from '../../src/domain/layout/fit/whoFits'
import { pairedRatio } from './pairedRatio'

// `npx tsx tests/bench/fit.bench.ts`: what 1,200 people in one seat position cost, as a ratio to a flat loop, written out by hand
// without any slot, rim or sitting, over the closed-form angles of a six-point place; both in one run.

const parsed = parseLayoutText(readFileSync('public/examples/rock-buggy.layout.json', 'utf8'))
if (!parsed.ok) throw new Error('the example does not parse')
const layout: Layout = parsed.value
const firstPlace = layout.places[0]
const ruleSet = ruleSetOf(layout)
if (firstPlace === undefined || ruleSet === null) throw new Error('the example has no place')
const place: Place = firstPlace
const people = surveyedPeople()

/** Six straight straps to tab holes, and the helmet against every tube; numbers in, how many are within limits out. */
const flatCount = (persons: readonly SurveyedPerson[]): number => {
  const { hipPoint, reclineDeg, hipHeightMm } = place.seat
  const s = Math.sin((reclineDeg * Math.PI) / 180)
  const c = Math.cos((reclineDeg * Math.PI) / 180)
  const holes = place.anchors.map(({ mount }) => (mount.kind === 'tab' ? mount.point : hipPoint))
  const normals = place.anchors.map(({ mount }) => {
    const a = ((mount.kind === 'tab' ? mount.planDeg : 0) * Math.PI) / 180
    return { x: -Math.sin(a), y: Math.cos(a) }
  })
  const deg = 180 / Math.PI
  let within = 0
  for (const { sex, statureMm, massKg, measured } of persons) {
    const own = measured.midShoulderHeightMm ?? 0
    const trochanter =
      sex === 'female'
        ? 70.113 + 0.000476 * statureMm + 0.21427 * massKg
        : 53.864 + 0.024839 * statureMm - 0.14129 * massKg
    const trunk = 0.95 * (own - trochanter)
    const radius = (trunk * 100) / 590
    const rise = Math.min(106, Math.max(92, 97 + (6 * (statureMm - 1511)) / 358)) - hipHeightMm
    const hx = hipPoint.xMm + rise * s
    const hz = hipPoint.zMm + rise * c
    const cx = hx + (trunk - radius) * s
    const cz = hz + (trunk - radius) * c
    const breadth = measured.frontHipBoneBreadthMm ?? 131.87 + 0.020264 * statureMm + 0.81342 * massKg
    const lapRadius = breadth * Math.hypot(0.19, 0.3) + 30
    const half = (measured.shoulderStrapSpacingMm ?? 0) / 2
    for (let i = 0; i < 6; i += 1) {
      const hole = holes[i] ?? hipPoint
      const n = normals[i] ?? { x: 0, y: 1 }
      let angle: number
      let tx: number
      let ty: number
      if (i < 2) {
        const dx = hole.xMm - cx
        const dz = hole.zMm - cz
        const d = Math.hypot(dx, dz)
        const touch = Math.atan2(dz, dx) + Math.acos(Math.min(1, radius / d))
        tx = cx + radius * Math.cos(touch)
        ty = hipPoint.yMm + (i === 0 ? -half : half)
        const tz = cz + radius * Math.sin(touch)
        angle = Math.atan2(tz - hole.zMm, hole.xMm - tx) * deg
        if (angle - reclineDeg > -5) within += 1
        if (Math.atan2(Math.abs(hole.yMm - ty), hole.xMm - tx) * deg < 30) within += 1
      } else if (i < 4) {
        angle = Math.atan2(hz - hole.zMm, hole.xMm - hx) * deg
        const run = (angle / 180) * Math.PI
        tx = hx - lapRadius * Math.cos(run)
        ty = hipPoint.yMm + (i === 2 ? -half : half)
        if (Math.atan2(hz + 10 - hole.zMm, hole.xMm - hx + 64) * deg > 20) within += 1
        if (hz + lapRadius * Math.sin(run) < hz + 0.3 * breadth) within += 1
      } else {
        const bx = hx - lapRadius
        angle = Math.atan2(hole.xMm - bx, hz - hole.zMm) * deg
        tx = bx
        ty = hipPoint.yMm
      }
      if (angle > 0 && angle < 60) within += 1
      const ux = tx - hole.xMm
      const uy = ty - hole.yMm
      if (Math.abs(ux * n.x + uy * n.y) < 0.0872 * Math.hypot(ux, uy)) within += 1
    }
    const up = 0.95 * ((measured.sittingHeightMm ?? 0) - trochanter) - 98
    const ex = hx + up * s
    const ez = hz + up * c
    let gap = Number.POSITIVE_INFINITY
    for (const tube of layout.tubes) {
      for (let k = 1; k < tube.points.length; k += 1) {
        const a = tube.points[k - 1] ?? hipPoint
        const b = tube.points[k] ?? hipPoint
        const vx = b.xMm - a.xMm
        const vy = b.yMm - a.yMm
        const vz = b.zMm - a.zMm
        const wx = ex - a.xMm
        const wy = hipPoint.yMm - a.yMm
        const wz = ez - a.zMm
        const t = Math.min(1, Math.max(0, (wx * vx + wy * vy + wz * vz) / (vx * vx + vy * vy + vz * vz)))
        gap = Math.min(gap, Math.hypot(wx - t * vx, wy - t * vy, wz - t * vz) - tube.outsideDiameterMm / 2)
      }
    }
    if (gap - (measured.helmetRadiusMm ?? 150) > 50) within += 1
  }
  return within
}

// Kept and printed at the end, so that nothing is optimised away.
let counted = 0
const flat = (): void => {
  counted += flatCount(people)
}

const verdicts = (): void => {
  const fit = fitCase(layout, place, ruleSet)
  for (const person of people) counted += personVerdicts(fit, person).overall.length
}
const everything = (): void => {
  counted += whoFits(layout, place, ruleSet, people).rules.length
}

for (const [name, work] of [
  ['every rule, person by person', verdicts],
  ['with tallies and limiting measures', everything],
] as const) {
  const { median, tenthPercentile, ninetiethPercentile, firstMs, secondMs } = pairedRatio(work, flat)
  console.log(
    `${people.length} people, 1 seat position, ${name}: ${median.toFixed(1)} × the flat loop ` +
      `(10 %…90 %: ${tenthPercentile.toFixed(1)}…${ninetiethPercentile.toFixed(1)}; medians ${firstMs.toFixed(1)} ms and ${secondMs.toFixed(2)} ms)`,
  )
}
console.log(`checked ${counted}`)

import { expect, test, type Page } from '@playwright/test'
import { App } from './pages/app'
import { benchCar, exampleLayout } from './pages/benchCar'
import { Elevation } from './pages/elevation'
import {
  angle,
  BENCH_HIP,
  cos,
  deg,
  lapAngle,
  shoulderCentre,
  shoulderDrop,
  shoulderLeaveX,
  sin,
  tan,
  upTorso,
} from './pages/sideView'
import type { Layout } from '../src/domain/layout/document/layout'

const HIP = 'hip:driver'
const RECLINE = 'recline:driver'
const SHOULDER = 'shoulder-point:driver'
/** Bench car: lap tabs at x 1380, z 50; shoulder tabs at x 1640, z 640. */
const LAP_TAB = { x: 1380, z: 50 }
const SHOULDER_TAB = { x: 1640, z: 640 }
/** The recline handle is level with the backrest rim, 380 up the torso line. */
const RECLINE_HANDLE_MM = 380

const bench = async (page: Page, layout: Layout = benchCar()) => {
  const app = await App.start(page)
  await app.openLayout(layout)
  await app.showNumbers()
  return { app, side: new Elevation(app, 'side'), top: new Elevation(app, 'top') }
}

test('the hip point moves the lap angle in the side elevation and leaves the tabs on the car', async ({
  page,
}) => {
  const { app, side } = await bench(page)
  const before = await app.numbers()
  await side.dragExactly(HIP, { u: 30, v: 20 })
  await app.expectAt(HIP, { x: 1230, y: 360, z: 250 })
  await app.expectAt('anchor:driver:lap-left', { x: 1380, y: 130, z: 50 })
  // atan2(250 − 50, 1380 − 1230) = 53.1°
  await app.expectBoth('lap-angle', 'lap', lapAngle({ x: 1230, z: 250 }, LAP_TAB))
  const centre = shoulderCentre({ x: 1230, z: 250 })
  await app.expectBoth('shoulder-drop', 'shoulder', shoulderDrop(centre, SHOULDER_TAB))
  await app.expectOneUndoGives(before)
})

test('the hip point moved across the car in the top elevation turns the shoulder straps in plan', async ({
  page,
}) => {
  const { app, top } = await bench(page)
  const before = await app.numbers()
  await top.dragExactly(HIP, { u: 10, v: 15 })
  await app.expectAt(HIP, { x: 1210, y: 375, z: 230 })
  await app.expectBoth('lap-angle', 'lap', lapAngle({ x: 1210, z: 230 }, LAP_TAB))
  // The straps lie 100 mm either side of the hip's y, the tabs stay at 260 and 460: 15 mm off, out on the left, in on the right.
  const centre = shoulderCentre({ x: 1210, z: 230 })
  const run = SHOULDER_TAB.x - shoulderLeaveX(centre, shoulderDrop(centre, SHOULDER_TAB))
  await app.expectQuantity('shoulder-plan', 'shoulder-left', angle(260 - 275, run))
  await app.expectQuantity('shoulder-plan', 'shoulder-right', angle(475 - 460, run))
  await app.expectOneUndoGives(before)
})

test('the recline turns about the hip point in the side elevation', async ({ page }) => {
  const { app, side } = await bench(page)
  const before = await app.numbers()
  const start = upTorso(BENCH_HIP, 20, RECLINE_HANDLE_MM)
  await app.expectAt(RECLINE, { x: start.x, z: start.z })
  await side.dragExactly(RECLINE, { u: 40, v: 0 })
  // 40 mm rearward, to a whole mm from the datum; the line then leans by atan(run / rise) and the handle stays 380 up it.
  const recline = angle(Math.round(start.x + 40) - BENCH_HIP.x, start.z - BENCH_HIP.z)
  const handle = upTorso(BENCH_HIP, recline, RECLINE_HANDLE_MM)
  await app.expectAt(RECLINE, { x: handle.x, y: 360, z: handle.z })
  const drop = shoulderDrop(shoulderCentre(BENCH_HIP, recline), SHOULDER_TAB)
  await app.expectBoth('shoulder-drop', 'shoulder', drop)
  await app.expectBoth('shoulder-to-spine', 'shoulder', drop - recline)
  await app.expectOneUndoGives(before)
})

test('the recline follows x alone in the top elevation', async ({ page }) => {
  const { app, top } = await bench(page)
  await top.dragExactly(RECLINE, { u: 20, v: 10 })
  // Only x shows there: the handle keeps its 380 mm, so the line leans by asin(run / 380).
  const x = Math.round(upTorso(BENCH_HIP, 20, RECLINE_HANDLE_MM).x + 20)
  const recline = deg(Math.asin((x - BENCH_HIP.x) / RECLINE_HANDLE_MM))
  await app.expectAt(RECLINE, { x, y: 360, z: BENCH_HIP.z + RECLINE_HANDLE_MM * cos(recline) })
  const drop = await app.quantity('shoulder-drop', 'shoulder-left')
  await app.expectQuantity('shoulder-to-spine', 'shoulder-left', drop - recline)
})

test('the shoulder point slides along the torso line in the side elevation', async ({ page }) => {
  const { app, side } = await bench(page)
  const before = await app.numbers()
  const start = upTorso(BENCH_HIP, 20, 590)
  await app.expectAt(SHOULDER, { x: start.x, z: start.z })
  await side.dragExactly(SHOULDER, { u: 0, v: 20 })
  // Straight up to a whole mm, then square onto the line: rise · cos 20° along it.
  const along = (Math.round(start.z + 20) - start.z) * cos(20)
  const shoulder = upTorso(BENCH_HIP, 20, 590 + along)
  await app.expectAt(SHOULDER, { x: shoulder.x, z: shoulder.z })
  await app.expectBoth('shoulder-height', 'shoulder', shoulder.z - SHOULDER_TAB.z)
  await app.expectOneUndoGives(before)
})

test('the shoulder point takes x alone in the top elevation and goes up the torso line for it', async ({
  page,
}) => {
  const { app, top } = await bench(page)
  await top.dragExactly(SHOULDER, { u: 6, v: 0 })
  const x = Math.round(upTorso(BENCH_HIP, 20, 590).x + 6)
  const z = BENCH_HIP.z + (x - BENCH_HIP.x) / tan(20)
  await app.expectAt(SHOULDER, { x, y: 360, z })
  await app.expectBoth('shoulder-height', 'shoulder', z - SHOULDER_TAB.z)
})

/*
 * The rock buggy: hip 1200, 360, 230; recline 15°. Shoulder slots in the back, 150 behind the torso line and 516 up it, 115 either
 * side, 92 long and 60 high; webbing 76. Shoulder tabs at 1612, 250 and 470, 632.
 */
const SLOT = 'slot:driver:shoulder-slot-left'
const SLOT_START = { x: 1200 + 150 * cos(15) + 516 * sin(15), z: 230 - 150 * sin(15) + 516 * cos(15) }
const BUGGY_TAB = { x: 1612, y: 250, z: 632 }

test('a slot raised in the side elevation bends the strap over its lower edge, on both sides', async ({
  page,
}) => {
  const { app, side } = await bench(page, exampleLayout('rock-buggy'))
  const before = await app.numbers()
  await app.expectQuantity('slot-bend', 'shoulder-left', 0)
  await side.dragExactly(SLOT, { u: 0, v: 60 })
  const z = Math.round(SLOT_START.z + 60)
  await app.expectAt(SLOT, { x: SLOT_START.x, y: 245, z })
  await app.expectAt('slot:driver:shoulder-slot-right', { x: SLOT_START.x, y: 475, z })
  // The lower edge is half the height, 30, down the back from the centre; from there the strap falls straight to the tab.
  const edge = { x: SLOT_START.x - 30 * sin(15), z: z - 30 * cos(15) }
  const fall = angle(edge.z - BUGGY_TAB.z, BUGGY_TAB.x - edge.x)
  await app.expectBoth('shoulder-rim-drop', 'shoulder', fall)
  // What the straight run turns there is what is left of its fall on the other side.
  const drop = await app.quantity('shoulder-drop', 'shoulder-left')
  await app.expectBoth('slot-bend', 'shoulder', fall - drop)
  await app.expectOneUndoGives(before)
})

test('a slot moved outward in the top elevation pulls the strap aside by its end, on both sides', async ({
  page,
}) => {
  const { app, top } = await bench(page, exampleLayout('rock-buggy'))
  const before = await app.numbers()
  await top.dragExactly(SLOT, { u: 0, v: -70 })
  await app.expectAt(SLOT, { x: SLOT_START.x, y: 175 })
  await app.expectAt('slot:driver:shoulder-slot-right', { x: SLOT_START.x, y: 545 })
  // The strap bears on the slot's inner end, a line up the back: x = xs + t·sin 15°, z = zs + t·cos 15°, where the fall to the tab
  // meets it. The webbing's middle lies half its width inside the end: 175 + 46 − 38 = 183, against 250 at the tab.
  const fall = tan(await app.quantity('shoulder-rim-drop', 'shoulder-left'))
  const t = (BUGGY_TAB.z + (BUGGY_TAB.x - SLOT_START.x) * fall - SLOT_START.z) / (cos(15) + sin(15) * fall)
  const toTab = {
    x: BUGGY_TAB.x - (SLOT_START.x + t * sin(15)),
    y: BUGGY_TAB.y - 183,
    z: BUGGY_TAB.z - (SLOT_START.z + t * cos(15)),
  }
  const behind = Math.hypot(toTab.x, toTab.y, toTab.z)
  await app.expectBoth('shoulder-length-behind-seat', 'shoulder', behind)
  // A sharp end without friction takes no pull along itself: both unit pulls have the same part up the back, with opposite signs.
  const rise = tan(await app.quantity('shoulder-drop', 'shoulder-left'))
  const aside = tan(await app.quantity('shoulder-plan', 'shoulder-left'))
  const upToTab = (toTab.x * sin(15) + toTab.z * cos(15)) / behind
  const upToBody = (rise * cos(15) - sin(15)) / Math.hypot(1, aside, rise)
  expect(upToTab + upToBody).toBeCloseTo(0, 6)
  await app.expectOneUndoGives(before)
})

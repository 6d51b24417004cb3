import { expect, test, type Page } from '@playwright/test'
import { App } from './pages/app'
import { BAR_RADIUS_MM, benchCar } from './pages/benchCar'
import { Elevation } from './pages/elevation'
import { BENCH_HIP, shoulderCentre, shoulderDrop, upTorso } from './pages/sideView'
import type { Layout } from '../src/domain/layout/document/layout'

/*
 * Bench car: the harness bar runs from y −20 to y 740 at x 1700, z 600; shoulder tabs are welded to it at y 260 and 460. What is
 * on the bar keeps its share of the length when one end moves: of a move of the left end the left tab makes (740 − 260)/760 and
 * the right one (740 − 460)/760.
 */
const LEFT_END = 'tube-point:harness-bar:0'
const RIGHT_END = 'tube-point:harness-bar:1'
const HEIGHT = 'tube-height:harness-bar'
const LEFT_TAB = 'anchor:driver:shoulder-left'
const RIGHT_TAB = 'anchor:driver:shoulder-right'
const SHOULDER_Z = upTorso(BENCH_HIP, 20, 590).z

const bench = async (page: Page, layout: Layout = benchCar()) => {
  const app = await App.start(page)
  await app.openLayout(layout)
  await app.showNumbers()
  return {
    app,
    side: new Elevation(app, 'side'),
    top: new Elevation(app, 'top'),
    before: await app.numbers(),
  }
}

test('one end of the bar moved in the side elevation carries each tab by its share', async ({ page }) => {
  const { app, side, before } = await bench(page)
  await side.dragExactly(LEFT_END, { u: 10, v: 30 })
  await app.expectAt(LEFT_END, { x: 1710, y: -20, z: 630 })
  await app.expectAt(RIGHT_END, { x: 1700, y: 740, z: 600 })
  const left = 480 / 760
  const right = 280 / 760
  await app.expectAt(LEFT_TAB, { x: 1640 + 10 * left, y: 260, z: 640 + 30 * left })
  await app.expectAt(RIGHT_TAB, { x: 1640 + 10 * right, y: 460, z: 640 + 30 * right })
  await app.expectQuantity('shoulder-height', 'shoulder-left', SHOULDER_Z - 640 - 30 * left)
  await app.expectQuantity('shoulder-height', 'shoulder-right', SHOULDER_Z - 640 - 30 * right)
  await app.expectOneUndoGives(before)
})

test('one end of the bar moved in the top elevation carries each tab by its share', async ({ page }) => {
  const { app, top, before } = await bench(page)
  await top.dragExactly(RIGHT_END, { u: 6, v: 20 })
  await app.expectAt(RIGHT_END, { x: 1706, y: 760, z: 600 })
  const left = 280 / 760
  const right = 480 / 760
  await app.expectAt(LEFT_TAB, { x: 1640 + 6 * left, y: 260 + 20 * left, z: 640 })
  await app.expectAt(RIGHT_TAB, { x: 1640 + 6 * right, y: 460 + 20 * right, z: 640 })
  // 200 mm apart along the bar's run of 760, now 6 mm more rearward and 20 mm longer over that run.
  const spacing = Math.hypot(200 + 20 * (200 / 760), 6 * (200 / 760))
  await app.expectQuantity('shoulder-spacing', 'shoulder-pair', spacing)
  await app.expectOneUndoGives(before)
})

test('the bar raised as a whole takes tabs along by exactly as much', async ({ page }) => {
  const { app, side, before } = await bench(page)
  await side.dragExactly(HEIGHT, { u: 12, v: 25 })
  await app.expectAt(HEIGHT, { x: 1700, y: 360, z: 625 })
  await app.expectAt(LEFT_TAB, { x: 1640, y: 260, z: 665 })
  await app.expectAt(RIGHT_TAB, { x: 1640, y: 460, z: 665 })
  await app.expectBoth('shoulder-height', 'shoulder', SHOULDER_Z - 665)
  await app.expectBoth('shoulder-drop', 'shoulder', shoulderDrop(shoulderCentre(), { x: 1640, z: 665 }))
  await app.expectOneUndoGives(before)
})

test('the bar raised as a whole takes wraps along, and the straps leave it by its top', async ({ page }) => {
  const { app, side, before } = await bench(page, benchCar('wraps'))
  await side.dragExactly(HEIGHT, { u: 0, v: 40 })
  await app.expectAt(LEFT_TAB, { x: 1700, y: 260, z: 640 })
  const drop = shoulderDrop(shoulderCentre(), { x: 1700, z: 640 }, BAR_RADIUS_MM)
  await app.expectBoth('shoulder-drop', 'shoulder', drop)
  await app.expectOneUndoGives(before)
})

test('the height of the bar cannot be dragged in the top elevation, which does not show it', async ({
  page,
}) => {
  const { app, top, before } = await bench(page)
  await top.drag(HEIGHT, { u: 20, v: 20 })
  await expect(page.getByText('Drag it in the side elevation')).toBeVisible()
  expect(await app.numbers()).toEqual(before)
})

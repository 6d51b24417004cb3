import { expect, test, type Page } from '@playwright/test'
import { App } from './pages/app'
import { benchCar, GROIN_RADIUS_MM } from './pages/benchCar'
import { Elevation } from './pages/elevation'
import {
  angle,
  BENCH_HIP,
  lapAngle,
  shoulderCentre,
  shoulderDrop,
  shoulderLeaveX,
  subToVertical,
} from './pages/sideView'
import type { Layout } from '../src/domain/layout/document/layout'

/* Bench car: hip at y 360, so a mirrored partner lies at 720 − y. */
const anchor = (strap: string): string => `anchor:driver:${strap}`

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

test('a lap tab moved in the side elevation changes the lap angle of both sides', async ({ page }) => {
  const { app, side, before } = await bench(page)
  await app.expectBoth('lap-angle', 'lap', 45)
  await side.dragExactly(anchor('lap-left'), { u: -20, v: 15 })
  await app.expectAt(anchor('lap-left'), { x: 1360, y: 130, z: 65 })
  await app.expectAt(anchor('lap-right'), { x: 1360, y: 590, z: 65 })
  // atan2(230 − 65, 1360 − 1200) = 45.9°
  await app.expectBoth('lap-angle', 'lap', lapAngle(BENCH_HIP, { x: 1360, z: 65 }))
  await app.expectQuantity('lap-spacing', 'lap-pair', 460)
  await app.expectQuantity('lap-mirror', 'lap-pair', 0)
  await app.expectOneUndoGives(before)
})

test('a lap tab moved outward in the top elevation spreads the pair by twice as much', async ({ page }) => {
  const { app, top, before } = await bench(page)
  await top.dragExactly(anchor('lap-left'), { u: -20, v: -25 })
  await app.expectAt(anchor('lap-left'), { x: 1360, y: 105, z: 50 })
  await app.expectAt(anchor('lap-right'), { x: 1360, y: 615, z: 50 })
  await app.expectQuantity('lap-spacing', 'lap-pair', 460 + 2 * 25)
  await app.expectBoth('lap-angle', 'lap', lapAngle(BENCH_HIP, { x: 1360, z: 50 }))
  await app.expectOneUndoGives(before)
})

test('a tab of a split pair moves alone', async ({ page }) => {
  const { app, side, before } = await bench(page, benchCar('tabs', 'split'))
  await side.dragExactly(anchor('lap-left'), { u: 20, v: -10 })
  await app.expectAt(anchor('lap-left'), { x: 1400, y: 130, z: 40 })
  await app.expectAt(anchor('lap-right'), { x: 1380, y: 590, z: 50 })
  await app.expectQuantity('lap-angle', 'lap-left', lapAngle(BENCH_HIP, { x: 1400, z: 40 }))
  await app.expectQuantity('lap-angle', 'lap-right', 45)
  await app.expectQuantity('lap-mirror', 'lap-pair', Math.hypot(20, 10))
  await app.expectOneUndoGives(before)
})

test('a shoulder tab moved in the side elevation changes the drop of both straps', async ({ page }) => {
  const { app, side, before } = await bench(page)
  await side.dragExactly(anchor('shoulder-left'), { u: -15, v: 10 })
  await app.expectAt(anchor('shoulder-left'), { x: 1625, y: 260, z: 650 })
  await app.expectAt(anchor('shoulder-right'), { x: 1625, y: 460, z: 650 })
  await app.expectBoth('shoulder-drop', 'shoulder', shoulderDrop(shoulderCentre(), { x: 1625, z: 650 }))
  await app.expectOneUndoGives(before)
})

test('a shoulder tab moved inward in the top elevation narrows the pair and turns it in plan', async ({
  page,
}) => {
  const { app, top, before } = await bench(page)
  await app.expectBoth('shoulder-plan', 'shoulder', 0)
  await top.dragExactly(anchor('shoulder-right'), { u: 0, v: -12 })
  await app.expectAt(anchor('shoulder-right'), { x: 1640, y: 448, z: 640 })
  await app.expectAt(anchor('shoulder-left'), { x: 1640, y: 272, z: 640 })
  await app.expectQuantity('shoulder-spacing', 'shoulder-pair', 200 - 2 * 12)
  const centre = shoulderCentre()
  const run = 1640 - shoulderLeaveX(centre, shoulderDrop(centre, { x: 1640, z: 640 }))
  await app.expectBoth('shoulder-plan', 'shoulder', angle(12, run))
  await app.expectOneUndoGives(before)
})

test('an anti-submarine tab moved in the side elevation turns its strap', async ({ page }) => {
  const { app, side, before } = await bench(page)
  await side.dragExactly(anchor('sub-left'), { u: 20, v: -5 })
  await app.expectAt(anchor('sub-left'), { x: 1150, y: 310, z: 55 })
  await app.expectAt(anchor('sub-right'), { x: 1150, y: 410, z: 55 })
  const expected = subToVertical(BENCH_HIP, GROIN_RADIUS_MM, { x: 1150, z: 55 })
  await app.expectBoth('sub-to-vertical', 'sub', expected)
  await app.expectOneUndoGives(before)
})

test('an anti-submarine tab moved in the top elevation spreads the pair by twice as much', async ({
  page,
}) => {
  const { app, top, before } = await bench(page)
  await top.dragExactly(anchor('sub-left'), { u: 10, v: -15 })
  await app.expectAt(anchor('sub-left'), { x: 1140, y: 295, z: 60 })
  await app.expectAt(anchor('sub-right'), { x: 1140, y: 425, z: 60 })
  await app.expectQuantity('sub-spacing', 'sub-pair', 100 + 2 * 15)
  const expected = subToVertical(BENCH_HIP, GROIN_RADIUS_MM, { x: 1140, z: 60 })
  await app.expectBoth('sub-to-vertical', 'sub', expected)
  await app.expectOneUndoGives(before)
})

test('a wrap slides along its bar in the top elevation and stays on it', async ({ page }) => {
  const { app, top, before } = await bench(page, benchCar('wraps'))
  await top.dragExactly(anchor('shoulder-left'), { u: 8, v: 12 })
  // The bar runs straight across at x 1700, z 600.
  await app.expectAt(anchor('shoulder-left'), { x: 1700, y: 272, z: 600 })
  await app.expectAt(anchor('shoulder-right'), { x: 1700, y: 448, z: 600 })
  await app.expectQuantity('shoulder-spacing', 'shoulder-pair', 200 - 2 * 12)
  await app.expectOneUndoGives(before)
})

test('a wrap on a bar straight across the car says in the side elevation where it can be moved', async ({
  page,
}) => {
  const { app, side } = await bench(page, benchCar('wraps'))
  await side.drag(anchor('shoulder-left'), { u: 30, v: 30 })
  await expect(page.getByText('Drag it in the top elevation')).toBeVisible()
  await app.expectAt(anchor('shoulder-left'), { x: 1700, y: 260, z: 600 })
})

test('a tab is taken hold of where it is drawn, without having been picked from a list', async ({ page }) => {
  const { app, top } = await bench(page)
  const from = await top.pxOfHandle(anchor('lap-right'))
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  await top.carry(from, { u: 0, v: 40 })
  await top.drop()
  await expect(app.part(anchor('lap-right'))).toHaveAttribute('aria-pressed', 'true')
  // The whole car in view: one px is some mm, and the drag is as good as that.
  const onePxMm = 1 / (await top.pxPerMm())
  await app.expectAt(anchor('lap-right'), { x: 1380, y: 630 }, onePxMm)
  const { y } = await app.at(anchor('lap-right'))
  await app.expectQuantity('lap-spacing', 'lap-pair', 2 * (y - 360))
})

import { expect, test, type Page } from '@playwright/test'
import { App } from './pages/app'
import { benchCar } from './pages/benchCar'
import { Elevation } from './pages/elevation'
import { BENCH_HIP, lapAngle } from './pages/sideView'
import { Touch } from './pages/touch'

const LAP_LEFT = 'anchor:driver:lap-left'
const LAP_RIGHT = 'anchor:driver:lap-right'

const SCREENS = [
  { name: 'a tablet', viewport: { width: 1024, height: 768 } },
  { name: 'a phone', viewport: { width: 390, height: 844 } },
]

const start = async (page: Page) => {
  const app = await App.start(page)
  await app.openLayout(benchCar())
  await app.tab('Parts')
  const side = new Elevation(app, 'side')
  await side.pane.scrollIntoViewIfNeeded()
  return { app, side, touch: await Touch.on(page) }
}

/** Of a grid of points over the pane, how many show something else than the pane. */
const coveredPoints = async (side: Elevation): Promise<number> =>
  await side.pane.evaluate((pane) => {
    const { left, top, width, height } = pane.getBoundingClientRect()
    const shares = [0.02, 0.2, 0.4, 0.6, 0.8, 0.98]
    return shares
      .flatMap((across) =>
        shares.map((down) => document.elementFromPoint(left + across * width, top + down * height)),
      )
      .filter((element) => element === null || !pane.contains(element)).length
  })

/**
 * The inset beside the finger: clear of it, on the pane, and with ink in it. The stage is enlarged three times about the point that
 * the finger has dragged, so the inset's middle is that point.
 */
const expectMagnified = async (side: Elevation, finger: { x: number; y: number }): Promise<void> => {
  const magnifier = side.app.page.getByTestId('magnifier')
  await expect(magnifier).toContainText(/x .* mm/)
  const inset = await magnifier.locator('canvas').boundingBox()
  const pane = await side.box()
  if (inset === null) throw new Error('no inset')
  const [atX = NaN, atY = NaN] = ((await magnifier.getAttribute('data-at')) ?? '').split(' ').map(Number)
  // A finger is followed to whole mm, and took the handle within half of 44 px.
  expect(Math.hypot(pane.x + atX - finger.x, pane.y + atY - finger.y)).toBeLessThanOrEqual(22)
  const nearest = {
    x: Math.min(Math.max(finger.x, inset.x), inset.x + inset.width),
    y: Math.min(Math.max(finger.y, inset.y), inset.y + inset.height),
  }
  expect(Math.hypot(nearest.x - finger.x, nearest.y - finger.y)).toBeGreaterThan(22)
  expect(inset.x).toBeGreaterThanOrEqual(pane.x)
  expect(inset.y).toBeGreaterThanOrEqual(pane.y)
  expect(inset.x + inset.width).toBeLessThanOrEqual(pane.x + pane.width)
  await expect
    .poll(
      async () =>
        await magnifier.locator('canvas').evaluate((canvas) => {
          if (!(canvas instanceof HTMLCanvasElement)) return 0
          const { data } = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height) ?? {}
          return new Set(Array.from(data ?? [], (value, index) => (index % 4 === 0 ? value : 0))).size
        }),
      { message: 'different shades in the inset' },
    )
    .toBeGreaterThan(20)
}

for (const { name, viewport } of SCREENS) {
  test.describe(`on ${name}`, () => {
    test.use({ viewport, hasTouch: true, isMobile: viewport.width < 600 })

    test('one finger drags a tab, and nothing covers the drawing meanwhile', async ({ page }) => {
      const { app, side, touch } = await start(page)
      const scale = await side.pxPerMm()
      const from = await side.pxOfHandle(LAP_LEFT)
      const to = { x: from.x + 30 * scale, y: from.y - 40 * scale }
      const before = await app.numbers()
      await touch.down(from)
      await touch.move([from], [to])
      await expect(side.pane).toHaveAttribute('data-dragging', 'true')
      expect(await coveredPoints(side)).toBe(0)
      await expectMagnified(side, to)
      await touch.up()
      await expect(app.page.getByTestId('magnifier')).toHaveCount(0)
      await expect(side.pane).toHaveAttribute('data-dragging', 'false')
      // The whole car is in view: what one px is on the car is as well as a finger can be followed.
      await app.expectAt(LAP_LEFT, { x: 1410, y: 130, z: 90 }, 1 / scale)
      const { x, z } = await app.at(LAP_LEFT)
      await app.expectAt(LAP_RIGHT, { x, y: 590, z })
      // What the finger was put down on stays named, at the place where it was left.
      await expect(page.getByTestId('cursor-readout')).toContainText(`x ${x}, z ${z} mm`)
      await app.tab('Numbers')
      await app.expectBoth('lap-angle', 'lap', lapAngle(BENCH_HIP, { x, z }))
      await app.undo()
      await app.tab('Parts')
      await expect.poll(async () => await app.numbers()).toEqual(before)
    })

    test('two fingers zoom by as much as they spread, about the place between them', async ({ page }) => {
      const { app, side, touch } = await start(page)
      const before = await app.numbers()
      const scale = await side.pxPerMm()
      const box = await side.box()
      const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 }
      const middleMm = (middle.x - box.x - (await side.number('origin-x'))) / scale
      const apart = (px: number) => [
        { x: middle.x - px, y: middle.y },
        { x: middle.x + px, y: middle.y },
      ]
      await touch.down(...apart(40))
      await touch.move(apart(40), apart(80))
      await touch.up()
      await expect.poll(async () => (await side.pxPerMm()) / scale).toBeCloseTo(2, 2)
      const nowMm = (middle.x - box.x - (await side.number('origin-x'))) / (await side.pxPerMm())
      expect(Math.abs(nowMm - middleMm)).toBeLessThan(1 / scale)
      expect(await app.numbers()).toEqual(before)
    })

    test('a second finger during a drag calls the drag off and leaves no step to undo', async ({ page }) => {
      const { app, side, touch } = await start(page)
      const before = await app.numbers()
      const from = await side.pxOfHandle(LAP_LEFT)
      const to = { x: from.x + 30, y: from.y - 20 }
      await touch.down(from)
      await touch.move([from], [to])
      await expect.poll(async () => await app.numbers()).not.toEqual(before)
      const second = { x: to.x - 60, y: to.y - 60 }
      await touch.down(to, second)
      await expect.poll(async () => await app.numbers()).toEqual(before)
      await touch.move([to, second], [{ x: to.x + 10, y: to.y }, second])
      await touch.up()
      expect(await app.numbers()).toEqual(before)
      // An opened file has no step to undo yet.
      await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled()
    })

    test('every handle has 44 px for a finger: a touch 20 px beside it still takes it', async ({ page }) => {
      const { app, side, touch } = await start(page)
      const from = await side.pxOfHandle(LAP_LEFT)
      const beside = { x: from.x + 14, y: from.y + 14 }
      await touch.down(beside)
      await touch.up()
      await expect(app.page.locator('[data-testid^="part:"][aria-pressed="true"]')).toContainText('lap tab')
    })

    test('a tap where several parts lie offers them by name, and one of them is then dragged', async ({
      page,
    }) => {
      const { app, side, touch } = await start(page)
      // Left and right lie on one spot in the side elevation.
      const at = await side.pxOfHandle(LAP_LEFT)
      await touch.down(at)
      await touch.up()
      const chooser = page.getByTestId('crowd-chooser')
      const right = chooser.getByRole('button', { name: /right lap tab/ })
      await expect(chooser.getByRole('button', { name: /left lap tab/ })).toBeVisible()
      expect((await right.boundingBox())?.height).toBeGreaterThanOrEqual(44)
      await right.tap()
      await expect(chooser).toHaveCount(0)
      await expect(app.part(LAP_RIGHT)).toHaveAttribute('aria-pressed', 'true')
      const undo = page.getByRole('button', { name: 'Undo' })
      await touch.down(at)
      await touch.move([at], [{ x: at.x + 20, y: at.y - 20 }])
      await touch.up()
      await expect(undo).toHaveAttribute('title', /right lap tab/)
    })

    test('a button beside the numbers moves the part one step, held ever more, and is one step to undo', async ({
      page,
    }) => {
      const { app, touch } = await start(page)
      await app.select(LAP_LEFT)
      const up = page.getByRole('button', { name: 'Up by 1 mm' })
      await up.scrollIntoViewIfNeeded()
      const box = await up.boundingBox()
      if (box === null) throw new Error('no button')
      expect(Math.min(box.width, box.height)).toBeGreaterThanOrEqual(44)
      const { z } = await app.at(LAP_LEFT)
      await up.tap()
      await app.expectAt(LAP_LEFT, { z: z + 1 })
      await app.settled()
      const before = await app.numbers()
      await touch.down({ x: box.x + box.width / 2, y: box.y + box.height / 2 })
      await expect.poll(async () => (await app.at(LAP_LEFT)).z).toBeGreaterThanOrEqual(z + 6)
      // Let go anywhere: off the button as well.
      await touch.move([{ x: box.x + 5, y: box.y + 5 }], [{ x: box.x + 5, y: box.y - 120 }])
      await touch.up()
      await app.settled()
      const { z: reached } = await app.at(LAP_LEFT)
      // With a mouse: right after a finger that was drawn away the browser makes no click of a tap.
      await page.getByRole('button', { name: 'Steps of 10 mm' }).click()
      await page.getByRole('button', { name: 'Down by 10 mm' }).click()
      await app.expectAt(LAP_LEFT, { z: reached - 10 })
      await app.undo()
      await app.expectOneUndoGives(before)
    })
  })
}

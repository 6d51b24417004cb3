import { expect, test, type Page } from '@playwright/test'
import { App } from './pages/app'
import { benchCar } from './pages/benchCar'
import { Elevation } from './pages/elevation'
import { BENCH_HIP, lapAngle } from './pages/sideView'

const HIP = 'hip:driver'
const LAP_LEFT = 'anchor:driver:lap-left'
/** Bench car: lap tabs at x 1380, z 50. */
const LAP_TAB = { x: 1380, z: 50 }

interface Held {
  holdAnswers: () => void
  releaseAnswers: () => void
}

/** Lets the test say when what workers answer reaches the page. */
const heldAnswers = async (page: Page) => {
  await page.addInitScript(() => {
    let isHeld = false
    const held: (() => void)[] = []
    const Native = window.Worker
    window.Worker = class extends Native {
      override addEventListener(type: string, listener: EventListenerOrEventListenerObject): void {
        const hear = (event: Event): void => {
          if (typeof listener === 'function') listener.call(this, event)
          else listener.handleEvent(event)
        }
        super.addEventListener(type, (event) => {
          if (isHeld) held.push(() => hear(event))
          else hear(event)
        })
      }
    }
    Object.assign(window, {
      holdAnswers: () => {
        isHeld = true
      },
      releaseAnswers: () => {
        isHeld = false
        for (const hear of held.splice(0)) hear()
      },
    })
  })
  return {
    hold: async () => await page.evaluate(() => (window as unknown as Held).holdAnswers()),
    release: async () => await page.evaluate(() => (window as unknown as Held).releaseAnswers()),
  }
}

const opened = async (page: Page) => {
  const answers = await heldAnswers(page)
  const app = await App.start(page)
  await app.openLayout(benchCar())
  await app.showNumbers()
  return { answers, app, side: new Elevation(app, 'side'), top: new Elevation(app, 'top') }
}

test('while the seat is dragged numbers follow at once; zones and how near the limits are come after', async ({
  page,
}) => {
  const { answers, app, side } = await opened(page)
  const counts = page.getByTestId('finding-counts')
  await expect(counts).not.toContainText('kept')
  await side.zoomOn(HIP)
  const from = await side.grab(HIP)
  await answers.hold()
  await side.carry(from, { u: 30, v: 20 })
  const angle = page.getByTestId('quantity:lap-angle:lap-left')
  const expected = lapAngle({ x: BENCH_HIP.x + 30, z: BENCH_HIP.z + 20 }, LAP_TAB)
  await expect.poll(async () => Number(await angle.getAttribute('data-value'))).toBeCloseTo(expected, 6)
  // Nothing that was worked out for the seat of before is left.
  expect(await side.hatchedNow()).toBe(0)
  await expect(counts).toContainText('kept')
  await expect(counts).not.toContainText('tight')
  await answers.release()
  await expect.poll(async () => await side.hatchedNow()).toBeGreaterThan(50)
  await expect(counts).not.toContainText('kept')
  await app.settled()
  await side.drop()
})

test('while a tab is dragged its own zone stays in the plane it moves in', async ({ page }) => {
  const { answers, side, top } = await opened(page)
  const from = await side.grab(LAP_LEFT)
  await side.carry(from, { u: -30, v: 0 })
  await expect.poll(async () => await side.hatchedNow()).toBeGreaterThan(50)
  await expect.poll(async () => await top.hatchedNow()).toBeGreaterThan(50)
  await answers.hold()
  await side.carry(from, { u: -40, v: -30 })
  // Seen from above the tab now lies at another height: that zone is another one.
  await expect.poll(async () => await top.hatchedNow()).toBe(0)
  expect(await side.hatchedNow()).toBeGreaterThan(50)
  await answers.release()
  await expect.poll(async () => await top.hatchedNow()).toBeGreaterThan(50)
  await side.drop()
})

test('zones of the anchor in hand, or of all, are shown while everything is still, and so at the next visit', async ({
  page,
}) => {
  const app = await App.start(page)
  await app.openLayout(benchCar())
  await app.showNumbers()
  const side = new Elevation(app, 'side')
  const top = new Elevation(app, 'top')
  expect(await side.hatchedPx()).toBe(0)
  await app.chooseInView('Zones', 'Anchor in hand')
  expect(await side.hatchedPx()).toBe(0)
  await app.select(LAP_LEFT)
  const ofLap = await top.hatchedPx()
  expect(ofLap).toBeGreaterThan(50)
  await app.chooseInView('Zones', 'All anchors')
  expect(await top.hatchedPx()).toBeGreaterThan(ofLap)
  // It is the view's, not the layout's: another visit shows the same, and there is nothing more to undo.
  await page.reload()
  await expect(page.getByRole('application').first()).toBeVisible()
  expect(await top.hatchedPx()).toBeGreaterThan(ofLap)
})

test('several workers at once come to the same zones as one', async ({ browser }) => {
  const pictureWith = async (
    processors: number,
  ): Promise<{ readonly top: string; readonly opened: number }> => {
    const page = await browser.newPage()
    await page.addInitScript((count) => {
      Object.defineProperty(navigator, 'hardwareConcurrency', { value: count })
      const Native = window.Worker
      const state = window as unknown as { opened: number }
      state.opened = 0
      window.Worker = class extends Native {
        constructor(url: string | URL, options?: WorkerOptions) {
          super(url, options)
          state.opened += 1
        }
      }
    }, processors)
    const app = await App.start(page)
    await app.openLayout(benchCar())
    await app.chooseInView('Zones', 'All anchors')
    const top = new Elevation(app, 'top')
    expect(await top.hatchedPx()).toBeGreaterThan(50)
    const picture = await top.picture()
    const opened = await page.evaluate(() => (window as unknown as { opened: number }).opened)
    await page.close()
    return { top: picture, opened }
  }
  const one = await pictureWith(2)
  const four = await pictureWith(8)
  // One for remedies is always there.
  expect(one.opened).toBe(2)
  expect(four.opened).toBe(5)
  expect(four.top).toBe(one.top)
})

import AxeBuilder from '@axe-core/playwright'
import { expect, type Page, test } from '@playwright/test'
import { App } from './pages/app'
import { Elevation } from './pages/elevation'
import { PhotoScreen, spotOfColour } from './pages/photo'
import { type Disc, Pinhole, syntheticPhoto } from './pages/syntheticPhoto'

/*
 * Outside: pictures of coloured discs whose places are known, made by a pinhole camera that knows nothing of the app. What the app paints is read
 * off the canvas pixel by pixel.
 */

const RED = { u: 500, v: 500, radiusMm: 30, colour: [220, 20, 20] } as const
const BLUE = { u: 900, v: 250, radiusMm: 30, colour: [20, 40, 220] } as const
const GREEN = { u: 100, v: 700, radiusMm: 30, colour: [20, 160, 40] } as const
const MARKS: readonly Disc[] = [RED, BLUE, GREEN]

/** A board of 1,200 by 800 mm whose lower front corner is at x 0, z 50; small dots on its corners. */
const CORNERS = {
  frontLow: { u: 0, v: 50 },
  rearLow: { u: 1200, v: 50 },
  rearHigh: { u: 1200, v: 850 },
  frontHigh: { u: 0, v: 850 },
} as const
const DOTS: readonly Disc[] = Object.values(CORNERS).map((corner) => ({
  ...corner,
  radiusMm: 6,
  colour: [10, 10, 10],
}))

const ASKEW = new Pinhole({
  lens: { u: 100, v: 300, away: 1700 },
  looksAt: { u: 620, v: 430 },
  focalPx: 833,
  widthPx: 1000,
  heightPx: 750,
})
const SQUARE = new Pinhole({
  lens: { u: 600, v: 450, away: 2000 },
  looksAt: { u: 600, v: 450 },
  focalPx: 770,
  widthPx: 700,
  heightPx: 525,
})

/** The whole car in view, wherever the view was before. */
const fitCar = async (page: Page): Promise<void> =>
  await page.getByRole('button', { name: 'Fit car', exact: true }).click()

/** Marks that are wholly in view lie where they are on the car, to 1 px of the page; at least two are in view. */
const expectMarks = async (elevation: Elevation): Promise<void> => {
  await elevation.app.settled()
  const [scale, box] = [await elevation.pxPerMm(), await elevation.box()]
  let inView = 0
  for (const { u, v, radiusMm, colour } of MARKS) {
    const at = await elevation.pxOf({ x: u, y: v, z: v })
    const reach = radiusMm * scale + 2
    const isInside = (value: number, from: number, size: number): boolean =>
      value - reach > from && value + reach < from + size
    if (!isInside(at.x, box.x, box.width) || !isInside(at.y, box.y, box.height)) continue
    inView += 1
    await expect
      .poll(
        async () => {
          const spot = await spotOfColour(elevation, colour)
          return spot === null ? Infinity : Math.hypot(spot.u - u, spot.v - v) * scale
        },
        { message: `the mark at ${u}, ${v} at ${scale} px/mm` },
      )
      .toBeLessThan(1)
  }
  expect(inView).toBeGreaterThanOrEqual(2)
}

const violations = async (page: Page): Promise<readonly string[]> => {
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']
  const { violations: found } = await new AxeBuilder({ page }).setLegacyMode(true).withTags(tags).analyze()
  return found.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html} ${node.failureSummary}`))
}

test('a photo taken askew is straightened by four corners, lies to scale, is traced and is still there tomorrow', async ({
  page,
}) => {
  const app = await App.start(page)
  await app.openExample('Rock buggy, one seat')
  const photo = new PhotoScreen(app)
  const side = new Elevation(app, 'side')
  await photo.open()
  const picture = syntheticPhoto(ASKEW, [...DOTS, ...MARKS])
  await photo.choose('left side.png', picture)

  await test.step('four corners, put roughly, then dragged with the picture enlarged', async () => {
    await expect(app.notice).toContainText('where it was taken, was left out')
    await page.getByRole('radio', { name: 'a rectangle' }).check()
    for (const corner of Object.values(CORNERS)) {
      const { x, y } = ASKEW.seen(corner)
      await photo.tap({ x: x + 15, y: y - 12 })
    }
    await expect(photo.state).toContainText('Still to be typed')
    await photo.larger(4)
    for (const [id, corner] of Object.entries(CORNERS)) await photo.drag(id, ASKEW.seen(corner))
    for (const [id, corner] of Object.entries(CORNERS)) {
      const [at, wanted] = [await photo.at(id), ASKEW.seen(corner)]
      expect(Math.hypot(at.x - wanted.x, at.y - wanted.y)).toBeLessThan(0.5)
    }
  })

  await test.step('its size and place; the keys move a cross pixel by pixel and back', async () => {
    await photo.type('rectangle-width', '1200')
    await photo.type('rectangle-height', '80')
    await photo.type('rectangle-height', '800')
    await photo.type('known-u', '0')
    await expect(photo.state).toContainText('where the known point is')
    await photo.type('known-v', '50')
    await expect(photo.state).toHaveAttribute('data-scaled', 'true')
    const before = await photo.at('frontLow')
    await photo.cross('frontLow').focus()
    await page.keyboard.press('ArrowRight')
    expect((await photo.at('frontLow')).x).toBeCloseTo(before.x + 1, 6)
    await page.keyboard.press('ArrowLeft')
    expect((await photo.at('frontLow')).x).toBeCloseTo(before.x, 6)
  })

  await test.step('a second length checks it: the diagonal between two marks', async () => {
    await page.getByRole('button', { name: 'Check with a second known length' }).click()
    for (const mark of [RED, BLUE]) await photo.tap(ASKEW.seen(mark))
    // 400 across and 250 down: 471.7 mm.
    await photo.type('check-length', '471.7')
    const result = await page.getByTestId('check-result').textContent()
    const measured = Number(/measures ([\d.]+) mm/.exec(result ?? '')?.[1])
    expect(Math.abs(measured - Math.hypot(400, 250))).toBeLessThan(2)
    await photo.type('camera-distance', '1700')
    await expect(page.getByTestId('parallax')).toContainText('too far out')
  })

  await test.step('under the drawing the marks lie where they are, at any zoom', async () => {
    await page.getByRole('slider', { name: 'Strength' }).press('End')
    await page.getByRole('button', { name: 'See it under the drawing' }).click()
    await fitCar(page)
    await expectMarks(side)
    const red = await side.pxOf({ x: RED.u, y: 0, z: RED.v })
    await page.mouse.move(red.x, red.y)
    await page.mouse.wheel(0, -120)
    await expectMarks(side)
    await page.mouse.down()
    await page.mouse.move(red.x + 41, red.y + 17, { steps: 3 })
    await page.mouse.up()
    await expectMarks(side)
  })

  await test.step('a drag of a part does not paint the photo at every move', async () => {
    await page.evaluate(() => {
      const counts = { photos: 0, drawings: 0 }
      const counted = (name: 'drawImage' | 'clearRect', count: (all: readonly unknown[]) => void): void => {
        const paint = Reflect.get(CanvasRenderingContext2D.prototype, name) as (...all: unknown[]) => void
        const counting = new Proxy(paint, {
          apply: (target, self, all: unknown[]) => {
            count(all)
            return Reflect.apply(target, self, all)
          },
        })
        Object.assign(CanvasRenderingContext2D.prototype, { [name]: counting })
      }
      counted('drawImage', ([source]) => (counts.photos += source instanceof ImageBitmap ? 1 : 0))
      counted('clearRect', () => (counts.drawings += 1))
      Object.assign(window, { painted: counts })
    })
    const painted = (): Promise<{ photos: number; drawings: number }> =>
      page.evaluate(() => ({
        ...(window as unknown as { painted: { photos: number; drawings: number } }).painted,
      }))
    await app.tab('Parts')
    const from = await side.grab('hip:driver')
    const before = await painted()
    await side.carry(from, { u: 40, v: 20 })
    await side.carry({ x: from.x + 3, y: from.y }, { u: 60, v: 30 })
    await expect.poll(async () => (await painted()).drawings - before.drawings).toBeGreaterThan(7)
    // Once at most, when what is said above the drawing changes its height meanwhile.
    expect((await painted()).photos - before.photos).toBeLessThanOrEqual(1)
    await page.keyboard.press('Escape')
    await side.drop()
  })

  await test.step('a tube is traced over two marks, as one undo step', async () => {
    await page.getByRole('button', { name: 'Trace, photo' }).click()
    await page.getByRole('button', { name: 'Trace a tube from the side' }).click()
    await photo.type('trace-across', '-420')
    for (const mark of [GREEN, RED]) {
      const at = await side.pxOf({ x: mark.u, y: 0, z: mark.v })
      await page.mouse.click(at.x, at.y)
    }
    await expect(page.getByTestId('trace-status')).toContainText('2 points')
    await page.getByRole('button', { name: 'Finish the tube' }).click()
    await app.tab('Parts')
    const slackMm = 1 / (await side.pxPerMm()) + 0.5
    await app.expectAt('tube-point:cage-1:0', { x: GREEN.u, z: GREEN.v }, slackMm)
    await app.expectAt('tube-point:cage-1:1', { x: RED.u, z: RED.v }, slackMm)
    await app.expectAt('tube-point:cage-1:1', { y: -420 })
    await app.undo()
    await expect(app.part('tube-point:cage-1:0')).toHaveCount(0)
    await app.redo()
  })

  await test.step('a part is set by the keys alone; Escape calls it off', async () => {
    await page.getByTestId('trace-target').selectOption({ label: 'Driver, hip point' })
    const before = await app.at('hip:driver')
    await page.getByRole('button', { name: 'Set this part with a tap' }).click()
    await expect(page.getByTestId('trace-side')).toBeFocused()
    await page.keyboard.press('Escape')
    await expect(page.getByTestId('trace-side')).toHaveCount(0)
    await app.expectAt('hip:driver', before)
    await page.getByRole('button', { name: 'Set this part with a tap' }).click()
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('Enter')
    await expect.poll(async () => (await app.at('hip:driver')).x).not.toBe(before.x)
    await app.undo()
    await app.expectAt('hip:driver', before)
  })

  await test.step('after a reload all of it is there', async () => {
    await app.settled()
    await page.reload()
    await expect(page.getByRole('application').first()).toBeVisible()
    await fitCar(page)
    await expectMarks(side)
    await photo.open()
    await expect(photo.state).toHaveAttribute('data-scaled', 'true')
    await expect(photo.cross('rearHigh')).toBeVisible()
  })

  await test.step('where the picture is gone it is said, and it can be chosen again with its crosses kept', async () => {
    const before = await photo.at('rearHigh')
    await page.evaluate(
      () =>
        new Promise<void>((resolve, reject) => {
          const opening = indexedDB.open('tabwright-pictures')
          opening.onerror = () => reject(new Error('no store'))
          opening.onsuccess = () => {
            const change = opening.result.transaction('pictures', 'readwrite')
            change.objectStore('pictures').clear()
            change.oncomplete = () => resolve()
          }
        }),
    )
    await page.reload()
    await expect(page.getByRole('application').first()).toBeVisible()
    await photo.open()
    await expect(page.getByTestId('picture-missing')).toContainText('not on this device: choose it again')
    await page
      .getByTestId('choose-again')
      .setInputFiles({ name: 'again.png', mimeType: 'image/png', buffer: picture })
    await expect(photo.cross('rearHigh')).toBeVisible()
    expect(await photo.at('rearHigh')).toEqual(before)
  })
})

test('a photo from above by a length and a line; pictures that cannot be used are refused in words', async ({
  page,
}) => {
  const app = await App.start(page)
  await app.openExample('Rock buggy, one seat')
  const photo = new PhotoScreen(app)
  await photo.open()

  await test.step('damaged files and the newer phones’ format', async () => {
    await photo.choose('broken.png', syntheticPhoto(SQUARE, MARKS).subarray(0, 900))
    await expect(app.notice).toContainText('broken.png is damaged')
    await photo.choose(
      'phone.heic',
      Buffer.from('\0\0\0\u0018ftypheic\0\0\0\0mif1heic', 'latin1'),
      'image/heic',
    )
    await expect(app.notice).toContainText('HEIC')
    await app.closeNotice()
  })

  await test.step('the length between two marks, a line along the car, and a mark as the known point', async () => {
    await page.getByRole('radio', { name: 'above' }).check()
    await photo.choose('from above.png', syntheticPhoto(SQUARE, MARKS))
    await expect(photo.stage).toBeVisible()
    await photo.larger(4)
    const line = [
      { u: 50, v: 200 },
      { u: 1150, v: 200 },
    ]
    for (const spot of [RED, BLUE, ...line, RED]) await photo.tap(SQUARE.seen(spot))
    await photo.type('known-length', String(Math.hypot(400, 250)))
    await photo.type('known-u', String(RED.u))
    await photo.type('known-v', String(RED.v))
    await expect(photo.state).toHaveAttribute('data-scaled', 'true')
    await expect(page.getByTestId('trace-error')).toContainText('One pixel of the picture is 2.6 mm')
  })

  for (const theme of ['light', 'dark'] as const)
    await test.step(`the screen is free of what the checker finds, ${theme}`, async () => {
      await page.evaluate((name) => document.documentElement.setAttribute('data-theme', name), theme)
      expect(await violations(page)).toEqual([])
    })

  await test.step('its marks lie where they are', async () => {
    await page.getByRole('slider', { name: 'Strength' }).press('End')
    await page.getByRole('button', { name: 'See it under the drawing' }).click()
    await fitCar(page)
    await expectMarks(new Elevation(app, 'top'))
  })
})

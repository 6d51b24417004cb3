import { expect, test } from '@playwright/test'
import { App } from './pages/app'
import { benchCar, HIP } from './pages/benchCar'
import { Elevation } from './pages/elevation'

const CORNER = { xMm: -300, yMm: -200 }

/** The bench car with a plain box for a shell seen from above. */
const boxed = () => {
  const car = benchCar()
  const topOutline = [CORNER, { xMm: 200, yMm: -200 }, { xMm: 200, yMm: 200 }, { xMm: -300, yMm: 200 }]
  return { ...car, places: car.places.map((place) => ({ ...place, seat: { ...place.seat, topOutline } })) }
}

test('a corner of the shell is dragged with its mirror image, by exactly what the hand moved, as one step', async ({
  page,
}) => {
  const app = await App.start(page)
  await app.openLayout(boxed())
  await app.tab('Seat')
  await page.getByLabel('Shape the shell').check()
  await page.getByText(/^Top outline/).click()
  const top = new Elevation(app, 'top')
  const corner = { x: HIP.xMm + CORNER.xMm, y: HIP.yMm + CORNER.yMm, z: HIP.zMm }
  const points = page.getByRole('group', { name: /^Point \d+$/ })
  const shown = async (index: number): Promise<readonly string[]> => [
    await points.nth(index).getByLabel('x rearward').inputValue(),
    await points.nth(index).getByLabel('y right').inputValue(),
  ]
  const before = [await shown(0), await shown(3)]

  const at = await top.pxOf(corner)
  await page.mouse.move(at.x, at.y)
  for (let scale = await top.pxPerMm(); scale < 2; scale = await top.pxPerMm()) {
    await page.mouse.wheel(0, -400)
    await expect.poll(async () => await top.pxPerMm()).toBeGreaterThan(scale)
  }
  const from = await top.pxOf(corner)
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  await top.carry(from, { u: 30, v: -20 })
  await top.drop()

  // −300 + 30 and −200 − 20; the other side mirrors y.
  await expect
    .poll(async () => [await shown(0), await shown(3)])
    .toEqual([
      ['−270', '−220'],
      ['−270', '220'],
    ])
  await app.undo()
  await expect.poll(async () => [await shown(0), await shown(3)]).toEqual(before)

  await page.getByRole('button', { name: 'End shaping' }).click()
  await expect(page.getByLabel('Shape the shell')).not.toBeChecked()
})

test('a message leaves the drawing as large as it was', async ({ page }) => {
  const app = await App.start(page)
  await app.openLayout(boxed())
  const side = page.getByTestId('elevation-side')
  const before = await side.boundingBox()
  await app.pickFile('not a layout', 'scrap.json')
  await expect(app.notice).toContainText('cannot be opened')
  expect(await side.boundingBox()).toEqual(before)
  await expect(app.notice.getByRole('button', { name: 'Close' })).toBeInViewport()
  await app.closeNotice()
  expect(await side.boundingBox()).toEqual(before)
})

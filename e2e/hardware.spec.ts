import { expect, test, type Locator, type Page } from '@playwright/test'
import { App } from './pages/app'
import { exampleLayout } from './pages/benchCar'

const SHOULDER_LEFT = 'anchor:driver:driver-shoulder-left'
const SHOULDER_RIGHT = 'anchor:driver:driver-shoulder-right'
const LAP_LEFT = 'anchor:driver:driver-lap-left'

const start = async (page: Page, tab: string): Promise<App> => {
  const app = await App.start(page)
  await app.openLayout(exampleLayout('rock-buggy'))
  await app.tab(tab)
  return app
}

const belt = (page: Page): Locator => page.getByRole('region', { name: 'Belt' })

/** The editor of an anchor with what it is made of unfolded. */
const anchorEditor = async (page: Page, name: string): Promise<Locator> => {
  const editor = page.getByRole('region', { name, exact: true })
  await editor.getByText('How it is made').click()
  return editor
}

test('a 3-point belt has one shoulder strap, over the shoulder that is chosen', async ({ page }) => {
  const app = await start(page, 'Belt')
  await belt(page).getByLabel('Arrangement').selectOption('3')
  await expect(belt(page).getByRole('radio', { name: 'Left shoulder' })).toBeChecked()
  await belt(page).getByRole('radio', { name: 'Right shoulder' }).check()
  await app.tab('Numbers')
  await expect(page.getByTestId('quantity:shoulder-drop:shoulder-right')).toBeVisible()
  await expect(page.getByTestId('quantity:shoulder-drop:shoulder-left')).toHaveCount(0)
  await app.tab('Belt')
  await belt(page).getByLabel('Arrangement').selectOption('6')
  await expect(belt(page).getByRole('radio', { name: 'Right shoulder' })).toHaveCount(0)
  await app.undo()
  await expect(belt(page).getByRole('radio', { name: 'Right shoulder' })).toBeChecked()
})

test('thigh straps under the thighs are a choice of belts that have a pair of them', async ({ page }) => {
  const app = await start(page, 'Belt')
  const run = belt(page).getByLabel('Thigh straps run')
  await run.selectOption('under-thighs')
  await belt(page).getByLabel('Arrangement').selectOption('5')
  await expect(run).toHaveCount(0)
  await app.undo()
  await expect(run).toHaveValue('under-thighs')
  await app.undo()
  await expect(run).toHaveValue('rearward')
})

test('joined shoulder straps end on one anchor and say what a tail can be', async ({ page }) => {
  const app = await start(page, 'Belt')
  await belt(page).getByLabel('Shoulder straps joined behind the neck').check()
  const tail = belt(page).getByLabel('Tail from the anchor to the junction')
  await app.typeInto(tail, '5')
  await expect(belt(page).getByRole('alert')).toContainText('5 mm is outside what a layout can hold')
  await app.typeInto(tail, '110')
  await expect(belt(page).getByRole('alert')).toHaveCount(0)
  await app.tab('Parts')
  const left = await app.at(SHOULDER_LEFT)
  expect(await app.at(SHOULDER_RIGHT)).toEqual(left)
  await app.part(SHOULDER_RIGHT).focus()
  await page.keyboard.press('ArrowUp')
  await app.expectAt(SHOULDER_LEFT, { z: left.z + 1 })
  await app.expectAt(SHOULDER_RIGHT, { y: left.y, z: left.z + 1 })
})

test('an adjuster is placed by typing and forgotten by clearing', async ({ page }) => {
  const app = await start(page, 'Belt')
  const place = belt(page).getByLabel('Lap adjuster, from the anchor')
  const body = belt(page).getByLabel('Lap adjuster, body')
  await expect(body).toHaveCount(0)
  await app.typeInto(place, '60')
  await expect(body).toHaveValue('60')
  // A body of 160 mm has its middle at least 80 mm from the anchor.
  await app.typeInto(body, '160')
  await expect(place).toHaveValue('80')
  await app.tab('Numbers')
  await expect(page.getByTestId('quantity:adjuster-clearance:lap-left')).toBeVisible()
  await app.tab('Belt')
  await app.typeInto(place, '')
  await expect(body).toHaveCount(0)
  await app.undo()
  await expect(body).toHaveValue('160')
})

test('webbing is chosen for each kind of strap by itself, in either unit', async ({ page }) => {
  const app = await start(page, 'Belt')
  const shoulder = belt(page).getByRole('group', { name: 'Shoulder straps' })
  const lap = belt(page).getByRole('group', { name: 'Lap straps' })
  await expect(shoulder.getByRole('radio', { name: '3 in' })).toBeChecked()
  await shoulder.getByRole('radio', { name: '2 in' }).check()
  await expect(belt(page).getByLabel('Shoulder width')).toHaveValue('50.8')
  await expect(lap.getByRole('radio', { name: '3 in' })).toBeChecked()
  await app.typeInto(belt(page).getByLabel('Lap width'), '45')
  await expect(lap.getByRole('radio', { name: '3 in' })).not.toBeChecked()
  await expect(lap.getByRole('radio', { name: '2 in' })).not.toBeChecked()
  await app.useInches()
  await expect(belt(page).getByLabel('Shoulder width')).toHaveValue('2')
  await app.typeInto(belt(page).getByLabel('Anti-submarine width'), '3')
  await expect(
    belt(page).getByRole('group', { name: 'Anti-submarine straps' }).getByRole('radio', { name: '3 in' }),
  ).toBeChecked()
})

test('a strap is fixed another way by keyboard, where it is, and undone', async ({ page }) => {
  const app = await start(page, 'Parts')
  const before = await app.at(LAP_LEFT)
  await app.tab('Anchors')
  const tab = await anchorEditor(page, 'Left lap tab')
  const fixedBy = tab.getByLabel('Fixed by')
  await fixedBy.focus()
  await page.keyboard.press('ArrowDown')
  const clevis = page.getByRole('region', { name: 'Left lap clevis', exact: true })
  await expect(clevis).toContainText('double shear')
  await expect(clevis.getByLabel('Thickness of each plate')).toHaveValue('4.8')
  await page.keyboard.press('ArrowDown')
  const insert = page.getByRole('region', { name: 'Left lap insert', exact: true })
  await expect(insert).toContainText('single shear')
  await page.keyboard.press('ArrowDown')
  const eye = page.getByRole('region', { name: 'Left lap eye bolt', exact: true })
  await expect(eye.getByLabel('Shank rise')).toBeVisible()
  await app.typeInto(eye.getByLabel('Thread'), '12.5')
  await expect(eye.getByLabel('Thread')).toHaveValue('12.5')
  await app.tab('Parts')
  expect(await app.at(LAP_LEFT)).toEqual(before)
  await app.tab('Numbers')
  // The shank starts along the pull of its own strap.
  expect(await app.quantity('shank-angle', 'lap-left')).toBeLessThan(0.5)
  await app.tab('Anchors')
  for (let step = 0; step < 4; step += 1) await app.undo()
  await expect(page.getByRole('region', { name: 'Left lap tab', exact: true })).toBeVisible()
})

test('an insert holds its bolt from one side, a wrap goes to the nearest tube', async ({ page }) => {
  await start(page, 'Anchors')
  const editor = await anchorEditor(page, 'Left shoulder tab')
  await editor.getByLabel('Fixed by').selectOption('wrap')
  const wrap = page.getByRole('region', { name: 'Left shoulder wrap', exact: true })
  await expect(wrap).toContainText('three-bar slide')
  await expect(wrap.getByLabel('Guide hoops welded beside the loop')).toBeChecked()
  await expect(wrap.getByLabel('Wrapped round')).toHaveValue('harness-bar')
})

test('the shell has a thickness at its slots, with a word about one that it cannot have', async ({
  page,
}) => {
  const app = await start(page, 'Seat')
  const thickness = page.getByLabel('Thickness of the shell at its slots')
  await expect(thickness).toHaveValue('0')
  await app.typeInto(thickness, '18')
  await expect(thickness).toHaveValue('18')
  await app.typeInto(thickness, '61')
  await expect(page.getByRole('region', { name: 'Strap slots' }).getByRole('alert')).toContainText(
    '0 to 60 mm',
  )
  await page.keyboard.press('Escape')
  await app.undo()
  await expect(thickness).toHaveValue('0')
})

test.describe('on a tablet', () => {
  test.use({ viewport: { width: 1024, height: 768 }, hasTouch: true })

  test('belt and anchors are changed by finger', async ({ page }) => {
    const app = await App.start(page)
    await app.openLayout(exampleLayout('rock-buggy'))
    await app.tab('Belt')
    await belt(page).getByText('Shoulder straps joined behind the neck').tap()
    await expect(belt(page).getByLabel('Tail from the anchor to the junction')).toHaveValue('150')
    await belt(page)
      .getByRole('group', { name: 'Shoulder straps' })
      .getByRole('radio', { name: '2 in' })
      .tap()
    await expect(belt(page).getByLabel('Shoulder width')).toHaveValue('50.8')
  })
})

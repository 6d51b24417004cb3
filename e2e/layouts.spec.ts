import { expect, type Locator, test } from '@playwright/test'
import { App } from './pages/app'
import { violations } from './pages/axe'
import { benchCar, exampleLayout } from './pages/benchCar'

const cards = (app: App, list: RegExp | string = 'Layouts'): Locator =>
  app.page.getByRole('list', { name: list, exact: true }).getByRole('listitem')

/** The button that opens a layout, by its job's name; its picture comes first when it is read aloud. */
const opener = (app: App, name: string): Locator =>
  app.page.getByRole('button', { name: new RegExp(`^Side view of ${name}`) })

const card = (app: App, name: string): Locator =>
  app.page.getByRole('listitem').filter({ has: opener(app, name) })

const more = async (of: Locator): Promise<Locator> => {
  await of.getByText('More').click()
  return of
}

test('layouts are copied, found, filed, removed and put back, and nothing is written over', async ({
  page,
}) => {
  const app = await App.start(page)
  await app.openLayouts()
  await expect(page.getByText('Nothing is kept here yet')).toBeVisible()
  await app.openLayout(benchCar())
  await app.openExample('Rock buggy, one seat')
  const rock = exampleLayout('rock-buggy').job.name

  await app.openLayouts()
  await expect(cards(app)).toHaveText([new RegExp(`${rock}.*Open here`), /Bench car/])
  await expect(cards(app).nth(1).getByRole('img', { name: 'Side view of Bench car' })).toBeVisible()

  await (await more(card(app, 'Bench car'))).getByRole('button', { name: 'Duplicate' }).click()
  await expect(page.getByTestId('layouts-outcome')).toContainText('Bench car: the copy stands beside it.')
  await expect(cards(app)).toHaveText([/Bench car, copy/, new RegExp(rock), /Bench car/])

  const name = cards(app).first().getByRole('textbox', { name: 'Job name' })
  await more(cards(app).first())
  await app.typeInto(name, 'Dune car')
  await expect(cards(app)).toHaveText([/Dune car/, new RegExp(rock), /Bench car/])

  const search = page.getByRole('searchbox')
  await search.fill('dune car')
  await expect(cards(app)).toHaveText([/Dune car/])
  await search.fill('no such thing')
  await expect(page.getByText('No layout has all of these words')).toBeVisible()
  await search.fill('')
  await page.getByRole('combobox', { name: 'Sort by' }).selectOption('name')
  await expect(cards(app)).toHaveText([/Bench car/, /Dune car/, new RegExp(rock)])

  await page.getByRole('checkbox', { name: 'Choose Dune car' }).check()
  await page.getByRole('checkbox', { name: 'Choose Bench car' }).check()
  const chosen = page.getByRole('region', { name: 'Chosen layouts' })
  await expect(chosen).toContainText('2 layouts chosen')
  await chosen.getByRole('combobox', { name: 'Folder' }).fill('Club')
  await chosen.getByRole('button', { name: 'Move them', exact: true }).click()
  await expect(cards(app, 'Layouts in Club')).toHaveText([/Bench car/, /Dune car/])
  await expect(cards(app)).toHaveText([new RegExp(rock)])

  await page.getByRole('checkbox', { name: 'Choose Bench car' }).check()
  await chosen.getByRole('button', { name: 'Remove them' }).click()
  await expect(cards(app, 'Removed layouts')).toHaveText([/Bench car/])
  await expect(cards(app, 'Layouts in Club')).toHaveText([/Dune car/])
  await page.getByTestId('layouts-outcome').getByRole('button', { name: 'Put back' }).click()
  await expect(cards(app, 'Layouts in Club')).toHaveText([/Bench car/, /Dune car/])

  expect(await violations(page)).toEqual([])
  await app.chooseInView('Sheet', 'Blueprint')
  expect(await violations(page)).toEqual([])

  await opener(app, 'Bench car').click()
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Bench car')
  await app.openLayouts()
  await expect(page.getByTestId(/^layout:/)).toHaveCount(3)
})

test('the bin is emptied only when it is said twice, and the open layout may go there too', async ({
  page,
}) => {
  const app = await App.start(page)
  await app.openLayout(benchCar())
  await app.openLayouts()
  await (await more(card(app, 'Bench car'))).getByRole('button', { name: 'Remove', exact: true }).click()
  await expect(cards(app, 'Removed layouts')).toHaveText([/Bench car/])
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Unnamed layout')
  // The card is gone; the keyboard goes on from the word of it.
  await expect(page.getByTestId('layouts-outcome')).toBeFocused()
  await page.getByRole('button', { name: 'Empty the bin' }).click()
  await page.getByRole('dialog').getByRole('button', { name: 'Keep them' }).click()
  await expect(cards(app, 'Removed layouts')).toHaveText([/Bench car/])
  await page.getByRole('button', { name: 'Empty the bin' }).click()
  await page.getByRole('dialog').getByRole('button', { name: 'Remove for good' }).click()
  await expect(page.getByTestId('layouts-outcome')).toContainText('1 layout removed for good')
  await expect(cards(app, 'Removed layouts')).toHaveCount(0)
  await page.reload()
  await app.openLayouts()
  await expect(page.getByText('Nothing is kept here yet')).toBeVisible()
})

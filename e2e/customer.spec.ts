import AxeBuilder from '@axe-core/playwright'
import { expect, type Page, test } from '@playwright/test'
import type { Layout } from '../src/domain/layout/document/layout'
import { App } from './pages/app'
import { exampleLayout } from './pages/benchCar'
import { watchOwnOrigin } from './pages/ownOrigin'
import { bare, Sheet } from './pages/sheet'

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']

const violations = async (page: Page): Promise<readonly string[]> => {
  const { violations: found } = await new AxeBuilder({ page }).setLegacyMode(true).withTags(RULES).analyze()
  return found.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html} ${node.failureSummary}`))
}

/** The rock buggy in two ways: as it is, and, drawn, with both lap tabs 30 mm further back. */
const twoWays = (): Layout => {
  const layout = exampleLayout('rock-buggy')
  const { tubes, places } = layout
  const moved = places.map((place) => ({
    ...place,
    anchors: place.anchors.map((anchor) => {
      if (!anchor.strap.startsWith('lap')) return anchor
      const { point } = anchor.mount
      return { ...anchor, mount: { ...anchor.mount, point: { ...point, xMm: point.xMm + 30 } } }
    }),
  }))
  return {
    ...layout,
    job: { ...layout.job, customer: 'Ines Varga', preparedBy: 'Kit' },
    places: moved,
    variants: {
      drawn: { id: 'back', name: 'Lap tabs back', index: 1 },
      others: [{ id: 'first', name: 'As first drawn', tubes, places }],
    },
  }
}

const goToCustomer = async (page: Page): Promise<void> => {
  await page.getByRole('button', { name: 'Go to', exact: true }).click()
  await page.getByRole('button', { name: /^Customer/ }).click()
  await expect(page.getByRole('heading', { name: 'Customer', exact: true })).toBeVisible()
}

test('a proposal goes to the customer in a link, is asked about and agreed to there, comes back, and the papers say so', async ({
  page,
  browser,
}) => {
  test.slow()
  const app = await App.start(page)
  await app.openLayout(twoWays())
  await goToCustomer(page)
  await page.getByRole('button', { name: 'Show to the customer' }).click()
  await expect(page.getByText('Send it to Ines Varga')).toBeVisible()
  const proposal = await page.getByTestId('share-link').inputValue()
  expect(await violations(page), 'the builder’s side').toEqual([])

  const away = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' })
  const theirs = await away.newPage()
  watchOwnOrigin(theirs)
  await theirs.goto(proposal)
  await expect(theirs.getByRole('heading', { name: /^Proposal for Ines Varga/ })).toBeVisible()
  // Nothing of the builder's, and nothing in their browser but what they say.
  await expect(theirs.getByRole('button', { name: /Undo|File|Papers/ })).toHaveCount(0)
  expect(await theirs.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)

  await test.step('the two ways differ in words', async () => {
    await expect(
      theirs.getByText(/left lap belt is fixed and where the right lap belt is fixed: 30 mm further back\./),
    ).toBeVisible()
    await theirs.getByRole('radio', { name: 'As first drawn' }).check()
    await theirs.getByRole('radio', { name: 'Lap tabs back' }).check()
  })
  await test.step('a part in the picture takes a question, which outlasts a reload', async () => {
    const picture = theirs.getByTestId('car-picture-side')
    await theirs.getByText(/^All parts/).click()
    await theirs.getByRole('button', { name: 'Where the left lap belt is fixed' }).click()
    await expect(theirs.getByRole('region', { name: 'Where the left lap belt is fixed' })).toBeVisible()
    const remark = theirs.getByLabel('Question or remark about where the left lap belt is fixed')
    await remark.fill('Does it rub on my jacket?')
    await theirs.reload()
    await theirs.getByText(/^All parts/).click()
    await theirs.getByRole('button', { name: 'Where the left lap belt is fixed' }).click()
    await expect(remark).toHaveValue('Does it rub on my jacket?')
    const part = theirs.getByRole('region', { name: 'Where the left lap belt is fixed' })
    await part.getByLabel('Your name').fill('Ines Varga')
    await part.getByRole('button', { name: 'Add' }).click()
    await expect(picture.locator('.car-pin')).toHaveText('1')
  })
  await test.step('nothing is found by the checker, in both themes', async () => {
    expect(await violations(theirs), 'paper').toEqual([])
    await theirs.getByRole('radio', { name: 'Blueprint' }).check()
    expect(await violations(theirs), 'blueprint').toEqual([])
  })
  await theirs.getByRole('button', { name: 'Agree', exact: true }).click()
  await theirs.getByRole('button', { name: 'Yes, I agree to this drawing' }).click()
  await expect(theirs.getByText(/Ines Varga agreed on .*“Lap tabs back”/)).toBeVisible()
  await theirs.getByRole('button', { name: 'Send back' }).click()
  const answer = await theirs.getByTestId('share-link').inputValue()
  await away.close()

  // The answer finds the layout it belongs to, whichever is open by then, though the record of the showing was undone.
  await app.undo()
  await expect(page.getByTestId('agreement')).toContainText('not shown to the customer')
  await app.openExample('Nearly empty')
  await page.goto(answer)
  await page.getByRole('button', { name: /^Open “/ }).click()
  await expect(page.getByText(/no record that it was shown/)).toBeVisible()
  await page.getByRole('button', { name: 'Add to the layout (2 entries)' }).click()
  await expect(page.getByTestId('agreement')).toContainText('Agreed by Ines Varga on')
  await expect(page.getByTestId('agreement')).toContainText('as drawn')
  await expect(page.getByTestId('car-picture-side').locator('.car-pin')).toHaveText('1')

  await app.openSheet()
  const sheet = new Sheet(page)
  const agreed = bare('Customer: Agreed by Ines Varga on')
  expect(await sheet.text()).toContain(agreed)
  const printed = (await sheet.print()).flatMap(({ texts }) => texts)
  expect(bare(printed.join(' '))).toContain(agreed)

  await page.getByRole('button', { name: 'Back to the drawing' }).click()
  await app.tab('Parts')
  await app.select('anchor:driver:driver-lap-left')
  await page
    .getByTestId('selected-part')
    .getByRole('button', { name: /rearward/i })
    .first()
    .click()
  await app.tab('Job')
  await expect(page.getByTestId('job-agreement')).toContainText('to an earlier drawing')
  await expect(page.getByTestId('job-agreement')).toContainText(
    'Changed since: where the left lap belt is fixed',
  )

  await test.step('in the workshop it is agreed to again without any link, by a name that is typed', async () => {
    await goToCustomer(page)
    await expect(page.getByRole('button', { name: 'Agree', exact: true })).toBeDisabled()
    await page.getByRole('button', { name: 'Show again as drawn now' }).click()
    await page.getByRole('button', { name: 'Agree', exact: true }).click()
    const yes = page.getByRole('button', { name: 'Yes, I agree to this drawing' })
    await expect(yes).toBeDisabled()
    await page.getByRole('group', { name: 'Agree' }).getByLabel('Your name').fill('Ines Varga')
    await yes.click()
    await expect(page.getByTestId('agreement')).toContainText(': as drawn, code')
  })
})

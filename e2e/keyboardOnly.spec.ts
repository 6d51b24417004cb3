import { expect, test } from '@playwright/test'
import { App } from './pages/app'
import { Keys } from './pages/keys'
import { bare, Sheet } from './pages/sheet'

test('from the first visit to a printed sheet with all six anchors by keyboard alone, the focus in sight all along', async ({
  page,
}) => {
  const app = await App.start(page)
  const keys = new Keys(page)
  const said = page.getByTestId('announcement')

  // Past the header by the skip links.
  await keys.press(page.getByRole('link', { name: 'Skip to the panels' }))
  await keys.tab('Job')
  // Several lines: taken over when it is left.
  await keys.to(page.getByRole('textbox', { name: 'Datum' }))
  await page.keyboard.type('Left rear seat bolt')
  await keys.type(page.getByRole('textbox', { name: 'Job', exact: true }), 'Sand hopper')
  await keys.to(page.getByRole('tab', { name: 'Job' }), 'Shift+Tab')
  await keys.tab('Seat')
  const hip = page.getByRole('group', { name: /Hip point/ }).first()
  await keys.type(hip.getByLabel('x rearward'), '260')
  await keys.type(hip.getByLabel('y right'), '200')
  await keys.type(hip.getByLabel('z up'), '210')
  await keys.to(page.getByRole('tab', { name: 'Seat' }), 'Shift+Tab')
  await keys.tab('Tubes')
  await keys.press(page.getByRole('button', { name: 'Add: harness bar' }))
  await keys.to(page.getByRole('tab', { name: 'Tubes' }), 'Shift+Tab')
  await keys.tab('Anchors')
  for (const strap of ['shoulder-left', 'lap-left', 'sub-left']) {
    await keys.press(page.getByTestId(`add-anchor:${strap}`))
    // The button is gone with what it added: the focus is on what stands in its place.
    await expect(page.getByTestId(`add-anchor:${strap}`)).toHaveCount(0)
    await keys.expectSeen()
  }

  // On the drawing: from part to part, told what is in hand, moved, typed and let go.
  const side = page.getByTestId('elevation-side')
  await keys.to(side, 'Shift+Tab')
  const leftLap = page.getByTestId('selected-part').getByText(/left lap tab, from the datum/)
  await expect(async () => {
    await page.keyboard.press('n')
    await expect(leftLap).toBeVisible({ timeout: 500 })
  }).toPass()
  await expect(said).toContainText(/left lap tab: x .* mm\./)
  await page.keyboard.press('Enter')
  await expect(page.getByTestId('selected-part')).toBeFocused()
  await keys.type(app.selectedField('x rearward'), '440')
  await keys.type(app.selectedField('z up'), '12')
  await page.keyboard.press('Escape')
  await expect(side).toBeFocused()
  await page.keyboard.press('Shift+ArrowUp')
  await expect(app.selectedField('z up')).toHaveValue('22')
  await expect(said).toContainText(/left lap tab: x 440, .* z 22 mm\./)
  await page.keyboard.press('Control+z')
  await expect(said).toContainText('Undone: Nudge')
  await page.keyboard.press('Escape')
  await expect(page.getByTestId('selected-part')).toHaveCount(0)

  // A menu is left by Escape and gives the focus back.
  const view = page.getByRole('button', { name: 'View', exact: true })
  await keys.to(view, 'Shift+Tab')
  await page.keyboard.press('Enter')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Escape')
  await expect(view).toBeFocused()
  await expect(view).toHaveAttribute('aria-expanded', 'false')

  await keys.press(page.getByRole('button', { name: 'Papers', exact: true }))
  await expect(page.getByTestId('sheet-page-1')).toBeVisible()
  await page.evaluate(() => {
    window.print = () => document.body.setAttribute('data-printed', 'yes')
  })
  await keys.press(page.getByRole('button', { name: 'Print' }))
  await expect(page.locator('body')).toHaveAttribute('data-printed', 'yes')
  const printed = await new Sheet(page).print()
  const texts = bare(printed.flatMap(({ texts: lines }) => lines).join(' '))
  for (const strap of ['shoulder', 'lap', 'anti-submarine'])
    for (const where of ['Left', 'Right']) expect(texts).toContain(`${where}${strap}tab`)
  // As typed, and mirrored about the seat at y 200.
  expect(texts).toContain('hippointx260,y200,z210mm')
  expect(texts).toContain('Leftrearseatbolt')
})

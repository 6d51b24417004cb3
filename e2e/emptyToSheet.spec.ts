import { expect, test } from '@playwright/test'
import { App } from './pages/app'
import { Sheet } from './pages/sheet'
import { lapAngle } from './pages/sideView'

const SCREENS = [
  { name: 'a desktop', use: { viewport: { width: 1440, height: 900 } } },
  { name: 'a tablet', use: { viewport: { width: 1024, height: 768 }, hasTouch: true } },
  { name: 'a phone', use: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true } },
]

for (const { name, use } of SCREENS) {
  test.describe(`on ${name}`, () => {
    test.use(use)

    test('an empty layout becomes a sheet with the numbers that were typed', async ({ page }) => {
      const app = await App.start(page)
      await app.openMenu('File')
      await page.getByRole('button', { name: 'New layout' }).click()
      await expect(page.getByRole('heading', { level: 1 })).toHaveText('Unnamed layout')

      await app.tab('Job')
      await app.typeInto(page.getByRole('textbox', { name: 'Job', exact: true }), 'Dune runner, front seat')
      await app.typeInto(page.getByRole('textbox', { name: 'Car', exact: true }), 'Dune runner')
      await page.getByRole('textbox', { name: 'Datum' }).fill('Left front seat bolt')
      await expect(page.getByRole('heading', { level: 1 })).toHaveText('Dune runner, front seat')

      await app.tab('Seat')
      const hip = page.getByRole('group', { name: /Hip point/ }).first()
      await app.typeInto(hip.getByLabel('x rearward'), '260')
      await app.typeInto(hip.getByLabel('y right'), '200')
      await app.typeInto(hip.getByLabel('z up'), '210')

      await app.tab('People')
      await app.typeInto(page.getByRole('textbox', { name: 'Name', exact: true }), 'K. Aldous')
      await app.typeInto(page.getByRole('textbox', { name: 'Stature' }), '1700')
      await app.typeInto(page.getByRole('textbox', { name: 'Mass', exact: true }), '72')

      await app.tab('Tubes')
      await page.getByRole('button', { name: 'Add: harness bar' }).click()

      await app.tab('Anchors')
      for (const strap of ['lap-left', 'shoulder-left', 'sub-left'])
        await page.getByTestId(`add-anchor:${strap}`).click()
      const lap = page.getByRole('region', { name: 'Left lap tab' })
      // So far beyond the shell's sides, 250 either side of the seat's middle, that the straps come in over it: it has no slots.
      await app.typeInto(lap.getByLabel('x rearward'), '440')
      await app.typeInto(lap.getByLabel('y right'), '-115')
      await app.typeInto(lap.getByLabel('z up'), '12')

      await app.tab('Numbers')
      // The person's own hip height differs a little from the seat's: within a few mm of the hip point that was typed.
      const expected = lapAngle({ x: 260, z: 210 }, { x: 440, z: 12 })
      const shown = await app.quantity('lap-angle', 'lap-left')
      expect(Math.abs(shown - expected)).toBeLessThan(2)
      await app.expectQuantity('lap-spacing', 'lap-pair', 630)

      await app.openSheet()
      const sheet = new Sheet(page)
      const pieces = await sheet.pieces()
      // Left tab as typed, right one mirrored about the seat at y 200.
      for (const text of ['Dune runner, front seat', 'Dune runner', '440', '−115', '515', '12'])
        expect(pieces).toContain(text)
      const text = await sheet.text()
      expect(text).toContain('Leftfrontseatbolt')
      expect(text).toContain('hippointx260,y200,z210mm')
      const pages = await sheet.print()
      expect(pages).toHaveLength(await sheet.pages.count())
    })
  })
}

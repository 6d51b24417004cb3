import { expect, test } from '@playwright/test'
import { readTexts } from '../tests/sheet/mount/printedSheet'
import { away, toldByTapes } from '../tests/sheet/mount/trilateration'
import { App } from './pages/app'
import { exampleLayout } from './pages/benchCar'
import { Sheet } from './pages/sheet'

/** How many sheets each car takes on A4 and on US Letter, as it was looked at. */
const EXAMPLES = [
  { title: 'Rock buggy, one seat', file: 'rock-buggy', sheets: [2, 2] },
  { title: 'Trail car, two seats', file: 'trail-car-two-seat', sheets: [4, 3] },
  { title: 'Beach car, road anchorages', file: 'road-fixed-seat', sheets: [2, 2] },
  { title: 'Dune runner, three points', file: 'dune-runner-three-point', sheets: [2, 2] },
  { title: 'Rally-raid buggy, crossed straps', file: 'rally-buggy-crossed-straps', sheets: [2, 2] },
  { title: 'Hill climber, joined shoulder straps', file: 'hill-climber-joined-straps', sheets: [2, 2] },
  { title: 'Student racer, straps under the thighs', file: 'student-racer-under-thighs', sheets: [2, 2] },
  { title: 'Desert single, padded shell', file: 'desert-single-thick-shell', sheets: [3, 3] },
  { title: 'Everything wrong', file: 'everything-wrong', sheets: [3, 3] },
  { title: 'Nearly empty', file: 'nearly-empty', sheets: [1, 1] },
] as const

/** Source: ISO 216, A4 is 297 × 210 mm; US Letter is 11 × 8½ in; 72 pt to the inch. Landscape. */
const PAPERS = [
  { name: 'A4', widthPt: (297 / 25.4) * 72, heightPt: (210 / 25.4) * 72 },
  { name: 'US Letter', widthPt: 11 * 72, heightPt: 8.5 * 72 },
] as const

/** Browsers round a page to whole px of 1/96 in. */
const SIZE_TOLERANCE_PT = 1

/** What a ruler of steel and good eyes would find; asked for of the print. */
const BAR_TOLERANCE_MM = 0.2

/** Exact by definition: 25.4 mm to the inch. Nearest sixteenth, as a tape is read. */
const inchText = (mm: number): string => {
  const sixteenths = Math.round((Math.abs(mm) / 25.4) * 16)
  const whole = Math.floor(sixteenths / 16)
  const rest = sixteenths % 16
  const divisor = [16, 8, 4, 2, 1].find((part) => rest % part === 0) ?? 1
  const fraction = rest === 0 ? '' : `${rest / divisor}/${16 / divisor}`
  const text = [whole === 0 && fraction !== '' ? '' : String(whole), fraction].filter((part) => part !== '')
  return `${mm < 0 && sixteenths > 0 ? '−' : ''}${text.join(' ')}`
}

const mmText = (mm: number): string => `${mm < 0 ? '−' : ''}${Number(Math.abs(mm).toFixed(1))}`

const nearest = (lengths: readonly number[], wanted: number): number =>
  Math.min(...lengths.map((length) => Math.abs(length - wanted)))

for (const { title, file, sheets } of EXAMPLES) {
  test(`“${title}” prints on both papers: true size, every number to be selected, every anchor told by its tapes`, async ({
    page,
  }) => {
    const layout = exampleLayout(file)
    const anchors = layout.places.flatMap((place) => place.anchors)
    const app = await App.start(page)
    await app.openExample(title)
    await app.openSheet()
    const sheet = new Sheet(page)
    for (const [index, paper] of PAPERS.entries()) {
      await sheet.choosePaper(paper.name)
      const pages = await sheet.print()
      expect(pages.length, paper.name).toBe(sheets[index])
      expect(await sheet.pages.count()).toBe(pages.length)
      for (const [at, { widthPt, heightPt, imageCount, texts }] of pages.entries()) {
        expect(Math.abs(widthPt - paper.widthPt)).toBeLessThan(SIZE_TOLERANCE_PT)
        expect(Math.abs(heightPt - paper.heightPt)).toBeLessThan(SIZE_TOLERANCE_PT)
        // Lines and letters, no bitmap.
        expect(imageCount).toBe(0)
        // What does not fit goes to a further page that says so; every page says which it is.
        expect(texts.join(' ')).toContain(`Page ${at + 1} of ${pages.length}`)
      }
      const level = pages[0]?.levelMm ?? []
      expect(nearest(level, 100)).toBeLessThan(BAR_TOLERANCE_MM)
      expect(nearest(level, 4 * 25.4)).toBeLessThan(BAR_TOLERANCE_MM)

      const texts = pages.flatMap((each) => each.texts)
      for (const { id, mount } of anchors)
        for (const mm of [mount.point.xMm, mount.point.yMm, mount.point.zMm]) {
          const [main, small] = layout.units.length === 'mm' ? [mmText, inchText] : [inchText, mmText]
          expect(texts, id).toContain(main(mm))
          expect(texts, id).toContain(`${small(mm)} ${layout.units.length === 'mm' ? 'in' : 'mm'}`)
        }
      if (anchors.length > 0) {
        const told = toldByTapes(readTexts(texts))
        expect(told).toHaveLength(anchors.length)
        for (const each of told) expect(away(each.told, each.point), each.item).toBeLessThan(1)
      }
      expect(await sheet.textsOffPaper()).toEqual([])
    }
  })
}

test('the bar from behind may be left out, and a datum without a name is said before printing and on every page', async ({
  page,
}) => {
  const layout = exampleLayout('rock-buggy')
  const app = await App.start(page)
  await app.openLayout({ ...layout, datum: '' })
  await app.openSheet()
  const sheet = new Sheet(page)
  await expect(page.getByRole('alert')).toContainText('Name the datum in Job')
  const written = async (): Promise<readonly string[]> =>
    (await sheet.print()).map(({ texts }) => texts.join(' '))
  for (const text of await written()) expect(text).toContain('DATUM NOT NAMED')
  expect((await written()).join(' ')).toContain('Harness bar from behind')

  const bar = page.getByRole('button', { name: 'Bar from behind' })
  await bar.click()
  await expect(bar).toHaveAttribute('aria-pressed', 'false')
  expect((await written()).join(' ')).not.toContain('Harness bar from behind')
})

test('a revision and bolts typed in the forms stand on the sheet, in both units of torque', async ({
  page,
}) => {
  const app = await App.start(page)
  await app.openLayout(exampleLayout('rock-buggy'))
  await app.tab('Job')
  await page.getByRole('button', { name: 'Add a line for this revision' }).click()
  const change = page.getByLabel('Line 1: what was changed')
  await app.typeInto(change, 'Bar up 22 mm')
  await page.getByRole('tab', { name: 'Belt', exact: true }).click()
  await app.typeInto(page.getByLabel('Lap bolt torque'), '30 ft-lb')
  await app.typeInto(page.getByLabel('Lap: where that is written'), 'instruction card, page 6')
  // 30 lbf·ft × 1.355 818 = 40.7 N·m.
  await expect(page.getByLabel('Lap bolt torque')).toHaveValue('40.7')
  await app.openSheet()
  const written = (await new Sheet(page).print()).flatMap(({ texts }) => texts).join(' ')
  expect(written).toContain('Bar up 22 mm')
  expect(written).toContain('torque 40.7 N·m (30 lbf·ft)')
  expect(written).toContain('As typed by the builder from: instruction card, page 6')
})

import { expect, test } from '@playwright/test'
import { App } from './pages/app'
import { exampleLayout } from './pages/benchCar'
import { Sheet } from './pages/sheet'

/** One page, but for the car with two seats and the one with a page full of broken rules. */
const EXAMPLES = [
  { title: 'Rock buggy, one seat', file: 'rock-buggy', mostPages: 1 },
  { title: 'Trail car, two seats', file: 'trail-car-two-seat', mostPages: 2 },
  { title: 'Beach car, road anchorages', file: 'road-fixed-seat', mostPages: 1 },
  { title: 'Everything wrong', file: 'everything-wrong', mostPages: 2 },
  { title: 'Nearly empty', file: 'nearly-empty', mostPages: 1 },
]

/** Source: ISO 216, A4 is 297 × 210 mm; US Letter is 11 × 8½ in; 72 pt to the inch. Landscape. */
const PAPERS = [
  { name: 'A4', widthPt: (297 / 25.4) * 72, heightPt: (210 / 25.4) * 72 },
  { name: 'US Letter', widthPt: 11 * 72, heightPt: 8.5 * 72 },
] as const

/** Browsers round a page to whole px of 1/96 in. */
const SIZE_TOLERANCE_PT = 1

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

for (const { title, file, mostPages } of EXAMPLES) {
  for (const paper of PAPERS) {
    test(`“${title}” prints on ${paper.name} with every anchor's numbers on the paper`, async ({ page }) => {
      const app = await App.start(page)
      await app.openExample(title)
      await app.openSheet()
      const sheet = new Sheet(page)
      await sheet.choosePaper(paper.name)

      const { sizes, images } = await sheet.print()
      const pageCount = await sheet.pages.count()
      expect(sizes).toHaveLength(pageCount)
      expect(pageCount).toBeLessThanOrEqual(mostPages)
      for (const { widthPt, heightPt } of sizes) {
        expect(Math.abs(widthPt - paper.widthPt)).toBeLessThan(SIZE_TOLERANCE_PT)
        expect(Math.abs(heightPt - paper.heightPt)).toBeLessThan(SIZE_TOLERANCE_PT)
      }
      // Lines and letters, no bitmap.
      expect(images).toBe(0)
      // What does not fit goes to a further page that says so; every page says which it is.
      const texts = await sheet.pages.allTextContents()
      texts.forEach((text, index) => expect(text).toContain(`Page ${index + 1} of ${pageCount}`))

      await page.emulateMedia({ media: 'print' })
      expect(await sheet.textsOffPaper()).toEqual([])
      const pieces = await sheet.pieces()
      const layout = exampleLayout(file)
      for (const anchor of layout.places.flatMap((place) => place.anchors)) {
        const { point } = anchor.mount
        for (const mm of [point.xMm, point.yMm, point.zMm]) {
          const [main, small] = layout.units.length === 'mm' ? [mmText, inchText] : [inchText, mmText]
          expect(pieces, anchor.id).toContain(main(mm))
          expect(pieces, anchor.id).toContain(`${small(mm)} ${layout.units.length === 'mm' ? 'in' : 'mm'}`)
        }
      }
    })
  }
}

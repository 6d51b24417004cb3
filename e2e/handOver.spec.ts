import { readFile } from 'node:fs/promises'
import { expect, type Page, test } from '@playwright/test'
import { parse } from 'csv-parse/sync'
import { strFromU8, unzipSync } from 'fflate'
import { readByDxfParser } from '../tests/support/dxfReader'
import { App } from './pages/app'
import { exampleFile, exampleLayout } from './pages/benchCar'

/*
 * Outside: the archive is opened by its package's reading half, drawings by dxf-parser, tables by csv-parse; lengths are measured by the
 * browser that draws the pages. 1 in = 25.4 mm; a CSS pixel is 1/96 in (CSS Values and Units 3, 6.2, from memory).
 */

const PX_PER_MM = 96 / 25.4

type Files = ReadonlyMap<string, string>

const handOverButton = (page: Page) => page.locator('button.hand-over')

/** Presses the button and opens what comes; the archive has one folder. */
const handedOver = async (page: Page): Promise<{ readonly name: string; readonly files: Files }> => {
  await expect(handOverButton(page)).toBeEnabled()
  const [download] = await Promise.all([page.waitForEvent('download'), handOverButton(page).click()])
  const name = download.suggestedFilename()
  const folder = `${name.replace(/\.zip$/, '')}/`
  const entries = Object.entries(unzipSync(await readFile(await download.path())))
  for (const [path] of entries) expect(path.startsWith(folder)).toBe(true)
  return {
    name,
    files: new Map(entries.map(([path, bytes]) => [path.slice(folder.length), strFromU8(bytes)])),
  }
}

const theOne = (files: Files, start: string, ending: string): string => {
  const found = [...files].filter(([path]) => path.startsWith(start) && path.endsWith(ending))
  expect(found.map(([path]) => path)).toHaveLength(1)
  return found[0]?.[1] ?? ''
}

/** Widths and heights, mm, of every drawn line of a saved page, as the browser draws it. */
const lineSizesMm = async (
  page: Page,
  svg: string,
): Promise<readonly { width: number; height: number }[]> => {
  await page.setContent(`<body style="margin:0">${svg.replace(/^<\?xml.*?\?>/, '')}</body>`)
  return await page.locator('svg path').evaluateAll(
    (paths, perMm) =>
      paths.map((path) => {
        const matrix = (path as SVGGraphicsElement).getScreenCTM()
        const box = (path as SVGGraphicsElement).getBBox()
        const scale = (matrix?.a ?? Number.NaN) / perMm
        return { width: box.width * scale, height: box.height * scale }
      }),
    PX_PER_MM,
  )
}

const cases = [
  { example: 'rock-buggy', title: 'Rock buggy, one seat', unit: 4, perUnit: 1 },
  { example: 'trail-car-two-seat', title: 'Trail car, two seats', unit: 1, perUnit: 25.4 },
] as const

for (const { example, title, unit, perUnit } of cases) {
  test(`everything of ${title} comes as one folder that other programs read`, async ({ page, context }) => {
    const app = await App.start(page)
    await app.openExample(title)
    await app.openSheet()
    await page.evaluate(() => {
      const seen: string[] = []
      const button = document.querySelector<HTMLButtonElement>('button.hand-over')
      if (button === null) throw new Error('no button')
      new MutationObserver(() =>
        seen.push(`${button.disabled ? 'off' : 'on'} ${button.textContent ?? ''}`),
      ).observe(button, { attributes: true, childList: true, characterData: true, subtree: true })
      Object.assign(window, { seenOfButton: seen })
    })
    const { name, files } = await handedOver(page)
    const layout = exampleLayout(example)
    const readMe = files.get('READ-ME-FIRST.txt') ?? ''

    await test.step('the button says what it makes, and is off meanwhile', async () => {
      await expect(app.notice).toContainText(`Saved ${name}`)
      await expect(handOverButton(page)).toHaveText('Hand-over folder')
      const seen = await page.evaluate(() => (window as unknown as { seenOfButton: string[] }).seenOfButton)
      expect(seen).toContain('off Making it: mount sheet')
      expect(seen.filter((each) => each.startsWith('on Making'))).toEqual([])
    })

    await test.step('every file is in the list of contents, and nothing failed', () => {
      expect([...files.keys()][0]).toBe('READ-ME-FIRST.txt')
      for (const path of [...files.keys()].slice(1)) expect(readMe).toContain(path)
      expect(readMe).not.toContain('COULD NOT BE MADE')
      expect(readMe).not.toContain('The lettering of the pages')
      expect(theOne(files, 'papers/mount-sheet', '.html')).toContain('data:font/woff2;base64,')
    })

    await test.step('drawings are read back with every anchor where it is', () => {
      const drawing = readByDxfParser(theOne(files, 'drawing/', '.dxf'))
      expect(drawing.unit).toBe(unit)
      const middles = drawing.shapes.flatMap((shape) => {
        if (shape.kind !== 'polyline' || shape.layer !== 'MARK' || shape.points.length !== 2) return []
        const [[ax, ay] = [NaN, NaN], [bx, by] = [NaN, NaN]] = shape.points
        return [[(ax + bx) / 2, (ay + by) / 2] as const]
      })
      for (const { mount } of layout.places.flatMap((place) => place.anchors)) {
        const { xMm, zMm } = mount.point
        const near = middles.filter(([x, z]) => Math.hypot(x - xMm / perUnit, z - zMm / perUnit) < 1e-6)
        expect(near.length).toBeGreaterThanOrEqual(2)
      }
      const cut = [...files].filter(([path]) => path.startsWith('cutting/') && path.endsWith('.dxf'))
      expect(cut.length).toBeGreaterThan(0)
      for (const [path, text] of cut) {
        const figure = readByDxfParser(text)
        expect(figure.unit, path).toBe(unit)
        expect(
          figure.shapes.some(({ layer }) => layer === 'CHECK'),
          path,
        ).toBe(true)
      }
    })

    await test.step('the table of anchors has the layout’s coordinates', () => {
      const rows = parse(theOne(files, 'tables/anchors-', '.csv'), {
        bom: true,
        columns: true,
      }) as unknown as Record<string, string>[]
      const anchors = layout.places.flatMap((place) => place.anchors)
      expect(rows).toHaveLength(anchors.length)
      for (const { mount } of anchors) {
        const { xMm, yMm, zMm } = mount.point
        const here = rows.filter(
          (row) =>
            Math.abs(Number(row['x (mm)']) - xMm) < 1e-6 &&
            Math.abs(Number(row['y (mm)']) - yMm) < 1e-6 &&
            Math.abs(Number(row['z (mm)']) - zMm) < 1e-6,
        )
        expect(here.length).toBeGreaterThanOrEqual(1)
      }
    })

    await test.step('the check bar of the first page measures 100 mm and 4 in', async () => {
      const other = await context.newPage()
      const lines = await lineSizesMm(other, theOne(files, 'papers/pages/mount-sheet', '.1.svg'))
      const flat = lines.filter(({ height }) => height < 0.001).map(({ width }) => width)
      expect(flat.some((width) => Math.abs(width - 100) < 0.02)).toBe(true)
      expect(flat.some((width) => Math.abs(width - 101.6) < 0.02)).toBe(true)
      await other.close()
    })

    await test.step('the layout file opens again and is the same layout', async () => {
      const saved = theOne(files, 'layout/', '.layout.json')
      expect(JSON.parse(saved)).toEqual(JSON.parse(await readFile(exampleFile(example), 'utf8')))
      await page.getByRole('button', { name: 'Back to the drawing' }).click()
      await app.pickFile(saved, 'from-the-folder.layout.json')
      await expect(app.notice).toContainText('from-the-folder.layout.json is open')
    })
  })
}

test('a font that cannot be had is said in the folder, and the folder is made all the same', async ({
  page,
}) => {
  const app = await App.start(page)
  await app.openExample('Rock buggy, one seat')
  await app.openSheet()
  await page.route(/\.woff2$/, (route) => route.abort())
  const { files } = await handedOver(page)
  expect(files.get('READ-ME-FIRST.txt')).toContain('The lettering of the pages')
  expect(theOne(files, 'papers/mount-sheet', '.html')).not.toContain('data:font')
})

test('one press saves the templates as one drawing, every figure apart', async ({ page }) => {
  const app = await App.start(page)
  await app.openExample('Trail car, two seats')
  await app.openSheet()
  await page.getByRole('button', { name: 'Templates', exact: true }).click()
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save DXF' }).click(),
  ])
  expect(download.suggestedFilename()).toMatch(/^templates-.*\.dxf$/)
  const drawing = readByDxfParser(await readFile(await download.path(), 'utf8'))
  expect(drawing.unit).toBe(1)
  expect(drawing.shapes.filter(({ layer }) => layer === 'CUT').length).toBeGreaterThan(5)
})

test('one press saves the tables of the mount sheet, with what they are and who decides', async ({
  page,
}) => {
  const app = await App.start(page)
  await app.openExample('Trail car, two seats')
  await app.openSheet()
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save CSV' }).click(),
  ])
  const entries = unzipSync(await readFile(await download.path()))
  const names = Object.keys(entries).map((path) => path.replace(/^.*\//, ''))
  expect(names[0]).toBe('READ-ME-FIRST.txt')
  for (const stem of ['anchors', 'tubes', 'tape-places', 'tape-checks', 'findings'])
    expect(names.filter((each) => each.startsWith(`${stem}-trail-car`))).toHaveLength(1)
  expect(strFromU8(Object.values(entries)[0] ?? new Uint8Array())).toContain('not a certificate')
  await expect(app.notice).toContainText('READ-ME-FIRST.txt lists what is in it')
})

test('several pages are saved as one archive of drawings', async ({ page }) => {
  const app = await App.start(page)
  await app.openExample('Trail car, two seats')
  await app.openSheet()
  const pageCount = await page.locator('[data-testid^="sheet-page-"]').count()
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save SVG' }).click(),
  ])
  expect(pageCount).toBeGreaterThan(1)
  const texts = Object.values(unzipSync(await readFile(await download.path()))).map((bytes) =>
    strFromU8(bytes),
  )
  expect(texts).toHaveLength(pageCount)
  texts.forEach((text, index) => expect(text).toContain(`Page ${index + 1} of ${pageCount}`))
})

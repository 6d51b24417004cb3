import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test, type Page, type Route } from '@playwright/test'
import type { Layout } from '../src/domain/layout/document/layout'
import { evaluateLayout } from '../src/domain/layout/evaluate/evaluateLayout'
import { findingSentence } from '../src/domain/layout/wording/findingSentence'
import type { EvaluationReport } from '../src/cli/evaluationReport'
import { App } from './pages/app'
import { exampleLayout } from './pages/benchCar'

/** Two seats, many sittings, and errors of welding and measuring: what takes longest to work out. */
const slowCar = (): Layout => ({
  ...exampleLayout('trail-car-two-seat'),
  tolerance: { xMm: 4, yMm: 4, zMm: 4, tabDeg: 3, reclineDeg: 1, spread: 'worst-case' },
})

/** Lets the worker's file through only when the test says so, or never. */
const holdWorker = async (page: Page) => {
  const held: Route[] = []
  let way: 'hold' | 'continue' | 'abort' = 'hold'
  await page.route(/evaluation\.worker/, async (route) => {
    if (way === 'hold') held.push(route)
    else await route[way]()
  })
  const release = async (how: 'continue' | 'abort'): Promise<void> => {
    way = how
    for (const route of held.splice(0)) await route[how]()
  }
  return { release, isAsked: () => held.length > 0 }
}

/** What the command line prints for a layout. It ends with 1 where a must is broken, which is no failure here. */
const commandLine = (layout: Layout): EvaluationReport => {
  const folder = mkdtempSync(join(tmpdir(), 'layout-'))
  try {
    const file = join(folder, 'car.layout.json')
    writeFileSync(file, JSON.stringify(layout))
    const print = (): string =>
      execFileSync('node', ['node_modules/tsx/dist/cli.mjs', 'src/cli/evaluate.ts', file], {
        encoding: 'utf8',
        maxBuffer: 64_000_000,
        stdio: ['ignore', 'pipe', 'ignore'],
      })
    try {
      return JSON.parse(print()) as EvaluationReport
    } catch (error) {
      const { status, stdout } = error as { readonly status?: number; readonly stdout?: string }
      if (status !== 1 || stdout === undefined) throw error
      return JSON.parse(stdout) as EvaluationReport
    }
  } finally {
    rmSync(folder, { recursive: true })
  }
}

/** Browser and command line run on different builds of one engine, whose sines may differ in the last digit. */
const expectSame = (shown: string | null, printed: number | string | null): void => {
  if (typeof printed === 'number') expect(Number(shown)).toBeCloseTo(printed, 9)
  else expect(shown).toBe(printed)
}

test('what is worked out beside the page is what the command line computes, remedies and weld errors with it', async ({
  page,
}) => {
  const layout = slowCar()
  const app = await App.start(page)
  await app.openLayout(layout)
  await app.tab('Findings')
  await app.settled()
  const [place] = evaluateLayout(layout).places
  const reported = commandLine(layout).findings.filter(({ place: id }) => id === place?.placeId)
  expect(reported.length).toBeGreaterThan(20)
  const shown = await page.locator('.finding').evaluateAll((items) =>
    Object.fromEntries(
      items.map((item) => [
        (item.getAttribute('data-testid') ?? '').replace('finding:', ''),
        {
          verdict: item.getAttribute('data-verdict'),
          value: item.getAttribute('data-value'),
          room: item.getAttribute('data-room'),
          tolerance: item.querySelector('.finding-tolerance')?.textContent ?? null,
          remedy: item.querySelector('.finding-remedy p')?.textContent ?? null,
          isOpen: item.querySelector('.finding-body') !== null,
        },
      ]),
    ),
  )
  expect(Object.keys(shown)).toHaveLength(reported.length)
  for (const { rule, subject, verdict, value, roomMm } of reported) {
    const item = shown[`${place?.placeId}/${rule}/${subject}`]
    expect(item?.verdict).toBe(verdict)
    expectSame(item?.value ?? null, value)
    expectSame(item?.room ?? null, roomMm)
  }
  for (const finding of place?.findings ?? []) {
    const { withinTolerance, remedy } = findingSentence(finding, layout)
    const item = shown[finding.id]
    // A folded finding says neither.
    if (item?.isOpen === true) expect(item).toMatchObject({ tolerance: withinTolerance, remedy })
  }
  expect(Object.values(shown).filter(({ tolerance }) => tolerance !== null).length).toBeGreaterThan(0)
})

test('numbers and verdicts do not wait for remedies; undo knows what was worked out before', async ({
  page,
}) => {
  const worker = await holdWorker(page)
  const app = await App.start(page)
  await app.openExample('Everything wrong')
  await app.tab('Findings')
  const status = page.getByTestId('remedy-status')
  await expect(status).toContainText('Working out remedies…')
  await expect(page.locator('.finding[data-verdict="broken"]').first()).toBeVisible()
  await expect(page.getByRole('button', { name: 'Make this change' })).toHaveCount(0)
  await worker.release('continue')
  await expect(page.getByRole('button', { name: 'Make this change' }).first()).toBeVisible()
  await expect(status).toBeEmpty()
  await app.settled()
  const before = await app.numbers()
  await page.getByRole('button', { name: 'Make this change' }).first().click()
  await app.expectOneUndoGives(before)
})

test('a worker that cannot be had is said, with a way on that works', async ({ page }) => {
  await page.route(/evaluation\.worker/, (route) => route.abort())
  const app = await App.start(page)
  await app.openExample('Everything wrong')
  await app.tab('Findings')
  const status = page.getByTestId('remedy-status')
  await expect(status).toContainText('could not be worked out in the background')
  await status.getByRole('button', { name: 'Work it out here' }).click()
  await expect(page.getByRole('button', { name: 'Make this change' }).first()).toBeVisible()
  await expect(status).toBeEmpty()
})

test('the sheet waits for everything that stands on it, and says so', async ({ page }) => {
  const worker = await holdWorker(page)
  const app = await App.start(page)
  await app.openLayout(slowCar())
  await page.getByRole('button', { name: 'Papers', exact: true }).click()
  await expect(page.getByText('Working out what goes on the papers…')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Print' })).toBeDisabled()
  await expect(page.getByTestId('sheet-page-1')).toHaveCount(0)
  await worker.release('continue')
  await expect(page.getByTestId('sheet-page-1')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Print' })).toBeEnabled()
  await expect(
    page.locator('[data-testid^="sheet-page-"]', { hasText: 'Weld and measuring error' }).first(),
  ).toBeVisible()
})

test('the sheet has a way on where the worker fails', async ({ page }) => {
  await page.route(/evaluation\.worker/, (route) => route.abort())
  const app = await App.start(page)
  await app.openLayout(slowCar())
  await page.getByRole('button', { name: 'Papers', exact: true }).click()
  await page.getByRole('alert').getByRole('button', { name: 'Work it out here' }).click()
  await expect(page.getByTestId('sheet-page-1')).toBeVisible()
})

/** Notes at every print whether the whole sheet is on the page, in place of the browser's own print. */
const notePrints = async (page: Page): Promise<() => Promise<readonly boolean[]>> => {
  await page.addInitScript(() => {
    const notes: boolean[] = []
    Object.assign(window, {
      notes,
      print: () => notes.push(document.querySelector('[data-testid="sheet-page-1"]') !== null),
    })
  })
  return async () =>
    await page.evaluate(() => (window as unknown as { readonly notes: readonly boolean[] }).notes)
}

test('printing from the drawing waits for the whole sheet', async ({ page }) => {
  const prints = await notePrints(page)
  const worker = await holdWorker(page)
  const app = await App.start(page)
  await app.openLayout(slowCar())
  await page.keyboard.press('Control+p')
  await expect(page.getByText('Working out what goes on the papers…')).toBeVisible()
  expect(await prints()).toEqual([])
  await worker.release('continue')
  await expect.poll(prints).toEqual([true])
})

test("the browser's own print, which waits for nobody, has the whole sheet too", async ({ page }) => {
  const worker = await holdWorker(page)
  const app = await App.start(page)
  await app.openLayout(slowCar())
  await expect.poll(worker.isAsked).toBe(true)
  const isThere = await page.evaluate(() => {
    window.dispatchEvent(new Event('beforeprint'))
    return document.querySelector('[data-testid="sheet-page-1"]') !== null
  })
  expect(isThere).toBe(true)
  await worker.release('continue')
})

import { spawnSync } from 'node:child_process'
import { expect, test } from '@playwright/test'
import { App } from './pages/app'
import { benchCar, exampleFile } from './pages/benchCar'
import { Elevation } from './pages/elevation'
import { bare, Sheet } from './pages/sheet'
import { BENCH_HIP, cos, sin } from './pages/sideView'

interface ReportedFinding {
  readonly rule: string
  readonly place: string
  readonly subject: string
  readonly value: number | string | null
  readonly limit: {
    readonly min: number | null
    readonly max: number | null
    readonly wanted: readonly string[] | null
  }
  readonly level: string
  readonly verdict: string
  readonly roomMm: number | null
}

/** What the command line says about an example, and how it ended. */
const evaluated = (
  name: string,
): { readonly exitCode: number | null; readonly findings: ReportedFinding[] } => {
  const run = spawnSync('npm', ['run', '--silent', 'evaluate', '--', exampleFile(name)], {
    cwd: new URL('..', import.meta.url).pathname,
    encoding: 'utf8',
  })
  const { findings } = JSON.parse(run.stdout) as { findings: ReportedFinding[] }
  return { exitCode: run.status, findings }
}

/** A limit as a person reads it: with a true minus sign. */
const limitWords = ({ limit }: ReportedFinding): readonly string[] => [
  ...[limit.min, limit.max].flatMap((value) => (value === null ? [] : [String(value).replace('-', '−')])),
  ...(limit.wanted ?? []),
]

test('the bad example breaks the same rules on screen, on the sheet and on the command line', async ({
  page,
}) => {
  const report = evaluated('everything-wrong')
  expect(report.exitCode).toBe(1)
  const broken = report.findings.filter(({ verdict }) => verdict === 'broken')
  expect(new Set(broken.map(({ rule }) => rule)).size).toBeGreaterThanOrEqual(6)

  const app = await App.start(page)
  await app.openExample('Everything wrong')
  await app.tab('Findings')
  const items = page.locator('[data-testid^="finding:"]')
  await expect(items).toHaveCount(report.findings.length)
  await app.settled()
  const sentences = new Map<string, string[]>()
  for (const finding of report.findings) {
    const { rule, place, subject, value, verdict, level, roomMm } = finding
    const item = app.finding(`${place}/${rule}/${subject}`)
    await expect(item).toHaveAttribute('data-verdict', verdict)
    const shown = await item.getAttribute('data-value')
    if (typeof value === 'number') expect(Number(shown)).toBeCloseTo(value, 9)
    else expect(shown).toBe(value)
    const room = await item.getAttribute('data-room')
    if (roomMm === null) expect(room).toBeNull()
    else expect(Number(room)).toBeCloseTo(roomMm, 6)
    if (verdict !== 'broken') continue
    const words = await item.locator('.finding-what').innerText()
    expect(words.toLowerCase()).toContain(`${verdict}, ${level}`)
    for (const limit of limitWords(finding)) expect(words).toContain(limit)
    // The sentence after the tag: what is so.
    const tag = await item.locator('.finding-tag').innerText()
    sentences.set(rule, [...(sentences.get(rule) ?? []), words.slice(words.indexOf(tag) + tag.length)])
  }

  await app.openSheet()
  const sheet = new Sheet(page)
  for (const paper of ['A4', 'US Letter'] as const) {
    await sheet.choosePaper(paper)
    const text = await sheet.text()
    for (const [rule, said] of sentences) {
      // The sheet says what is alike on both sides once.
      expect(
        said.some((sentence) => text.includes(bare(sentence))),
        `${rule} on ${paper}`,
      ).toBe(true)
    }
  }
})

test('a clicked finding is shown in both elevations and let go by a second click', async ({ page }) => {
  const app = await App.start(page)
  await app.openExample('Everything wrong')
  await app.tab('Findings')
  const side = new Elevation(app, 'side')
  const top = new Elevation(app, 'top')
  const before = { side: await side.picture(), top: await top.picture() }
  const item = app.finding('driver/student-shoulder-spacing/shoulder-pair')
  const head = item.locator('.finding-head')
  await head.click()
  await expect(head).toHaveAttribute('aria-pressed', 'true')
  await expect.poll(async () => (await side.picture()) === before.side).toBe(false)
  await expect.poll(async () => (await top.picture()) === before.top).toBe(false)
  await head.click()
  await expect(head).toHaveAttribute('aria-pressed', 'false')
  await expect.poll(async () => await side.picture()).toBe(before.side)
  await expect.poll(async () => await top.picture()).toBe(before.top)
})

const LAP_LEFT = 'anchor:driver:lap-left'
const LAP_ANGLE = 'driver/workshop-lap-angle/lap-left'

/*
 * Bench car, hip at x 1200, z 230. The trade's wedge for a lap tab is 45° to 60° from the hip (common practice, no source), so
 * the tab at 1350, 50 lies at atan2(180, 150) = 50.2°, 234.3 mm away: 234.3·sin 5.19° = 21.2 mm from the nearer line.
 */
test('a finding follows the tab across the edge of its wedge, and its room is the distance to that edge', async ({
  page,
}) => {
  const app = await App.start(page)
  await app.openLayout(benchCar())
  await app.tab('Findings')
  await app.tab('Parts')
  const side = new Elevation(app, 'side')
  await side.dragExactly(LAP_LEFT, { u: -30, v: 0 })
  await app.expectAt(LAP_LEFT, { x: 1350, z: 50 })
  const item = app.finding(LAP_ANGLE)
  await expect(item).toHaveAttribute('data-verdict', 'clear')
  const room = async (): Promise<number> => Number(await item.getAttribute('data-room'))
  // Distance from a point to a line through the hip that falls by 45° to the rear.
  const toLine = (x: number, z: number): number => (BENCH_HIP.z - z) * cos(45) - (x - BENCH_HIP.x) * sin(45)
  await expect.poll(room).toBeCloseTo(toLine(1350, 50), 3)
  // 29 mm rearward: 1 mm short of the line, 0.7 mm off it: tight. Two more: past it.
  await side.drag(LAP_LEFT, { u: 29, v: 0 })
  await app.expectAt(LAP_LEFT, { x: 1379 })
  await expect(item).toHaveAttribute('data-verdict', 'tight')
  await side.drag(LAP_LEFT, { u: 2, v: 0 })
  await app.expectAt(LAP_LEFT, { x: 1381 })
  await expect(item).toHaveAttribute('data-verdict', 'broken')
  await expect.poll(room).toBeCloseTo(toLine(1381, 50), 3)
  await app.undo()
  await expect(item).toHaveAttribute('data-verdict', 'tight')
})

test('the change that a finding offers clears it in one step', async ({ page }) => {
  const layout = benchCar()
  const app = await App.start(page)
  await app.openLayout(layout)
  await app.tab('Findings')
  await app.tab('Parts')
  const side = new Elevation(app, 'side')
  await side.dragExactly(LAP_LEFT, { u: 60, v: 20 })
  const item = app.finding(LAP_ANGLE)
  await expect(item).toHaveAttribute('data-verdict', 'broken')
  const before = await app.numbers()
  await page.getByTestId(`remedy:${LAP_ANGLE}`).click()
  // The pressed button is gone; the keyboard must not begin again at the top of the page.
  await expect(page.getByRole('region', { name: 'Findings' })).toBeFocused()
  await expect(item).toHaveAttribute('data-verdict', /clear|tight/)
  await expect(app.finding('driver/workshop-lap-angle/lap-right')).toHaveAttribute(
    'data-verdict',
    /clear|tight/,
  )
  await app.expectOneUndoGives(before)
})

test('zones are hatched while a tab moves, inside the wedge and not outside it', async ({ page }) => {
  const app = await App.start(page)
  await app.openLayout(benchCar())
  await app.tab('Parts')
  const side = new Elevation(app, 'side')
  const top = new Elevation(app, 'top')
  expect(await side.hatchedPx()).toBe(0)
  const from = await side.grab(LAP_LEFT)
  await side.carry(from, { u: -30, v: 0 })
  await expect.poll(async () => await side.hatchedPx()).toBeGreaterThan(50)
  await expect.poll(async () => await top.hatchedPx()).toBeGreaterThan(50)
  const hatchedAt = async (angleDeg: number): Promise<number> => {
    const x = BENCH_HIP.x + 234 * cos(angleDeg)
    const z = BENCH_HIP.z - 234 * sin(angleDeg)
    return await side.hatchedPx({ point: { x, y: 130, z }, halfPx: 8 })
  }
  expect(await hatchedAt(52.5)).toBeGreaterThan(0)
  expect(await hatchedAt(30)).toBe(0)
  expect(await hatchedAt(75)).toBe(0)
  await side.drop()
  await expect.poll(async () => await side.hatchedPx()).toBe(0)
})

test('rules that found nothing to speak about are counted, closed until asked for, and go once their part is there', async ({
  page,
}) => {
  const app = await App.start(page)
  await app.openExample('Rock buggy, one seat')
  await app.tab('Findings')
  await app.settled()
  const silent = page.getByTestId('silent-rules')
  const count = Number(await silent.getAttribute('data-count'))
  expect(count).toBeGreaterThan(0)
  // Nothing of this car is wrapped.
  const hoops = silent.getByText('A wrapped strap sits between welded guide hoops.')
  await expect(hoops).toBeHidden()
  await silent.locator('summary').first().click()
  await expect(hoops).toBeVisible()
  await expect(silent).toContainText('neither kept nor broken')
  await app.tab('Anchors')
  const shoulder = page.getByRole('region', { name: 'Left shoulder tab' })
  await shoulder.getByText('How it is made').click()
  await shoulder.getByLabel('Fixed by').selectOption('wrap')
  await app.tab('Findings')
  await expect.poll(async () => Number(await silent.getAttribute('data-count'))).toBeLessThan(count)
})

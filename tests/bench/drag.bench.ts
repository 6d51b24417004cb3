import { existsSync, readFileSync } from 'node:fs'
import { chromium, type CDPSession, type Page } from 'playwright-core'
import react from '@vitejs/plugin-react'
import { build, preview } from 'vite'
import { parseLayoutText } from '../../src/domain/layout/document/parseLayout'
import { quantile } from './pairedRatio'

// `npm run bench:drag`: the main-thread work of a scripted drag of 200 moves in the built app, as a ratio to a bare react-konva
// drag of the same drawing with nothing computed, in turn in one browser. Scripting is JavaScript alone; task is all main-thread work.

const MOVES = 200
const ROUNDS = 5
const BARE = '.reports/bench-drag'

const example = parseLayoutText(readFileSync('public/examples/rock-buggy.layout.json', 'utf8'))
if (!example.ok) throw new Error('the example does not parse')
const tab = example.value.places[0]?.anchors.find(({ strap }) => strap === 'lap-left')?.mount.point
if (tab === undefined) throw new Error('the example has no left lap tab')

interface Work {
  readonly scripting: number
  readonly task: number
}

const metrics = async (session: CDPSession): Promise<Work> => {
  const { metrics: all } = await session.send('Performance.getMetrics')
  const named = (name: string): number => all.find((metric) => metric.name === name)?.value ?? NaN
  return { scripting: named('ScriptDuration'), task: named('TaskDuration') }
}

/** Presses at `from` and makes the moves on a small circle, each in a frame of its own. */
const dragWork = async (page: Page, session: CDPSession, from: { x: number; y: number }): Promise<Work> => {
  await page.mouse.move(from.x, from.y)
  await page.mouse.down()
  await page.mouse.move(from.x + 5, from.y)
  const before = await metrics(session)
  for (let move = 0; move < MOVES; move += 1) {
    const turn = (move / MOVES) * 4 * Math.PI
    await page.mouse.move(from.x + 25 * Math.cos(turn), from.y + 25 * Math.sin(turn))
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(done)))
  }
  const after = await metrics(session)
  await page.mouse.move(from.x, from.y)
  await page.mouse.up()
  return { scripting: after.scripting - before.scripting, task: after.task - before.task }
}

const openedApp = async (page: Page, address: string): Promise<{ x: number; y: number }> => {
  await page.goto(address)
  await page.getByRole('button', { name: 'Go to', exact: true }).click()
  await page.getByRole('button', { name: /^Layouts/ }).click()
  await page.getByRole('button', { name: /^Rock buggy/ }).click()
  const pane = page.getByTestId('elevation-side')
  await pane.waitFor()
  await page.getByText('Rock buggy', { exact: false }).first().waitFor()
  const box = await pane.boundingBox()
  if (box === null) throw new Error('the side elevation is not shown')
  return { x: box.x, y: box.y }
}

const started = async (folder: string): Promise<{ address: string; close: () => Promise<void> }> => {
  const server = await preview({
    build: { outDir: folder },
    preview: { port: 0, open: false },
    logLevel: 'silent',
  })
  const address = server.resolvedUrls?.local[0]
  if (address === undefined) throw new Error('no address')
  return { address, close: () => server.close() }
}

await build({ logLevel: 'warn' })
await build({
  configFile: false,
  root: 'tests/bench/drag',
  base: './',
  plugins: [react()],
  build: { outDir: `../../../${BARE}`, emptyOutDir: true },
  logLevel: 'error',
})
const executablePath = [process.env['CHROMIUM_PATH'], '/usr/bin/chromium', '/usr/bin/google-chrome'].find(
  (path) => path !== undefined && existsSync(path),
)
const browser = await chromium.launch({
  ...(executablePath === undefined ? {} : { executablePath }),
  args: ['--disable-quic', '--disable-background-networking', '--no-first-run'],
})
const servers = [await started('dist'), await started(BARE)] as const
const opened = async (): Promise<{ page: Page; session: CDPSession }> => {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, deviceScaleFactor: 1 })
  const session = await page.context().newCDPSession(page)
  await session.send('Performance.enable')
  return { page, session }
}
const app = await opened()
const bare = await opened()
const corner = await openedApp(app.page, servers[0].address)
const pane = app.page.getByTestId('elevation-side')
const number = async (name: string): Promise<number> => Number(await pane.getAttribute(name))
const from = {
  x: corner.x + (await number('data-origin-x')) + tab.xMm * (await number('data-scale')),
  y: corner.y + (await number('data-origin-y')) - tab.zMm * (await number('data-scale')),
}
await bare.page.goto(servers[1].address)
const bareBox = await bare.page.getByTestId('bare').boundingBox()
if (bareBox === null) throw new Error('the bare page is not shown')
const bareFrom = { x: bareBox.x + 480, y: bareBox.y + 200 }

const rounds: { ours: Work; theirs: Work }[] = []
for (let round = 0; round <= ROUNDS; round += 1) {
  await app.page.bringToFront()
  const ours = await dragWork(app.page, app.session, from)
  await bare.page.bringToFront()
  const theirs = await dragWork(bare.page, bare.session, bareFrom)
  // The first round only warms up.
  if (round > 0) rounds.push({ ours, theirs })
}
for (const kind of ['scripting', 'task'] as const) {
  const ratios = rounds.map(({ ours, theirs }) => ours[kind] / theirs[kind])
  const perMove = (works: readonly Work[]): string =>
    (
      (quantile(
        works.map((work) => work[kind]),
        0.5,
      ) /
        MOVES) *
      1000
    ).toFixed(2)
  console.log(
    `${kind}: ${quantile(ratios, 0.5).toFixed(2)} × the bare drag (${Math.min(...ratios).toFixed(2)}…${Math.max(...ratios).toFixed(2)}; ` +
      `${perMove(rounds.map(({ ours }) => ours))} ms and ${perMove(rounds.map(({ theirs }) => theirs))} ms a move)`,
  )
}
await browser.close()
await Promise.all(servers.map(({ close }) => close()))

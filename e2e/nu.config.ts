import { existsSync } from 'node:fs'
import { defineConfig } from '@playwright/test'

const named = [process.env['CHROMIUM_PATH'], '/usr/bin/chromium', '/usr/bin/google-chrome'].find(
  (path) => path !== undefined && existsSync(path),
)
/** Firefox for the few journeys that run in it too; FIREFOX_PATH may be "none". Without one those journeys are left out. */
const firefox = [process.env['FIREFOX_PATH'] ?? '/usr/bin/firefox-esr'].find(existsSync)
const FIREFOX_JOURNEYS = 'firefox.spec.ts'
const port = 4481

/** One worker: the machines that run this have few cores, and drags are measured in pixels, not in time. */
export default defineConfig({
  testDir: '.',
  outputDir: '../test-results',
  workers: 1,
  fullyParallel: false,
  forbidOnly: true,
  retries: 0,
  // Long for a slow or busy machine; slowness is no failure here.
  timeout: 240_000,
  expect: { timeout: 60_000 },
  reporter: 'list',
  use: {
    baseURL: `http://localhost:${port}/`,
    viewport: { width: 1440, height: 900 },
    deviceScaleFactor: 1,
    colorScheme: 'light',
    trace: 'retain-on-failure',
    // Keeping the whole app costs every test a second; offline.spec.ts allows it.
    serviceWorkers: 'block',
  },
  projects: [
    {
      name: 'chromium',
      testIgnore: FIREFOX_JOURNEYS,
      use: {
        browserName: 'chromium',
        launchOptions: {
          ...(named === undefined ? {} : { executablePath: named }),
          // Without these a browser on a machine with no network spends its time looking up hosts.
          args: [
            '--disable-quic',
            '--disable-background-networking',
            '--disable-component-update',
            '--disable-sync',
            '--no-first-run',
          ],
        },
      },
    },
    // The system's own Firefox, driven over WebDriver BiDi.
    ...(firefox === undefined
      ? []
      : [
          {
            name: 'firefox',
            testMatch: FIREFOX_JOURNEYS,
            use: {
              browserName: 'firefox' as const,
              channel: 'moz-firefox',
              launchOptions: { executablePath: firefox },
            },
          },
        ]),
  ],
  webServer: {
    command: `node node_modules/vite/bin/vite.js preview --port ${port} --strictPort`,
    cwd: '..',
    port,
    reuseExistingServer: true,
  },
})

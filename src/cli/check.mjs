// `npm test`: installs what is missing, a browser too, then runs every check and ends with one line `N passed, N failed`.
import { mkdirSync, readFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import {
  findOrInstallBrowser,
  findOrInstallFirefox,
  installPackages,
  projectFolder,
  requireNode,
  runTool,
} from './setup.mjs'

requireNode()
installPackages()
const browser = await findOrInstallBrowser()
const firefox = await findOrInstallFirefox()

// Kept apart from test-results, which Playwright empties when it starts.
const reports = join(projectFolder, '.reports')
rmSync(reports, { recursive: true, force: true })
mkdirSync(reports)

const total = { passed: 0, failed: 0 }
const count = (name, passed, failed) => {
  total.passed += passed
  total.failed += failed
  console.log(`${name}: ${passed} passed, ${failed} failed`)
}
const check = (name, ...tools) => {
  const good = tools.every(([path, ...args]) => runTool(path, args) === 0)
  count(name, good ? 1 : 0, good ? 0 : 1)
  return good
}
/** Counts from a tool's own report; a report that is missing or holds no test counts as one failure. */
const countReport = (name, file, read) => {
  try {
    const [passed, failed] = read(JSON.parse(readFileSync(join(reports, file), 'utf8')))
    if (passed + failed === 0) throw new Error('no test was run')
    count(name, passed, failed)
  } catch (reason) {
    console.error(`${name}: ${reason instanceof Error ? reason.message : String(reason)}`)
    count(name, 0, 1)
  }
}

check('format', ['prettier/bin/prettier.cjs', '--check', '--log-level', 'warn', '.'])
check('lint', ['oxlint/bin/oxlint', 'src', 'tests', 'e2e'])
check('types', ['typescript/bin/tsc', '-p', '.'], ['typescript/bin/tsc', '-p', 'src/domain'])
check('dead code', ['knip/bin/knip.js'])
const unitReport = join(reports, 'unit.json')
runTool(
  'vitest/vitest.mjs',
  ['run', '--reporter=dot', '--reporter=json', `--outputFile.json=${unitReport}`],
  { NO_COLOR: '1' },
)
countReport('unit', 'unit.json', (report) => [
  report.numPassedTests,
  // A file that fails to load has no tests of its own to count.
  report.numFailedTests + (report.numFailedTests === 0 ? report.numFailedTestSuites : 0),
])
if (check('build', ['vite/bin/vite.js', 'build', '--logLevel', 'warn'])) {
  runTool('@playwright/test/cli.js', ['test', '--config', 'e2e', '--reporter=list,json'], {
    PLAYWRIGHT_JSON_OUTPUT_NAME: join(reports, 'browser.json'),
    ...(browser === null ? {} : { CHROMIUM_PATH: browser }),
    FIREFOX_PATH: firefox.path ?? 'none',
  })
  countReport('browser', 'browser.json', ({ stats, errors }) => [
    stats.expected + stats.flaky,
    stats.unexpected + errors.length,
  ])
} else {
  count('browser', 0, 1)
}

if (firefox.path === null) console.log(`Firefox: its journeys were left out, for ${firefox.why}`)
console.log(`${total.passed} passed, ${total.failed} failed`)
process.exit(total.failed === 0 ? 0 : 1)

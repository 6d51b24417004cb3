import { spawnSync } from 'node:child_process'
import { existsSync, statSync } from 'node:fs'
import { createRequire } from 'node:module'
import { delimiter, dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The project's folder, found from this file so that the commands work from anywhere. */
export const projectFolder = join(dirname(fileURLToPath(import.meta.url)), '..', '..')

const OLDEST_NODE = [20, 19]

/** Stops with a plain sentence when Node.js is too old for the tools. */
export function requireNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number)
  const [oldestMajor, oldestMinor] = OLDEST_NODE
  if (major > oldestMajor || (major === oldestMajor && minor >= oldestMinor)) return
  stop(
    `Tabwright needs Node.js ${OLDEST_NODE.join('.')} or newer; this is ${process.versions.node}. Install a newer Node.js and run the command again.`,
  )
}

/** Installs the packages of the lock file when they are missing or older than it. */
export function installPackages() {
  const marker = join(projectFolder, 'node_modules', '.package-lock.json')
  const lock = join(projectFolder, 'package-lock.json')
  if (existsSync(marker) && statSync(marker).mtimeMs >= statSync(lock).mtimeMs) return
  console.log('Installing packages …')
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm'
  const done = run(npm, ['ci', '--no-audit', '--no-fund'])
  if (done !== 0) stop('The packages could not be installed; the lines above say why.')
}

/** Runs a program in the project's folder with its output shown; gives its exit code. */
export function run(program, args, env = {}) {
  const done = spawnSync(program, args, {
    cwd: projectFolder,
    stdio: 'inherit',
    env: { ...process.env, ...env },
    shell: process.platform === 'win32' && program.endsWith('.cmd'),
  })
  return done.status ?? 1
}

/** Runs a tool of the installed packages by its own file, so that no other version on the machine answers. */
export function runTool(path, args, env = {}) {
  return run(process.execPath, [join(projectFolder, 'node_modules', path), ...args], env)
}

/**
 * A Chromium for the browser tests: CHROMIUM_PATH, a system Chromium or Chrome, Playwright's own; otherwise Debian's package
 * (as root) or Playwright's download. Gives the path, or null for Playwright's own.
 */
export async function findOrInstallBrowser() {
  const found = await browserPath()
  if (found !== undefined) return found
  installBrowser()
  const installed = await browserPath()
  if (installed !== undefined) return installed
  return stop(
    'No Chromium or Chrome was found and none could be installed. Install one and set CHROMIUM_PATH to it.',
  )
}

async function browserPath() {
  const named = process.env['CHROMIUM_PATH']
  if (named) return existsSync(named) ? named : stop(`CHROMIUM_PATH names ${named}, which does not exist.`)
  const onPath = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'].flatMap((name) =>
    (process.env['PATH'] ?? '').split(delimiter).map((folder) => join(folder, name)),
  )
  const system = [
    ...onPath,
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  ].find((path) => existsSync(path))
  if (system) return system
  const require = createRequire(join(projectFolder, 'package.json'))
  const { chromium } = require('playwright-core')
  return existsSync(chromium.executablePath()) ? null : undefined
}

function installBrowser() {
  console.log('Installing a browser for the tests …')
  if (!installDebianPackage('chromium')) runTool('playwright-core/cli.js', ['install', 'chromium'])
}

/** As root on Debian and its kin; false where that is not so or the package could not be had. */
function installDebianPackage(name) {
  if (!existsSync('/etc/debian_version') || process.getuid?.() !== 0) return false
  const quiet = { DEBIAN_FRONTEND: 'noninteractive' }
  const install = ['install', '-y', '--no-install-recommends', name]
  if (run('apt-get', install, quiet) === 0) return true
  run('apt-get', ['update'], quiet)
  return run('apt-get', install, quiet) === 0
}

/**
 * A Firefox for the few journeys that run in it too: FIREFOX_PATH ("none" for no Firefox), the system's ESR, otherwise Debian's package
 * (as root). Gives the path, or in words why there is none: nothing else depends on it.
 */
export async function findOrInstallFirefox() {
  const named = process.env['FIREFOX_PATH']
  if (named === 'none') return { path: null, why: 'FIREFOX_PATH says so' }
  const path = named ?? '/usr/bin/firefox-esr'
  if (!existsSync(path) && named === undefined) {
    console.log('Installing Firefox for the tests …')
    installDebianPackage('firefox-esr')
  }
  if (!existsSync(path)) return { path: null, why: `there is no ${path} and none could be installed` }
  return (await canBeDriven(path)) ? { path } : { path: null, why: `${path} cannot be driven by the tests` }
}

/** Whether the test runner's way into a system Firefox works with this one; it is known not to with every pair of versions. */
async function canBeDriven(executablePath) {
  const require = createRequire(join(projectFolder, 'package.json'))
  const { firefox } = require('playwright-core')
  try {
    const browser = await firefox.launch({ channel: 'moz-firefox', executablePath, timeout: 60_000 })
    await (await browser.newPage()).close()
    await browser.close()
    return true
  } catch {
    return false
  }
}

function stop(sentence) {
  console.error(sentence)
  process.exit(1)
}

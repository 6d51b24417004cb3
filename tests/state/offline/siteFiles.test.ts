import { describe, expect, it } from 'vitest'
import {
  keptName,
  outdatedNames,
  pageLockName,
  routeOf,
  versionOf,
} from '../../../src/state/offline/siteFiles'
import { SCOPE } from './fakeSite'

const PATHS = new Set(['index.html', 'assets/a b.js', 'examples/index.json'])

const route = (url: string, mode = 'cors', method = 'GET') => routeOf({ url, mode, method }, SCOPE, PATHS)

describe('routeOf', () => {
  it.each([
    { url: `${SCOPE}examples/index.json`, mode: 'cors', path: 'examples/index.json' },
    { url: `${SCOPE}examples/index.json?again=1#x`, mode: 'cors', path: 'examples/index.json' },
    { url: `${SCOPE}assets/a%20b.js`, mode: 'cors', path: 'assets/a b.js' },
    // Looked at in a page of its own it is still that file.
    { url: `${SCOPE}examples/index.json`, mode: 'navigate', path: 'examples/index.json' },
    { url: SCOPE, mode: 'navigate', path: 'index.html' },
    { url: `${SCOPE}?source=app#layout`, mode: 'navigate', path: 'index.html' },
    { url: `${SCOPE}no/such/page`, mode: 'navigate', path: 'index.html' },
  ])('$url asked for by $mode is $path', ({ url, mode, path }) => {
    expect(route(url, mode)).toEqual({ kind: 'kept', path })
  })

  it.each([
    ['another origin', 'https://elsewhere.example/tabwright/index.html', 'cors', 'GET'],
    ['another folder of the site', 'https://shop.example/other/index.html', 'navigate', 'GET'],
    ['the folder with more letters', 'https://shop.example/tabwright2/', 'navigate', 'GET'],
    ['what is sent', `${SCOPE}index.html`, 'navigate', 'POST'],
  ])('%s is the server’s', (_, url, mode, method) => {
    expect(route(url, mode, method)).toEqual({ kind: 'server' })
  })

  it('a file that is not of this build may be one of an older build', () => {
    expect(route(`${SCOPE}assets/old.js`)).toEqual({ kind: 'older-or-server' })
    expect(route(`${SCOPE}assets/%E0%A4%A.js`)).toEqual({ kind: 'older-or-server' })
  })
})

describe('outdatedNames', () => {
  const names = ['1', '2', '3'].map((version) => keptName(SCOPE, version))

  it('keeps what is in charge and what a page still runs', () => {
    expect(
      outdatedNames(names, SCOPE, { version: '3', locks: [pageLockName(SCOPE, '2'), 'tabwright-slot:x'] }),
    ).toEqual([keptName(SCOPE, '1')])
  })

  it('never touches what another copy on the same site or another program keeps', () => {
    const others = [
      keptName('https://shop.example/tabwright/test/', '1'),
      keptName('https://shop.example/', '1'),
      'else',
    ]
    expect(outdatedNames(others, SCOPE, { version: '3', locks: [] })).toEqual([])
  })
})

describe('versionOf', () => {
  it('says the day and tells two builds of a day apart', () => {
    expect(versionOf('2026-11-27', 'abcdef0123456789')).toBe('2026-11-27.abcdef01')
  })
})

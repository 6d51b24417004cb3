import { describe, expect, it } from 'vitest'
import { keptName, pageLockName } from '../../../src/state/offline/siteFiles'
import { type Built, FakeWorld, listOf, requestOf, SCOPE } from './fakeSite'

const FIRST: Built = { 'index.html': 'page 1', 'assets/a1.js': 'a', 'examples/index.json': '[]' }
const SECOND: Built = { 'index.html': 'page 2', 'assets/a2.js': 'a', 'examples/index.json': '[]' }

const nameOf = (version: string): string => keptName(SCOPE, version)

const worldWithFirst = async () => {
  const world = new FakeWorld()
  world.served = FIRST
  const first = world.worker(listOf('1', FIRST))
  await first.install()
  return { world, first }
}

const text = async (answer: Promise<Response> | null): Promise<string> => {
  if (answer === null) throw new Error('left to the server')
  return await (await answer).text()
}

describe('install', () => {
  it('keeps every file, so that the server may be shut', async () => {
    const { world, first } = await worldWithFirst()
    world.isServerUp = false
    for (const [path, content] of Object.entries(FIRST))
      expect(await text(first.answer(requestOf(path)))).toBe(content)
    expect(await text(first.answer(requestOf('', 'navigate')))).toBe('page 1')
    expect(await text(first.answer(requestOf('any/where', 'navigate')))).toBe('page 1')
    expect(await first.missing()).toBe(0)
  })

  it.each([
    ['a file is gone', { 'index.html': 'page 2', 'examples/index.json': '[]' }],
    ['a file is of another build', { ...SECOND, 'assets/a2.js': 'half' }],
  ])('keeps nothing at all when %s, and the older build goes on', async (_, served) => {
    const { world, first } = await worldWithFirst()
    world.served = served
    await expect(world.worker(listOf('2', SECOND)).install()).rejects.toThrow('assets/a2.js')
    expect(await world.caches.keys()).toEqual([nameOf('1')])
    expect(await text(first.answer(requestOf('', 'navigate')))).toBe('page 1')
  })

  it('keeps nothing when the network fails on the way', async () => {
    const world = new FakeWorld()
    world.isServerUp = false
    await expect(world.worker(listOf('1', FIRST)).install()).rejects.toThrow('Failed to fetch')
    expect(await world.caches.keys()).toEqual([])
  })

  it('does not fetch again what is the same as before', async () => {
    const { world } = await worldWithFirst()
    world.served = SECOND
    world.asked.length = 0
    await world.worker(listOf('2', SECOND)).install()
    expect(world.asked.toSorted()).toEqual(['assets/a2.js', 'index.html'])
  })
})

describe('answer', () => {
  it('gives a page of the older build the file it was built with', async () => {
    const { world } = await worldWithFirst()
    world.served = SECOND
    const second = world.worker(listOf('2', SECOND))
    await second.install()
    world.isServerUp = false
    expect(await text(second.answer(requestOf('assets/a1.js')))).toBe('a')
    expect(await text(second.answer(requestOf('', 'navigate')))).toBe('page 2')
  })

  it('asks the server for what the browser threw away', async () => {
    const { world, first } = await worldWithFirst()
    world.caches.kept.get(nameOf('1'))?.clear()
    expect(await text(first.answer(requestOf('examples/index.json')))).toBe('[]')
  })

  it('leaves alone what is sent', () => {
    expect(new FakeWorld().worker(listOf('1', FIRST)).answer(requestOf('', 'cors', 'POST'))).toBeNull()
  })
})

describe('missing', () => {
  it('counts what the browser threw away and cannot be had again, and mends the rest', async () => {
    const { world, first } = await worldWithFirst()
    world.caches.kept.get(nameOf('1'))?.delete(`${SCOPE}index.html`)
    world.isServerUp = false
    expect(await first.missing()).toBe(1)
    world.isServerUp = true
    world.served = { ...FIRST, 'index.html': 'page of a newer build' }
    expect(await first.missing()).toBe(1)
    world.served = FIRST
    expect(await first.missing()).toBe(0)
  })
})

describe('tidy', () => {
  const withBoth = async () => {
    const { world } = await worldWithFirst()
    world.served = SECOND
    const second = world.worker(listOf('2', SECOND))
    await second.install()
    return { world, second }
  }

  it('removes the older build once no page runs it', async () => {
    const { world, second } = await withBoth()
    world.locks = [pageLockName(SCOPE, '1')]
    await second.tidy()
    expect(await world.caches.keys()).toEqual([nameOf('1'), nameOf('2')])
    world.locks = [pageLockName(SCOPE, '2')]
    await second.tidy()
    expect(await world.caches.keys()).toEqual([nameOf('2')])
  })

  it('never removes what a newer build has fetched while that waits', async () => {
    const { world } = await withBoth()
    world.isNewerComing = true
    await world.worker(listOf('1', FIRST)).tidy()
    expect(await world.caches.keys()).toEqual([nameOf('1'), nameOf('2')])
  })
})

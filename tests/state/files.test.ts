import { strToU8, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { emptyLayout } from '../../src/domain/layout/document/empty'
import { layoutText } from '../../src/domain/layout/document/layoutText'
import { ruleSetText } from '../../src/domain/layout/document/ruleSetText'
import { chosenRuleSet } from '../../src/domain/layout/document/ruleSetOf'
import { layoutFileName, openLayoutFile, openLayoutText, unsoundLines } from '../../src/state/files'
import { createAppStore } from '../../src/state/store'

const withJob = (name: string, revision = '') => ({
  ...emptyLayout(),
  job: { ...emptyLayout().job, name, revision },
})

describe('openLayoutText', () => {
  it('opens a layout as another document and says so', () => {
    const store = createAppStore(withJob('mine'), { documentId: 'first' })
    expect(openLayoutText(store, layoutText(withJob('theirs')), 'theirs.layout.json')).toBe(true)
    expect(store.state.getState().layout).toEqual(withJob('theirs'))
    expect(store.state.getState().documentId).not.toBe('first')
    expect(store.state.getState().history.past).toHaveLength(0)
    expect(store.state.getState().notice?.kind).toBe('info')
  })

  it.each([
    ['nothing', ''],
    ['a picture', '\u0089PNG\r\n'],
    ['JSON of another kind', '{"title": "shopping"}'],
    ['a newer version', layoutText(emptyLayout()).replace('"version": 1', '"version": 2')],
    [
      'an unknown field',
      layoutText(emptyLayout()).replace('"version": 1,', '"version": 1, "colour": "red",'),
    ],
  ])('changes nothing for %s and lists why', (_, text) => {
    const before = withJob('mine')
    const store = createAppStore(before)
    expect(openLayoutText(store, text, 'x.json')).toBe(false)
    expect(store.state.getState().layout).toBe(before)
    expect(store.state.getState().history.past).toHaveLength(0)
    const notice = store.state.getState().notice
    expect(notice?.kind).toBe('problem')
    expect(notice?.details.length).toBeGreaterThan(0)
  })

  it('lists at most a dozen problems and says how many are left', () => {
    const places = Array.from({ length: 40 }, (_, index) => ({ id: `p${index}` }))
    const store = createAppStore(emptyLayout())
    openLayoutText(store, JSON.stringify({ ...emptyLayout(), places }), 'x.json')
    const details = store.state.getState().notice?.details ?? []
    expect(details).toHaveLength(13)
    expect(details.at(-1)).toMatch(/^… and \d+ more\.$/)
  })
})

describe('openLayoutFile', () => {
  it('does not read a file that is too large to be a layout', async () => {
    const store = createAppStore(emptyLayout())
    const file = new File([new Uint8Array(5_000_001)], 'film.mp4')
    expect(await openLayoutFile(store, file)).toBe(false)
    expect(store.state.getState().notice?.text).toContain('film.mp4')
  })
})

describe('openLayoutFile, by what the file holds', () => {
  const opened = async (content: string | Uint8Array<ArrayBuffer>, name: string) => {
    const store = createAppStore(withJob('mine'), { documentId: 'first' })
    const isOpen = await openLayoutFile(store, new File([content], name))
    return { isOpen, ...store.state.getState() }
  }

  it('opens a layout whatever the file is called', async () => {
    const { isOpen, layout } = await opened(layoutText(withJob('theirs')), 'theirs.txt')
    expect(isOpen).toBe(true)
    expect(layout).toEqual(withJob('theirs'))
  })

  it('says of an archive that it is to be unpacked, and of a rule set where it belongs', async () => {
    const archive = await opened(zipSync({ 'a.layout.json': strToU8('{}') }), 'job.zip')
    expect(archive.notice?.text).toBe('job.zip is an archive. Unpack it and open the *.layout.json in it.')
    const set = await opened(ruleSetText(chosenRuleSet(emptyLayout())), 'own.rules.json')
    expect(set.notice?.text).toContain('own.rules.json is a rule set')
    for (const { isOpen, layout, documentId } of [archive, set])
      expect({ isOpen, layout, documentId }).toEqual({
        isOpen: false,
        layout: withJob('mine'),
        documentId: 'first',
      })
  })

  it('takes an answer for one although it is damaged, and changes nothing', async () => {
    const { isOpen, notice, layout } = await opened('{"answer": 1}', 'answer.json')
    expect(isOpen).toBe(false)
    expect(notice?.text).toBe('answer.json cannot be opened. Nothing was changed.')
    expect(layout).toEqual(withJob('mine'))
  })
})

describe('layoutFileName', () => {
  it.each([
    ['Dune car', 'B', 'dune-car-b.layout.json'],
    ['', '', 'unnamed.layout.json'],
    ['../../etc: <b>?', '', 'etc-b.layout.json'],
    ['Überrollkäfig', '2', 'uberrollkafig-2.layout.json'],
    // Names of devices: Microsoft, "Naming Files, Paths, and Namespaces" (from memory).
    ['CON', '', 'job-con.layout.json'],
    ['com', '1', 'com-1.layout.json'],
    ['', 'Lpt9', 'job-lpt9.layout.json'],
  ])('job "%s" revision "%s" is saved as %s', (name, revision, expected) => {
    expect(layoutFileName(withJob(name, revision))).toBe(expected)
  })
})

describe('unsoundLines', () => {
  it('is empty for a layout that a file can hold', () => {
    expect(unsoundLines(emptyLayout())).toEqual([])
  })

  it('names what a file could not hold', () => {
    const layout = { ...emptyLayout(), ruleSetId: 'unheard-of' }
    expect(unsoundLines(layout).join(' ')).toContain('unheard-of')
  })
})

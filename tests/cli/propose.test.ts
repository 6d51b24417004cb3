import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

import { afterAll, describe, expect, it } from 'vitest'

import { isProposeWord, proposeReport, proposeWords } from '../../src/cli/proposeReport'
import { layoutText } from '../../src/domain/layout/document/layoutText'
import { PROPOSAL_CAUTION } from '../../src/domain/layout/wording/proposalText'
import { flatLayout, flatPlace, tabPair } from '../support/flatLayout'
import { ownRule, under } from '../domain/layout/propose/wishes'

const layout = under(
  flatLayout([flatPlace({ anchors: tabPair('lap', { xMm: 150, yMm: 230, zMm: -200 }) })]),
  [ownRule('lap', 'lap-angle', { min: 45, max: 75 })],
)
const BOX = '--box=150,-230,-400:150,-230,-60'
const folder = mkdtempSync(join(tmpdir(), 'propose-'))
afterAll(() => rmSync(folder, { recursive: true }))

const wordsOf = (...words: readonly string[]) => {
  const parsed = proposeWords(['--propose', ...words])
  if (!parsed.ok) throw new Error(parsed.error)
  return parsed.value
}

describe('proposeWords', () => {
  it('asks for all anchors along the tubes they are on, both sides alike, unless told otherwise', () => {
    expect(wordsOf()).toEqual({
      anchorId: null,
      space: 'on',
      standOffMm: 25,
      symmetric: true,
      apartMm: 40,
    })
  })

  it('reads every option', () => {
    expect(
      wordsOf('--anchor=lap-left', '--tubes=a,b', '--stand-off=30.5', '--apart=60', '--sides-differ'),
    ).toEqual({
      anchorId: 'lap-left',
      space: { kind: 'tubes', tubeIds: ['a', 'b'], standOffMm: 30.5 },
      standOffMm: 30.5,
      symmetric: false,
      apartMm: 60,
    })
    expect(wordsOf('--anywhere').space).toEqual({ kind: 'anywhere', box: null })
    expect(wordsOf(BOX).space).toEqual({
      kind: 'anywhere',
      box: { min: { xMm: 150, yMm: -230, zMm: -400 }, max: { xMm: 150, yMm: -230, zMm: -60 } },
    })
  })

  it.each([
    '--box=1,2:3,4,5',
    '--box=1,2,3',
    '--box=a,b,c:1,2,3',
    '--stand-off=-1',
    '--stand-off=',
    '--apart=2000',
  ])('refuses %s and says how it is written', (word) => {
    const parsed = proposeWords(['--propose', word])
    expect(parsed.ok).toBe(false)
    expect(!parsed.ok && parsed.error).toContain(word)
  })

  it('knows its own words from files', () => {
    expect(['--propose', '--anchor=a', BOX, '--anywhere'].every(isProposeWord)).toBe(true)
    expect(['car.layout.json', '--fit', '--anchor'].some(isProposeWord)).toBe(false)
  })
})

describe('evaluate --propose', () => {
  it('gives positions with their reasons, in numbers and in words', () => {
    const report = proposeReport(layout, wordsOf('--anchor=lap-left-anchor', BOX))
    expect(report.caution).toBe(PROPOSAL_CAUTION)
    const [place] = report.places
    // 45° to 75° at 150 mm behind the hip point: midway, 77.6 mm (tests/domain/layout/propose/propose.test.ts).
    expect(place?.proposals?.[0]?.roomMm).toBeCloseTo(77.64, 2)
    expect(place?.proposals?.[0]?.says.join(' ')).toContain('Limited by lap angle of the left lap strap')
  })

  it('says what is wrong with the question instead', () => {
    const report = proposeReport(layout, wordsOf('--anchor=nobody', BOX))
    expect(report.places).toHaveLength(1)
    expect(report.places[0]).toMatchObject({ problem: { kind: 'anchor-unknown', anchorId: 'nobody' } })
    expect(proposeReport(layout, wordsOf()).places[0]).toMatchObject({ problem: { kind: 'no-tubes' } })
  })

  it('is part of what the command prints, and a bad option ends it with code 2', () => {
    const file = join(folder, 'car.layout.json')
    writeFileSync(file, layoutText(layout))
    const run = (...words: readonly string[]) =>
      spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/evaluate.ts', ...words, file], {
        cwd: fileURLToPath(new URL('../../', import.meta.url)),
        encoding: 'utf8',
        maxBuffer: 64 * 1024 * 1024,
      })
    const printed = run('--propose', '--anchor=lap-left-anchor', BOX)
    expect(printed.status).toBe(0)
    expect(JSON.parse(printed.stdout)).toMatchObject({
      propose: { places: [{ place: 'driver', present: { broken: { must: 0, should: 0, advice: 0 } } }] },
    })
    const refused = run('--propose', '--apart=0')
    expect(refused.status).toBe(2)
    expect(refused.stderr).toContain('--apart=0 is not a length from 5 to 1000 mm.')
  })
})

import { execFile } from 'node:child_process'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

import { afterAll, beforeAll, describe, expect, it } from 'vitest'

import { evaluationReport, type EvaluationReport, isMustBroken } from '../../src/cli/evaluationReport'
import { fitReport } from '../../src/cli/fitReport'
import { movedHandle } from '../../src/domain/layout/edit/move'
import { evaluateLayout } from '../../src/domain/layout/evaluate/evaluateLayout'
import { CAUTIONS } from '../../src/domain/layout/wording/cautions'
import { FIT_CAPTION } from '../../src/domain/layout/wording/fitText'
import { QUANTITY_IDS } from '../../src/domain/straps/quantity'
import { exampleIndex, exampleLayout, exampleText } from '../support/exampleLayouts'

const projectFolder = fileURLToPath(new URL('../../', import.meta.url))

interface Run {
  readonly code: number
  readonly reports: readonly EvaluationReport[]
  readonly complaints: string
}

/** The command as `npm run --silent evaluate -- FILE…` starts it. */
const evaluate = (...files: readonly string[]): Promise<Run> =>
  new Promise((resolve) => {
    const command = ['--import', 'tsx', 'src/cli/evaluate.ts', ...files]
    const options = { cwd: projectFolder, maxBuffer: 64 * 1024 * 1024 }
    execFile(process.execPath, command, options, (error, stdout, stderr) => {
      resolve({
        code: typeof error?.code === 'number' ? error.code : error === null ? 0 : -1,
        // Pretty-printed documents follow each other: each begins with a brace at the start of a line.
        reports:
          stdout === '' ? [] : stdout.split(/\n(?=\{)/).map((text) => JSON.parse(text) as EvaluationReport),
        complaints: stderr,
      })
    })
  })

const example = (file: string): string => `public/examples/${file}`

let folder = ''
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'layouts-'))
})
afterAll(() => rm(folder, { recursive: true }))

const inFolder = async (name: string, text: string): Promise<string> => {
  const file = join(folder, name)
  await writeFile(file, text)
  return file
}

describe('evaluate --fit', { timeout: 30_000 }, () => {
  it('adds how many of 600 women and 600 men pass, for each place, and changes nothing else', async () => {
    const file = example('trail-car-two-seat.layout.json')
    const [plain, { reports, code }] = await Promise.all([evaluate(file), evaluate('--fit', file)])
    const report = reports[0] as EvaluationReport & { readonly fit?: ReturnType<typeof fitReport> }
    const { fit, ...rest } = report
    expect(rest).toEqual(plain.reports[0])
    expect(code).toBe(plain.code)
    expect(fit).toEqual(
      JSON.parse(JSON.stringify(fitReport(exampleLayout('trail-car-two-seat.layout.json')))),
    )
    expect(fit?.surveyed).toEqual({ women: 600, men: 600 })
    expect(fit?.caption).toBe(FIT_CAPTION)
    expect(fit?.places.map(({ place }) => place)).toEqual(['driver', 'co-driver'])
    for (const { overall, rules } of fit?.places ?? []) {
      for (const { women, men } of [...overall, ...rules]) {
        expect(women.passing + women.broken + women.unchecked).toBe(600)
        expect(men.passing + men.broken + men.unchecked).toBe(600)
      }
    }
  })
})

describe('evaluate', { timeout: 30_000 }, () => {
  it('prints one document for each file, in order, with the numbers the screen reads', async () => {
    const files = exampleIndex.map(({ file }) => file)
    const { reports, code } = await evaluate(...files.map(example))
    expect(code).toBe(1) // everything-wrong is among them
    expect(reports).toEqual(
      files.map((file) => JSON.parse(JSON.stringify(evaluationReport(example(file), exampleLayout(file))))),
    )
  })

  it.each([
    { file: 'rock-buggy.layout.json', code: 0 },
    { file: 'trail-car-two-seat.layout.json', code: 0 },
    { file: 'road-fixed-seat.layout.json', code: 0 },
    { file: 'nearly-empty.layout.json', code: 0 },
    { file: 'everything-wrong.layout.json', code: 1 },
  ])('ends $file with $code', async ({ file, code }) => {
    expect((await evaluate(example(file))).code).toBe(code)
  })

  it('says when findings could not be checked, although that is no broken rule', async () => {
    const { code, complaints } = await evaluate(example('nearly-empty.layout.json'))
    expect(code).toBe(0)
    expect(complaints).toMatch(
      /nearly-empty.layout.json: \d+ findings could not be checked; that is not approval/,
    )
  })

  it('names the place in a damaged file, prints the others and ends with 2', async () => {
    const cut = await inFolder('cut.layout.json', exampleText('rock-buggy.layout.json').slice(0, 900))
    const { code, reports, complaints } = await evaluate(
      cut,
      example('everything-wrong.layout.json'),
      example('rock-buggy.layout.json'),
    )
    expect(code).toBe(2)
    expect(reports.map(({ file }) => file)).toEqual([
      example('everything-wrong.layout.json'),
      example('rock-buggy.layout.json'),
    ])
    expect(complaints).toMatch(
      /cut.layout.json: The file is not readable as JSON from line \d+, column \d+ on/,
    )
  })

  it('names field, value and remedy of a file that says something impossible', async () => {
    const wrong = exampleText('rock-buggy.layout.json').replace('"massKg": 84', '"massKg": 840')
    const { code, reports, complaints } = await evaluate(await inFolder('wrong.layout.json', wrong))
    expect(code).toBe(2)
    expect(reports).toEqual([])
    expect(complaints).toContain(
      'wrong.layout.json: places[0].occupants[0].massKg: Place 1 "Driver", occupant 1 "M. Dallow", mass: found 840 kg. Put a number from 30 to 250 kg there.',
    )
  })

  it('ends with 2 for a file that is not there, a folder, and no file at all', async () => {
    const missing = await evaluate('no-such.layout.json')
    expect(missing).toMatchObject({ code: 2, reports: [] })
    expect(missing.complaints).toBe('no-such.layout.json: cannot be read: there is no such file.\n')
    expect(await evaluate('public')).toMatchObject({
      code: 2,
      complaints: 'public: cannot be read: it is a folder.\n',
    })
    expect((await evaluate()).code).toBe(2)
  })
})

describe('evaluationReport', () => {
  const reports = exampleIndex.map(({ file }) => evaluationReport(file, exampleLayout(file)))

  it('holds every quantity there is, over the published examples together', () => {
    const ids = new Set(reports.flatMap((report) => report.quantities.map(({ id }) => id)))
    expect([...ids].sort()).toEqual([...QUANTITY_IDS].sort())
  })

  it('holds finite numbers only, each of a sitting that it lists', () => {
    for (const report of reports) {
      const sittings = new Set(report.sittings.map(({ id }) => id))
      for (const { value, sitting } of report.quantities) {
        expect(Number.isFinite(value)).toBe(true)
        expect(sittings.has(sitting)).toBe(true)
      }
      const numbers = report.findings.flatMap(({ value, roomMm }) => [value, roomMm])
      expect(numbers.every((value) => typeof value !== 'number' || Number.isFinite(value))).toBe(true)
    }
  })

  it('repeats the cautions and names the rule set with its edition', () => {
    const layout = exampleLayout('road-fixed-seat.layout.json')
    const { ruleSet } = evaluateLayout(layout)
    expect(evaluationReport('x', layout)).toMatchObject({
      file: 'x',
      ruleSet: 'us-road-anchorages-571-210',
      ruleSetName: ruleSet.name,
      ruleSetEdition: ruleSet.edition,
      cautions: CAUTIONS,
    })
  })

  it('breaks at least six different "must" rules in the deliberately bad example', () => {
    const { findings } = evaluationReport('x', exampleLayout('everything-wrong.layout.json'))
    const rules = findings.filter(({ level, verdict }) => level === 'must' && verdict === 'broken')
    expect(new Set(rules.map(({ rule }) => rule)).size).toBeGreaterThanOrEqual(6)
  })

  it('counts a broken "should" as no broken "must"', () => {
    const rock = exampleLayout('rock-buggy.layout.json')
    // The lap tabs far back: the strap runs too flat for workshop practice, which orders nothing.
    const ref = { kind: 'anchor', placeId: 'driver', anchorId: 'driver-lap-left' } as const
    const report = evaluationReport('x', movedHandle(rock, ref, { xMm: 1600 }))
    expect(report.findings.some(({ verdict }) => verdict === 'broken')).toBe(true)
    expect(isMustBroken(report)).toBe(false)
    const bad = evaluationReport('x', exampleLayout('everything-wrong.layout.json'))
    expect(isMustBroken(bad)).toBe(true)
  })

  it('breaks nothing in the examples that show how it is done', () => {
    for (const file of [
      'rock-buggy.layout.json',
      'trail-car-two-seat.layout.json',
      'road-fixed-seat.layout.json',
    ]) {
      const { findings } = evaluationReport(file, exampleLayout(file))
      expect(findings.filter(({ verdict }) => verdict === 'broken' || verdict === 'unchecked')).toEqual([])
    }
  })
})

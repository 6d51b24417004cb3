import { parse } from 'csv-parse/sync'
import { unzipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { parseLayoutText } from '../../../src/domain/layout/document/parseLayout'
import { evaluateLayout } from '../../../src/domain/layout/evaluate/evaluateLayout'
import { CAUTIONS } from '../../../src/domain/layout/wording/cautions'
import { archive } from '../../../src/sheet/files/handOver/archive'
import { filesOf, handOverFiles } from '../../../src/sheet/files/handOver/handOverFiles'
import type { HandOverFile, HandOverRequest } from '../../../src/sheet/files/handOver/handOverPart'
import { madePart } from '../../../src/sheet/files/handOver/handOverPart'
import { handOverParts, handOverStem } from '../../../src/sheet/files/handOver/handOverParts'
import { dxfString } from '../../../src/sheet/files/dxfString'
import { generalDrawing } from '../../../src/sheet/files/generalDrawing'
import { PAPER_KINDS } from '../../../src/sheet/paperKinds'
import { readByDxf, readByDxfParser, type ReadShape } from '../../support/dxfReader'
import { exampleIndex, exampleLayout } from '../../support/exampleLayouts'
import { expectSameShape } from '../../support/flatFigures'

/*
 * Outside: dxf-parser and dxf read the drawings, csv-parse the tables, the program's own reader the layout file; the archive is opened
 * by the reading half of its package.
 */

const requestOf = (layout: Layout): HandOverRequest => ({
  layout,
  evaluation: evaluateLayout(layout, { extent: 'what-moves' }),
  paperName: 'a4',
  today: '2026-11-27',
  fonts: [],
})

const oneEnding = (files: readonly HandOverFile[], start: string, ending: string): string => {
  const found = files.filter(({ path }) => path.startsWith(start) && path.endsWith(ending))
  if (found.length !== 1) throw new Error(`${found.length} files ${start}…${ending}`)
  return found[0]?.text ?? ''
}

/** Rows of a table of the folder; none where the folder says that there is no such table. */
const tableRows = (files: readonly HandOverFile[], stem: string, whenEmpty: string) => {
  const isThere = files.some(({ path }) => path.startsWith(`tables/${stem}-`))
  if (isThere) return records(oneEnding(files, `tables/${stem}-`, '.csv'))
  expect((files[0]?.text ?? '').replaceAll(/\s+/g, ' ')).toContain(whenEmpty)
  return []
}

const position = (row: Readonly<Record<string, string>> | undefined): readonly number[] =>
  ['x', 'y', 'z'].map((axis) => Number(row?.[`${axis} (mm)`] ?? NaN))

const distance = (from: readonly number[], to: readonly number[]): number =>
  Math.hypot(...from.map((value, index) => value - (to[index] ?? NaN)))

const records = (text: string): readonly Readonly<Record<string, string>>[] =>
  parse(text, { bom: true, columns: true }) as unknown as readonly Readonly<Record<string, string>>[]

/** Names that Windows keeps for devices, with any ending. Source: Microsoft, "Naming Files, Paths, and Namespaces" (from memory). */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i

const SAFE_NAME = /^[A-Za-z0-9][A-Za-z0-9.-]*$/

const expectSafe = (files: readonly HandOverFile[]): void => {
  const names = files.flatMap(({ path }) => path.split('/'))
  expect(names.filter((name) => !SAFE_NAME.test(name) || DEVICE.test(name) || name.includes('..'))).toEqual(
    [],
  )
  expect(files.filter(({ path }) => path.length > 180)).toEqual([])
  expect(new Set(files.map(({ path }) => path.toLowerCase())).size).toBe(files.length)
}

const hasCross = (shapes: readonly ReadShape[], x: number, y: number): boolean =>
  shapes.filter(
    (shape) =>
      shape.kind === 'polyline' &&
      shape.layer === 'MARK' &&
      shape.points.length === 2 &&
      Math.abs(((shape.points[0]?.[0] ?? NaN) + (shape.points[1]?.[0] ?? NaN)) / 2 - x) < 1e-6 &&
      Math.abs(((shape.points[0]?.[1] ?? NaN) + (shape.points[1]?.[1] ?? NaN)) / 2 - y) < 1e-6,
  ).length >= 2

describe.each(exampleIndex.map(({ file }) => file))('the folder of %s', (file) => {
  const layout = exampleLayout(file)
  const request = requestOf(layout)
  const files = handOverFiles(request)
  const readMe = files[0]?.text ?? ''
  const perUnit = layout.units.length === 'mm' ? 1 : 25.4

  it('has safe names, each once, and a list of contents that names every one', () => {
    expectSafe(files)
    expect(files[0]?.path).toBe('READ-ME-FIRST.txt')
    const listed = readMe.split('\r\n').flatMap((line) => /^ {4}(\S+)/.exec(line)?.[1] ?? [])
    expect(listed).toEqual(files.slice(1).map(({ path }) => path))
    expect(readMe).toContain(`Revision: ${layout.job.revision}`)
  })

  it('has every kind of paper, or says why not', () => {
    const all = readMe.replaceAll(/\s+/g, ' ')
    for (const kind of PAPER_KINDS) {
      const pages = kind.pages(request).length
      expect(files.filter(({ path }) => path.startsWith(`papers/${kind.fileStem}-`))).toHaveLength(
        pages === 0 ? 0 : 1,
      )
      expect(files.filter(({ path }) => path.startsWith(`papers/pages/${kind.fileStem}-`))).toHaveLength(
        pages,
      )
      const isSaid = all.includes(kind.whenEmpty)
      expect(pages > 0 || isSaid).toBe(true)
    }
    expect(readMe).not.toContain('COULD NOT BE MADE')
  })

  it('says in every file but the layout that it is no certificate', () => {
    const [caution = ''] = CAUTIONS
    const silent = files.filter(
      ({ path, text }) =>
        !/^(layout|calendar)\//.test(path) &&
        !text.replaceAll(/\s+/g, ' ').includes(caution) &&
        !text.includes(dxfString(caution)),
    )
    expect(silent.map(({ path }) => path)).toEqual([])
    const flat = readMe.replaceAll(/\s+/g, ' ')
    for (const each of CAUTIONS) expect(flat).toContain(each)
  })

  it('has a general drawing with every anchor where it is, read by two readers', () => {
    const text = oneEnding(files, 'drawing/', '.dxf')
    const { datum, figure } = generalDrawing(layout, request.evaluation)
    for (const { unit, shapes } of [readByDxfParser(text), readByDxf(text)]) {
      expect(unit).toBe(layout.units.length === 'mm' ? 4 : 1)
      figure.shapes.forEach((shape, index) => expectSameShape(shapes[index], shape, perUnit))
      for (const { mount } of layout.places.flatMap(({ anchors }) => anchors)) {
        const { xMm, yMm, zMm } = mount.point
        expect(hasCross(shapes, xMm / perUnit, zMm / perUnit)).toBe(true)
        expect(hasCross(shapes, xMm / perUnit, (yMm + datum.top.yMm) / perUnit)).toBe(true)
      }
    }
  })

  it('has every figure to cut with all its coordinates', () => {
    const figures = PAPER_KINDS.flatMap((kind) =>
      (kind.figures?.(request) ?? []).map((figure) => ({ figure, stem: kind.fileStem })),
    )
    for (const { figure, stem } of figures) {
      const text = oneEnding(files, `cutting/${stem}-${figure.id.toLowerCase()}.`, '.dxf')
      for (const { shapes } of [readByDxfParser(text), readByDxf(text)])
        figure.shapes
          .filter((shape) => shape.kind !== 'text' || dxfString(shape.text) !== '')
          .forEach((shape, index) => expectSameShape(shapes[index], shape, perUnit))
    }
    expect(files.filter(({ path }) => /^cutting\/.*\.dxf$/.test(path))).toHaveLength(figures.length)
    expect(files.filter(({ path }) => /^cutting\/.*\.svg$/.test(path))).toHaveLength(figures.length)
  })

  it('has a table with every anchor where the layout has it, in millimetres, inches and sixteenths', () => {
    const rows = tableRows(files, 'anchors', 'The layout has no anchors.')
    const anchors = layout.places.flatMap((place) => place.anchors)
    expect(rows).toHaveLength(anchors.length)
    for (const { mount } of anchors) {
      const { xMm, yMm, zMm } = mount.point
      const isThere = rows.some((row) => distance(position(row), [xMm, yMm, zMm]) < 2e-6)
      expect(isThere).toBe(true)
    }
    for (const row of rows)
      for (const axis of ['x', 'y', 'z']) {
        const mm = Number(row[`${axis} (mm)`])
        expect(Math.abs(Number(row[`${axis} (in)`]) * 25.4 - mm)).toBeLessThan(2e-5)
        // A sixteenth is 1.5875 mm; the nearest is at most half of it away.
        expect(Math.abs(sixteenths(row[`${axis} (in to 1/16)`] ?? '') * 25.4 - mm)).toBeLessThanOrEqual(
          1.5875 / 2 + 1e-9,
        )
      }
  })

  it('has straight distances that are those between the positions in its own tables', () => {
    const none = 'No anchor has a place that a straight tape reaches: name tape points.'
    const places = tableRows(files, 'tape-places', none)
    const checks = tableRows(
      files,
      'tape-checks',
      'There is no straight distance to check: name tape points.',
    )
    const anchors = tableRows(files, 'anchors', 'The layout has no anchors.')
    const at = new Map(places.map((row) => [row['letter'], position(row)] as const))
    const isOne = layout.places.length === 1
    for (const row of anchors.filter((each) => !each['anchor']?.endsWith('wrap'))) {
      const name = isOne ? (row['anchor'] ?? '') : `${row['place']}, ${row['anchor']}`
      at.set(name, position(row))
    }
    const off = checks.filter((row) => {
      const [from, to] = [at.get(row['from']), at.get(row['to']?.split(':')[0])]
      // A wrap's own position lies inside the bar, where no tape is held.
      if (from === undefined || to === undefined) return !`${row['from']} ${row['to']}`.includes('wrap')
      return !(Math.abs(distance(from, to) - Number(row['straight distance (mm)'])) < 1e-4)
    })
    expect(off).toEqual([])
  })

  it('has the belts’ reminders, which name who decides, or says that there are none', () => {
    const found = files.filter(({ path }) => path.startsWith('calendar/'))
    const none = 'No belt has a last day that is still to come, or an interval of inspection.'
    expect(readMe.replaceAll(/\s+/g, ' ').includes(none)).toBe(found.length === 0)
    // Long lines of a calendar go on after a line end and a blank. Source: RFC 5545, 3.1.
    const text = found.map((each) => each.text.replaceAll('\r\n ', '')).join('')
    const events = text.match(/^BEGIN:VEVENT/gm) ?? []
    expect(text.match(/rule book decide/g) ?? []).toHaveLength(events.length)
  })

  it('has every measured anchor beside its plan', () => {
    const rows = tableRows(files, 'as-welded-anchors', 'Nothing was measured on the car yet.')
    expect(rows).toHaveLength((layout.asWelded ?? []).flatMap((record) => record.anchors).length)
    for (const row of rows.filter((each) => each['measured x (mm)'] !== '')) {
      const off = ['x', 'y', 'z'].map(
        (axis) => Number(row[`measured ${axis} (mm)`]) - Number(row[`planned ${axis} (mm)`]),
      )
      expect(Math.hypot(...off)).toBeCloseTo(Number(row['total off (mm)']), 4)
    }
  })

  it('has the layout, which opens again as it was', () => {
    const parsed = parseLayoutText(oneEnding(files, 'layout/', '.layout.json'))
    expect(parsed.ok && parsed.value).toEqual(layout)
  })

  it('is one archive that holds every file as it was made', () => {
    const stem = handOverStem(layout)
    const bytes = archive(stem, files, layout.job.date)
    const opened = Object.entries(unzipSync(bytes))
    expect(
      opened.map(([path, content]) => [path, new TextDecoder('utf-8', { ignoreBOM: true }).decode(content)]),
    ).toEqual(files.map(({ path, text }) => [`${stem}/${path}`, text]))
  })
})

describe('the archive', () => {
  it('is the same byte for byte when it is made again', () => {
    const layout = exampleLayout('rock-buggy.layout.json')
    const made = () => archive('folder', handOverFiles(requestOf(layout)), layout.job.date)
    expect(Buffer.from(made()).equals(Buffer.from(made()))).toBe(true)
  })

  it.each([
    // Source: MS-DOS date in a local header at offset 12: (year - 1980) * 512 + month * 32 + day. PKWARE APPNOTE 4.4.6 (from memory).
    ['2026-05-02', (2026 - 1980) * 512 + 5 * 32 + 2],
    ['', 32 + 1],
    ['1979-12-31', 32 + 1],
    ['soon', 32 + 1],
  ])('has the date of the job %j on its files, else the first that it can write', (jobDate, wanted) => {
    const bytes = archive('folder', [{ path: 'a.txt', text: 'a' }], jobDate)
    expect(new DataView(bytes.buffer, bytes.byteOffset).getUint16(12, true)).toBe(wanted)
  })
})

/** "12 5/16 in", read as a tape is read. */
const sixteenths = (text: string): number => {
  const match = /^(−?)(?:(\d+)(?: |$))?(?:(\d+)\/(\d+))?$/.exec(text.replace(/ in$/, ''))
  if (match === null) throw new Error(`no inches: ${text}`)
  const [, sign, whole = '0', over = '0', under = '1'] = match
  return (sign === '' ? 1 : -1) * (Number(whole) + Number(over) / Number(under))
}

describe('a folder of hostile names', () => {
  const layout = exampleLayout('rock-buggy.layout.json')
  const job = {
    name: '../../etc/passwd\r\n=cmd',
    car: '..\\CON: "NUL" <b>\n' + 'x'.repeat(300),
    customer: '=1+1',
    date: 'yesterday',
    revision: '日本 /../ 🙂',
    preparedBy: 'a\u0000b\u2028c',
    notes: '',
  }
  const [first] = layout.tubes
  const hostile: Layout = {
    ...layout,
    job,
    tubes: layout.tubes.map((tube) =>
      tube === first ? { ...tube, name: '=HYPERLINK("x";A1)\r\n@b' } : tube,
    ),
  }
  const files = handOverFiles(requestOf(hostile))

  it('has safe names and can be written as an archive', () => {
    expectSafe(files)
    const bytes = archive(handOverStem(hostile), files, job.date)
    const names = Object.keys(unzipSync(bytes))
    expect(names).toHaveLength(files.length)
    expect(names.every((name) => name.startsWith('hand-over-con-nul-b-x') && name.length < 255)).toBe(true)
  })

  it('keeps every typed word on a line of its own field', () => {
    const lines = (files[0]?.text ?? '').split('\r\n')
    expect(lines).toContain('Customer: =1+1')
    expect(lines).toContain('Prepared by: a b c')
    // oxlint-disable-next-line no-control-regex -- control characters are exactly what is meant
    expect(lines.filter((line) => /[\u0000-\u001F\u2028]/.test(line))).toEqual([])
  })

  it('has no cell that begins a formula', () => {
    const cells = files
      .filter(({ path }) => path.endsWith('.csv'))
      .flatMap(({ text }) => parse(text, { bom: true }).flat() as readonly string[])
    expect(cells.filter((cell) => /^\s*[=+@]/.test(cell) || /^-(?!\d+(\.\d+)?$)/.test(cell))).toEqual([])
    expect(cells.some((cell) => cell.startsWith(`'=HYPERLINK`))).toBe(true)
  })
})

describe('what cannot be made', () => {
  const request = requestOf(exampleLayout('rock-buggy.layout.json'))

  it('is named in READ-ME-FIRST, and takes nothing else with it', () => {
    const parts = [
      madePart(
        {
          words: 'Angle gauges',
          make: () => {
            throw new Error('the tube\nhas no length')
          },
        },
        request,
      ),
      madePart({ words: 'Belt record', make: () => ({ kind: 'none', because: 'No belt yet.' }) }, request),
      ...handOverParts()
        .slice(0, 1)
        .map((part) => madePart(part, request)),
    ]
    const files = filesOf(request, parts)
    const readMe = (files[0]?.text ?? '').replaceAll(/\s+/g, ' ')
    expect(readMe).toContain('Angle gauges. IT COULD NOT BE MADE (the tube has no length).')
    expect(readMe).toContain('Belt record. No belt yet.')
    expect(files.some(({ path }) => path.startsWith('papers/mount-sheet-'))).toBe(true)
  })

  it('leaves no file to be written over by another', () => {
    const made = { kind: 'files', files: [{ path: 'cutting/a.dxf', text: '1' }] } as const
    const files = filesOf(request, [
      { words: 'One', made },
      { words: 'Two', made: { kind: 'files', files: [{ path: 'cutting/A.dxf', text: '2' }] } },
    ])
    expect(files.slice(1)).toEqual([
      { path: 'cutting/a.dxf', text: '1' },
      { path: 'cutting/A-2.dxf', text: '2' },
    ])
  })
})

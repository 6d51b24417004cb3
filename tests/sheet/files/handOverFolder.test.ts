import { parse } from 'csv-parse/sync'
import { unzipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import type { Layout } from '../../../src/domain/layout/document/layout'
import { archive } from '../../../src/sheet/files/handOver/archive'
import { filesOf, handOverFiles } from '../../../src/sheet/files/handOver/handOverFiles'
import { madePart } from '../../../src/sheet/files/handOver/handOverPart'
import { handOverParts, handOverStem } from '../../../src/sheet/files/handOver/handOverParts'
import { weldedTable } from '../../../src/sheet/files/tables/weldedTable'
import { exampleLayout } from '../../support/exampleLayouts'
import { expectSafe, requestOf } from '../../support/handOver'

/* Outside: the archive is opened by the reading half of its package, tables by csv-parse; dates are those of PKWARE's note. */

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

describe('a tab whose angles nobody measured', () => {
  it('is never within tolerance without the table saying so', () => {
    const layout = exampleLayout('rock-buggy.layout.json')
    const anchor = layout.places[0]?.anchors.find(({ strap }) => strap === 'lap-left')
    if (anchor?.mount.kind !== 'tab') throw new Error('no lap tab')
    const { xMm, yMm, zMm } = anchor.mount.point
    const measured = {
      placeId: layout.places[0]?.id ?? '',
      anchorId: anchor.id,
      strap: anchor.strap,
      planned: anchor.mount,
      // A millimetre rearward, read to a tenth of one; 5 mm are allowed.
      measurement: { kind: 'coordinates', xMm: [xMm + 1], yMm: [yMm], zMm: [zMm] },
    } as const
    const record = { id: 'r', name: 'First', date: '', measuredBy: '', notes: '', plannedRevision: '' }
    const verdictOf = (entry: object): unknown => {
      const table = weldedTable({
        ...layout,
        tolerance: { xMm: 5, yMm: 5, zMm: 5, tabDeg: 2, reclineDeg: 1, spread: 'worst-case' },
        asWelded: [{ ...record, anchors: [{ ...measured, ...entry }] }],
      })
      return table.rows[0]?.[table.columns.indexOf('verdict')]
    }
    const { planDeg, leanDeg } = anchor.mount
    expect(verdictOf({})).toBe('within tolerance, without its turn and lean, not measured')
    expect(verdictOf({ planDeg: [planDeg] })).toBe('within tolerance, without its lean, not measured')
    expect(verdictOf({ planDeg: [planDeg], leanDeg: [leanDeg] })).toBe('within tolerance')
  })
})

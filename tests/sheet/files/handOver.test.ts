import { unzipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { parseLayoutText } from '../../../src/domain/layout/document/parseLayout'
import { CAUTIONS } from '../../../src/domain/layout/wording/cautions'
import { archive } from '../../../src/sheet/files/handOver/archive'
import { handOverFiles } from '../../../src/sheet/files/handOver/handOverFiles'
import { handOverStem } from '../../../src/sheet/files/handOver/handOverParts'
import { dxfString } from '../../../src/sheet/files/dxfString'
import { generalDrawing } from '../../../src/sheet/files/generalDrawing'
import { PAPER_KINDS } from '../../../src/sheet/paperKinds'
import { readByDxf, readByDxfParser } from '../../support/dxfReader'
import { exampleIndex, exampleLayout } from '../../support/exampleLayouts'
import { expectSameShape } from '../../support/flatFigures'
import {
  distance,
  expectSafe,
  hasCross,
  oneEnding,
  position,
  requestOf,
  sixteenths,
  tableRows,
} from '../../support/handOver'

/*
 * Outside: dxf-parser and dxf read the drawings, csv-parse the tables, the program's own reader the layout file; the archive is opened
 * by the reading half of its package.
 */

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
      expect(pages > 0 || isSaid || kind.isOptional === true).toBe(true)
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
    // A tab whose turn or lean nobody measured is never within tolerance without saying so.
    const unsaid = rows.filter(
      (row) =>
        /tab|clevis|insert/.test(row['anchor'] ?? '') &&
        /^(within|outside)/.test(row['verdict'] ?? '') &&
        (row['turn off (deg)'] === '' || row['lean off (deg)'] === '') &&
        !/without its (turn|lean|turn and lean), not measured$/.test(row['verdict'] ?? ''),
    )
    expect(unsaid).toEqual([])
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

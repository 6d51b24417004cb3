import { parse } from 'csv-parse/sync'
import { expect } from 'vitest'
import type { Layout } from '../../src/domain/layout/document/layout'
import { evaluateLayout } from '../../src/domain/layout/evaluate/evaluateLayout'
import type { HandOverFile, HandOverRequest } from '../../src/sheet/files/handOver/handOverPart'
import type { ReadShape } from './dxfReader'

export const requestOf = (layout: Layout): HandOverRequest => ({
  layout,
  evaluation: evaluateLayout(layout, { extent: 'what-moves' }),
  paperName: 'a4',
  today: '2026-11-27',
  fonts: [],
})

export const oneEnding = (files: readonly HandOverFile[], start: string, ending: string): string => {
  const found = files.filter(({ path }) => path.startsWith(start) && path.endsWith(ending))
  if (found.length !== 1) throw new Error(`${found.length} files ${start}…${ending}`)
  return found[0]?.text ?? ''
}

/** Rows of a table of the folder; none where the folder says that there is no such table. */
export const tableRows = (files: readonly HandOverFile[], stem: string, whenEmpty: string) => {
  const isThere = files.some(({ path }) => path.startsWith(`tables/${stem}-`))
  if (isThere) return records(oneEnding(files, `tables/${stem}-`, '.csv'))
  expect((files[0]?.text ?? '').replaceAll(/\s+/g, ' ')).toContain(whenEmpty)
  return []
}

export const position = (row: Readonly<Record<string, string>> | undefined): readonly number[] =>
  ['x', 'y', 'z'].map((axis) => Number(row?.[`${axis} (mm)`] ?? NaN))

export const distance = (from: readonly number[], to: readonly number[]): number =>
  Math.hypot(...from.map((value, index) => value - (to[index] ?? NaN)))

const records = (text: string): readonly Readonly<Record<string, string>>[] =>
  parse(text, { bom: true, columns: true }) as unknown as readonly Readonly<Record<string, string>>[]

/** Names that Windows keeps for devices, with any ending. Source: Microsoft, "Naming Files, Paths, and Namespaces" (from memory). */
const DEVICE = /^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i

const SAFE_NAME = /^[A-Za-z0-9][A-Za-z0-9.-]*$/

export const expectSafe = (files: readonly HandOverFile[]): void => {
  const names = files.flatMap(({ path }) => path.split('/'))
  expect(names.filter((name) => !SAFE_NAME.test(name) || DEVICE.test(name) || name.includes('..'))).toEqual(
    [],
  )
  expect(files.filter(({ path }) => path.length > 180)).toEqual([])
  expect(new Set(files.map(({ path }) => path.toLowerCase())).size).toBe(files.length)
}

export const hasCross = (shapes: readonly ReadShape[], x: number, y: number): boolean =>
  shapes.filter(
    (shape) =>
      shape.kind === 'polyline' &&
      shape.layer === 'MARK' &&
      shape.points.length === 2 &&
      Math.abs(((shape.points[0]?.[0] ?? NaN) + (shape.points[1]?.[0] ?? NaN)) / 2 - x) < 1e-6 &&
      Math.abs(((shape.points[0]?.[1] ?? NaN) + (shape.points[1]?.[1] ?? NaN)) / 2 - y) < 1e-6,
  ).length >= 2

/** "12 5/16 in", read as a tape is read. */
export const sixteenths = (text: string): number => {
  const match = /^(−?)(?:(\d+)(?: |$))?(?:(\d+)\/(\d+))?$/.exec(text.replace(/ in$/, ''))
  if (match === null) throw new Error(`no inches: ${text}`)
  const [, sign, whole = '0', over = '0', under = '1'] = match
  return (sign === '' ? 1 : -1) * (Number(whole) + Number(over) / Number(under))
}

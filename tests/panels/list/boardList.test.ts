import { describe, expect, it } from 'vitest'
import type { Layout, Place } from '../../../src/domain/layout/document/layout'
import { elevationDrawing } from '../../../src/domain/layout/drawing/elevationDrawing'
import { type DrawingOptions, PLAIN_DRAWING } from '../../../src/domain/layout/drawing/options'
import type { Primitive } from '../../../src/domain/layout/drawing/primitive'
import { evaluateLayout } from '../../../src/domain/layout/evaluate/evaluateLayout'
import type { Evaluation } from '../../../src/domain/layout/evaluate/evaluation'
import { type BoardList, boardList } from '../../../src/panels/list/boardList'
import { lengthText } from '../../../src/domain/units/length'
import { exampleIndex, exampleLayout } from '../../support/exampleLayouts'

/** Both elevations of one place as the screen draws them. */
const drawn = (
  layout: Layout,
  evaluation: Evaluation,
  placeId: string,
  options: Partial<DrawingOptions>,
): readonly Primitive[] =>
  (['side', 'top'] as const).flatMap(
    (elevation) =>
      elevationDrawing(layout, evaluation, elevation, {
        ...PLAIN_DRAWING,
        placeId,
        lengthUnit: layout.units.length,
        ...options,
      }).primitives,
  )

const listOf = (layout: Layout, evaluation: Evaluation, place: Place): BoardList => {
  const shown = evaluation.places.find(({ placeId }) => placeId === place.id)
  return boardList(layout, place, shown, shown?.sittings[0])
}

interface Case {
  readonly layout: Layout
  readonly evaluation: Evaluation
  readonly place: Place
  readonly list: BoardList
  readonly primitives: readonly Primitive[]
}

const CASES: readonly (readonly [string, Case])[] = exampleIndex.flatMap(({ file }) => {
  const layout = exampleLayout(file)
  const evaluation = evaluateLayout(layout, { extent: 'what-moves' })
  return layout.places.map((place) => {
    const list = listOf(layout, evaluation, place)
    const primitives = drawn(layout, evaluation, place.id, { zones: 'all', angles: true, handles: true })
    return [`${file}, ${place.id}`, { layout, evaluation, place, list, primitives }] as const
  })
})

const linesOf = ({ straps, people }: BoardList): ReadonlyMap<string, string> =>
  new Map([
    ...straps.flatMap(({ key, lines }) => lines.map((line) => [`${line.key}/${key}`, line.text] as const)),
    ...people.map(({ key, text }) => [key, text] as const),
  ])

describe.each(CASES)('boardList of %s', (_, { layout, evaluation, place, list, primitives }) => {
  it('has every part that the drawing marks to be taken hold of, and no other', () => {
    const marked = primitives.flatMap((primitive) =>
      primitive.kind === 'mark' && primitive.part !== null ? [primitive.part] : [],
    )
    const isOfThisPlace = (id: string): boolean => {
      const [kind = '', owner = ''] = id.split(':')
      return kind.startsWith('tube-') || owner === place.id
    }
    const handles = marked.filter((id) => id.includes(':') && isOfThisPlace(id))
    const listed = list.parts.map(({ handle }) => handle.id)
    // A bar as a whole is taken hold of where its name stands, and has no mark of its own.
    const withMark = listed.filter((id) => !id.startsWith('tube-height:'))
    expect(new Set(withMark)).toEqual(new Set(handles.filter((id) => !id.startsWith('tube-height:'))))
    const bars = layout.tubes
      .filter(({ role }) => role === 'harness-bar')
      .map(({ id }) => `tube-height:${id}`)
    expect(listed.filter((id) => id.startsWith('tube-height:'))).toEqual(bars)
    expect(new Set(listed).size).toBe(listed.length)
  })

  it('has the very numbers that the drawing writes at each part when it is in hand', () => {
    const dimensions = list.parts.map(({ handle }) => handle.id)
    const written = drawn(layout, evaluation, place.id, { dimensions, labels: false })
    const unknown = written.flatMap((primitive) => {
      if (primitive.kind !== 'dimension') return []
      const point = list.parts.find(({ handle }) => handle.id === primitive.part)?.handle.point
      const known = Object.values(point ?? {}).map((mm) => lengthText(Math.abs(mm), layout.units.length))
      return known.includes(primitive.text) ? [] : [`${primitive.key} ${primitive.text}`]
    })
    expect(unknown).toEqual([])
    expect(written.some(({ kind }) => kind === 'dimension')).toBe(list.parts.length > 0)
  })

  it('has every angle that the drawing writes, with its very text', () => {
    const lines = linesOf(list)
    const angles = primitives.flatMap((primitive) => (primitive.kind === 'angle' ? [primitive] : []))
    const nameOf = (key: string): string => key.replace(`${place.id}/angle/`, '')
    const asListed = angles.map(({ key }) => [nameOf(key), lines.get(nameOf(key))])
    expect(asListed).toEqual(angles.map(({ key, text }) => [nameOf(key), text]))
    // Nobody sits in a place without angles.
    expect(angles.length > 0).toBe(list.people.length > 0)
  })

  it('says of every anchor and elevation how far it may go or that it may not, as the hatch does', () => {
    const hatched = new Set(primitives.flatMap((each) => (each.kind === 'zone' ? [each.part] : [])))
    const anchors = place.anchors.filter(({ id }) => list.zones.some(({ key }) => key === `${id}/side`))
    const wordsOf = (id: string): readonly string[] =>
      list.zones.filter(({ key }) => key.startsWith(`${id}/`)).map(({ text }) => text)
    expect(anchors.every(({ id }) => wordsOf(id).length === 2)).toBe(true)
    const silent = anchors.filter(
      ({ id }) =>
        hatched.has(`anchor:${place.id}:${id}`) && wordsOf(id).every((text) => text === 'no permitted zone'),
    )
    expect(silent).toEqual([])
    const isNone = list.zones.every(({ text }) => text === 'no permitted zone')
    expect(isNone).toBe(hatched.size === 0)
  })

  it('names every other sitting whose outline is drawn thin', () => {
    const shown = evaluation.places.find(({ placeId }) => placeId === place.id)
    const thin = list.people.filter(({ name }) => name === 'Thin outline')
    expect(thin).toHaveLength(Math.max(0, (shown?.sittings.length ?? 0) - 1))
  })
})

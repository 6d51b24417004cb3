import { describe, expect, it } from 'vitest'
import { type Elevation, projected } from '../../../../src/domain/geometry/plane'
import type { Layout } from '../../../../src/domain/layout/document/layout'
import { elevationDrawing } from '../../../../src/domain/layout/drawing/elevationDrawing'
import { dimensionLine } from '../../../../src/domain/layout/drawing/figureText'
import type { DrawingOptions } from '../../../../src/domain/layout/drawing/options'
import type { Drawing, Primitive } from '../../../../src/domain/layout/drawing/primitive'
import { handleId } from '../../../../src/domain/layout/edit/handles'
import { movedHandle } from '../../../../src/domain/layout/edit/move'
import { evaluateLayout } from '../../../../src/domain/layout/evaluate/evaluateLayout'
import type { Evaluation } from '../../../../src/domain/layout/evaluate/evaluation'
import { exampleIndex, exampleLayout } from '../../../support/exampleLayouts'

const EVERYTHING: DrawingOptions = {
  placeId: null,
  sittingId: null,
  ghosts: true,
  zones: 'all',
  focusedFindingId: null,
  dimensions: 'datum',
  lengthUnit: 'mm',
  angles: true,
  handles: true,
}
const ELEVATIONS = ['side', 'top'] as const

interface Example {
  readonly file: string
  readonly layout: Layout
  readonly evaluation: Evaluation
}

const EXAMPLES: readonly Example[] = exampleIndex.map(({ file }) => {
  const layout = exampleLayout(file)
  return { file, layout, evaluation: evaluateLayout(layout, { extent: 'what-moves' }) }
})

const example = (file: string): Example => {
  const found = EXAMPLES.find((candidate) => candidate.file === `${file}.layout.json`)
  if (found === undefined) throw new Error(`no example ${file}`)
  return found
}

const drawn = (of: Example, elevation: Elevation, change: Partial<DrawingOptions> = {}): Drawing =>
  elevationDrawing(of.layout, of.evaluation, elevation, { ...EVERYTHING, ...change })

const numbersIn = (value: unknown): number[] => {
  if (typeof value === 'number') return [value]
  if (typeof value !== 'object' || value === null) return []
  return Object.values(value).flatMap(numbersIn)
}

const byKey = (drawing: Drawing, key: string): Primitive | undefined =>
  drawing.primitives.find((primitive) => primitive.key === key)

describe('elevationDrawing', () => {
  it.each(EXAMPLES)('of $file holds finite numbers only, each primitive once', (of) => {
    for (const elevation of ELEVATIONS) {
      const drawing = drawn(of, elevation)
      expect(numbersIn(drawing).every(Number.isFinite)).toBe(true)
      const keys = drawing.primitives.map((primitive) => primitive.key)
      expect(new Set(keys).size).toBe(keys.length)
      expect(drawing.primitives.every((primitive) => !('text' in primitive) || primitive.text !== '')).toBe(
        true,
      )
    }
  })

  it.each(EXAMPLES)('of $file has every line and circle inside its bounds', (of) => {
    for (const elevation of ELEVATIONS) {
      const { bounds, primitives } = drawn(of, elevation)
      for (const primitive of primitives) {
        const points = primitive.kind === 'polyline' ? primitive.points : []
        for (const { uMm, vMm } of points) {
          expect(uMm).toBeGreaterThanOrEqual(bounds.min.uMm)
          expect(uMm).toBeLessThanOrEqual(bounds.max.uMm)
          expect(vMm).toBeGreaterThanOrEqual(bounds.min.vMm)
          expect(vMm).toBeLessThanOrEqual(bounds.max.vMm)
        }
      }
    }
  })

  it.each(EXAMPLES)(
    'of $file shows each anchor at its own coordinates and each strap along its taut path',
    (of) => {
      for (const elevation of ELEVATIONS) {
        const drawing = drawn(of, elevation)
        for (const place of of.layout.places) {
          for (const anchor of place.anchors) {
            const { xMm, yMm, zMm } = anchor.mount.point
            expect(byKey(drawing, `${place.id}/anchor/${anchor.id}/mark`)).toMatchObject({
              kind: 'mark',
              mark: anchor.mount.kind,
              at: { uMm: xMm, vMm: elevation === 'side' ? zMm : yMm },
            })
          }
          const sitting = of.evaluation.places.find(({ placeId }) => placeId === place.id)?.sittings[0]
          for (const path of sitting?.paths ?? []) {
            expect(byKey(drawing, `${place.id}/strap/${path.strap}`)).toMatchObject({
              style: 'strap',
              points: path.polyline.map((point) => projected(point, elevation)),
            })
          }
        }
      }
    },
  )

  it('draws only the place asked for in full, the others as an empty shell', () => {
    const of = example('trail-car-two-seat')
    const [first, second] = of.layout.places
    if (first === undefined || second === undefined) throw new Error('two places expected')
    const drawing = drawn(of, 'top', { placeId: first.id })
    const ofSecond = drawing.primitives.filter((primitive) => primitive.key.startsWith(`${second.id}/`))
    expect(ofSecond).toMatchObject([{ kind: 'polyline', style: 'ghost' }])
    expect(byKey(drawing, `${first.id}/body/hip`)).toBeDefined()
  })

  it('draws the chosen sitting solid and the others as ghosts', () => {
    const of = example('trail-car-two-seat')
    const place = of.evaluation.places[0]
    const chosen = place?.sittings.at(-1)
    if (place === undefined || chosen === undefined) throw new Error('sittings expected')
    const drawing = drawn(of, 'side', { placeId: place.placeId, sittingId: chosen.sitting.id })
    expect(byKey(drawing, `${place.placeId}/body/hip`)).toMatchObject({
      at: { uMm: chosen.body.hip.xMm, vMm: chosen.body.hip.zMm },
    })
    const helmets = drawing.primitives.filter((primitive) => primitive.key.endsWith('/helmet'))
    expect(helmets).toHaveLength(place.sittings.length)
    expect(
      drawn(of, 'side', { placeId: place.placeId, ghosts: false }).primitives.filter((primitive) =>
        primitive.key.includes('/ghost/'),
      ),
    ).toEqual([])
  })

  it('leaves out what is switched off', () => {
    const of = example('rock-buggy')
    const bare = drawn(of, 'side', {
      zones: 'none',
      dimensions: 'none',
      angles: false,
      handles: false,
      labels: false,
      ghosts: false,
    })
    const kinds = new Set(bare.primitives.map((primitive) => primitive.kind))
    expect(kinds).toEqual(new Set(['polyline', 'circle', 'mark']))
  })

  it('works on a nearly empty car', () => {
    const drawing = drawn(example('nearly-empty'), 'side')
    expect(byKey(drawing, 'datum')).toMatchObject({ at: { uMm: 0, vMm: 0 }, mark: 'datum' })
    expect(drawing.primitives.some((primitive) => primitive.key.includes('/seat/'))).toBe(true)
  })
})

describe('a focused finding', () => {
  const of = example('everything-wrong')
  const findings = of.evaluation.places.flatMap((place) => place.findings)

  it.each(findings.map((finding) => ({ id: finding.id, finding })))(
    '$id is seen in both elevations with its name and verdict in words',
    ({ id, finding }) => {
      for (const elevation of ELEVATIONS) {
        const focus = drawn(of, elevation, { focusedFindingId: id }).primitives.filter((primitive) =>
          primitive.key.startsWith('focus/'),
        )
        const words = focus.flatMap((primitive) => ('text' in primitive ? [primitive.text] : []))
        expect(words.some((text) => text.includes(finding.verdict))).toBe(true)
        const styles = focus.flatMap((primitive) => ('style' in primitive ? [primitive.style] : []))
        expect(styles.includes('broken') && finding.verdict !== 'broken').toBe(false)
      }
    },
  )

  it('draws the straps of a broken angle heavily dashed, with its value and a line at each limit', () => {
    const finding = findings.find(
      ({ quantity, verdict }) => quantity === 'shoulder-drop' && verdict === 'broken',
    )
    if (finding === undefined) throw new Error('a broken shoulder drop expected')
    const focus = drawn(of, 'side', { focusedFindingId: finding.id }).primitives.filter((primitive) =>
      primitive.key.startsWith('focus/'),
    )
    expect(focus.filter((primitive) => 'style' in primitive && primitive.style === 'broken')).toHaveLength(1)
    expect(focus.filter((primitive) => 'style' in primitive && primitive.style === 'limit')).toHaveLength(2)
    expect(focus.filter((primitive) => primitive.kind === 'angle')).toHaveLength(1)
  })
})

describe('datum dimensions', () => {
  const of = example('rock-buggy')

  it('give the distance of every anchor from the datum, once for a pair that shares it', () => {
    const side = drawn(of, 'side').primitives.filter((primitive) => primitive.kind === 'dimension')
    const alongX = side.filter((line) => line.key.startsWith('dimension/u/')).map((line) => line.text)
    const wanted = new Set(
      of.layout.places.flatMap((place) => [
        ...place.anchors.map((anchor) => String(anchor.mount.point.xMm)),
        String(place.seat.hipPoint.xMm),
      ]),
    )
    expect(new Set(alongX)).toEqual(wanted)
    expect(alongX).toHaveLength(wanted.size)
  })

  it('stand below and to the left of everything else that is drawn', () => {
    for (const elevation of ELEVATIONS) {
      const { bounds } = drawn(of, elevation, { dimensions: 'none', labels: false, zones: 'none' })
      const lines = drawn(of, elevation).primitives.filter((primitive) => primitive.kind === 'dimension')
      for (const line of lines) {
        const { from, to } = dimensionLine(line, 25)
        const isClear = line.key.startsWith('dimension/u/')
          ? Math.max(from.vMm, to.vMm) < bounds.min.vMm
          : Math.max(from.uMm, to.uMm) < bounds.min.uMm
        expect(isClear).toBe(true)
      }
    }
  })

  it('stand on lines of their own, the shortest nearest to the drawing', () => {
    for (const elevation of ELEVATIONS) {
      const lines = drawn(of, elevation).primitives.filter((primitive) => primitive.kind === 'dimension')
      for (const axis of ['u', 'v']) {
        const own = lines.filter((line) => line.key.startsWith(`dimension/${axis}/`))
        const rows = own
          .map((line) => ({
            outMm: Math.abs(line.offsetMm),
            lengthMm: Math.hypot(line.to.uMm - line.from.uMm, line.to.vMm - line.from.vMm),
            sign: Math.sign(line.to.uMm - line.from.uMm + line.to.vMm - line.from.vMm),
          }))
          .toSorted((a, b) => a.sign - b.sign || a.outMm - b.outMm)
        rows.slice(1).forEach((row, index) => {
          const before = rows[index]
          if (before === undefined || before.sign !== row.sign) return
          expect(row.outMm).toBeGreaterThan(before.outMm)
          expect(row.lengthMm).toBeGreaterThan(before.lengthMm)
        })
      }
    }
  })

  it('are drawn for a chosen handle alone, in the unit asked for', () => {
    const place = of.layout.places[0]
    const anchor = place?.anchors[0]
    if (place === undefined || anchor === undefined) throw new Error('an anchor expected')
    const ref = { kind: 'anchor', placeId: place.id, anchorId: anchor.id } as const
    const id = handleId(ref)
    const layout = movedHandle(of.layout, ref, { xMm: 1612 })
    const moved = { ...of, layout, evaluation: evaluateLayout(layout, { extent: 'what-moves' }) }
    const lines = drawn(moved, 'side', { dimensions: [id], lengthUnit: 'in' }).primitives.filter(
      (primitive) => primitive.kind === 'dimension',
    )
    expect(lines.map((line) => line.part)).toEqual([id, id])
    // 1612 / 25.4 = 63.465 in, nearest sixteenth 63 7/16
    expect(lines[0]?.text).toBe('63 7/16')
  })
})

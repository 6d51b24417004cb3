import { createRequire } from 'node:module'
// @ts-expect-error -- the package has no types
import dxf from 'dxf'
import type { DxfParser, IDxf } from 'dxf-parser'

const load = createRequire(import.meta.url)

/** One drawn thing of a drawing file as a reader gives it back; lengths in the file's own unit, angles in degrees. */
export type ReadShape =
  | {
      readonly kind: 'polyline'
      readonly layer: string
      readonly points: readonly (readonly [number, number])[]
      readonly closed: boolean
    }
  | {
      readonly kind: 'circle'
      readonly layer: string
      readonly centre: readonly [number, number]
      readonly radius: number
    }
  | {
      readonly kind: 'arc'
      readonly layer: string
      readonly centre: readonly [number, number]
      readonly radius: number
      readonly fromDeg: number
      readonly toDeg: number
    }
  | {
      readonly kind: 'text'
      readonly layer: string
      readonly at: readonly [number, number]
      readonly text: string
      readonly turnDeg: number
      /** Group 72: 0 left, 1 centre, 2 right. */
      readonly align: number
    }

export interface ReadDrawing {
  readonly version: string
  /** Group 70 of $INSUNITS: 1 inch, 4 millimetre. */
  readonly unit: number
  readonly layers: readonly string[]
  readonly shapes: readonly ReadShape[]
}

const DEG = 180 / Math.PI

type Fields = Readonly<Record<string, unknown>>
type Xy = { readonly x: number; readonly y: number }
const xy = (value: unknown): readonly [number, number] => [(value as Xy).x, (value as Xy).y]

const parsed = (text: string): IDxf => {
  // The package is its class when it is required, whatever its types say.
  const Reader = load('dxf-parser') as typeof DxfParser
  const drawing = new Reader().parseSync(text)
  if (drawing === null) throw new Error('the drawing file was not read')
  return drawing
}

/** Read by the package dxf-parser. */
export const readByDxfParser = (text: string): ReadDrawing => {
  const drawing = parsed(text)
  return {
    version: (drawing.header as Fields)['$ACADVER'] as string,
    unit: Number(drawing.header['$INSUNITS']),
    layers: Object.keys(drawing.tables.layer.layers),
    shapes: drawing.entities.map((entity): ReadShape => {
      const fields = entity as unknown as Fields
      const layer = entity.layer
      switch (entity.type) {
        case 'LINE':
        case 'POLYLINE': {
          const points = (fields['vertices'] as readonly Xy[]).map(xy)
          return { kind: 'polyline', layer, points, closed: fields['shape'] === true }
        }
        case 'CIRCLE':
          return { kind: 'circle', layer, centre: xy(fields['center']), radius: Number(fields['radius']) }
        case 'ARC':
          return {
            kind: 'arc',
            layer,
            centre: xy(fields['center']),
            radius: Number(fields['radius']),
            fromDeg: Number(fields['startAngle']) * DEG,
            toDeg: Number(fields['endAngle']) * DEG,
          }
        case 'TEXT':
          return {
            kind: 'text',
            layer,
            at: xy(fields['endPoint'] ?? fields['startPoint']),
            text: String(fields['text']),
            turnDeg: Number(fields['rotation'] ?? 0),
            align: Number(fields['halign'] ?? 0),
          }
        default:
          throw new Error(`unexpected ${entity.type}`)
      }
    }),
  }
}

interface OtherReader {
  readonly parseString: (text: string) => {
    readonly header: { readonly insUnits: number }
    readonly tables: { readonly layers: Readonly<Record<string, unknown>> }
    readonly entities: readonly Fields[]
  }
}

/** Read by the package dxf, which shares no code with the other and has no types of its own. */
export const readByDxf = (text: string): Pick<ReadDrawing, 'unit' | 'layers' | 'shapes'> => {
  const drawing = (dxf as OtherReader).parseString(text)
  return {
    unit: drawing.header.insUnits,
    layers: Object.keys(drawing.tables.layers),
    shapes: drawing.entities.map((fields): ReadShape => {
      const layer = String(fields['layer'])
      switch (fields['type']) {
        case 'LINE':
          return { kind: 'polyline', layer, points: [xy(fields['start']), xy(fields['end'])], closed: false }
        case 'POLYLINE': {
          const points = (fields['vertices'] as readonly Xy[]).map(xy)
          return { kind: 'polyline', layer, points, closed: fields['closed'] === true }
        }
        case 'CIRCLE':
          return { kind: 'circle', layer, centre: xy(fields), radius: Number(fields['r']) }
        case 'ARC':
          return {
            kind: 'arc',
            layer,
            centre: xy(fields),
            radius: Number(fields['r']),
            fromDeg: Number(fields['startAngle']) * DEG,
            toDeg: Number(fields['endAngle']) * DEG,
          }
        case 'TEXT':
          return {
            kind: 'text',
            layer,
            at: fields['x2'] === undefined ? xy(fields) : [Number(fields['x2']), Number(fields['y2'])],
            text: String(fields['string']),
            turnDeg: Number(fields['rotation'] ?? 0),
            align: Number(fields['hAlign'] ?? 0),
          }
        default:
          throw new Error(`unexpected ${String(fields['type'])}`)
      }
    }),
  }
}

import { flatBounds, fullTurnDeg, sweepDeg } from '../../domain/shop/flat/flatBounds'
import type { FlatFigure, FlatLayer, FlatPoint, FlatShape } from '../../domain/shop/flat/flatFigure'
import { type LengthUnit, MM_PER_INCH } from '../../domain/units/length'
import { dxfString } from './dxfString'
import { noteShapes } from './noteShapes'

/*
 * Drawing interchange files of release 12 (AC1009), the oldest that cutting programs read and the newest that all of them do.
 * Source: Autodesk, "DXF Reference" (header variables, LAYER, LTYPE, STYLE; ARC, CIRCLE, LINE, POLYLINE, VERTEX, TEXT group codes).
 */

export interface DxfSetting {
  /** What one drawing unit is. Coordinates are exact quotients by 25.4 in inches; nothing is ever scaled otherwise. */
  readonly unit: LengthUnit
  /** Lines below the figure on layer TEXT, after its title and unit, and again as comments: what it must not be taken for. */
  readonly notes: readonly string[]
  /** Lines that only who reads the file as a text will see. */
  readonly comments?: readonly string[]
  /** Font size of the notes, mm: larger for a drawing of a whole car. */
  readonly noteSizeMm?: number
}

/** Order and colours of the layers. Colours are index numbers: 1 red, 2 yellow, 3 green, 4 cyan, 6 magenta, 7 the pen's own. Our choice. */
const LAYER_COLOURS: Readonly<Record<FlatLayer, number>> = {
  CUT: 1,
  DRILL: 6,
  MARK: 4,
  CHECK: 3,
  TEXT: 2,
  OUTLINE: 7,
}

export const FLAT_LAYERS = Object.keys(LAYER_COLOURS) as readonly FlatLayer[]

/** Font size of the notes below the figure unless it is said, mm. Our judgement. */
const NOTE_SIZE_MM = 4

/** Height of capitals as a share of the font size, which the format wants instead. Source: the sheet's font (cap height 698 of 1000). */
const CAPITALS_SHARE = 0.7

/** The standard stroke font is wide; narrowed it needs about the room that the sheet's condensed font does. Our judgement. */
const WIDTH_FACTOR = 0.7

const UNIT_WORDS: Readonly<Record<LengthUnit, string>> = {
  mm: 'one drawing unit is one millimetre',
  in: 'one drawing unit is one inch',
}

/**
 * `$INSUNITS` and `$MEASUREMENT` are younger than release 12, which has no variable for the unit. They are written all the same: a
 * reader that knows them asks nobody and takes no inch for a millimetre, one that does not passes over them and says so at most
 * (github.com/mozman/ezdxf, issue 64: "unknown header variable … ignored"). The unit stands in a note and a comment besides.
 */
const UNIT_CODES: Readonly<Record<LengthUnit, { readonly insUnits: number; readonly measurement: number }>> =
  {
    mm: { insUnits: 4, measurement: 1 },
    in: { insUnits: 1, measurement: 0 },
  }

/** A group code and its value, as two lines. */
type Group = readonly [code: number, value: string | number]

/** One figure as a file, in true scale: +x right, +y up, its own origin. */
export const dxfText = (figure: FlatFigure, setting: DxfSetting): string => {
  const { unit, notes, comments = [], noteSizeMm = NOTE_SIZE_MM } = setting
  const scale = `${UNIT_WORDS[unit]}, scale 1:1`
  const lines = [figure.title, capital(scale), ...notes]
  const shapes = [...figure.shapes, ...noteShapes(lines, figure.shapes, noteSizeMm)]
  const groups: readonly Group[] = [
    ...[...lines, ...comments].map((line): Group => [999, dxfString(line)]),
    ...section('HEADER', headerGroups(shapes, unit)),
    ...section('TABLES', tableGroups(unit)),
    ...section('BLOCKS', []),
    ...section(
      'ENTITIES',
      shapes.flatMap((shape) => entityGroups(shape, unit)),
    ),
    [0, 'EOF'],
  ]
  return groups.map(([code, value]) => `${String(code).padStart(3)}\r\n${valueText(value)}\r\n`).join('')
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1)

/** Sub-nanometre in either unit, without exponents, which older readers do not take. */
const DECIMALS = 8

const valueText = (value: string | number): string => {
  if (typeof value === 'string') return value
  if (!Number.isFinite(value)) throw new Error(`a drawing file cannot hold ${value}`)
  return String(value)
}

/** A length or angle that may have decimals: always with a point, as the format wants of real numbers. */
const real = (value: number): string => {
  if (!Number.isFinite(value)) throw new Error(`a drawing file cannot hold ${value}`)
  const text = value.toFixed(DECIMALS).replace(/0+$/, '')
  const whole = text.endsWith('.') ? `${text}0` : text
  return whole === '-0.0' ? '0.0' : whole
}

const lengthReal = (lengthMm: number, unit: LengthUnit): string =>
  real(unit === 'mm' ? lengthMm : lengthMm / MM_PER_INCH)

const section = (name: string, groups: readonly Group[]): readonly Group[] => [
  [0, 'SECTION'],
  [2, name],
  ...groups,
  [0, 'ENDSEC'],
]

/** A point as three groups from `code`: the plane of the figure is z = 0. */
const pointGroups = (code: number, point: FlatPoint, unit: LengthUnit): readonly Group[] => [
  ...planarGroups(code, point, unit),
  [code + 20, '0.0'],
]

const planarGroups = (code: number, { xMm, yMm }: FlatPoint, unit: LengthUnit): readonly Group[] => [
  [code, lengthReal(xMm, unit)],
  [code + 10, lengthReal(yMm, unit)],
]

const headerGroups = (shapes: readonly FlatShape[], unit: LengthUnit): readonly Group[] => {
  const { min, max } = flatBounds(shapes)
  const { insUnits, measurement } = UNIT_CODES[unit]
  return [
    [9, '$ACADVER'],
    [1, 'AC1009'],
    [9, '$INSUNITS'],
    [70, insUnits],
    [9, '$MEASUREMENT'],
    [70, measurement],
    // Decimal numbers to four places.
    [9, '$LUNITS'],
    [70, 2],
    [9, '$LUPREC'],
    [70, 4],
    [9, '$EXTMIN'],
    ...pointGroups(10, min, unit),
    [9, '$EXTMAX'],
    ...pointGroups(10, max, unit),
    [9, '$LIMMIN'],
    ...planarGroups(10, min, unit),
    [9, '$LIMMAX'],
    ...planarGroups(10, max, unit),
  ]
}

const table = (name: string, entries: readonly (readonly Group[])[]): readonly Group[] => [
  [0, 'TABLE'],
  [2, name],
  [70, entries.length],
  ...entries.flat(),
  [0, 'ENDTAB'],
]

const layerEntry = (name: string, colour: number): readonly Group[] => [
  [0, 'LAYER'],
  [2, name],
  [70, 0],
  [62, colour],
  [6, 'CONTINUOUS'],
]

const tableGroups = (unit: LengthUnit): readonly Group[] => [
  ...table('LTYPE', [
    [
      [0, 'LTYPE'],
      [2, 'CONTINUOUS'],
      [70, 0],
      [3, 'Solid line'],
      [72, 65],
      [73, 0],
      [40, '0.0'],
    ],
  ]),
  ...table('LAYER', [
    layerEntry('0', 7),
    ...FLAT_LAYERS.map((name) => layerEntry(name, LAYER_COLOURS[name])),
  ]),
  ...table('STYLE', [
    [
      [0, 'STYLE'],
      [2, 'STANDARD'],
      [70, 0],
      [40, '0.0'],
      [41, real(WIDTH_FACTOR)],
      [50, '0.0'],
      [71, 0],
      [42, lengthReal(NOTE_SIZE_MM * CAPITALS_SHARE, unit)],
      [3, 'txt'],
      [4, ''],
    ],
  ]),
]

const entity = (type: string, layer: FlatLayer, groups: readonly Group[]): readonly Group[] => [
  [0, type],
  [8, layer],
  ...groups,
]

const entityGroups = (shape: FlatShape, unit: LengthUnit): readonly Group[] => {
  switch (shape.kind) {
    case 'polyline':
      return polylineGroups(shape, unit)
    case 'circle':
      return circleGroups(shape, unit)
    case 'arc': {
      const turnDeg = sweepDeg(shape.fromDeg, shape.toDeg)
      if (turnDeg === 360) return circleGroups(shape, unit)
      return entity('ARC', shape.layer, [
        ...pointGroups(10, shape.centre, unit),
        [40, lengthReal(shape.radiusMm, unit)],
        [50, real(fullTurnDeg(shape.fromDeg))],
        [51, real(fullTurnDeg(shape.toDeg))],
      ])
    }
    case 'text':
      return textGroups(shape, unit)
  }
}

const circleGroups = (
  { layer, centre, radiusMm }: Pick<Extract<FlatShape, { kind: 'circle' }>, 'layer' | 'centre' | 'radiusMm'>,
  unit: LengthUnit,
): readonly Group[] =>
  entity('CIRCLE', layer, [...pointGroups(10, centre, unit), [40, lengthReal(radiusMm, unit)]])

const polylineGroups = (
  { layer, points, closed }: Extract<FlatShape, { kind: 'polyline' }>,
  unit: LengthUnit,
): readonly Group[] => {
  const [first, second] = points
  if (first === undefined || second === undefined) return []
  if (points.length === 2)
    return entity('LINE', layer, [...pointGroups(10, first, unit), ...pointGroups(11, second, unit)])
  return [
    ...entity('POLYLINE', layer, [
      [66, 1],
      ...pointGroups(10, { xMm: 0, yMm: 0 }, unit),
      [70, closed ? 1 : 0],
    ]),
    ...points.flatMap((point) => entity('VERTEX', layer, pointGroups(10, point, unit))),
    ...entity('SEQEND', layer, []),
  ]
}

/** Codes of group 72. */
const ALIGN_CODES = { left: 0, centre: 1, right: 2 } as const

const textGroups = (
  { layer, at, text, heightMm, align, turnDeg }: Extract<FlatShape, { kind: 'text' }>,
  unit: LengthUnit,
): readonly Group[] => {
  const string = dxfString(text)
  if (string === '') return []
  const end: readonly Group[] =
    align === 'left' ? [] : [[72, ALIGN_CODES[align]], ...pointGroups(11, at, unit)]
  return entity('TEXT', layer, [
    ...pointGroups(10, at, unit),
    [40, lengthReal(heightMm * CAPITALS_SHARE, unit)],
    [1, string],
    [50, real(fullTurnDeg(turnDeg))],
    [41, real(WIDTH_FACTOR)],
    [7, 'STANDARD'],
    ...end,
  ])
}

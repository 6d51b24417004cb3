import type { ShownVerdict } from '../../rules/finding'
import { comparedFindings, type EvaluatedVariant, findingTurn } from '../compare/comparedFindings'
import { comparedNumbers, doesNumberDiffer, numberBy } from '../compare/comparedNumbers'
import {
  type ComparedField,
  type ComparedPart,
  doesFieldDiffer,
  doesPartDiffer,
  isSameField,
  type PartDifference,
  partDifferences,
} from '../compare/comparedPart'
import { comparedParts } from '../compare/comparedParts'
import type { VariantLayout } from '../edit/changeVariants'
import { fieldByText, fieldName, fieldValueText } from './compareFieldWords'
import {
  comparedFindingName,
  comparedNumberName,
  comparedPartName,
  findingCell,
  numberByText,
  numberText,
  partShiftText,
  turnMark,
  turnText,
} from './compareWords'
import { levelWord } from './words'

/** One value of one variant. */
export interface CompareCell {
  readonly text: string
  /** Beside the value: by how much it differs, what becomes of it. */
  readonly notes: readonly string[]
  /** Of a finding. */
  readonly verdict?: ShownVerdict
  /** Differs from the drawn variant. */
  readonly isOther: boolean
}

/** One thing with a value for each variant. */
interface CompareRow {
  readonly key: string
  readonly title: string
  readonly cells: readonly CompareCell[]
}

export interface CompareGroup {
  readonly key: string
  /** Empty: rows without a heading. */
  readonly title: string
  readonly rows: readonly CompareRow[]
}

/** What both sides of the car have alike stands once: "Left and right shoulder strap". */
const joinedSides = <Item>(
  items: readonly Item[],
  titleOf: (item: Item) => string,
  bodyOf: (item: Item) => unknown,
  retitled: (item: Item, title: string) => Item,
): readonly Item[] => {
  const twins = new Map<Item, Item>()
  for (const item of items) {
    const title = titleOf(item)
    const other = title.replace(LEFT, (_, letter: string) => (letter === 'L' ? 'Right' : 'right'))
    const twin = other === title ? undefined : items.find((each) => titleOf(each) === other)
    if (twin !== undefined && JSON.stringify(bodyOf(twin)) === JSON.stringify(bodyOf(item)))
      twins.set(item, twin)
  }
  const joined = new Set(twins.values())
  return items
    .filter((item) => !joined.has(item))
    .map((item) =>
      twins.has(item)
        ? retitled(
            item,
            titleOf(item).replace(LEFT, (word) => `${word} and right`),
          )
        : item,
    )
}

const LEFT = /\b([Ll])eft\b/

const joinedRows = (rows: readonly CompareRow[]): readonly CompareRow[] =>
  joinedSides(
    rows,
    ({ title }) => title,
    ({ cells }) => cells,
    (row, title) => ({ ...row, title }),
  )

const joinedGroups = (groups: readonly CompareGroup[]): readonly CompareGroup[] =>
  joinedSides(
    groups,
    ({ title }) => title,
    ({ rows }) => rows.map(({ title, cells }) => ({ title, cells })),
    (group, title) => ({ ...group, title }),
  )

/** What the tables are made of. */
export interface Compared {
  readonly variants: readonly VariantLayout[]
  readonly evaluated: readonly EvaluatedVariant[]
  readonly drawn: number
  /** Leave out what is the same in all. */
  readonly onlyDifferences: boolean
  /** Say nothing of rooms, where nobody works them out. */
  readonly withoutRooms?: true
}

const fieldRow = (field: ComparedField, partKey: string, { variants, drawn }: Compared): CompareRow => {
  const units = variants[drawn]?.layout.units ?? { length: 'mm', force: 'N', mass: 'kg' }
  const before = field.values[drawn] ?? null
  return {
    key: `${partKey}/${field.field}${field.of === null ? '' : `-${field.of}`}`,
    title: fieldName(field),
    cells: field.values.map((after): CompareCell => {
      const isOther = !isSameField(before, after)
      const by = before?.kind === 'number' && after?.kind === 'number' ? after.value - before.value : null
      const note = isOther ? fieldByText({ field: field.field, by, before, after }, units) : null
      return {
        text: fieldValueText(field.field, after, units),
        notes: note === null ? [] : [note],
        isOther,
      }
    }),
  }
}

const partKey = ({ kind, parts }: ComparedPart): string => {
  const part = parts.find((each) => each !== null)
  return `${kind}/${part?.placeId ?? ''}/${part?.strap ?? part?.id ?? ''}`
}

/** Which variants have the part, and where it lies as a whole. */
const wholeRow = (part: ComparedPart, compared: Compared, found: readonly PartDifference[][]): CompareRow => {
  const { variants, drawn } = compared
  const unit = variants[drawn]?.layout.units.length ?? 'mm'
  const isDrawnThere = (part.parts[drawn] ?? null) !== null
  return {
    key: `${partKey(part)}/whole`,
    title: 'as a whole',
    cells: part.parts.map((own, index): CompareCell => {
      const difference = found[index]?.find((each) => each.part === part)
      const shift = difference === undefined ? null : partShiftText(difference, unit)
      return {
        text: own === null ? 'not there' : (shift ?? 'there'),
        notes: [],
        isOther: shift !== null || (own !== null) !== isDrawnThere,
      }
    }),
  }
}

/** Parts that differ in the order of their differences, first those of the variants before; then, if asked for, all others. */
const orderedParts = (
  parts: readonly ComparedPart[],
  found: readonly PartDifference[][],
  onlyDifferences: boolean,
): readonly ComparedPart[] => {
  const differing = new Set(found.flatMap((differences) => differences.map(({ part }) => part)))
  for (const part of parts) if (doesPartDiffer(part)) differing.add(part)
  return onlyDifferences ? [...differing] : [...differing, ...parts.filter((part) => !differing.has(part))]
}

/** What is built otherwise: each part with its fields. */
export const partGroups = (compared: Compared): readonly CompareGroup[] => {
  const { variants, drawn, onlyDifferences } = compared
  const layouts = variants.map(({ layout }) => layout)
  const parts = comparedParts(layouts)
  const found = variants.map((_, index) => (index === drawn ? [] : [...partDifferences(parts, drawn, index)]))
  const groups = orderedParts(parts, found, onlyDifferences).map((part): CompareGroup => {
    const fields = part.fields.filter((field) => !onlyDifferences || doesFieldDiffer(field))
    const isSomewhereMissing = part.parts.some((own) => own === null)
    const whole = wholeRow(part, compared, found)
    return {
      key: partKey(part),
      title: comparedPartName(part, layouts),
      rows: [
        ...(whole.cells.some(({ isOther }) => isOther) || isSomewhereMissing ? [whole] : []),
        // What only one of them has is read at that one; a list of all its fields beside nothing says no more.
        ...(isSomewhereMissing && onlyDifferences
          ? []
          : fields.map((field) => fieldRow(field, partKey(part), compared))),
      ],
    }
  })
  return joinedGroups(groups)
}

/** The computed numbers, what differs most first. */
export const numberGroups = ({
  variants,
  evaluated,
  drawn,
  onlyDifferences,
}: Compared): readonly CompareGroup[] => {
  const layouts = variants.map(({ layout }) => layout)
  const unit = layouts[drawn]?.units.length ?? 'mm'
  const rows = comparedNumbers(evaluated, drawn)
    .filter((number) => !onlyDifferences || doesNumberDiffer(number))
    .map((number): CompareRow => ({
      key: `number/${number.quantity}/${number.subject}/${number.placeIds[drawn] ?? ''}`,
      title: comparedNumberName(number, layouts),
      cells: number.values.map((value, index): CompareCell => {
        const by = index === drawn ? null : numberBy(number, drawn, index)
        const text = by === null ? null : numberByText(number, by, unit)
        const isOther =
          numberText(number, value, unit) !== numberText(number, number.values[drawn] ?? null, unit)
        return {
          text: numberText(number, value, unit),
          notes: text !== null && isOther ? [text] : [],
          isOther,
        }
      }),
    }))
  // What differs by less than is shown is no difference to whoever reads it.
  const seen = onlyDifferences ? rows.filter(({ cells }) => cells.some(({ isOther }) => isOther)) : rows
  return [{ key: 'numbers', title: '', rows: joinedRows(seen) }]
}

/** The findings, what changes most against the drawn variant first. */
export const findingGroups = ({
  variants,
  evaluated,
  drawn,
  onlyDifferences,
  withoutRooms,
}: Compared): readonly CompareGroup[] => {
  const base = variants[drawn]?.name ?? ''
  const rows = comparedFindings(evaluated, drawn).flatMap(({ key, findings }): readonly CompareRow[] => {
    const at = findings.findIndex((finding) => finding !== null)
    const [first, layout] = [findings[at], evaluated[at]?.layout]
    if (first === undefined || first === null || layout === undefined) return []
    const turns = findings.map((finding) => findingTurn(findings[drawn] ?? null, finding))
    if (onlyDifferences && turns.every((turn) => turn === null || turn === 'unchanged' || turn === 'pending'))
      return []
    return [
      {
        key: `finding/${key}`,
        title: `${comparedFindingName(first, layout)} (${levelWord(first.level)})`,
        cells: findings.map((finding, index): CompareCell => {
          const turn = turns[index] ?? null
          const isUnsaid = turn === null || index === drawn || (turn === 'pending' && withoutRooms === true)
          const note = isUnsaid ? null : turnText(turn, base)
          const sign = turn === null || index === drawn ? '' : turnMark(turn)
          const own = evaluated[index]?.layout ?? layout
          const cell = finding === null ? null : findingCell(finding, own)
          return {
            text: cell === null ? 'not asked here' : `${cell.verdict}: ${cell.value}`,
            ...(finding === null ? {} : { verdict: finding.verdict }),
            notes: [
              ...(cell?.room === null || cell === null ? [] : [cell.room]),
              ...(note === null ? [] : [`${sign} ${note}`.trim()]),
            ],
            isOther: note !== null,
          }
        }),
      },
    ]
  })
  return [{ key: 'findings', title: '', rows: joinedRows(rows) }]
}

import {
  comparedFindings,
  type EvaluatedVariant,
  findingTurn,
} from '../../domain/layout/compare/comparedFindings'
import { comparedNumbers, doesNumberDiffer, numberBy } from '../../domain/layout/compare/comparedNumbers'
import {
  type ComparedField,
  type ComparedPart,
  doesFieldDiffer,
  doesPartDiffer,
  isSameField,
  type PartDifference,
  partDifferences,
} from '../../domain/layout/compare/comparedPart'
import { comparedParts } from '../../domain/layout/compare/comparedParts'
import type { VariantLayout } from '../../domain/layout/edit/changeVariants'
import { fieldByText, fieldName, fieldValueText } from '../../domain/layout/wording/compareFieldWords'
import {
  comparedFindingName,
  comparedNumberName,
  comparedPartName,
  findingCell,
  numberByText,
  numberText,
  partDifferenceText,
  turnMark,
  turnText,
} from '../../domain/layout/wording/compareWords'
import { levelWord } from '../../domain/layout/wording/words'
import { MARKS } from '../verdicts'
import type { CompareCell, CompareGroup, CompareRow } from './CompareTable'

/** What both sides of the car have alike stands once: "Left and right shoulder strap". */
const joinedSides = <Item>(
  items: readonly Item[],
  titleOf: (item: Item) => string,
  bodyOf: (item: Item) => unknown,
  retitled: (item: Item, title: string) => Item,
): readonly Item[] => {
  const left = /\b([Ll])eft\b/
  const joined = new Set<Item>()
  return items.flatMap((item) => {
    if (joined.has(item)) return []
    const title = titleOf(item)
    const other = title.replace(left, (_, letter: string) => (letter === 'L' ? 'Right' : 'right'))
    const twin = other === title ? undefined : items.find((each) => titleOf(each) === other)
    if (twin === undefined || JSON.stringify(bodyOf(twin)) !== JSON.stringify(bodyOf(item))) return [item]
    joined.add(twin)
    return [
      retitled(
        item,
        title.replace(left, (word) => `${word} and right`),
      ),
    ]
  })
}

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
  const before = variants[drawn]?.name ?? ''
  return {
    key: `${partKey(part)}/whole`,
    title: 'as a whole',
    cells: part.parts.map((own, index): CompareCell => {
      const difference = found[index]?.find((each) => each.part === part)
      const names = { before, after: variants[index]?.name ?? '' }
      const text = difference === undefined ? null : partDifferenceText(difference, names, unit)
      return {
        text: own === null ? 'not there' : index === drawn ? 'there' : (text ?? 'there'),
        notes: [],
        isOther: text !== null,
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
  return [{ key: 'numbers', title: '', rows: joinedRows(rows) }]
}

/** The findings, what changes most against the drawn variant first. */
export const findingGroups = ({
  variants,
  evaluated,
  drawn,
  onlyDifferences,
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
          const note = turn === null || index === drawn ? null : turnText(turn, base)
          const sign = turn === null || index === drawn ? '' : turnMark(turn)
          const own = evaluated[index]?.layout ?? layout
          const cell = finding === null ? null : findingCell(finding, own)
          return {
            text: cell === null ? 'not asked here' : `${cell.verdict}: ${cell.value}`,
            ...(finding === null ? {} : { mark: MARKS[finding.verdict], verdict: finding.verdict }),
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

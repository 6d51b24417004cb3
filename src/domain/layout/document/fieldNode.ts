/**
 * A part of the layout's description, as far as messages and the JSON Schema need it. A plain view of the schema's own data,
 * so that this file and its users need no package.
 */
export interface FieldNode {
  readonly type: string
  readonly title: string
  readonly description: string
  readonly unit: string
  /** What a text with a pattern must be, in words; empty for the rest. */
  readonly wanted: string
  /** Of a group: its fields by name. */
  readonly entries: Readonly<Record<string, FieldNode>> | null
  /** Of a list: what each item is. */
  readonly item: FieldNode | null
  /** Of a choice between groups: each of them, told apart by its `kind`. */
  readonly options: readonly FieldNode[] | null
  /** Of a choice between values: the allowed ones. */
  readonly values: readonly (string | number)[] | null
  readonly min: number | null
  readonly max: number | null
  readonly pattern: RegExp | null
  readonly nullable: boolean
  readonly optional: boolean
}

interface SchemaData {
  readonly type: string
  readonly pipe?: readonly SchemaData[]
  readonly entries?: Readonly<Record<string, SchemaData>>
  readonly item?: SchemaData
  readonly wrapped?: SchemaData
  readonly options?: readonly (SchemaData | string | number)[]
  readonly literal?: string | number
  readonly requirement?: unknown
  readonly title?: string
  readonly description?: string
  readonly metadata?: { readonly unit?: string; readonly wanted?: string }
}

/** The schema's data as a field; nested fields likewise. */
export const fieldNode = (schema: unknown): FieldNode => {
  const data = schema as SchemaData
  const inner = data.wrapped === undefined ? null : fieldNode(data.wrapped)
  const pipe = data.pipe ?? []
  const step = (...types: readonly string[]) => pipe.find((candidate) => types.includes(candidate.type))
  const bound = (...types: readonly string[]) => (step(...types)?.requirement as number | undefined) ?? null
  const options = data.options ?? []
  const groups = options.filter((option) => typeof option === 'object')
  const values = options.filter((option) => typeof option !== 'object')
  return {
    type: inner?.type ?? data.type,
    title: step('title')?.title ?? inner?.title ?? '',
    description: step('description')?.description ?? inner?.description ?? '',
    unit: step('metadata')?.metadata?.unit ?? inner?.unit ?? '',
    wanted: step('metadata')?.metadata?.wanted ?? inner?.wanted ?? '',
    entries: data.entries === undefined ? (inner?.entries ?? null) : mapped(data.entries),
    item: data.item === undefined ? (inner?.item ?? null) : fieldNode(data.item),
    options: groups.length > 0 ? groups.map(fieldNode) : (inner?.options ?? null),
    values:
      values.length > 0 ? values : data.literal === undefined ? (inner?.values ?? null) : [data.literal],
    min: bound('min_value', 'min_length') ?? inner?.min ?? null,
    max: bound('max_value', 'max_length') ?? inner?.max ?? null,
    pattern: (step('regex')?.requirement as RegExp | undefined) ?? inner?.pattern ?? null,
    nullable: data.type === 'nullable',
    optional: data.type === 'exact_optional',
  }
}

const mapped = (entries: Readonly<Record<string, SchemaData>>): Record<string, FieldNode> =>
  Object.fromEntries(Object.entries(entries).map(([name, entry]) => [name, fieldNode(entry)]))

/** The field one step down the path, or null when the description has none there; `value` chooses between groups. */
export const fieldBelow = (
  field: FieldNode | null,
  key: string | number,
  value: unknown,
): FieldNode | null => {
  if (field === null) return null
  if (field.item !== null) return field.item
  const groups = field.options === null ? [field] : fittingGroups(field.options, value)
  const fields = groups.flatMap((group) => {
    const entries = group.entries ?? {}
    return Object.hasOwn(entries, key) && entries[key] !== undefined ? [entries[key]] : []
  })
  const first = fields[0] ?? null
  // While the kind fits no group, it may become any of theirs.
  return first?.values == null ? first : { ...first, values: fields.flatMap((other) => other.values ?? []) }
}

/** The group whose kind the value names; all of them while it names none. */
const fittingGroups = (options: readonly FieldNode[], value: unknown): readonly FieldNode[] => {
  const kind = typeof value === 'object' && value !== null && 'kind' in value ? value.kind : undefined
  const fitting = options.filter((option) => option.entries?.['kind']?.values?.includes(kind as string))
  return fitting.length > 0 ? fitting : options
}

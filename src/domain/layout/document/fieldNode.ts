/**
 * A part of the layout's description, as far as messages and the JSON Schema need it. A plain view of the schema's own data,
 * so that this file and its users need no package.
 */
export interface FieldNode {
  readonly type: string
  readonly title: string
  readonly description: string
  readonly unit: string
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
  readonly metadata?: { readonly unit?: string }
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
  const group = field.options === null ? field : chosenGroup(field.options, value)
  if (group?.entries == null || !Object.hasOwn(group.entries, key)) return null
  return group.entries[key] ?? null
}

const chosenGroup = (options: readonly FieldNode[], value: unknown): FieldNode | null => {
  const kind = typeof value === 'object' && value !== null ? (value as { kind?: unknown }).kind : undefined
  const fitting = options.find((option) => option.entries?.['kind']?.values?.includes(kind as string))
  return fitting ?? options[0] ?? null
}

import { fieldNode, type FieldNode } from './fieldNode'
import { LAYOUT_FIELDS } from './schema'

/** A JSON Schema or a part of one. */
export type JsonSchema = Readonly<Record<string, unknown>>

/**
 * The published description of a layout file, made from the one that files are read by.
 * Source of the keywords: JSON Schema, draft 2020-12.
 */
export const layoutJsonSchema = (): JsonSchema => ({
  $schema: 'https://json-schema.org/draft/2020-12/schema',
  title: 'Tabwright layout, version 1',
  $comment:
    'What one field cannot show is checked on reading too: ids are unique, named tubes and rule sets exist, wraps lie on their tube, the recline is inside its range, no strap has two anchors or two slots, a wall is at most half of its outside diameter, a belt says nothing of straps its arrangement does not have, an adjuster lies wholly on its strap, a clevis is in double and an insert in single shear, only a clevis has a gap and an insert no edge distance, an as-welded record names each anchor once and is signed by somebody, a struck entry of a belt is an earlier one of its own, corrections lead to what the record says, an answer of the customer is to a variant shown before it, the crosses of a photo lie on its picture, variants have names of their own and each is sound with the rest of the layout.',
  ...withoutTitle(part(fieldNode(LAYOUT_FIELDS))),
})

const withoutTitle = ({ title: _title, ...rest }: Record<string, unknown>): JsonSchema => rest

const part = (field: FieldNode): Record<string, unknown> => {
  const plain = { ...words(field), ...constraints(field) }
  if (!field.nullable) return plain
  return { ...words(field), anyOf: [constraints(field), { type: 'null' }] }
}

const words = (field: FieldNode): Record<string, unknown> => {
  const meaning = field.description === '' ? sentence(field.wanted) : field.description
  const description = [meaning, unitWords(field)].filter((text) => text !== '').join(' ')
  return {
    ...(field.title === '' ? {} : { title: field.title }),
    ...(description === '' ? {} : { description }),
  }
}

const sentence = (text: string): string =>
  text === '' ? '' : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`

const unitWords = (field: FieldNode): string => (field.unit === '' ? '' : `Unit: ${field.unit}.`)

const constraints = (field: FieldNode): Record<string, unknown> => {
  if (field.options !== null) return { oneOf: field.options.map(part) }
  if (field.values !== null) {
    return field.values.length === 1 ? { const: field.values[0] } : { enum: field.values }
  }
  switch (field.type) {
    case 'strict_object':
      return group(field.entries ?? {})
    case 'array':
      return {
        type: 'array',
        items: field.item === null ? {} : part(field.item),
        ...bounds(field, 'minItems', 'maxItems'),
      }
    case 'number':
      return { type: 'number', ...bounds(field, 'minimum', 'maximum') }
    case 'string':
      return {
        type: 'string',
        ...bounds(field, 'minLength', 'maxLength'),
        ...(field.pattern === null ? {} : { pattern: field.pattern.source }),
      }
    case 'boolean':
      return { type: 'boolean' }
    default:
      throw new TypeError(`the layout description holds a ${field.type}, which has no JSON Schema here`)
  }
}

const bounds = (field: FieldNode, min: string, max: string): Record<string, unknown> => ({
  ...(field.min === null ? {} : { [min]: field.min }),
  ...(field.max === null ? {} : { [max]: field.max }),
})

const group = (entries: Readonly<Record<string, FieldNode>>): Record<string, unknown> => ({
  type: 'object',
  properties: Object.fromEntries(Object.entries(entries).map(([name, entry]) => [name, part(entry)])),
  required: Object.entries(entries)
    .filter(([, entry]) => !entry.optional)
    .map(([name]) => name),
  additionalProperties: false,
})

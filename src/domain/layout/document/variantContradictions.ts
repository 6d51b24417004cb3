import { builtContradictions } from './builtContradictions'
import type { Contradiction } from './contradiction'
import type { Layout, Variants } from './layout'

/** Where the variants of a layout do not agree with each other, or one of them does not with itself. */
export const variantContradictions = ({ variants }: Layout): readonly Contradiction[] =>
  variants === undefined
    ? []
    : [
        ...indexContradictions(variants),
        ...labelContradictions(variants),
        ...variants.others.flatMap((variant, index) =>
          builtContradictions(variant, ['variants', 'others', index]),
        ),
      ]

const indexContradictions = ({ drawn, others }: Variants): readonly Contradiction[] => {
  if (Number.isInteger(drawn.index) && drawn.index <= others.length) return []
  const says = `${drawn.index} is no place in a row of ${others.length + 1}`
  const remedy = `Put a whole number from 0 to ${others.length} there.`
  return [{ path: ['variants', 'drawn', 'index'], received: drawn.index, says, remedy }]
}

/** People name a variant by its name, on paper too: a capital or a blank does not tell two apart. */
export const sameVariantName = (a: string, b: string): boolean => plainName(a) === plainName(b)

const plainName = (name: string): string => name.trim().replace(/\s+/g, ' ').toLowerCase()

const labelContradictions = ({ drawn, others }: Variants): readonly Contradiction[] => {
  const labels = [
    { ...drawn, path: ['variants', 'drawn'], words: 'the drawn variant' },
    ...others.map((variant, index) => ({
      ...variant,
      path: ['variants', 'others', index],
      words: `variant ${index + 1} of the others`,
    })),
  ]
  return labels.flatMap(({ id, name, path }, index) => {
    const before = labels.slice(0, index)
    const idTwin = before.find((other) => other.id === id)
    const nameTwin = before.find((other) => sameVariantName(other.name, name))
    const nameSays =
      name.trim() === ''
        ? 'it is empty'
        : nameTwin === undefined
          ? null
          : `${nameTwin.words} is called "${nameTwin.name}" already`
    return [
      ...(idTwin === undefined
        ? []
        : [
            {
              path: [...path, 'id'],
              received: id,
              says: `the id "${id}" is already used by ${idTwin.words}`,
              remedy: 'Give each its own id.',
            },
          ]),
      ...(nameSays === null
        ? []
        : [{ path: [...path, 'name'], received: name, says: nameSays, remedy: 'Give each its own name.' }]),
    ]
  })
}

import type { KeptLayout } from '../../state/keeping/shelf'

/** What a kept layout is called and found by, read without checking the rest of it, which takes longer. */
export interface KeptJob {
  readonly name: string
  readonly car: string
  readonly customer: string
  readonly notes: string
  readonly places: readonly string[]
}

type Fields = Readonly<Record<string, unknown>>

const fieldsOf = (value: unknown): Fields =>
  typeof value === 'object' && value !== null ? (value as Fields) : {}

const wordsIn = (fields: Fields, name: string): string => {
  const value = fields[name]
  return typeof value === 'string' ? value : ''
}

const jsonIn = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}

/** Read from the text; where that is damaged only the name is known that was noted beside it. */
export const jobOf = ({ text, jobName }: KeptLayout): KeptJob => {
  const layout = fieldsOf(jsonIn(text))
  const job = fieldsOf(layout['job'])
  const places = Array.isArray(layout['places']) ? layout['places'] : []
  return {
    name: wordsIn(job, 'name') || jobName,
    car: wordsIn(job, 'car'),
    customer: wordsIn(job, 'customer'),
    notes: wordsIn(job, 'notes'),
    places: places.map((place) => wordsIn(fieldsOf(place), 'name')).filter((name) => name !== ''),
  }
}

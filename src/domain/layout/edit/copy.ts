import { TEXT_LENGTHS } from '../document/limits'
import type { Layout } from '../document/layout'

const MARK = ', copy'

const copyName = (name: string): string =>
  name === '' ? 'Copy' : `${name.slice(0, TEXT_LENGTHS.name - MARK.length)}${MARK}`

/**
 * The same layout as a job of its own, to be called otherwise. Its belts get ids of their own (`newBeltId`, never the same twice): the
 * events of a calendar bear them, and those of one car must not replace those of another. Everything else is as it was.
 */
export const layoutCopy = (layout: Layout, newBeltId: () => string): Layout => ({
  ...layout,
  job: { ...layout.job, name: copyName(layout.job.name) },
  ...(layout.belts === undefined
    ? {}
    : { belts: layout.belts.map((belt) => ({ ...belt, id: newBeltId() })) }),
})

import { shownById } from '../../domain/layout/agreement/agreement'
import { parseLayoutText } from '../../domain/layout/document/parseLayout'

/** A kept layout that something was shown from. */
export interface ShownFrom {
  readonly id: string
  readonly jobName: string
  readonly isOpenHere: boolean
}

interface KeptText extends ShownFrom {
  readonly text: string
  /** Not null: it lies in the bin. */
  readonly removedAtMs: number | null
}

/** The kept layouts that have this entry of what was shown, in the order they came. Copies of a layout have it too. */
export const layoutsShown = (kept: readonly KeptText[], shownId: string): readonly ShownFrom[] =>
  kept
    .filter(({ text, removedAtMs }) => {
      if (removedAtMs !== null) return false
      // Reading a layout whole takes a while; one that never names the id cannot have the entry.
      if (!text.includes(shownId)) return false
      const parsed = parseLayoutText(text)
      return parsed.ok && shownById(parsed.value, shownId) !== null
    })
    .map(({ id, jobName, isOpenHere }) => ({ id, jobName, isOpenHere }))

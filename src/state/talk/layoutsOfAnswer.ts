import { shownById } from '../../domain/layout/agreement/agreement'
import { holdsShown } from '../../domain/layout/agreement/fingerprint'
import type { Layout } from '../../domain/layout/document/layout'
import { parseLayoutText } from '../../domain/layout/document/parseLayout'
import type { ShownEntry } from '../../domain/layout/document/review'

/** A kept layout that something was shown from. */
export interface ShownFrom {
  readonly id: string
  readonly jobName: string
  readonly isOpenHere: boolean
  /** Another tab is working on it; opened here it would be a copy. */
  readonly isOpenElsewhere: boolean
}

interface KeptText extends ShownFrom {
  readonly text: string
  /** Not null: it lies in the bin. */
  readonly removedAtMs: number | null
}

const layoutsWhere = (
  kept: readonly KeptText[],
  isMeant: (layout: Layout) => boolean,
): readonly ShownFrom[] =>
  kept
    .filter(({ text }) => {
      const parsed = parseLayoutText(text)
      return parsed.ok && isMeant(parsed.value)
    })
    .map(({ id, jobName, isOpenHere, isOpenElsewhere }) => ({ id, jobName, isOpenHere, isOpenElsewhere }))

/**
 * The kept layouts that have the entry of what was shown, in the order they came; copies of a layout have it too. Where none has,
 * because it was undone or the layout was taken from elsewhere, those that hold the drawing that was shown.
 */
export const layoutsShown = (kept: readonly KeptText[], shown: ShownEntry): readonly ShownFrom[] => {
  const present = kept.filter(({ removedAtMs }) => removedAtMs === null)
  // Reading a layout whole takes a while; one that never names the id cannot have the entry.
  const naming = present.filter(({ text }) => text.includes(shown.id))
  const recorded = layoutsWhere(naming, (layout) => shownById(layout, shown.id) !== null)
  return recorded.length > 0 ? recorded : layoutsWhere(present, (layout) => holdsShown(layout, shown))
}

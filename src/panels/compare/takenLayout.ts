import type { Layout } from '../../domain/layout/document/layout'
import { TEXT_LENGTHS } from '../../domain/layout/document/limits'
import { parseLayoutText } from '../../domain/layout/document/parseLayout'
import {
  freeVariantName,
  isFreeVariantName,
  MOST_VARIANTS,
  variantsOf,
  withVariantAdded,
} from '../../domain/layout/edit/changeVariants'
import { readOrSaid } from '../../state/pickedFile'
import type { AppStore } from '../../state/store'

/** The longest name of its job or drawn variant that is free, else the next letter. */
const takenName = (layout: Layout, other: Layout): string | undefined => {
  const named = layout.variants === undefined ? withVariantAdded(layout) : layout
  const name = (other.variants?.drawn.name ?? other.job.name).trim().slice(0, TEXT_LENGTHS.name)
  return isFreeVariantName(named, name, '') && name !== freeVariantName(layout) ? name : undefined
}

const datumWords = ({ datum }: Layout): string =>
  datum.trim() === '' ? 'not described' : `“${datum.trim()}”`

/** What whoever takes positions over from another layout has to know: nothing is converted. */
const takenDetails = (layout: Layout, other: Layout): readonly string[] => [
  `Its positions are taken as they are, from its own datum (${datumWords(other)}). They hold only if that is the same point of the car as the datum here (${datumWords(layout)}).`,
  ...(other.variants === undefined
    ? []
    : [`That layout has ${variantsOf(other).length} variants; the one that is drawn there was taken.`]),
  ...(other.ruleSetId === layout.ruleSetId ? [] : ['It is checked against the rule set of this layout.']),
]

/** Takes the tubes and places of the text of another layout as one more variant, drawn; false when that could not be. */
export const takeVariantFrom = (store: AppStore, text: string, name: string): boolean => {
  const other = readOrSaid(store, parseLayoutText(text), `${name} cannot be taken`)
  if (other === null) return false
  const { layout } = store.state.getState()
  if (variantsOf(layout).length >= MOST_VARIANTS) {
    store.actions.notify('problem', `A layout holds at most ${MOST_VARIANTS} variants. Remove one first.`)
    return false
  }
  const called = takenName(layout, other)
  store.actions.edit(`Take a variant from ${name}`, (now) => withVariantAdded(now, called, other))
  const after = store.state.getState().layout
  if (after === layout) return false
  store.actions.notify(
    'info',
    `${after.variants?.drawn.name ?? ''} is taken from ${name} and drawn now.`,
    takenDetails(layout, other),
  )
  return true
}

import type { MoveDirection, ShownVerdict } from '../../rules/finding'
import type { RuleLevel, SourceStatus } from '../../rules/rule'

/** A verdict as one lower-case word; `kept` while it is not known by how much. */
export const verdictWord = (verdict: ShownVerdict): string => {
  switch (verdict) {
    case 'broken':
      return 'broken'
    case 'unchecked':
      return 'unchecked'
    case 'tight':
      return 'tight'
    case 'kept':
      return 'kept'
    case 'clear':
      return 'clear'
  }
}

/** A rule's level as one lower-case word. */
export const levelWord = (level: RuleLevel): string => {
  switch (level) {
    case 'must':
      return 'must'
    case 'should':
      return 'should'
    case 'advice':
      return 'advice'
  }
}

/** How a figure reached us, in words that stand beside it on every output. */
export const statusWord = (status: SourceStatus): string => {
  switch (status) {
    case 'read':
      return 'read in the document'
    case 'second-hand':
      return 'quoted second-hand'
    case 'memory':
      return 'from memory'
    case 'own':
      return 'a limit of your own'
    case 'judgement':
      return 'our judgement, no source'
    case 'common-practice':
      return 'common practice, no source'
  }
}

/** A direction of a move as a welder says it; inward and outward are toward and away from the seat's centre line. */
export const directionWord = (direction: MoveDirection): string => {
  switch (direction) {
    case 'up':
      return 'up'
    case 'down':
      return 'down'
    case 'forward':
      return 'forward'
    case 'rearward':
      return 'rearward'
    case 'inward':
      return 'inward'
    case 'outward':
      return 'outward'
  }
}

/** The text with a capital first letter, for the start of a sentence. */
export const capitalised = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`

import type { ReactElement } from 'react'
import { withHandChanges } from '../../domain/layout/firstLayout/answer'
import type { Answer, Ask, Question } from '../../domain/layout/firstLayout/question'
import { unmeasured } from '../../state/firstLayout/guide'
import { ChoiceField, SwitchField } from '../fields/ChoiceField'
import { ANGLE_FORMAT, lengthFormat, massFormat } from '../fields/formats'
import { NumberField, type NumberFormat } from '../fields/NumberField'
import { TextField } from '../fields/TextField'
import type { GuideView } from './useGuide'

interface AskProps {
  readonly view: GuideView
  readonly question: Question
  readonly ask: Ask
}

/** What nobody has measured on this car yet, in a fresh layout and in one that was begun from another. */
const UNMEASURED = { fresh: 'Start value.', takenOver: 'Taken over, not measured here.' }

/** Nobody has typed it or moved it: a start value. Words have none worth naming. */
export const isAtStart = ({ guide, layout }: GuideView, ask: Ask): boolean =>
  withHandChanges({ layout, progress: guide.progress }).answers[ask.id] === undefined

const formatOf = (kind: 'length' | 'angle' | 'mass', { layout }: GuideView): NumberFormat => {
  switch (kind) {
    case 'length':
      return lengthFormat(layout.units.length)
    case 'angle':
      return ANGLE_FORMAT
    case 'mass':
      return massFormat(layout.units.mass)
  }
}

/** The field of one ask; every commit is one answer and one undo step, and a number is drawn while it is typed. */
export const AskField = ({ view, question, ask }: AskProps): ReactElement | null => {
  const { keeper, layout } = view
  const { entry, letter } = ask
  const value = ask.read(layout)
  const isUnmeasured = unmeasured(view.guide, layout, question).some(({ id }) => id === ask.id)
  const words = letter === undefined ? ask.words : `${letter}  ${ask.words}`
  const step = `${question.title} ${ask.words}`
  const answer = (given: Answer): void => keeper.answer(step, ask.id, given)
  switch (entry.kind) {
    case 'kept':
      return null
    case 'text':
      return (
        <TextField
          label={words}
          value={String(value)}
          kind={entry.isLong ? 'lines' : 'line'}
          maxLength={entry.maxLength}
          onCommit={answer}
        />
      )
    case 'choice': {
      const Field = entry.isList ? ChoiceField : SwitchField
      return <Field label={words} value={String(value)} choices={entry.choices} onChange={answer} />
    }
    case 'length':
    case 'angle':
    case 'mass':
      return (
        <NumberField
          label={words}
          value={Number(value)}
          format={formatOf(entry.kind, view)}
          limits={entry.limits}
          hint={
            [
              ...(isUnmeasured
                ? [UNMEASURED[view.guide.progress.begun.isFresh ? 'fresh' : 'takenOver']]
                : []),
              ask.hint ?? '',
            ]
              .join(' ')
              .trim() || undefined
          }
          name={ask.id}
          onCommit={answer}
          onDraft={(draft) => keeper.preview(step, ask.id, draft)}
        />
      )
  }
}

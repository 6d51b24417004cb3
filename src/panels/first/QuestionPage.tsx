import { Fragment, type ReactElement, useMemo } from 'react'
import type { QuestionFigure } from '../../domain/layout/firstLayout/figure/figure'
import type { Ask, Question } from '../../domain/layout/firstLayout/question'
import { addOccupant, removeOccupant } from '../../domain/layout/edit/change'
import { COUNTS } from '../../domain/layout/document/limits'
import { askedPlace } from '../../domain/layout/firstLayout/askedPlace'
import { questionStatus, unmeasured } from '../../state/firstLayout/guide'
import { useApp } from '../../state/react'
import { FigureSvg } from '../figure/FigureSvg'
import { AskField, isAtStart } from './AskField'
import type { GuideView } from './useGuide'

interface PageProps {
  readonly view: GuideView
  readonly question: Question
}

/** Where the tape goes, on the layout as it is being typed. */
const Figure = ({ figure }: { readonly figure: QuestionFigure }): ReactElement => (
  <figure className="question-figure">
    <FigureSvg figure={figure} description={figure.description} />
    <figcaption>{figure.caption}</figcaption>
  </figure>
)

const useFigures = (question: Question): readonly QuestionFigure[] => {
  const layout = useApp((state) => state.layout)
  return useMemo(() => question.figures(layout), [question, layout])
}

/** One more person, or the last one less: the smallest and the largest who will sit there. */
const PeopleButtons = ({ view }: { readonly view: GuideView }): ReactElement => {
  const { keeper, layout } = view
  const { id, occupants } = askedPlace(layout)
  const last = occupants.at(-1)
  return (
    <div className="button-row">
      <button
        type="button"
        disabled={occupants.length >= COUNTS.occupants.max}
        onClick={() => keeper.change('Add a person', (now) => addOccupant(now, id))}
      >
        Add a person
      </button>
      {occupants.length < 2 || last === undefined ? null : (
        <button
          type="button"
          onClick={() => keeper.change(`Remove ${last.name}`, (now) => removeOccupant(now, id, last.id))}
        >
          Remove {last.name === '' ? 'the last person' : last.name}
        </button>
      )}
    </div>
  )
}

const PersonFields = ({ view, question }: PageProps): ReactElement => {
  const { layout, guide } = view
  const { occupants } = askedPlace(layout)
  const asks = question.asks(layout, guide.progress.begun)
  const figures = useFigures(question)
  return (
    <>
      {figures.map((figure) => (
        <Figure key={figure.caption} figure={figure} />
      ))}
      {occupants.map(({ id, name }, index) => (
        <fieldset key={id} className="question-person">
          <legend>{name === '' ? `Person ${index + 1}` : name}</legend>
          {asks
            .filter((ask) => ask.id.startsWith(`people.${id}.`))
            .map((ask) => (
              <AskField key={ask.id} view={view} question={question} ask={ask} />
            ))}
        </fieldset>
      ))}
      <PeopleButtons view={view} />
      {asks
        .filter((ask) => occupants.every(({ id }) => !ask.id.startsWith(`people.${id}.`)))
        .map((ask) => (
          <AskField key={ask.id} view={view} question={question} ask={ask} />
        ))}
    </>
  )
}

/** What a drawing asks for, in the order of its letters. */
const lettered = (asks: readonly Ask[], { letters }: QuestionFigure): readonly Ask[] =>
  asks
    .filter(({ letter }) => letter !== undefined && letters.includes(letter))
    .toSorted((a, b) => (a.letter ?? '').localeCompare(b.letter ?? ''))

/** What belongs to no drawing first, then each drawing with what it asks for, then what comes of the answers. */
const PlainFields = ({ view, question }: PageProps): ReactElement => {
  const figures = useFigures(question)
  const asks = question.asks(view.layout, view.guide.progress.begun)
  const isDrawn = ({ letter }: Ask): boolean =>
    letter !== undefined && figures.some(({ letters }) => letters.includes(letter))
  const first = asks.findIndex(isDrawn)
  const before = first === -1 ? asks : asks.slice(0, first)
  const fields = (some: readonly Ask[]): readonly ReactElement[] =>
    some.map((ask) => <AskField key={ask.id} view={view} question={question} ask={ask} />)
  return (
    <>
      {fields(before.filter((ask) => ask.entry.kind === 'choice' || first !== -1))}
      {figures.map((figure) => (
        <Fragment key={figure.caption}>
          <Figure figure={figure} />
          {fields(lettered(asks, figure))}
        </Fragment>
      ))}
      {fields(
        first === -1
          ? asks.filter(({ entry }) => entry.kind !== 'choice')
          : asks.slice(first).filter((ask) => !isDrawn(ask)),
      )}
    </>
  )
}

/** How the question stands, and the way to say that a starting value happens to be right. */
const StatusLine = ({ view, question }: PageProps): ReactElement => {
  const { keeper, guide, layout } = view
  const status = questionStatus(guide, layout, question)
  const left = unmeasured(guide, layout, question)
  const lines = guide.progress.begun.isFresh ? STATUS_LINES : TAKEN_OVER_LINES
  return (
    <div className="question-status" data-status={status}>
      <p>{left.length === 0 && status === 'answered' ? 'Answered.' : lines[status]}</p>
      {left.length === 0 ? null : (
        <button
          type="button"
          className="link"
          onClick={() => keeper.confirm(`Measured: ${question.title}`, question.id)}
        >
          I measured: they are right as shown
        </button>
      )}
    </div>
  )
}

const STATUS_LINES = {
  open: 'What is shown here is a starting value: somewhere to begin, not advice.',
  skipped: 'Skipped: the starting value is kept. It is not measured.',
  answered: 'Answered. What says “Start value” is not measured yet.',
} as const

const TAKEN_OVER_LINES = {
  open: 'What is shown here is as it was when the questions began. Measure it on this car.',
  skipped: 'Skipped: it is kept as it was. It is not measured on this car.',
  answered: 'Answered. What says “Taken over” is not measured on this car yet.',
} as const

/** What is asked, how it is measured, and the fields. */
export const QuestionPage = ({ view, question }: PageProps): ReactElement => {
  const { keeper, guide, layout } = view
  const asks = question.asks(layout, guide.progress.begun)
  const answered = asks.filter((ask) => ask.entry.kind !== 'kept' && !isAtStart(view, ask))
  const Fields = question.id === 'people' ? PersonFields : PlainFields
  return (
    <>
      <p className="question-how">{question.how}</p>
      <div className="question-fields">
        <Fields view={view} question={question} />
      </div>
      <StatusLine view={view} question={question} />
      {answered.length === 0 ? null : (
        <button
          type="button"
          className="link"
          onClick={() => keeper.restart(`${question.title} Back to the starting values`, question.id)}
        >
          Back to the starting values
        </button>
      )}
    </>
  )
}

import { Fragment, type ReactElement, useMemo, useState } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import type { PlainFinding } from '../../domain/layout/wording/plainFinding'
import { type PlainPart, plainParts } from '../../domain/layout/wording/plainNames'
import { findingsOfPart } from '../../domain/layout/wording/plainPartFindings'
import { capitalised } from '../../domain/layout/wording/words'
import { Term } from '../help/Term'
import { CarPicture, type Pin } from './CarPicture'
import { CommentForm } from './CommentForm'
import type { Conversation } from './conversation'
import { findingAnchor, GroupMark } from './PlainFindingCard'

interface PartsProps {
  readonly layout: Layout
  readonly variantId: string
  readonly plain: readonly PlainFinding[]
  readonly talk: Conversation
  /** What was said of this variant, numbered as in the list of comments. */
  readonly pins: readonly Pin[]
}

/** Goes to a finding and lets those who hear the page hear it. */
const goTo = (id: string): void => {
  const card = document.getElementById(findingAnchor(id))
  card?.closest('details')?.setAttribute('open', '')
  card?.scrollIntoView({ block: 'start' })
  card?.focus({ preventScroll: true })
}

/** What is not as it should be one by one; what is, as a count. */
const PartFindings = (props: { readonly findings: readonly PlainFinding[] }): ReactElement => {
  const worth = props.findings.filter(({ group }) => group !== 'within')
  const fine = props.findings.length - worth.length
  return (
    <>
      <ul className="plain-cases">
        {worth.map(({ id, group, topic, fact }) => (
          <li key={id}>
            <GroupMark group={group} />{' '}
            <button type="button" className="link" onClick={() => goTo(id)}>
              {topic}
            </button>
            : {fact}
          </li>
        ))}
      </ul>
      <p className="hint">
        {fine === 0
          ? 'Nothing else about it was checked.'
          : `${fine === 1 ? '1 thing' : `${fine} things`} about it ${fine === 1 ? 'is' : 'are'} as asked for.`}
      </p>
    </>
  )
}

/** What the workshop calls it, so that both can talk about it; each word with its drawing. */
const TradeWords = (props: { readonly part: PlainPart }): ReactElement | null =>
  props.part.terms.length === 0 ? null : (
    <p>
      In the words of the workshop:{' '}
      {props.part.terms.map((id) => (
        <Fragment key={id}>
          <Term id={id} shows="word" />{' '}
        </Fragment>
      ))}
    </p>
  )

const PartCard = (props: PartsProps & { readonly part: PlainPart }): ReactElement => {
  const { part, plain, layout, talk, variantId } = props
  const title = capitalised(part.name)
  return (
    <section className="part-card" aria-label={title}>
      <h4>{title}</h4>
      <p>{part.about}</p>
      <TradeWords part={part} />
      <PartFindings findings={findingsOfPart(plain, part.partId, layout)} />
      {talk.shown === null ? null : (
        <CommentForm
          key={part.partId}
          talk={talk}
          variantId={variantId}
          partId={part.partId}
          about={part.name}
        />
      )}
    </section>
  )
}

const PartList = (props: {
  readonly parts: readonly PlainPart[]
  readonly pins: readonly Pin[]
  readonly chosen: string | null
  readonly onChoose: (partId: string) => void
}): ReactElement => (
  <ul className="part-list" aria-label="Parts of the car">
    {props.parts.map(({ partId, name }) => {
      const count = props.pins.filter((pin) => pin.partId === partId).length
      const noted = count === 0 ? '' : ` (${count === 1 ? '1 comment' : `${count} comments`})`
      return (
        <li key={partId}>
          <button type="button" aria-pressed={partId === props.chosen} onClick={() => props.onChoose(partId)}>
            {capitalised(name)}
            {noted}
          </button>
        </li>
      )
    })}
  </ul>
)

/** The car from the side and from above; a part tapped there, or chosen in the list, says what it is and takes a question. */
export const PartsOfCar = (props: PartsProps): ReactElement => {
  const { layout, pins } = props
  const parts = useMemo(() => plainParts(layout), [layout])
  const [chosen, setChosen] = useState<string | null>(null)
  const part = parts.find(({ partId }) => partId === chosen)
  const picture = { layout, parts, pins, chosen, onChoose: setChosen }
  return (
    <div className="parts-of-car">
      <div className="car-pictures">
        <CarPicture {...picture} elevation="side" />
        <CarPicture {...picture} elevation="top" />
      </div>
      <div className="parts-beside">
        <p className="hint">
          Tap a part in the picture, or choose it here, to see what it is and to ask about it.
        </p>
        {/* Said aloud when a part is chosen in the picture. */}
        <div aria-live="polite">{part === undefined ? null : <PartCard {...props} part={part} />}</div>
      </div>
      <details className="part-choice">
        <summary>All parts ({parts.length})</summary>
        <PartList parts={parts} pins={pins} chosen={chosen} onChoose={setChosen} />
      </details>
    </div>
  )
}

import { type ReactElement, type ReactNode, useId, useMemo, useState } from 'react'
import type { Layout } from '../../domain/layout/document/layout'
import type { VariantLayout } from '../../domain/layout/edit/changeVariants'
import { notMeasuredTitles } from '../../domain/layout/firstLayout/notMeasured'
import { CAUTIONS } from '../../domain/layout/wording/cautions'
import { plainFindings } from '../../domain/layout/wording/plainFinding'
import { plainQuestions } from '../../domain/layout/wording/plainQuestions'
import { placeName } from '../../domain/layout/wording/names'
import { lengthWithUnit } from '../../domain/units/length'
import { massWithUnit } from '../../domain/units/mass'
import type { Pin } from './CarPicture'
import { Comments } from './Comments'
import type { Conversation } from './conversation'
import { Decide } from './Decide'
import { PartsOfCar } from './PartsOfCar'
import { PlainFindings, PlainQuestions } from './PlainFindings'
import { useEvaluated } from './useEvaluated'
import { VariantChoice } from './VariantChoice'

const Section = (props: { readonly title: string; readonly children: ReactNode }): ReactElement => {
  const id = useId()
  return (
    <section className="customer-section" aria-labelledby={id}>
      <h2 id={id}>{props.title}</h2>
      {props.children}
    </section>
  )
}

/** Who the drawing is for; where somebody is missing or was measured otherwise, they can say so before anything is welded. */
const People = (props: { readonly layout: Layout }): ReactElement => {
  const { layout } = props
  const { length, mass } = layout.units
  return (
    <>
      {layout.places.map((place) => (
        <div key={place.id}>
          <h3>{placeName(place.id, layout)}</h3>
          <ul className="plain-cases">
            {place.occupants.map(({ id, name, statureMm, massKg }, index) => (
              <li key={id}>
                {name.trim() === '' ? `Person ${index + 1}` : name}: {lengthWithUnit(statureMm, length)} tall,{' '}
                {massWithUnit(massKg, mass)}
              </li>
            ))}
          </ul>
        </div>
      ))}
      <p className="hint">
        Everything below is worked out for these people and for every position of the seat. Somebody else who
        sits there has to be added and checked.
      </p>
    </>
  )
}

/** What was said of one variant with the numbers it has in the whole list. */
const pinsOf = (talk: Conversation, variantId: string): readonly Pin[] =>
  talk.said.flatMap((entry, index) =>
    entry.kind === 'comment' && entry.variantId === variantId && entry.partId !== ''
      ? [{ partId: entry.partId, number: index + 1 }]
      : [],
  )

const OneVariant = (props: {
  readonly talk: Conversation
  readonly variant: VariantLayout
}): ReactElement => {
  const { talk, variant } = props
  const { layout } = variant
  const evaluation = useEvaluated(layout)
  const plain = useMemo(
    () =>
      plainFindings(
        evaluation.places.flatMap(({ findings }) => findings),
        layout,
      ),
    [evaluation, layout],
  )
  const missing = useMemo(() => notMeasuredTitles(layout), [layout])
  const questions = useMemo(() => plainQuestions(evaluation.ruleSet.rules), [evaluation.ruleSet])
  return (
    <>
      <Section title="The car">
        <PartsOfCar
          layout={layout}
          variantId={variant.id}
          plain={plain}
          talk={talk}
          pins={pinsOf(talk, variant.id)}
        />
      </Section>
      <Section title="Who sits there">
        <People layout={layout} />
      </Section>
      <Section title="What was found">
        {missing.length === 0 ? null : (
          <p role="note">
            <strong>The workshop has not measured everything yet.</strong> What is said here rests in part on
            starting values. Still to be measured or chosen: {missing.join(' ')}
          </p>
        )}
        <p className="hint">
          Checked against “{evaluation.ruleSet.name}”, {evaluation.ruleSet.edition}.{' '}
          {evaluation.ruleSet.about}
        </p>
        <PlainFindings plain={plain} layout={layout} evaluation={evaluation} />
      </Section>
      {questions.length === 0 ? null : (
        <Section title="What no drawing can show: ask about it">
          <PlainQuestions questions={questions} />
        </Section>
      )}
      <Section title="Questions and remarks">
        <Comments talk={talk} variantId={variant.id} />
      </Section>
      <Section title="Your decision">
        <Decide talk={talk} variant={variant} plain={plain} />
      </Section>
    </>
  )
}

const Cautions = (): ReactElement => (
  <Section title="What this is not">
    <ul className="plain-cases">
      {CAUTIONS.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  </Section>
)

/** A proposal in plain words, to look at, talk over and decide; the same on the builder's tablet and on the customer's own device. */
export const CustomerView = (props: {
  readonly talk: Conversation
  /** The variant that is looked at first. */
  readonly firstId: string
  readonly children?: ReactNode
}): ReactElement => {
  const { talk } = props
  const [chosenId, setChosenId] = useState(props.firstId)
  const variant = talk.variants.find(({ id }) => id === chosenId) ?? talk.variants[0]
  if (variant === undefined) throw new Error('a layout has at least one variant')
  return (
    <div className="customer-view">
      <Section title="What this is">
        <p>
          The workshop plans where the belts of your car are fixed, before anything is welded. Here you see
          the plan, what was checked about it, and what that means for whoever sits there. Ask whatever you
          like, at any part; then agree, or ask for a change.
        </p>
      </Section>
      {talk.variants.length < 2 ? null : (
        <Section title="Ways to build it">
          <VariantChoice variants={talk.variants} chosenId={variant.id} onChoose={setChosenId} />
        </Section>
      )}
      <OneVariant key={variant.id} talk={talk} variant={variant} />
      {props.children}
      <Cautions />
    </div>
  )
}

import { type ReactElement, useState } from 'react'
import { fingerprintCode, layoutFingerprint } from '../../domain/layout/agreement/fingerprint'
import { COUNTS } from '../../domain/layout/document/limits'
import type { DecisionEntry } from '../../domain/layout/document/review'
import type { VariantLayout } from '../../domain/layout/edit/changeVariants'
import { AGREED_TO_WHAT } from '../../domain/layout/wording/agreementText'
import type { PlainFinding } from '../../domain/layout/wording/plainFinding'
import { today } from '../../state/today'
import type { Conversation } from './conversation'
import { ReasonedButton, TalkName, TalkText } from './TalkFields'

interface DecideProps {
  readonly talk: Conversation
  readonly variant: VariantLayout
  readonly plain: readonly PlainFinding[]
}

type Kind = DecisionEntry['kind']

const isOrderedAndBroken = ({ group, level }: PlainFinding): boolean =>
  group === 'outside' && level === 'must'

const Warning = (props: { readonly plain: readonly PlainFinding[] }): ReactElement | null => {
  const broken = props.plain.filter(isOrderedAndBroken)
  if (broken.length === 0) return null
  return (
    <div className="caution" role="note">
      <p>
        <b>
          {broken.length === 1
            ? 'One thing that a rule book orders is'
            : `${broken.length} things that a rule book orders are`}{' '}
          not as ordered:
        </b>
      </p>
      <ul className="plain-cases">
        {broken.map(({ id, fact, means }) => (
          <li key={id}>
            {fact} {means}
          </li>
        ))}
      </ul>
      <p>You may agree all the same. It will be recorded that this was shown to you.</p>
    </div>
  )
}

/** What is agreed to, by the name of the variant and by the code that stands on the papers. */
const Statement = (props: { readonly variant: VariantLayout }): ReactElement => {
  const { name, layout } = props.variant
  return (
    <>
      <p>{AGREED_TO_WHAT}</p>
      <p>
        {name === '' ? 'This drawing' : `“${name}”`} has the code{' '}
        <b className="agreement-code">{fingerprintCode(layoutFingerprint(layout))}</b>; it stands on the
        papers too and changes with the drawing.
      </p>
    </>
  )
}

/** The second step: who, and for a change what; only then is it recorded. */
const DecisionForm = (
  props: DecideProps & { readonly kind: Kind; readonly onDone: () => void },
): ReactElement => {
  const { talk, variant, plain, kind, onDone } = props
  const isAgreeing = kind === 'agreed'
  const key = `decision/${kind}`
  const text = (talk.typed[key] ?? '').trim()
  const by = talk.name.trim()
  const isWordless = !isAgreeing && text === ''
  const missing =
    talk.full ?? (by === '' ? 'Type your name.' : isWordless ? 'Say what is to be changed.' : null)
  const record = (): void => {
    const fingerprint = layoutFingerprint(variant.layout)
    const told = isAgreeing ? toldBroken(plain) : {}
    talk.say({ kind, date: today(), by, variantId: variant.id, fingerprint, text, ...told })
    talk.type(key, '')
    onDone()
  }
  return (
    <fieldset className="editor decide-form">
      <legend>{isAgreeing ? 'Agree' : 'Ask for a change'}</legend>
      {isAgreeing ? (
        <>
          <Statement variant={variant} />
          <Warning plain={plain} />
        </>
      ) : null}
      <TalkText
        talk={talk}
        about={key}
        label={isAgreeing ? 'A remark, if you like' : 'What is to be changed?'}
      />
      <TalkName talk={talk} />
      <p>Date: {today()}</p>
      <ReasonedButton
        words={isAgreeing ? 'Yes, I agree to this drawing' : 'Yes, ask for this change'}
        missing={missing}
        isPrimary
        onPress={record}
      />
      <button type="button" onClick={onDone}>
        Not now
      </button>
    </fieldset>
  )
}

/** What was ordered and broken when it was agreed to, for the record. */
const toldBroken = (plain: readonly PlainFinding[]): Pick<DecisionEntry, 'toldBroken'> => {
  const ruleIds = [...new Set(plain.filter(isOrderedAndBroken).map(({ ruleId }) => ruleId))]
  return ruleIds.length === 0 ? {} : { toldBroken: ruleIds.slice(0, COUNTS.toldBroken.max) }
}

const lastDecision = (talk: Conversation): DecisionEntry | undefined =>
  talk.said.filter((entry): entry is DecisionEntry => entry.kind !== 'comment').at(-1)

const Decided = (props: { readonly talk: Conversation }): ReactElement | null => {
  const decision = lastDecision(props.talk)
  if (decision === undefined) return null
  const name = props.talk.variants.find(({ id }) => id === decision.variantId)?.name ?? ''
  const what = decision.kind === 'agreed' ? 'agreed' : 'asked for a change'
  return (
    <p className="decided" role="status">
      {decision.by} {what} on {decision.date}
      {name === '' ? '' : `, “${name}”`}, code {fingerprintCode(decision.fingerprint)}. A new decision
      replaces it; this one stays in the record.
    </p>
  )
}

/** Agree, or ask for a change: always to one drawing, by name and day, in two steps. */
export const Decide = (props: DecideProps): ReactElement => {
  const { talk } = props
  const [kind, setKind] = useState<Kind | null>(null)
  return (
    <>
      <Decided talk={talk} />
      {kind === null ? (
        <div className="button-row">
          <ReasonedButton
            words="Agree"
            missing={talk.undecidable}
            isPrimary
            onPress={() => setKind('agreed')}
          />
          <ReasonedButton
            words="Ask for a change"
            missing={talk.shown === null ? talk.undecidable : null}
            onPress={() => setKind('change-asked')}
          />
        </div>
      ) : (
        <DecisionForm {...props} kind={kind} onDone={() => setKind(null)} />
      )}
    </>
  )
}

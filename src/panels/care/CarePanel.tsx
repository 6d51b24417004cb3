import type { ReactElement } from 'react'
import type { BeltRecord } from '../../domain/care/beltRecord'
import { beltCondition } from '../../domain/care/condition'
import { AHEAD_DAYS } from '../../domain/care/reminders'
import { CLEANING } from '../../domain/care/cleaning'
import { COUNTS } from '../../domain/layout/document/limits'
import { chosenRuleSet } from '../../domain/layout/document/ruleSetOf'
import { beltCalendar, beltEvents } from '../../domain/layout/wording/beltCalendar'
import { sourceText } from '../../domain/layout/wording/ruleSentence'
import { download, layoutFileName } from '../../state/files'
import { useActions, useApp, useAppStore } from '../../state/react'
import { otherPlaceWords } from '../../domain/layout/wording/variantWords'
import { currentPlace } from '../../state/selectors'
import { nowMs, today } from '../../state/today'
import { BeltCard } from './BeltCard'
import { FormSection } from './CareForm'
import { AddBelt } from './NewBelt'
import './care.css'

const CalendarButton = (): ReactElement => {
  const layout = useApp((state) => state.layout)
  const store = useAppStore()
  const { notify } = useActions()
  const count = beltEvents(layout, today()).length
  const save = (): void => {
    const now = store.state.getState().layout
    const text = beltCalendar(now, today(), nowMs())
    if (text === null) return
    const name = layoutFileName(now).replace(/\.layout\.json$/, '-belts.ics')
    download(text, name, 'text/calendar;charset=utf-8')
    notify('info', `Saved ${name}. Open it with your calendar; save it again when something changes.`)
  }
  return (
    <div>
      <button type="button" disabled={count === 0} onClick={save}>
        Save reminders for a calendar
      </button>
      <p className="hint">
        {count === 0
          ? 'Nothing to remind of: no last day is known that is still to come, and no interval is chosen.'
          : `${count === 1 ? '1 day' : `${count} days`}: last days of all belts of this car, ${AHEAD_DAYS} days before them, and the next inspections.`}
      </p>
    </div>
  )
}

const Cleaning = (): ReactElement => (
  <ul>
    {CLEANING.map(({ says, source, caveat }) => (
      <li key={says} className="care-rule">
        <p>{says}</p>
        {caveat === null ? null : <p className="hint">{caveat}</p>}
        <p className="finding-source">{sourceText(source)}</p>
      </li>
    ))}
  </ul>
)

const isRetired = (belt: BeltRecord): boolean => beltCondition(belt).kind === 'retired'

const BeltList = ({ belts }: { readonly belts: readonly BeltRecord[] }): ReactElement => (
  <>
    {belts.map((belt) => (
      <BeltCard key={belt.id} belt={belt} />
    ))}
  </>
)

/** Belts that are no longer worn at the place in view: retired ones, and those of places that were removed. */
const FormerBelts = (props: {
  readonly placeId: string
  readonly belts: readonly BeltRecord[]
}): ReactElement => {
  const places = useApp((state) => state.layout.places)
  const retired = props.belts.filter((belt) => belt.placeId === props.placeId && isRetired(belt))
  const variants = useApp((state) => state.layout.variants)
  const homeless = props.belts.filter((belt) => places.every(({ id }) => id !== belt.placeId))
  const elsewhere = [...new Set(homeless.map((belt) => otherPlaceWords(belt.placeId, { variants })))]
  return (
    <>
      {retired.length === 0 ? null : (
        <FormSection words={`Retired belts (${retired.length})`}>
          {() => <BeltList belts={retired} />}
        </FormSection>
      )}
      {homeless.length === 0 ? null : (
        <FormSection
          words={`Belts of places that are not drawn (${homeless.length}): ${elsewhere.join('; ')}`}
        >
          {() => <BeltList belts={homeless} />}
        </FormSection>
      )}
    </>
  )
}

const NO_BELTS: readonly BeltRecord[] = []

/** The belts of the place in view, from the first label to the last day. */
export const CarePanel = (): ReactElement | null => {
  const layout = useApp((state) => state.layout)
  const place = useApp(currentPlace)
  if (place === undefined) return null
  const belts = layout.belts ?? NO_BELTS
  const worn = belts.filter((belt) => belt.placeId === place.id && !isRetired(belt))
  return (
    <section className="panel" aria-label="Belt care">
      <p>
        Ages are counted on {today()} by the rule set <strong>{chosenRuleSet(layout).name}</strong>. The belt
        maker’s instructions, the label and the event’s rule book come before anything here.
      </p>
      {worn.length === 0 ? (
        <p className="hint">
          No belt is recorded at {place.name === '' ? 'this place' : place.name}. Have its label in hand and
          add it.
        </p>
      ) : null}
      <BeltList belts={worn} />
      {belts.length >= COUNTS.beltRecords.max ? (
        <p className="hint">This layout holds {belts.length} belts, as many as it can.</p>
      ) : (
        <FormSection words={worn.length === 0 ? 'Add the belt' : 'Add another belt'}>
          {(close) => <AddBelt place={place} onDone={close} />}
        </FormSection>
      )}
      <FormerBelts placeId={place.id} belts={belts} />
      <CalendarButton />
      <FormSection words="Cleaning and keeping">{() => <Cleaning />}</FormSection>
    </section>
  )
}

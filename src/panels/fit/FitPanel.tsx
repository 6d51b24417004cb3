import { useState, type ReactElement } from 'react'
import type { Layout, Place } from '../../domain/layout/document/layout'
import { beyondSurvey } from '../../domain/layout/fit/beyondSurvey'
import type { Fit, WhoFits } from '../../domain/layout/fit/whoFits'
import {
  beyondText,
  FIT_CAPTION,
  FIT_METHOD,
  fitLevelWords,
  limitingText,
} from '../../domain/layout/wording/fitText'
import { seatPositionName } from '../../domain/layout/wording/names'
import { quantityName } from '../../domain/layout/wording/quantities'
import type { RuleLevel } from '../../domain/rules/rule'
import { useApp } from '../../state/react'
import { currentPlace } from '../../state/selectors'
import { SwitchField } from '../fields/ChoiceField'
import { FitPicture } from './FitPicture'
import { FitRules } from './FitRules'
import { useWhoFits, type WhoFitsView } from './useWhoFits'

const statusWords = ({ running, result, isStale, wasCancelled, failure }: WhoFitsView): string => {
  if (running !== null)
    return running.total === 0 ? 'Counting …' : `Counting: ${running.done} of ${running.total}`
  if (failure !== null) return `The count came to no end: ${failure}`
  if (wasCancelled) return result === null ? 'The count was cancelled.' : 'The new count was cancelled.'
  if (isStale) return 'The layout has changed since this count.'
  return result === null ? 'Nothing is counted yet.' : 'Counted for the layout as drawn.'
}

/** How the count stands, and the ways to begin and to cancel it. */
const FitStatus = (props: { readonly view: WhoFitsView }): ReactElement => {
  const { view } = props
  const { running } = view
  return (
    <div className="fit-status" data-testid="fit-status" data-stale={view.isStale ? 'true' : undefined}>
      <p>
        {statusWords(view)}
        {view.isStale && running !== null ? ' The figures below are of the layout before.' : ''}
      </p>
      {running === null ? (
        <button type="button" onClick={view.start}>
          Count again
        </button>
      ) : (
        <>
          <progress
            aria-label="People counted"
            value={running.done}
            max={running.total === 0 ? 1 : running.total}
          />
          <button type="button" onClick={view.cancel}>
            Cancel
          </button>
        </>
      )}
    </div>
  )
}

const LEVELS = (['must', 'should', 'advice'] as const).map((level) => ({
  value: level,
  words: fitLevelWords(level),
}))

/** In which seat position most people do not pass; null with one position or when all are alike. */
const worstPositionText = (fit: Fit, result: WhoFits, place: Place, layout: Layout): string | null => {
  const most = Math.max(...fit.notPassingAt)
  if (most === Math.min(...fit.notPassingAt)) return null
  const position = result.positions[fit.notPassingAt.indexOf(most)]
  return position === undefined
    ? null
    : `Most do not pass with the ${seatPositionName(position, place, layout)}: ${most} people.`
}

/** Occupants of this place about whom no count says anything. */
const BeyondList = (props: {
  readonly place: Place
  readonly people: WhoFits['people']
}): ReactElement | null => {
  const beyond = props.place.occupants.flatMap((occupant) => {
    const count = props.people.filter(({ sex }) => sex === occupant.sex).length
    const words = beyondText(beyondSurvey(occupant, props.people), occupant.sex, count)
    return words === null ? [] : [{ id: occupant.id, name: occupant.name.trim(), words }]
  })
  if (beyond.length === 0) return null
  return (
    <ul className="problems" data-testid="fit-beyond">
      {beyond.map(({ id, name, words }) => (
        <li key={id}>
          {name === '' ? `Occupant ${id}` : name} is {words}: nothing here says anything about such a person.
        </li>
      ))}
    </ul>
  )
}

const Answer = (props: {
  readonly result: WhoFits
  readonly place: Place
  readonly layout: Layout
}): ReactElement => {
  const { result, place, layout } = props
  const [level, setLevel] = useState<RuleLevel>('should')
  const [chosenId, setChosenId] = useState<string | null>(null)
  const overall = result.overall.find((each) => each.level === level)
  const rule = result.rules.find(({ ruleId }) => ruleId === chosenId)
  const shown: Fit | undefined = rule ?? overall
  const hardware = result.brokenHardware.length
  return (
    <>
      <SwitchField
        label="Rules that count"
        value={level}
        choices={LEVELS}
        onChange={(next) => {
          setLevel(next)
          setChosenId(null)
        }}
      />
      {shown === undefined ? (
        <p className="hint">
          No such rule of this rule set looks at the body of who sits here, so nobody was asked.
        </p>
      ) : (
        <>
          <h3>
            {rule === undefined ? 'All these rules together' : `One rule: ${quantityName(rule.quantity)}`}
          </h3>
          <p data-testid="fit-limiting">{limitingText(shown, layout.units)}</p>
          {result.positions.length < 2 ? null : <p>{worstPositionText(shown, result, place, layout)}</p>}
          <FitPicture fit={shown} people={result.people} occupants={place.occupants} units={layout.units} />
        </>
      )}
      <BeyondList place={place} people={result.people} />
      {hardware === 0 ? null : (
        <p className="hint">
          {hardware === 1 ? 'One rule' : `${hardware} rules`} about belt, tabs or tubes{' '}
          {hardware === 1 ? 'is' : 'are'} broken whoever sits here; see Findings. They are not part of these
          counts.
        </p>
      )}
      <FitRules rules={result.rules} chosenId={chosenId} onChoose={setChosenId} />
    </>
  )
}

/** The current place tried by 1,200 surveyed people: how many pass each rule, what limits them, and who they are. */
export const FitPanel = (): ReactElement => {
  const view = useWhoFits()
  const place = useApp(currentPlace)
  const layout = useApp((state) => state.layout)
  return (
    <section className="panel" aria-label="Who fits">
      <p className="fit-caption">{FIT_CAPTION}</p>
      {view === null || place === undefined ? (
        <p className="hint">There is no place to try. Add one under Seat.</p>
      ) : (
        <>
          <FitStatus view={view} />
          {view.result === null ? null : (
            <div className="fit-answer" data-stale={view.isStale ? 'true' : undefined}>
              <Answer result={view.result} place={place} layout={layout} />
            </div>
          )}
        </>
      )}
      <p className="hint">{FIT_METHOD}</p>
    </section>
  )
}

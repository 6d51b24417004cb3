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
import { WorkAnswer, WorkStatus, type WorkWords } from '../WorkStatus'
import { FitPicture } from './FitPicture'
import { FitRules } from './FitRules'
import { useWhoFits } from './useWhoFits'

const WORDS: WorkWords = {
  doing: 'Counting',
  nothingYet: 'Nothing is counted yet.',
  done: 'Counted for the layout as drawn.',
  stale: 'The layout has changed since this count.',
  start: 'Count again',
  counted: 'People counted',
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
      {view === null || place === undefined ? (
        <p className="hint">There is no place to try. Add one under Seat.</p>
      ) : (
        <WorkStatus view={view.work} words={WORDS} testId="fit-status" />
      )}
      <p className="caution">{FIT_CAPTION}</p>
      {view === null || view.result === null || place === undefined ? null : (
        <WorkAnswer view={view.work}>
          <Answer result={view.result} place={place} layout={layout} />
        </WorkAnswer>
      )}
      <p className="hint">{FIT_METHOD}</p>
    </section>
  )
}

import type { ReactElement } from 'react'
import type { QuestionId } from '../../domain/layout/firstLayout/question'
import { isComplete } from '../../domain/layout/firstLayout/anchorTape'
import { askedPlace } from '../../domain/layout/firstLayout/askedPlace'
import { placeName } from '../../domain/layout/wording/names'
import { unmeasuredQuestions } from '../../state/firstLayout/guide'
import { useActions, useApp } from '../../state/react'
import { currentPlaceEvaluation } from '../../state/selectors'
import type { GuideView } from './useGuide'

const findingsWord = (count: number): string => `${count} ${count === 1 ? 'finding' : 'findings'}`

/** How the layout stands against the chosen rules; what could not be checked is never passed over. */
const FindingCount = (): ReactElement => {
  const findings = useApp(currentPlaceEvaluation)?.findings ?? []
  const broken = findings.filter(({ verdict }) => verdict === 'broken')
  const must = broken.filter(({ level }) => level === 'must').length
  const unchecked = findings.filter(({ verdict }) => verdict === 'unchecked').length
  const sentences = [
    broken.length === 0
      ? 'nothing is broken with what is drawn now'
      : `${findingsWord(broken.length)} broken${must === 0 ? ', none of them a must' : `, ${must} of them a must`}`,
    ...(unchecked === 0 ? [] : [`${findingsWord(unchecked)} could not be checked`]),
  ]
  return (
    <p>Against the chosen rules: {sentences.join('; ')}. The panel “Findings” says what to move, and why.</p>
  )
}

/** What nobody has measured, question by question. */
const Unmeasured = ({ view }: { readonly view: GuideView }): ReactElement | null => {
  const { keeper, guide, layout } = view
  const left = unmeasuredQuestions(guide, layout)
  if (left.length === 0) return <p>Every number that was asked for is one of yours.</p>
  const go = (id: QuestionId): void => keeper.move((now) => ({ ...now, at: id }))
  return (
    <section aria-label="Not measured yet">
      <p>
        <strong>Not measured yet.</strong> Weld nothing from these before they are measured on the car:
      </p>
      <ul className="left-open">
        {left.map(({ question: { id, title }, asks }) => (
          <li key={id}>
            <button type="button" className="link" onClick={() => go(id)}>
              {title}
            </button>{' '}
            <small>{asks.length === 1 ? '1 number' : `${asks.length} numbers`}</small>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** After the last question: what is there, what stands on starting values, and what comes next. */
export const EndPage = ({ view }: { readonly view: GuideView }): ReactElement => {
  const { setView } = useActions()
  return (
    <>
      <p>
        {isComplete(askedPlace(view.layout))
          ? 'Seat, people, belt and an anchor for every strap are drawn. Everything can still be changed: here, in the panels, or by dragging.'
          : 'Some straps have no anchor yet, or an anchor has no strap: the panel “Anchors” adds and removes them.'}
      </p>
      {view.layout.places.length < 2 ? null : (
        <p>
          The questions were about {placeName(askedPlace(view.layout).id, view.layout)}. The other seats of
          this car are as they were: the panels change them.
        </p>
      )}
      <FindingCount />
      <Unmeasured view={view} />
      <p>
        Not asked, and{' '}
        {view.guide.progress.begun.isFresh ? 'as they start' : 'as they were when the questions began'}: the
        shape of the shell and its rim, plate and hole of each tab, adjusters, other tubes. The panels “Seat”,
        “Anchors”, “Belt” and “Tubes” change them.
      </p>
      <h3>What next</h3>
      <ul className="next-steps">
        <li>
          <button type="button" className="primary" onClick={() => setView({ screen: 'papers' })}>
            Look at the papers
          </button>
          <span>the sheet for the weld shop, to print or save</span>
        </li>
        <li>
          <button type="button" onClick={() => setView({ side: 'panels' })}>
            Move parts on the drawing
          </button>
          <span>drag a tab and see its permitted zone; “Propose” looks for better places</span>
        </li>
        <li>
          <button type="button" onClick={() => setView({ screen: 'customer' })}>
            Show it to the customer
          </button>
          <span>in plain words, to talk over and agree</span>
        </li>
      </ul>
    </>
  )
}

import type { ReactElement, ReactNode } from 'react'
import { CAUTIONS } from '../../domain/layout/wording/cautions'
import { REASON_IDS } from '../../domain/layout/wording/reasons'
import { useActions } from '../../state/react'
import { ScreenFrame } from '../ScreenFrame'
import { About } from './About'
import { KEY_ROWS, TOUCH_ROWS } from './keys'
import { ReasonSection } from './ReasonSection'
import { STEPS } from './steps'
import { WordList } from './WordList'

const PARTS = [
  { id: 'guide-steps', title: 'How the job goes' },
  { id: 'guide-reasons', title: 'Why it is done so' },
  { id: 'guide-words', title: 'Words from A to Z' },
  { id: 'guide-keys', title: 'Keys and touches' },
  { id: 'guide-limits', title: 'What Tabwright does not decide' },
  { id: 'guide-about', title: 'About this Tabwright' },
] as const

type PartId = (typeof PARTS)[number]['id']

/** Leads down the page without touching its address, which may carry a layout. */
const goTo = (id: PartId): void => {
  const heading = document.getElementById(id)
  heading?.scrollIntoView({ block: 'start' })
  heading?.focus({ preventScroll: true })
}

const Part = (props: { readonly id: PartId; readonly children: ReactNode }): ReactElement => (
  <section className="guide-part" aria-labelledby={props.id}>
    <h3 id={props.id} tabIndex={-1}>
      {PARTS.find(({ id }) => id === props.id)?.title}
    </h3>
    {props.children}
  </section>
)

const Steps = (): ReactElement => {
  const { setView } = useActions()
  return (
    <ol className="guide-steps">
      {STEPS.map(({ title, says, screen, side, link }) => (
        <li key={title}>
          <h4>{title}</h4>
          <p>{says}</p>
          <button
            type="button"
            className="link no-print"
            onClick={() => setView({ screen, ...(side === undefined ? {} : { side }) })}
          >
            {link}
          </button>
        </li>
      ))}
    </ol>
  )
}

const KeyTable = (props: {
  readonly caption: string
  readonly rows: readonly { readonly keys: string; readonly does: string }[]
}): ReactElement => (
  <table className="guide-keys">
    <caption>{props.caption}</caption>
    <tbody>
      {props.rows.map(({ keys, does }) => (
        <tr key={keys}>
          <th scope="row">{keys}</th>
          <td>{does}</td>
        </tr>
      ))}
    </tbody>
  </table>
)

/** How the job goes, why the trade does what it does, the words, the keys, the limits, and how this copy stands. */
export const GuideScreen = (): ReactElement => (
  <ScreenFrame title="Guide">
    <div className="guide">
      <nav aria-label="Parts of the guide" className="guide-contents no-print">
        <ul>
          {PARTS.map(({ id, title }) => (
            <li key={id}>
              <button type="button" onClick={() => goTo(id)}>
                {title}
              </button>
            </li>
          ))}
        </ul>
      </nav>
      <Part id="guide-steps">
        <Steps />
      </Part>
      <Part id="guide-reasons">
        <p>
          The drawings are computed from the guide’s own car by the same formulas as yours. Where a claim has
          a source it stands below it; where there is none it says so.
        </p>
        {REASON_IDS.map((id) => (
          <ReasonSection key={id} id={id} />
        ))}
      </Part>
      <Part id="guide-words">
        <WordList />
      </Part>
      <Part id="guide-keys">
        <KeyTable caption="Keys" rows={KEY_ROWS} />
        <KeyTable caption="Finger, pen and mouse" rows={TOUCH_ROWS} />
      </Part>
      <Part id="guide-limits">
        <ul className="guide-cautions">
          {CAUTIONS.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </Part>
      <Part id="guide-about">
        <About />
      </Part>
    </div>
  </ScreenFrame>
)

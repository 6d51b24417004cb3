import type { ReactElement } from 'react'
import { CAUTIONS } from '../domain/layout/wording/cautions'
import { useMediaQuery } from './useMediaQuery'

const CautionList = (props: { readonly cautions: readonly string[] }): ReactElement => (
  <ul>
    {props.cautions.map((caution) => (
      <li key={caution}>{caution}</li>
    ))}
  </ul>
)

/** How many stand in view on a small screen, the rest one tap away: what this is not, and who decides. */
const FIRST_CAUTIONS = 2

/** Always in view: what these numbers are not, and who decides. */
export const CautionsStrip = (): ReactElement => {
  const hasRoom = useMediaQuery('(min-width: 1200px)')
  return (
    <footer className="cautions no-print" aria-label="Cautions">
      {hasRoom ? (
        <CautionList cautions={CAUTIONS} />
      ) : (
        <details>
          <summary>{CAUTIONS.slice(0, FIRST_CAUTIONS).join(' ')}</summary>
          <CautionList cautions={CAUTIONS.slice(FIRST_CAUTIONS)} />
        </details>
      )}
    </footer>
  )
}

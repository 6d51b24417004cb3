import type { ReactElement } from 'react'
import { CAUTIONS } from '../domain/layout/wording/cautions'

/** Always in view: what these numbers are not, and who decides. */
export const CautionsStrip = (): ReactElement => (
  <footer className="cautions no-print" aria-label="Cautions" tabIndex={0}>
    <ul>
      {CAUTIONS.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  </footer>
)

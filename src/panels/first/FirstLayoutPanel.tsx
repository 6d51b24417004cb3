import type { ReactElement } from 'react'

export const FirstLayoutPanel = (): ReactElement => <section aria-label="First layout" />

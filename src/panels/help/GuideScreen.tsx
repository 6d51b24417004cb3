import type { ReactElement } from 'react'
import { ScreenFrame } from '../ScreenFrame'
import { About } from './About'

export const GuideScreen = (): ReactElement => (
  <ScreenFrame title="Guide">
    <section className="guide-part" aria-labelledby="guide-about">
      <h3 id="guide-about">About this Tabwright</h3>
      <About />
    </section>
  </ScreenFrame>
)

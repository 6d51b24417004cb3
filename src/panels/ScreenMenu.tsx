import type { ReactElement } from 'react'
import { useActions, useApp } from '../state/react'
import { Disclosure } from './Disclosure'
import { SCREENS } from './screens'

/** The way to every screen but the papers, which have a button of their own. */
export const ScreenMenu = (): ReactElement => {
  const screen = useApp((state) => state.view.screen)
  const { setView } = useActions()
  const entries = [
    { id: 'drawing' as const, words: 'Drawing', about: 'the two elevations and the panels' },
    ...SCREENS,
  ]
  return (
    <Disclosure words="Go to" className="screen-menu">
      {(close) => (
        <ul className="menu-list">
          {entries.map(({ id, words, about }) => (
            <li key={id}>
              <button
                type="button"
                aria-current={id === screen ? 'page' : undefined}
                onClick={() => {
                  setView({ screen: id })
                  close()
                }}
              >
                <strong>{words}</strong>
                <small>{about}</small>
              </button>
            </li>
          ))}
        </ul>
      )}
    </Disclosure>
  )
}

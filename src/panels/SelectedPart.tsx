import { type FocusEvent, type ReactElement, useMemo, useRef } from 'react'
import type { Handle } from '../domain/layout/edit/handle'
import { LIMITS } from '../domain/layout/document/limits'
import { handleById } from '../domain/layout/edit/handles'
import { movedHandle } from '../domain/layout/edit/move'
import { useActions, useApp, useAppStore } from '../state/react'
import { lengthUnitOf } from '../state/selectors'
import { PointFields } from './fields/PointFields'
import { NudgePad } from './nudge/NudgePad'

const LETTERS = ['x', 'y', 'z'] as const

/** From where the keyboard came into a section, to go back there when the section goes. */
const useWayBack = () => {
  const from = useRef<Element | null>(null)
  return {
    onFocus: (event: FocusEvent<HTMLElement>) => {
      const before = event.relatedTarget
      if (before !== null && !event.currentTarget.contains(before)) from.current = before
    },
    goBack: () => {
      if (from.current instanceof HTMLElement && from.current.isConnected) from.current.focus()
    },
  }
}

/** The part in hand, or null: gone from the layout, or nothing in hand. */
const useSelectedHandle = (): Handle | null => {
  const layout = useApp((state) => state.layout)
  const selectedId = useApp((state) => state.selectedHandleId)
  return useMemo(() => (selectedId === null ? null : handleById(layout, selectedId)), [layout, selectedId])
}

/** Where the panels are put away: only the steps, low on the drawing, and gone while something is dragged on it. */
export const StepsOverDrawing = (): ReactElement | null => {
  const { selectHandle } = useActions()
  const handle = useSelectedHandle()
  if (handle === null) return null
  return (
    <section className="steps-over" aria-label="Selected part" id="selected-part" tabIndex={-1}>
      <p>{handle.name}</p>
      <NudgePad handle={handle} />
      <button type="button" onClick={() => selectHandle(null)}>
        Let go
      </button>
    </section>
  )
}

/** Exact numbers and steps for whatever is taken hold of in the drawing, beside it whichever panel is open. */
export const SelectedPart = (): ReactElement | null => {
  const { edit, selectHandle } = useActions()
  const store = useAppStore()
  const unit = useApp(lengthUnitOf)
  const { onFocus, goBack } = useWayBack()
  const handle = useSelectedHandle()
  if (handle === null) return null
  return (
    <section
      className="selected-part"
      aria-label="Selected part"
      data-testid="selected-part"
      id="selected-part"
      tabIndex={-1}
      onFocus={onFocus}
      onKeyDown={(event) => {
        // A step still held is called off first.
        if (event.key === 'Escape' && store.state.getState().gesture === null) goBack()
      }}
    >
      <PointFields
        key={handle.id}
        legend={`${handle.name}, from the datum, ${unit}`}
        point={handle.point}
        limits={LIMITS.coordinateMm}
        axes={LETTERS.filter((letter) => handle.moves[letter])}
        onCommit={(change) =>
          edit(`Move ${handle.name}`, (before) => movedHandle(before, handle.ref, change))
        }
      />
      <button
        type="button"
        className="let-go"
        onClick={() => {
          goBack()
          selectHandle(null)
        }}
      >
        Let go
      </button>
      <NudgePad handle={handle} />
    </section>
  )
}

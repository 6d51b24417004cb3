import { useMemo, type ReactElement } from 'react'
import { LIMITS } from '../domain/layout/document/limits'
import { handleById } from '../domain/layout/edit/handles'
import { movedHandle } from '../domain/layout/edit/move'
import { useActions, useApp } from '../state/react'
import { PointFields } from './fields/PointFields'

const LETTERS = ['x', 'y', 'z'] as const

/** Exact numbers for whatever is taken hold of in the drawing, beside it whichever panel is open. */
export const SelectedPart = (): ReactElement | null => {
  const layout = useApp((state) => state.layout)
  const selectedId = useApp((state) => state.selectedHandleId)
  const { edit, selectHandle } = useActions()
  const handle = useMemo(
    () => (selectedId === null ? null : handleById(layout, selectedId)),
    [layout, selectedId],
  )
  if (handle === null) return null
  return (
    <section className="selected-part" aria-label="Selected part" data-testid="selected-part">
      <PointFields
        key={handle.id}
        legend={`${handle.name}, from the datum`}
        point={handle.point}
        limits={LIMITS.coordinateMm}
        axes={LETTERS.filter((letter) => handle.moves[letter])}
        onCommit={(change) =>
          edit(`Move ${handle.name}`, (before) => movedHandle(before, handle.ref, change))
        }
      />
      <button type="button" onClick={() => selectHandle(null)}>
        Let go
      </button>
    </section>
  )
}

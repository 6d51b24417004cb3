import { memo, useEffect, useMemo, useRef, type KeyboardEvent, type ReactElement } from 'react'
import type { PointMm } from '../domain/geometry/point'
import type { Layout } from '../domain/layout/document/layout'
import type { Handle } from '../domain/layout/edit/handle'
import { handlesOf } from '../domain/layout/edit/handles'
import { movedHandle } from '../domain/layout/edit/move'
import { lengthText } from '../domain/units/length'
import { nudgeMm } from '../state/nudge'
import { useActions, useApp } from '../state/react'

const AXES = [
  { letter: 'x', key: 'xMm' },
  { letter: 'y', key: 'yMm' },
  { letter: 'z', key: 'zMm' },
] as const

/** Which way an arrow key moves a part: left and right along the car, up and down in height, with Alt held across the car. */
const nudgeAxis = (event: KeyboardEvent): { readonly key: keyof PointMm; readonly sign: 1 | -1 } | null => {
  switch (event.key) {
    case 'ArrowRight':
      return { key: 'xMm', sign: 1 }
    case 'ArrowLeft':
      return { key: 'xMm', sign: -1 }
    case 'ArrowUp':
      return { key: event.altKey ? 'yMm' : 'zMm', sign: 1 }
    case 'ArrowDown':
      return { key: event.altKey ? 'yMm' : 'zMm', sign: -1 }
    default:
      return null
  }
}

const PartRow = memo(function PartRow(props: {
  readonly handle: Handle
  readonly unit: Layout['units']['length']
  readonly isSelected: boolean
}): ReactElement {
  const { handle, unit, isSelected } = props
  const { edit, selectHandle } = useActions()
  const row = useRef<HTMLLIElement>(null)
  useEffect(() => {
    if (isSelected) row.current?.scrollIntoView({ block: 'nearest' })
  }, [isSelected])
  const onKey = (event: KeyboardEvent): void => {
    const axis = nudgeAxis(event)
    if (axis === null) return
    event.preventDefault()
    const by = axis.sign * nudgeMm(unit, event.shiftKey ? 'large' : 'small')
    selectHandle(handle.id)
    edit(`Move ${handle.name}`, (layout) => {
      const now = handlesOf(layout).find((candidate) => candidate.id === handle.id)
      return now === undefined
        ? layout
        : movedHandle(layout, now.ref, { [axis.key]: now.point[axis.key] + by })
    })
  }
  return (
    <li className="part" ref={row} data-selected={isSelected ? 'true' : undefined}>
      <button
        type="button"
        className="part-head"
        aria-pressed={isSelected}
        data-testid={`part:${handle.id}`}
        onClick={() => selectHandle(isSelected ? null : handle.id)}
        onKeyDown={onKey}
      >
        <span className="part-name">{handle.name}</span>
        <span className="part-readout">
          {AXES.map((axis) => (
            <span key={axis.letter} className="coordinate">
              <span className="axis">{axis.letter}</span>{' '}
              <span
                className="number"
                data-testid={`readout:${handle.id}:${axis.letter}`}
                data-value={handle.point[axis.key]}
              >
                {lengthText(handle.point[axis.key], unit)}
              </span>
            </span>
          ))}
        </span>
      </button>
    </li>
  )
})

/** Everything that can be taken hold of, with where it is: the keyboard's and the reader's way to the drawing. */
export const PartsPanel = (): ReactElement => {
  const layout = useApp((state) => state.layout)
  const selectedId = useApp((state) => state.selectedHandleId)
  const handles = useMemo(() => handlesOf(layout), [layout])
  return (
    <section className="panel" aria-label="Parts">
      <p className="hint">
        Pick a part to type its place above. On a part, left and right arrows move it along the car, up and
        down in height, with Alt across the car; Shift moves further.
      </p>
      <ul className="parts">
        {handles.map((handle) => (
          <PartRow
            key={handle.id}
            handle={handle}
            unit={layout.units.length}
            isSelected={handle.id === selectedId}
          />
        ))}
      </ul>
    </section>
  )
}

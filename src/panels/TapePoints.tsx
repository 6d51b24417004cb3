import { useDeferredValue, useMemo, type ReactElement } from 'react'
import { pointDistanceMm } from '../domain/geometry/point'
import { COUNTS, LIMITS, TEXT_LENGTHS } from '../domain/layout/document/limits'
import { addTapePoint, removeTapePoint, withTapePoint } from '../domain/layout/edit/changeTapePoints'
import { TAPE_POINT_HINT, TAPE_POINT_UNPLACED, tapeTableText } from '../domain/layout/wording/tapeWords'
import { tapeChecks } from '../domain/shop/tape/tapeChecks'
import { AT_DATUM_MM } from '../domain/shop/tape/tapePlace'
import type { TapePoint } from '../domain/shop/tape/tapePoint'
import { useActions, useApp } from '../state/react'
import { PointFields } from './fields/PointFields'
import { TextField } from './fields/TextField'
import { Term } from './help/Term'

const DATUM = { xMm: 0, yMm: 0, zMm: 0 }

const TapePointEditor = (props: { readonly tapePoint: TapePoint }): ReactElement => {
  const { id, name, point } = props.tapePoint
  const { edit } = useActions()
  const shown = name.trim() === '' ? `Tape point ${id}` : name
  return (
    <details className="editor">
      <summary>{shown}</summary>
      <TextField
        label="Name"
        value={name}
        maxLength={TEXT_LENGTHS.name}
        onCommit={(value) => edit(`Rename ${shown}`, (layout) => withTapePoint(layout, id, { name: value }))}
      />
      <PointFields
        legend="Where the tape is held, from the datum"
        point={point}
        limits={LIMITS.coordinateMm}
        onCommit={(change) =>
          edit(`Move ${shown}`, (layout) => withTapePoint(layout, id, { point: { ...point, ...change } }))
        }
      />
      {pointDistanceMm(point, DATUM) < AT_DATUM_MM ? <p className="hint">{TAPE_POINT_UNPLACED}</p> : null}
      <button type="button" onClick={() => edit(`Remove ${shown}`, (layout) => removeTapePoint(layout, id))}>
        Remove this tape point
      </button>
    </details>
  )
}

const NONE: readonly TapePoint[] = []

/** Whether the places named so far tell every anchor; worked out behind a drag, not in it. */
const TableState = (): ReactElement => {
  const tapePoints = useDeferredValue(useApp((state) => state.layout.tapePoints)) ?? NONE
  const tubes = useDeferredValue(useApp((state) => state.layout.tubes))
  const places = useDeferredValue(useApp((state) => state.layout.places))
  const words = useMemo(
    () => tapeTableText(tapeChecks({ tapePoints, tubes, places })),
    [tapePoints, tubes, places],
  )
  return (
    <p className="hint" role="status" aria-label="Tape checks">
      {words}
    </p>
  )
}

/** Places on the car that a tape can be held to, named by the builder. */
export const TapePoints = (): ReactElement => {
  const tapePoints = useApp((state) => state.layout.tapePoints) ?? NONE
  const { edit } = useActions()
  return (
    <section aria-label="Tape points">
      <div className="term-heading">
        <h3>Tape points</h3>
        <Term id="tape-check" />
      </div>
      <p className="hint">{TAPE_POINT_HINT}</p>
      {tapePoints.map((tapePoint) => (
        <TapePointEditor key={tapePoint.id} tapePoint={tapePoint} />
      ))}
      <TableState />
      <button
        type="button"
        disabled={tapePoints.length >= COUNTS.tapePoints.max}
        onClick={() => edit('Add a tape point', addTapePoint)}
      >
        Add a tape point
      </button>
    </section>
  )
}

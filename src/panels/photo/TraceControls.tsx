import { useMemo, useState, type ReactElement } from 'react'
import type { TubeRole } from '../../domain/geometry/tube'
import { COUNTS, LIMITS } from '../../domain/layout/document/limits'
import { handlesOf } from '../../domain/layout/edit/handles'
import type { Layout } from '../../domain/layout/document/layout'
import { pageTracing, type PointTarget, tapeTargetId, type Trace } from '../../state/trace/trace'
import { useApp, useAppStore, useKept } from '../../state/react'
import { ChoiceField, type Choice } from '../fields/ChoiceField'
import { LengthField } from '../fields/LengthField'

/** Everything that a tap can put somewhere: parts in hand first, then places for the tape. */
const targetsOf = (layout: Layout): readonly PointTarget[] => [
  ...handlesOf(layout)
    .filter(({ moves }) => moves.x || moves.y || moves.z)
    .map(({ id, name }) => ({ id, name })),
  ...(layout.tapePoints ?? []).map(({ id, name }) => ({
    id: tapeTargetId(id),
    name: name.trim() === '' ? `Tape point ${id}` : name,
  })),
]

const PointStart = (): ReactElement => {
  const store = useAppStore()
  const layout = useApp((state) => state.layout)
  const selectedId = useApp((state) => state.selectedHandleId)
  const targets = useMemo(() => targetsOf(layout), [layout])
  const [chosenId, setChosen] = useState<string | null>(null)
  const isThere = (id: string | null): id is string => targets.some((target) => target.id === id)
  // The part in hand is meant unless another was chosen.
  const id = [chosenId, selectedId].find(isThere) ?? targets[0]?.id ?? ''
  return (
    <>
      <ChoiceField
        label="Part"
        value={id}
        choices={targets.map((target) => ({ value: target.id, words: target.name }))}
        testId="trace-target"
        onChange={setChosen}
      />
      <button type="button" disabled={id === ''} onClick={() => pageTracing.startPoint(store, id)}>
        Set this part with a tap
      </button>
    </>
  )
}

/** What can be begun: a tube on either elevation that is shown, or one part. */
export const TraceStart = (): ReactElement => {
  const store = useAppStore()
  const elevations = useApp((state) => state.view.elevations)
  const isFull = useApp((state) => state.layout.tubes.length >= COUNTS.tubes.max)
  return (
    <>
      {(['side', 'top'] as const)
        .filter((elevation) => elevations === 'both' || elevations === elevation)
        .map((elevation) => (
          <button
            key={elevation}
            type="button"
            disabled={isFull}
            onClick={() => pageTracing.startTube(store, elevation)}
          >
            {elevation === 'side' ? 'Trace a tube from the side' : 'Trace a tube from above'}
          </button>
        ))}
      <PointStart />
    </>
  )
}

const ROLES: readonly Choice<TubeRole>[] = [
  { value: 'cage', words: 'Cage' },
  { value: 'harness-bar', words: 'Harness bar' },
  { value: 'floor', words: 'Floor' },
]

const pointWords = (count: number): string => {
  if (count === 0) return 'Tap the tube’s centre line at one end, then at every bend.'
  return count === 1 ? '1 point. Tap the next bend or the other end.' : `${count} points.`
}

interface TubeProps {
  readonly trace: Extract<Trace, { kind: 'tube' }>
}

/** What the elevation does not show. */
const AcrossField = ({ trace }: TubeProps): ReactElement => (
  <LengthField
    label={trace.elevation === 'side' ? 'y of the next points' : 'z of the next points'}
    value={trace.acrossMm}
    limits={LIMITS.coordinateMm}
    testId="trace-across"
    onCommit={(acrossMm) => pageTracing.change({ acrossMm })}
  />
)

const SectionFields = ({ trace }: TubeProps): ReactElement => (
  <>
    <LengthField
      label="Outside diameter"
      value={trace.outsideDiameterMm}
      limits={LIMITS.outsideDiameterMm}
      testId="trace-diameter"
      onCommit={(outsideDiameterMm) => pageTracing.change({ outsideDiameterMm })}
    />
    <LengthField
      label="Wall"
      value={trace.wallMm}
      limits={{ ...LIMITS.wallMm, max: Math.min(LIMITS.wallMm.max, trace.outsideDiameterMm / 2) }}
      testId="trace-wall"
      onCommit={(wallMm) => pageTracing.change({ wallMm })}
    />
    <ChoiceField
      label="Used as"
      value={trace.role}
      choices={ROLES}
      onChange={(role) => pageTracing.change({ role })}
    />
  </>
)

const TubeControls = ({ trace }: TubeProps): ReactElement => {
  const store = useAppStore()
  return (
    <div className="photo-strip-row" role="group" aria-label="Trace a tube">
      <p role="status" data-testid="trace-status">
        {pointWords(trace.points.length)}
      </p>
      <AcrossField trace={trace} />
      <button
        type="button"
        className="primary"
        disabled={trace.points.length < COUNTS.tubePoints.min}
        onClick={() => pageTracing.finish(store)}
      >
        Finish the tube
      </button>
      <button type="button" disabled={trace.points.length === 0} onClick={pageTracing.removeLast}>
        Take the last point back
      </button>
      <button type="button" onClick={pageTracing.callOff}>
        Call it off
      </button>
      <SectionFields trace={trace} />
    </div>
  )
}

const PointControls = (props: { readonly targetId: string }): ReactElement => {
  const layout = useApp((state) => state.layout)
  const name = targetsOf(layout).find(({ id }) => id === props.targetId)?.name ?? 'it'
  return (
    <div className="photo-strip-row" role="group" aria-label="Set a part">
      <p role="status" data-testid="trace-status">
        {`Tap where “${name}” belongs. What the elevation does not show stays as it is.`}
      </p>
      <button type="button" onClick={pageTracing.callOff}>
        Call it off
      </button>
    </div>
  )
}

/** The numbers and ways out of what is being traced. */
export const TraceControls = (): ReactElement | null => {
  const trace = useKept(pageTracing.state)
  if (trace.kind === 'tube') return <TubeControls trace={trace} />
  return trace.kind === 'point' ? <PointControls targetId={trace.targetId} /> : null
}

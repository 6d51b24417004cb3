import { useState, type ReactElement } from 'react'
import type { AnchorDeviation } from '../../domain/layout/asWelded/deviation'
import { offeredPoints } from '../../domain/layout/asWelded/knownPoints'
import { LIMITS } from '../../domain/layout/document/limits'
import { type MeasuredRef, withMeasurement, withTabReadings } from '../../domain/layout/edit/asWelded'
import {
  anchorVerdictWords,
  KNOWN_POINT_HINT,
  entryName,
  judgedLength,
  measureToText,
  sharedText,
} from '../../domain/layout/wording/weldedWords'
import type { Measurement } from '../../domain/measure/measurement'
import { useActions } from '../../state/react'
import { pageWelded } from '../../state/welded/pageWelded'
import { SwitchField } from '../fields/ChoiceField'
import { IntakeResult } from './IntakeResult'
import { MeasureFigure } from './MeasureFigure'
import { emptyMeasurement, knownPointOf } from './measurements'
import { MirrorChoiceButtons } from './MirrorChoiceButtons'
import { ReadingFields } from './ReadingFields'
import { ReadMeasurement } from './ReadMeasurement'
import type { WeldedView } from './useWelded'
import { CoordinateWay, StringWay, TapeWay } from './wayFields'

interface IntakeProps {
  readonly view: WeldedView
  readonly deviation: AnchorDeviation
}

/** One anchor of a record: folded to its name and verdict, or open to be measured, or only read once the record is signed. */
export const AnchorIntake = (props: IntakeProps): ReactElement => {
  const { view, deviation } = props
  const { entry } = deviation.reading
  const name = entryName(entry, view.layout)
  const unit = view.layout.units.length
  const total = deviation.position === null ? '' : `${judgedLength(deviation.position.totalMm, unit)} off · `
  const [isOpen, setOpen] = useState(false)
  return (
    <details
      className="editor intake"
      data-verdict={deviation.verdict}
      data-testid={`intake:${entry.placeId}:${entry.anchorId}`}
      open={isOpen}
      onToggle={(event) => {
        const isNowOpen = event.currentTarget.open
        setOpen(isNowOpen)
        pageWelded.view.setState(({ anchorId }) => ({
          anchorId: isNowOpen ? entry.anchorId : anchorId === entry.anchorId ? null : anchorId,
        }))
      }}
    >
      <summary>
        <span className="intake-name">{name}</span>{' '}
        <span className="summary-figure">
          {total}
          {anchorVerdictWords(deviation)}
        </span>
      </summary>
      {isOpen ? <Opened view={view} deviation={deviation} /> : null}
    </details>
  )
}

const WAYS = [
  { value: 'coordinates', words: 'Coordinates' },
  { value: 'tapes', words: 'Tapes' },
  { value: 'angle', words: 'Angle and length' },
] as const

const Opened = ({ view, deviation }: IntakeProps): ReactElement => {
  const { layout, record } = view
  const { entry } = deviation.reading
  return (
    <>
      {record.signed === undefined ? (
        <Intake view={view} deviation={deviation} />
      ) : (
        <ReadMeasurement entry={entry} layout={layout} />
      )}
      {entry.measurement === null ? null : (
        <MeasureFigure measurement={entry.measurement} deviation={deviation} />
      )}
      <IntakeResult layout={layout} deviation={deviation} />
    </>
  )
}

/** The ways to measure one anchor, and the fields of the one that is picked. */
const Intake = ({ view, deviation }: IntakeProps): ReactElement => {
  const { layout, record } = view
  const { entry } = deviation.reading
  const { edit } = useActions()
  const ref: MeasuredRef = { recordId: record.id, placeId: entry.placeId, anchorId: entry.anchorId }
  const name = entryName(entry, layout)
  const offered = offeredPoints(layout, record, entry)
  const [first] = offered
  const change = (measurement: Measurement): void =>
    edit(`Measure: ${name}`, (now) => withMeasurement(now, ref, measurement))
  const pickWay = (kind: Measurement['kind']): void => {
    if (first === undefined || kind === entry.measurement?.kind) return
    change(emptyMeasurement(kind, knownPointOf(first, layout), deviation.planned))
  }
  const fields = { layout, offered, onChange: change }
  return (
    <>
      <p className="hint">
        {measureToText(entry.planned, layout)} {sharedText(entry, layout)}
      </p>
      <SwitchField<Measurement['kind'] | 'none'>
        label="Measured by"
        value={entry.measurement?.kind ?? 'none'}
        choices={WAYS}
        onChange={(way) => {
          if (way !== 'none') pickWay(way)
        }}
      />
      {entry.measurement === null ? null : <Way measurement={entry.measurement} {...fields} />}
      {entry.measurement === null || entry.measurement.kind === 'coordinates' ? null : (
        <p className="hint">{KNOWN_POINT_HINT}</p>
      )}
      {entry.measurement?.kind === 'tapes' ? (
        <MirrorChoiceButtons
          measurement={entry.measurement}
          planned={deviation.planned}
          layout={layout}
          onChoose={change}
        />
      ) : null}
      {entry.planned.kind === 'tab' ? <TabAngles view={view} deviation={deviation} /> : null}
      {entry.measurement === null ? null : (
        <button
          type="button"
          onClick={() => edit(`Take out the measurement: ${name}`, (now) => withMeasurement(now, ref, null))}
        >
          Take the measurement out
        </button>
      )}
    </>
  )
}

const Way = (
  props: Omit<Parameters<typeof TapeWay>[0], 'measurement' | 'onChange'> & {
    readonly measurement: Measurement
    readonly onChange: (measurement: Measurement) => void
  },
): ReactElement => {
  const { measurement, ...rest } = props
  switch (measurement.kind) {
    case 'coordinates':
      return <CoordinateWay measurement={measurement} {...rest} />
    case 'tapes':
      return <TapeWay measurement={measurement} {...rest} />
    case 'angle':
      return <StringWay measurement={measurement} {...rest} />
  }
}

/** Turn and lean of a tab's plane, where somebody measured them. */
const TabAngles = ({ view, deviation }: IntakeProps): ReactElement => {
  const { layout, record } = view
  const { entry } = deviation.reading
  const { edit } = useActions()
  const ref: MeasuredRef = { recordId: record.id, placeId: entry.placeId, anchorId: entry.anchorId }
  const put = (angle: 'planDeg' | 'leanDeg', words: string) => (readings: readonly number[]) =>
    edit(`${words}: ${entryName(entry, layout)}`, (now) => withTabReadings(now, ref, angle, readings))
  return (
    <details className="tab-angles" open={entry.planDeg !== undefined || entry.leanDeg !== undefined}>
      <summary>Angles of the tab</summary>
      <div className="field-row">
        <ReadingFields
          label="Turn in plan"
          unit="deg"
          readings={entry.planDeg ?? []}
          limits={LIMITS.turnDeg}
          hint="From fore and aft; plus when its rear edge turns to the right."
          testId="read:planDeg"
          onChange={put('planDeg', 'Measure the turn')}
        />
        <ReadingFields
          label="Lean from upright"
          unit="deg"
          readings={entry.leanDeg ?? []}
          limits={LIMITS.leanDeg}
          hint="Plus when its right face looks up."
          testId="read:leanDeg"
          onChange={put('leanDeg', 'Measure the lean')}
        />
      </div>
    </details>
  )
}

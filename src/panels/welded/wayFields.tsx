import type { ReactElement } from 'react'
import type { OfferedPoint } from '../../domain/layout/asWelded/knownPoints'
import type { Layout } from '../../domain/layout/document/layout'
import { COUNTS, LIMITS } from '../../domain/layout/document/limits'
import type { KnownCoordinate, Measurement, TapeReading } from '../../domain/measure/measurement'
import { ChoiceField, SwitchField } from '../fields/ChoiceField'
import { KnownPointField } from './KnownPointField'
import { ReadingFields } from './ReadingFields'

type Kind<Name extends Measurement['kind']> = Extract<Measurement, { readonly kind: Name }>

export interface WayFieldsProps<Name extends Measurement['kind']> {
  readonly measurement: Kind<Name>
  readonly layout: Layout
  readonly offered: readonly OfferedPoint[]
  readonly onChange: (measurement: Kind<Name>) => void
}

const AXES = [
  { field: 'xMm', axis: 'x', words: 'x rearward' },
  { field: 'yMm', axis: 'y', words: 'y to the right' },
  { field: 'zMm', axis: 'z', words: 'z up' },
] as const

export const CoordinateWay = (props: WayFieldsProps<'coordinates'>): ReactElement => {
  const { measurement, onChange } = props
  return (
    <div className="field-row">
      {AXES.map(({ field, words }) => (
        <ReadingFields
          key={field}
          label={words}
          unit="mm"
          readings={measurement[field]}
          limits={LIMITS.coordinateMm}
          testId={`read:${field}`}
          onChange={(readings) => onChange({ ...measurement, [field]: readings })}
        />
      ))}
    </div>
  )
}

const COORDINATES: readonly { readonly value: 'none' | KnownCoordinate['axis']; readonly words: string }[] = [
  { value: 'none', words: 'None' },
  ...AXES.map(({ axis, words }) => ({ value: axis, words })),
]

/** One tape: what it starts from and what was read. */
const OneTape = (props: {
  readonly tape: TapeReading
  readonly index: number
  readonly onChange: (tape: TapeReading) => void
  readonly onRemove: () => void
}): ReactElement => {
  const { tape, index, onChange, onRemove } = props
  return (
    <div className="tape">
      <ReadingFields
        label={`Tape ${index + 1}, from: ${tape.from.name}`}
        unit="mm"
        readings={tape.lengthsMm}
        limits={LIMITS.tapeMm}
        testId={`read:tape-${index + 1}`}
        onChange={(lengthsMm) => onChange({ ...tape, lengthsMm })}
      />
      <button type="button" aria-label={`Take tape ${index + 1} out`} onClick={onRemove}>
        Take out
      </button>
    </div>
  )
}

export const TapeWay = (props: WayFieldsProps<'tapes'>): ReactElement => {
  const { measurement, layout, offered, onChange } = props
  const { tapes, coordinate } = measurement
  // What fits on which side was a choice between other places.
  const change = (patch: Partial<Kind<'tapes'>>): void => onChange({ ...measurement, ...patch, side: null })
  return (
    <>
      {tapes.map((tape, index) => (
        <OneTape
          // Tapes have no identity of their own but their order.
          // oxlint-disable-next-line react/no-array-index-key
          key={index}
          tape={tape}
          index={index}
          onChange={(next) =>
            onChange({ ...measurement, tapes: tapes.map((old) => (old === tape ? next : old)) })
          }
          onRemove={() => change({ tapes: tapes.filter((old) => old !== tape) })}
        />
      ))}
      {tapes.length >= COUNTS.tapes.max ? null : (
        <KnownPointField
          label={tapes.length === 0 ? 'First tape from' : 'One more tape from'}
          chosen={null}
          offered={offered}
          layout={layout}
          testId="read:add-tape"
          onPick={(from) => change({ tapes: [...tapes, { from, lengthsMm: [] }] })}
        />
      )}
      <ChoiceField
        label="One coordinate besides"
        value={coordinate?.axis ?? 'none'}
        choices={COORDINATES}
        testId="read:coordinate-axis"
        onChange={(axis) => change({ coordinate: axis === 'none' ? null : { axis, readingsMm: [] } })}
      />
      {coordinate === null ? null : (
        <ReadingFields
          label={AXES.find(({ axis }) => axis === coordinate.axis)?.words ?? coordinate.axis}
          unit="mm"
          readings={coordinate.readingsMm}
          limits={LIMITS.coordinateMm}
          testId="read:coordinate"
          onChange={(readingsMm) => onChange({ ...measurement, coordinate: { ...coordinate, readingsMm } })}
        />
      )}
    </>
  )
}

const RUNS = [
  { value: 'rearward', words: 'Rearward' },
  { value: 'forward', words: 'Forward' },
] as const

const ASIDE = [
  { value: 'y', words: 'Distance' },
  { value: 'plan', words: 'Angle from above' },
] as const

export const StringWay = (props: WayFieldsProps<'angle'>): ReactElement => {
  const { measurement, layout, offered, onChange } = props
  const { from, stringDeg, lengthMm, runs } = measurement
  return (
    <>
      <KnownPointField
        label="String from"
        chosen={from}
        offered={offered}
        layout={layout}
        testId="read:string-from"
        onPick={(known) => onChange({ ...measurement, from: known })}
      />
      <SwitchField
        label="The string runs"
        value={runs}
        choices={RUNS}
        onChange={(way) => onChange({ ...measurement, runs: way })}
      />
      <div className="field-row">
        <ReadingFields
          label="String from level"
          unit="deg"
          readings={stringDeg}
          limits={LIMITS.leanDeg}
          hint="Plus when it rises away from the known point."
          testId="read:string"
          onChange={(readings) => onChange({ ...measurement, stringDeg: readings })}
        />
        <ReadingFields
          label="Length along the string"
          unit="mm"
          readings={lengthMm}
          limits={LIMITS.tapeMm}
          testId="read:length"
          onChange={(readings) => onChange({ ...measurement, lengthMm: readings })}
        />
      </div>
      <AsideFields measurement={measurement} onChange={onChange} />
    </>
  )
}

/** How far a string goes aside: as a distance or as an angle seen from above. */
const AsideFields = (props: Pick<WayFieldsProps<'angle'>, 'measurement' | 'onChange'>): ReactElement => {
  const { measurement, onChange } = props
  const { aside } = measurement
  return (
    <>
      <SwitchField
        label="How far it goes aside, as"
        value={aside.kind}
        choices={ASIDE}
        onChange={(kind) =>
          onChange({
            ...measurement,
            aside: kind === 'y' ? { kind, readingsMm: [] } : { kind, readingsDeg: [] },
          })
        }
      />
      {aside.kind === 'y' ? (
        <ReadingFields
          label="Aside, to the right"
          unit="mm"
          readings={aside.readingsMm}
          limits={LIMITS.coordinateMm}
          hint="Square to the car’s length, from the known point; minus to the left."
          testId="read:aside"
          onChange={(readingsMm) => onChange({ ...measurement, aside: { kind: 'y', readingsMm } })}
        />
      ) : (
        <ReadingFields
          label="Angle from above"
          unit="deg"
          readings={aside.readingsDeg}
          limits={LIMITS.leanDeg}
          hint="From the car’s length; plus to the right."
          testId="read:aside"
          onChange={(readingsDeg) => onChange({ ...measurement, aside: { kind: 'plan', readingsDeg } })}
        />
      )}
    </>
  )
}

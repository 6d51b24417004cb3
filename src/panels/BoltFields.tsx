import type { ReactElement } from 'react'
import type { Place } from '../domain/layout/document/layout'
import { LIMITS, TEXT_LENGTHS } from '../domain/layout/document/limits'
import { type StrapBoltPatch, withStrapBolt } from '../domain/layout/edit/changeBelt'
import { useActions, useApp } from '../state/react'
import { lengthUnitOf } from '../state/selectors'
import { familiesOf } from './BeltStraps'
import { torqueFormat } from './fields/formats'
import { LengthField } from './fields/LengthField'
import { NumberField } from './fields/NumberField'
import { TextField } from './fields/TextField'

const BoltRow = (props: {
  readonly place: Place
  readonly family: ReturnType<typeof familiesOf>[number]['family']
  readonly words: string
}): ReactElement => {
  const { place, family, words } = props
  const { edit } = useActions()
  const unit = useApp(lengthUnitOf)
  const bolt = place.belt.hardware?.[family]
  const set = (what: string, patch: StrapBoltPatch): void =>
    edit(`${what} of the ${words.toLowerCase()} straps`, (layout) =>
      withStrapBolt(layout, place.id, family, patch),
    )
  return (
    <div className="field-block">
      <div className="field-row">
        <LengthField
          label={`${words} bolt diameter`}
          value={bolt?.boltDiameterMm ?? null}
          limits={LIMITS.boltDiameterMm}
          placeholder="not typed"
          onCommit={(boltDiameterMm) => set('Type the bolt diameter', { boltDiameterMm })}
          onClear={() => set('Clear the bolt diameter', { boltDiameterMm: undefined })}
        />
        <TextField
          label={`${words} bolt grade`}
          value={bolt?.grade ?? ''}
          maxLength={TEXT_LENGTHS.name}
          placeholder="not typed"
          onCommit={(grade) => set('Type the bolt grade', { grade })}
        />
        <NumberField
          label={`${words} bolt torque`}
          value={bolt?.torqueNm ?? null}
          limits={LIMITS.torqueNm}
          format={torqueFormat(unit)}
          placeholder="not typed"
          onCommit={(torqueNm) => set('Type the torque', { torqueNm })}
          onClear={() => set('Clear the torque', { torqueNm: undefined })}
        />
      </div>
      <TextField
        label={`${words}: where that is written`}
        value={bolt?.source ?? ''}
        maxLength={TEXT_LENGTHS.change}
        placeholder="not typed"
        onCommit={(source) => set('Type the source of the bolts', { source })}
      />
    </div>
  )
}

/** Bolts and torque from the belt maker's instructions, for the mount sheet. Nothing here is known by the program. */
export const BoltFields = ({ place }: { readonly place: Place }): ReactElement => (
  <fieldset>
    <legend>Bolts and torque, from the belt maker’s instructions</legend>
    {familiesOf(place.belt).map(({ family, words }) => (
      <BoltRow key={family} place={place} family={family} words={words} />
    ))}
    <p className="hint">
      Empty: the mount sheet leaves a line to fill in by hand. Only type what is written in the instructions
      that came with the belt, and say where.
    </p>
  </fieldset>
)

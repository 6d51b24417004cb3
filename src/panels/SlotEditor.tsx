import type { ReactElement } from 'react'
import type { Place } from '../domain/layout/document/layout'
import { LIMITS } from '../domain/layout/document/limits'
import { removeSlot, withSlot } from '../domain/layout/edit/changeSlots'
import { strapName } from '../domain/layout/wording/names'
import { capitalised } from '../domain/layout/wording/words'
import type { Slot, SlotFace } from '../domain/straps/seat'
import { STRAP_IDS, strapsOf, type StrapId } from '../domain/straps/strap'
import { useActions } from '../state/react'
import type { Change } from './change'
import { ChoiceField, ToggleField, type Choice } from './fields/ChoiceField'
import { AngleField, LengthField } from './fields/LengthField'
import { PointFields } from './fields/PointFields'

const FACES: readonly Choice<SlotFace>[] = [
  { value: 'back', words: 'Backrest' },
  { value: 'side', words: 'Side wall' },
  { value: 'cushion', words: 'Cushion' },
]

const withStrap = (slot: Slot, strap: StrapId, passes: boolean): readonly StrapId[] =>
  passes ? [...slot.straps, strap] : slot.straps.filter((other) => other !== strap)

const StrapToggles = (props: {
  readonly place: Place
  readonly slot: Slot
  readonly change: Change<Slot>
}): ReactElement => {
  const { place, slot, change } = props
  const offered = STRAP_IDS.filter(
    (strap) => slot.straps.includes(strap) || strapsOf(place.belt).includes(strap),
  )
  return (
    <fieldset>
      <legend>Straps through it (a strap passes one slot at most)</legend>
      {offered.map((strap) => (
        <ToggleField
          key={strap}
          label={capitalised(strapName(strap))}
          checked={slot.straps.includes(strap)}
          onChange={(passes) => change('the straps of a slot', { straps: withStrap(slot, strap, passes) })}
        />
      ))}
    </fieldset>
  )
}

/** One opening in the seat shell; its centre is typed in the seat frame, as measured on the seat. */
export const SlotEditor = (props: { readonly place: Place; readonly slot: Slot }): ReactElement => {
  const { place, slot } = props
  const { edit } = useActions()
  const change: Change<Slot> = (words, part) =>
    edit(`Change ${words}`, (layout) => withSlot(layout, place.id, slot.id, part))
  return (
    <details className="editor">
      <summary>Slot: {slot.straps.map(strapName).join(', ')}</summary>
      <ChoiceField
        label="Cut in"
        value={slot.face}
        choices={FACES}
        onChange={(face) => change('the face of a slot', { face })}
      />
      <StrapToggles place={place} slot={slot} change={change} />
      <PointFields
        legend="Centre from the hip point: behind, right, up the torso line"
        point={slot.centre}
        limits={LIMITS.seatCoordinateMm}
        onCommit={(to) => change('the centre of a slot', { centre: { ...slot.centre, ...to } })}
      />
      <div className="field-row">
        <LengthField
          label="Long side"
          value={slot.lengthMm}
          limits={LIMITS.slotLengthMm}
          onCommit={(mm) => change('the length of a slot', { lengthMm: mm })}
        />
        <LengthField
          label="Short side"
          value={slot.heightMm}
          limits={LIMITS.slotHeightMm}
          onCommit={(mm) => change('the height of a slot', { heightMm: mm })}
        />
        <AngleField
          label="Turned by"
          value={slot.turnDeg}
          limits={LIMITS.turnDeg}
          onCommit={(deg) => change('the turn of a slot', { turnDeg: deg })}
        />
      </div>
      <button
        type="button"
        onClick={() => edit('Remove a strap slot', (layout) => removeSlot(layout, place.id, slot.id))}
      >
        Remove this slot
      </button>
    </details>
  )
}

import type { ReactElement } from 'react'
import type { Place } from '../domain/layout/document/layout'
import { COUNTS, LIMITS, TEXT_LENGTHS } from '../domain/layout/document/limits'
import { addPlace, removePlace, withPlace, withSeat } from '../domain/layout/edit/change'
import { addSlot } from '../domain/layout/edit/changeSlots'
import { movedHandle } from '../domain/layout/edit/move'
import { strapName } from '../domain/layout/wording/names'
import type { Seat } from '../domain/straps/seat'
import { strapsOf } from '../domain/straps/strap'
import { useActions, useApp } from '../state/react'
import { currentPlace } from '../state/selectors'
import type { Change } from './change'
import { AngleField, LengthField } from './fields/LengthField'
import { PointFields } from './fields/PointFields'
import { TextField } from './fields/TextField'
import { ShellEditor } from './ShellEditor'
import { SlotEditor } from './SlotEditor'
import { Term } from './help/Term'

const PlaceFields = (props: { readonly place: Place }): ReactElement => {
  const { place } = props
  const { edit } = useActions()
  const placeCount = useApp((state) => state.layout.places.length)
  return (
    <div className="editor-head">
      <TextField
        label="Name of this place"
        value={place.name}
        maxLength={TEXT_LENGTHS.name}
        onCommit={(name) => edit('Rename the place', (layout) => withPlace(layout, place.id, { name }))}
      />
      <button
        type="button"
        disabled={placeCount >= COUNTS.places.max}
        onClick={() => edit('Add a place', addPlace)}
      >
        Add a place
      </button>
      <button
        type="button"
        disabled={placeCount === 1}
        title={placeCount === 1 ? 'A layout has at least one place' : undefined}
        onClick={() => edit(`Remove ${place.name}`, (layout) => removePlace(layout, place.id))}
      >
        Remove this place
      </button>
    </div>
  )
}

const ReclineFields = (props: { readonly seat: Seat; readonly change: Change<Seat> }): ReactElement => {
  const { seat, change } = props
  const { uprightDeg, reclinedDeg } = seat.reclineRange
  const isFixed = uprightDeg === reclinedDeg
  return (
    <fieldset>
      <legend>Recline of the torso line from vertical</legend>
      <div className="field-row">
        <AngleField
          label="As drawn"
          value={seat.reclineDeg}
          limits={isFixed ? LIMITS.reclineDeg : { min: uprightDeg, max: reclinedDeg, unit: '°' }}
          onCommit={(reclineDeg) => change('the recline', { reclineDeg })}
        />
        <AngleField
          label="Most upright"
          value={uprightDeg}
          limits={{ min: LIMITS.reclineDeg.min, max: seat.reclineDeg, unit: '°' }}
          onCommit={(deg) =>
            change('the most upright recline', { reclineRange: { ...seat.reclineRange, uprightDeg: deg } })
          }
        />
        <AngleField
          label="Most reclined"
          value={reclinedDeg}
          limits={{ min: seat.reclineDeg, max: LIMITS.reclineDeg.max, unit: '°' }}
          onCommit={(deg) =>
            change('the most reclined recline', { reclineRange: { ...seat.reclineRange, reclinedDeg: deg } })
          }
        />
      </div>
    </fieldset>
  )
}

const TravelFields = (props: { readonly seat: Seat; readonly change: Change<Seat> }): ReactElement => {
  const { seat, change } = props
  return (
    <fieldset>
      <legend>Slide from the drawn position</legend>
      <div className="field-row">
        <LengthField
          label="Forward by"
          value={seat.slide.forwardMm}
          limits={LIMITS.slideMm}
          onCommit={(mm) => change('the slide forward', { slide: { ...seat.slide, forwardMm: mm } })}
        />
        <LengthField
          label="Rearward by"
          value={seat.slide.rearwardMm}
          limits={LIMITS.slideMm}
          onCommit={(mm) => change('the slide rearward', { slide: { ...seat.slide, rearwardMm: mm } })}
        />
      </div>
    </fieldset>
  )
}

const HipAndRimFields = (props: { readonly seat: Seat; readonly change: Change<Seat> }): ReactElement => {
  const { seat, change } = props
  const { backrestRim } = seat
  return (
    <>
      <LengthField
        label="Hip point above the compressed cushion"
        value={seat.hipHeightMm}
        limits={LIMITS.hipHeightMm}
        hint="People whose own hip height differs sit higher or lower by the difference."
        onCommit={(mm) => change('the hip height', { hipHeightMm: mm })}
      />
      <fieldset>
        <legend>Backrest rim, from the hip point along the torso</legend>
        <div className="field-row">
          <LengthField
            label="Behind"
            value={backrestRim.xMm}
            limits={LIMITS.seatCoordinateMm}
            onCommit={(mm) => change('the backrest rim', { backrestRim: { ...backrestRim, xMm: mm } })}
          />
          <LengthField
            label="Up the back"
            value={backrestRim.zMm}
            limits={LIMITS.seatCoordinateMm}
            onCommit={(mm) => change('the backrest rim', { backrestRim: { ...backrestRim, zMm: mm } })}
          />
        </div>
      </fieldset>
    </>
  )
}

/** How thick the shell is where it is cut: a strap through a thick wall can touch both of its edges. */
const ThicknessField = (props: { readonly seat: Seat; readonly change: Change<Seat> }): ReactElement => (
  <LengthField
    label="Thickness of the shell at its slots"
    value={props.seat.shellThicknessMm ?? 0}
    limits={LIMITS.shellThicknessMm}
    hint="Padding and foam that the strap has to pass count too. 0: a thin sheet."
    onCommit={(shellThicknessMm) =>
      props.change('the thickness of the shell at its slots', { shellThicknessMm })
    }
  />
)

const Slots = (props: { readonly place: Place; readonly change: Change<Seat> }): ReactElement => {
  const { place, change } = props
  const { edit } = useActions()
  return (
    <section aria-label="Strap slots">
      <div className="term-heading">
        <h3>Strap slots</h3>
        <Term id="strap-slot" />
      </div>
      <ThicknessField seat={place.seat} change={change} />
      {place.seat.slots.length === 0 ? (
        <p className="hint">No slots: straps pass over the rim and round the sides of the shell.</p>
      ) : null}
      {place.seat.slots.map((slot) => (
        <SlotEditor key={slot.id} place={place} slot={slot} />
      ))}
      <div className="button-row">
        {strapsOf(place.belt)
          .filter((strap) => !place.seat.slots.some((slot) => slot.straps.includes(strap)))
          .map((strap) => (
            <button
              key={strap}
              type="button"
              onClick={() =>
                edit(`Add a slot for the ${strapName(strap)}`, (layout) => addSlot(layout, place.id, strap))
              }
            >
              Add: {strapName(strap)}
            </button>
          ))}
      </div>
    </section>
  )
}

/** The current place and its seat as fitted. */
export const SeatPanel = (): ReactElement | null => {
  const place = useApp(currentPlace)
  const { edit } = useActions()
  if (place === undefined) return null
  const change: Change<Seat> = (words, part) =>
    edit(`Change ${words}`, (layout) => withSeat(layout, place.id, part))
  return (
    <section className="panel" aria-label="Seat">
      <PlaceFields place={place} />
      <PointFields
        legend="Hip point from the datum"
        point={place.seat.hipPoint}
        limits={LIMITS.coordinateMm}
        onCommit={(to) =>
          edit('Move the hip point', (layout) => movedHandle(layout, { kind: 'hip', placeId: place.id }, to))
        }
      />
      <ReclineFields seat={place.seat} change={change} />
      <TravelFields seat={place.seat} change={change} />
      <HipAndRimFields seat={place.seat} change={change} />
      <ShellEditor place={place} />
      <Slots place={place} change={change} />
    </section>
  )
}

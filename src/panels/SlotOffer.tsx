import { useMemo, type ReactElement } from 'react'
import { addSlot } from '../domain/layout/edit/changeSlots'
import { crossedFace } from '../domain/layout/edit/startingSlot'
import { strapName } from '../domain/layout/wording/names'
import { slotOfferText, startingSlotText } from '../domain/layout/wording/slotText'
import type { PathProblem } from '../domain/straps/path'
import type { StrapId } from '../domain/straps/strap'
import { useActions, useApp, useAppStore } from '../state/react'
import { currentPlace } from '../state/selectors'

const slotsOf = (state: Parameters<typeof currentPlace>[0]) => currentPlace(state)?.seat.slots ?? []

const OfferButton = (props: { readonly strap: StrapId }): ReactElement | null => {
  const { strap } = props
  const store = useAppStore()
  const { edit, notify } = useActions()
  const layout = useApp((state) => state.layout)
  const place = useApp(currentPlace)
  const face = useMemo(
    () => (place === undefined ? null : crossedFace(layout, place, strap)),
    [layout, place, strap],
  )
  if (place === undefined) return null
  const add = (): void => {
    const before = slotsOf(store.state.getState())
    edit(`Add a slot for the ${strapName(strap)}`, (now) => addSlot(now, place.id, strap))
    const added = slotsOf(store.state.getState()).filter((slot) => !before.includes(slot))
    // The button goes with the problem, and the keyboard stays in the panels.
    document.getElementById('panels')?.focus({ preventScroll: true })
    notify('info', startingSlotText(strap, added, layout.units.length))
  }
  return (
    <button type="button" data-testid={`offer-slot:${strap}`} onClick={add}>
      {slotOfferText(face)}
    </button>
  )
}

/** The way on from a strap that the seat has no slot for; nothing for any other problem. */
export const SlotOffer = (props: { readonly problem: PathProblem | null }): ReactElement | null =>
  props.problem?.kind === 'no-slot' ? <OfferButton strap={props.problem.strap} /> : null

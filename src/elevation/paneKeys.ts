import type { KeyboardEvent } from 'react'
import type { AppStore } from '../state/store'
import type { PaneProps } from './ElevationPane'
import { type PointPx, panned, zoomedAbout } from './viewTransform'

/** A key press zooms by a quarter and pans by this much. Our judgement. */
const KEY_ZOOM = 1.25
const KEY_PAN_PX = 48

const KEY_PANS: Readonly<Record<string, PointPx>> = {
  ArrowLeft: { xPx: KEY_PAN_PX, yPx: 0 },
  ArrowRight: { xPx: -KEY_PAN_PX, yPx: 0 },
  ArrowUp: { xPx: 0, yPx: KEY_PAN_PX },
  ArrowDown: { xPx: 0, yPx: -KEY_PAN_PX },
}

/** To the next part, N, or back to the one before, B. Letters, because Tab must lead out of the drawing. */
const KEY_STEPS: Readonly<Record<string, 1 | -1>> = { n: 1, b: -1 }

export const INSTRUCTIONS =
  'N picks the next part and B the one before. With a part picked, arrow keys move it by one step, with Shift by a larger one; Enter goes to its numbers, Escape calls a move off or lets go. ' +
  'Without one, arrow keys move the view. Plus and minus zoom, 1 fits the current place, 0 the whole car. ' +
  'With a pointer, drag a handle. Every part and its numbers are also in the parts list, and all of the drawing as a list under View.'

/** The part after or before the one in hand, round and round; the first or last when there is none in hand. */
export const nextPart = (
  ids: readonly string[],
  selectedId: string | null,
  step: 1 | -1,
): string | undefined => {
  const index = selectedId === null ? -1 : ids.indexOf(selectedId)
  if (index < 0) return ids.at(step === 1 ? 0 : -1)
  return ids[(index + step + ids.length) % ids.length]
}

const hasModifier = (event: KeyboardEvent): boolean => event.ctrlKey || event.metaKey || event.altKey

/** Keys for the parts; true when the key was one of them. */
export const onPartKey = (store: AppStore, props: PaneProps, event: KeyboardEvent): boolean => {
  const { selectedHandleId, gesture } = store.state.getState()
  if (hasModifier(event) || gesture !== null) return false
  const step = KEY_STEPS[event.key.toLowerCase()]
  if (step !== undefined) {
    const ids = props.handles.map(({ id }) => id)
    const next = nextPart(ids, selectedHandleId, step)
    if (next !== undefined) store.actions.selectHandle(next)
    return true
  }
  if (selectedHandleId === null) return false
  if (event.key === 'Escape') store.actions.selectHandle(null)
  else if (event.key === 'Enter') document.getElementById('selected-part')?.focus()
  else return false
  return true
}

/** Keys for the view; true when the key was one of them. */
export const onViewKey = (props: PaneProps, event: KeyboardEvent): boolean => {
  const { control, elevation, size, sizes } = props
  if (hasModifier(event)) return false
  const pan = KEY_PANS[event.key]
  const at = { xPx: size.widthPx / 2, yPx: size.heightPx / 2 }
  const zoomBy = (factor: number): void =>
    control.set(zoomedAbout(control.latest(), { elevation, at, factor }, sizes))
  if (pan !== undefined) control.set(panned(control.latest(), elevation, pan))
  else if (event.key === '+' || event.key === '=') zoomBy(KEY_ZOOM)
  else if (event.key === '-') zoomBy(1 / KEY_ZOOM)
  else if (event.key === '0') control.fit('car')
  else if (event.key === '1') control.fit('place')
  else return false
  return true
}

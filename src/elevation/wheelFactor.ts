/** Zoom of one px of wheel travel; a usual notch of 100 px zooms by about a fifth. Our judgement. */
const PER_PX = 0.0018

/** Trackpads report a pinch as a wheel with Ctrl and much smaller steps. Our judgement. */
const PER_PINCH_PX = 0.01

/** One event never zooms further than this, whatever a free-running wheel reports. Our judgement. */
const MOST_PX = 400

/** Source of the modes' sizes: UI Events, WheelEvent.deltaMode 0 px, 1 lines, 2 pages (from memory); px per line our judgement. */
const PX_PER_UNIT: Readonly<Record<number, number>> = { 0: 1, 1: 16, 2: 400 }

/** By how much a wheel event zooms: above 1 (in) when turned away from the user. */
export const wheelFactor = (event: {
  readonly deltaY: number
  readonly deltaMode: number
  readonly ctrlKey: boolean
}): number => {
  const px = event.deltaY * (PX_PER_UNIT[event.deltaMode] ?? 1)
  const limited = Math.min(MOST_PX, Math.max(-MOST_PX, px))
  return Math.exp(-limited * (event.ctrlKey ? PER_PINCH_PX : PER_PX))
}

interface Row {
  readonly keys: string
  readonly does: string
}

/** What keys do on a drawing that has the focus, and everywhere. Held against the drawing's own keys by a test. */
export const KEY_ROWS: readonly Row[] = [
  { keys: 'Tab', does: 'goes to the next button, field or drawing; Shift and Tab back' },
  { keys: 'N, B', does: 'on a drawing: picks the next part, the one before' },
  {
    keys: 'Arrows',
    does: 'move the picked part by 1 mm or 1/16 in; without one, move the view; in a field, step the number',
  },
  { keys: 'Shift and arrows', does: 'the same by 10 mm or 1/2 in' },
  {
    keys: 'Enter',
    does: 'on a drawing: goes to the numbers of the picked part; in a field: takes the number over',
  },
  { keys: 'Escape', does: 'calls off a move, puts a field back, closes a card or menu, lets go of a part' },
  { keys: 'Plus, Minus', does: 'on a drawing: zoom in, zoom out' },
  { keys: '1, 0', does: 'on a drawing: fit the place, fit the whole car' },
  { keys: 'Ctrl or Cmd and Z', does: 'undoes; with Shift, or with Y instead of Z, does again' },
  { keys: 'Ctrl or Cmd and P', does: 'on the drawing: prints the mount sheet' },
]

/** What fingers, pens and the mouse do on a drawing. */
export const TOUCH_ROWS: readonly Row[] = [
  { keys: 'Tap', does: 'picks a part; where several lie together they are offered by name' },
  { keys: 'Drag a handle', does: 'moves the part; the drawing shows the place beside the finger' },
  { keys: 'Drag the ground', does: 'moves the view' },
  { keys: 'Two fingers', does: 'zoom and move the view' },
  { keys: 'Mouse wheel', does: 'zooms where the pointer is' },
]

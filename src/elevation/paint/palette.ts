/** Colours of the drawing, from the page's custom properties, so that day and night are one drawing. */
export interface Palette {
  readonly paper: string
  readonly ink: string
  readonly grid: string
  readonly tube: string
  readonly body: string
  readonly ghost: string
  readonly strap: string
  readonly hatch: string
  readonly dimension: string
  readonly accent: string
  readonly handle: string
  readonly handleFill: string
  readonly broken: string
  readonly tight: string
}

const PROPERTY: Readonly<Record<keyof Palette, string>> = {
  paper: '--paper',
  ink: '--ink',
  grid: '--grid',
  tube: '--tube',
  body: '--body-line',
  ghost: '--ghost',
  strap: '--strap',
  hatch: '--hatch',
  dimension: '--dimension',
  accent: '--accent',
  handle: '--handle',
  handleFill: '--handle-fill',
  broken: '--broken',
  tight: '--tight',
}

/** The palette in force on an element; a property that the page does not set falls back to the browser's own text colour. */
export const paletteOf = (element: Element): Palette => {
  const style = getComputedStyle(element)
  const colour = (name: keyof Palette): string =>
    style.getPropertyValue(PROPERTY[name]).trim() || style.color || 'CanvasText'
  return {
    paper: colour('paper'),
    ink: colour('ink'),
    grid: colour('grid'),
    tube: colour('tube'),
    body: colour('body'),
    ghost: colour('ghost'),
    strap: colour('strap'),
    hatch: colour('hatch'),
    dimension: colour('dimension'),
    accent: colour('accent'),
    handle: colour('handle'),
    handleFill: colour('handleFill'),
    broken: colour('broken'),
    tight: colour('tight'),
  }
}

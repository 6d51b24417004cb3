import { type TabMount, tabForm } from './anchor'

/**
 * Steel from the edge of a tab's hole to the edge of the plate while nobody has typed a size, mm. Source: 49 CFR 571.209 S4.1(f), for
 * universal reinforcing plates: "hole to edge" at least 15 mm; read. New Zealand's rules of 2010 ask for more than 25 mm; read.
 */
export const DEFAULT_RIM_MM = 15

/**
 * Clear between the plates of a clevis while nobody has typed it, mm. Our judgement, no source: the end fitting decides, and it is
 * measured before anything is cut.
 */
const DEFAULT_CLEVIS_GAP_MM = 8

/** Outside diameter of a threaded insert over that of its thread while nobody has typed it. Our judgement, no source: a wall of half the thread. */
const INSERT_DIAMETERS = 2

/** What of a tab has to be cut: every size of it, typed or chosen. */
export interface TabSize {
  /** Of the plate, square to the line from its hole to the tube, mm > 0; of an insert its outside diameter. */
  readonly widthMm: number
  /** From the hole's centre to the end of the plate beyond it, mm > 0. Meaningless for an insert. */
  readonly edgeDistanceMm: number
  /** Clear between the two plates of a clevis, mm ≥ 0; 0 for the other forms. */
  readonly gapMm: number
  /** Which of them nobody has typed: they are choices of ours, printed as such. */
  readonly chosen: readonly ('widthMm' | 'edgeDistanceMm' | 'gapMm')[]
}

/** The sizes of a tab: those of the document, and for what it does not say a plate with 15 mm of steel all round its hole. */
export const tabSize = (mount: TabMount): TabSize => {
  const form = tabForm(mount)
  const { holeDiameterMm } = mount
  if (form === 'insert')
    return {
      widthMm: mount.widthMm ?? INSERT_DIAMETERS * holeDiameterMm,
      edgeDistanceMm: 0,
      gapMm: 0,
      chosen: mount.widthMm === undefined ? ['widthMm'] : [],
    }
  const roundMm = holeDiameterMm / 2 + DEFAULT_RIM_MM
  return {
    widthMm: mount.widthMm ?? 2 * roundMm,
    edgeDistanceMm: mount.edgeDistanceMm ?? roundMm,
    gapMm: form === 'clevis' ? (mount.gapMm ?? DEFAULT_CLEVIS_GAP_MM) : 0,
    chosen: [
      ...(mount.widthMm === undefined ? ['widthMm' as const] : []),
      ...(mount.edgeDistanceMm === undefined ? ['edgeDistanceMm' as const] : []),
      ...(form === 'clevis' && mount.gapMm === undefined ? ['gapMm' as const] : []),
    ],
  }
}

import type { MeasuredMark } from './measuredPrimitives'
import type { Drawing } from './primitive'
import type { ProposedMarks } from './proposedPrimitives'
import type { LengthUnit } from '../document/layout'

/** What to put on an elevation. The same options on screen and on the sheet give the same drawing. */
export interface DrawingOptions {
  /** Null: all places. */
  readonly placeId: string | null
  /** The sitting drawn solid; null, or one of another place: the drawn position of the first occupant. */
  readonly sittingId: string | null
  /** Every other sitting of the place as thin outlines. */
  readonly ghosts: boolean
  /** The ghost that is picked out and named; left out or null: none. */
  readonly pointedSittingId?: string | null
  /** Anchor ids, or all of the drawn places. */
  readonly zones: 'none' | 'all' | readonly string[]
  readonly focusedFindingId: string | null
  /** Proposed positions to mark; left out: none. */
  readonly proposed?: readonly ProposedMarks[]
  /** Where anchors were measured on the car; left out: none. */
  readonly measured?: readonly MeasuredMark[]
  /** Handle ids whose distances from the datum are drawn; `datum`: every anchor and hip point. */
  readonly dimensions: 'none' | 'datum' | readonly string[]
  readonly lengthUnit: LengthUnit
  /** The main strap angles and the recline, as arcs with their values. */
  readonly angles: boolean
  /** Marks at the things that are taken hold of and have no symbol of their own: tube ends, slots, the top of the torso line. */
  readonly handles: boolean
  /** Names of parts; on unless said otherwise. */
  readonly labels?: boolean
  /**
   * Height of a line of text in mm of the car, at the scale it will be shown: text height on paper or screen divided by the scale.
   * Labels, arcs and dimension lines keep clear of each other by it.
   */
  readonly textHeightMm?: number
  /** The part of the plane that can be seen whole; labels keep inside it. Left out: everywhere. */
  readonly within?: Drawing['bounds']
}

/** The car of all places as it is drawn, with nothing but names on it; whoever wants more or less says only that. */
export const PLAIN_DRAWING = {
  placeId: null,
  sittingId: null,
  ghosts: false,
  zones: 'none',
  focusedFindingId: null,
  dimensions: 'none',
  angles: false,
  handles: false,
} as const satisfies Partial<DrawingOptions>

/** 2.5 mm lettering at a scale of 1:10. Source: ISO 3098-1 nominal lettering height 2.5 mm (from memory); the scale is our judgement. */
export const DEFAULT_TEXT_HEIGHT_MM = 25

import type { RuleSource } from '../rules/rule'
import {
  AIRCRAFT_BELTS,
  COMMON_PRACTICE,
  GLIDER_LEAFLET,
  IMPACT_LOADED,
  LABEL_PAGE,
  SLING_STANDARD,
  SLING_TABLE,
  WEB_SLINGS,
} from './careSources'

export const INSPECTION_ITEM_IDS = [
  'cuts',
  'abrasion',
  'chafing',
  'stiffness',
  'fading',
  'stitching',
  'latch',
  'adjusters',
  'hardware',
  'labels',
  'bolts',
] as const
export type InspectionItemId = (typeof INSPECTION_ITEM_IDS)[number]

/** One thing to look at on a belt. */
export interface InspectionItem {
  readonly id: InspectionItemId
  readonly name: string
  /** What to look for; finding it is a fault. One sentence. */
  readonly lookFor: string
  readonly sources: readonly RuleSource[]
}

/** The order is that of the work: webbing along its length, then what it runs through, then what holds it. */
export const INSPECTION_ITEMS: readonly InspectionItem[] = [
  {
    id: 'cuts',
    name: 'Cuts, holes, burns',
    lookFor: 'Any cut, tear, hole, melted or burnt spot; bend the webbing over a finger to open small cuts.',
    sources: [WEB_SLINGS, GLIDER_LEAFLET],
  },
  {
    id: 'abrasion',
    name: 'Fuzz and wear',
    lookFor: 'Webbing that has gone furry or thin, edges that are worn or frayed.',
    sources: [GLIDER_LEAFLET, SLING_TABLE],
  },
  {
    id: 'chafing',
    name: 'Chafing at slots, bar and guides',
    lookFor: 'Rubbed edges where the strap passes a slot, a guide hoop, a bar or a tube.',
    sources: [GLIDER_LEAFLET],
  },
  {
    id: 'stiffness',
    name: 'Stiff or brittle spots',
    lookFor: 'Places that do not bend like the rest, glazed, swollen or hard with dirt or chemicals.',
    sources: [SLING_STANDARD],
  },
  {
    id: 'fading',
    name: 'Fading',
    lookFor:
      'Colour gone pale or changed, against a stretch that lay covered: sun and chemicals take strength.',
    sources: [SLING_STANDARD, AIRCRAFT_BELTS],
  },
  {
    id: 'stitching',
    name: 'Stitching',
    lookFor: 'Broken, loose, pulled or worn stitches at every sewn end.',
    sources: [GLIDER_LEAFLET, WEB_SLINGS],
  },
  {
    id: 'latch',
    name: 'Latch',
    lookFor:
      'A latch that does not lock every strap with a click and free them all at once, or runs rough with dirt.',
    sources: [COMMON_PRACTICE],
  },
  {
    id: 'adjusters',
    name: 'Adjusters hold',
    lookFor: 'An adjuster that slips when the strap is pulled hard, or three-bar slides not woven back.',
    sources: [GLIDER_LEAFLET],
  },
  {
    id: 'hardware',
    name: 'Metal parts',
    lookFor: 'Cracks, bends, rust, wear or sharp edges on links, ends, slides and buckle.',
    sources: [GLIDER_LEAFLET, SLING_STANDARD],
  },
  {
    id: 'labels',
    name: 'Labels',
    lookFor: 'A label missing or not readable; without it age and standard cannot be shown to anybody.',
    sources: [SLING_TABLE, LABEL_PAGE],
  },
  {
    id: 'bolts',
    name: 'Bolts, tabs and bar',
    lookFor:
      'A loose bolt, a worn hole, a bent or cracked tab, weld or bar, an end that does not turn freely.',
    sources: [GLIDER_LEAFLET],
  },
]

/** Something to know about looking a belt over. */
export interface CareStatement {
  readonly says: string
  readonly source: RuleSource
  /** Where sources disagree or the document is about something else; null otherwise. */
  readonly caveat: string | null
}

/** What an inspection cannot show. */
export const INSPECTION_LIMIT: CareStatement = {
  says: 'Webbing that looks sound may have lost most of its strength: a shoulder harness that broke in a crash held less than a fifth of what it once did. Only a pull to destruction shows strength, and that uses up the belt.',
  source: AIRCRAFT_BELTS,
  caveat: 'A harness of a helicopter, stamped some thirty years before.',
}

/** What follows from a crash. */
export const AFTER_CRASH: CareStatement = {
  says: 'After a crash, a roll-over or a hard landing the belt is out of use, however it looks, until its maker has judged it.',
  source: IMPACT_LOADED,
  caveat:
    'That rule is about harnesses for work at height and lets a competent person judge; that only the maker may, is our judgement.',
}

/** What follows from any fault. */
export const AFTER_FAULT: CareStatement = {
  says: 'Any fault: out of use until the maker or a licensed person has looked at it. The belt maker’s instructions decide what can be mended.',
  source: WEB_SLINGS,
  caveat: 'The document is about slings of the same webbing, which it takes out of service at once.',
}

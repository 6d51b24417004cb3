import { ANCHOR_FORMS } from '../straps/anchor'
import type { PropertyId } from './rule'

const YES_NO = ['yes', 'no'] as const

/** The words that a property can have; null for one that is a number. */
export const PROPERTY_WORDS: Readonly<Record<PropertyId, readonly string[] | null>> = {
  'belt-points': null,
  'belt-buckle': ['latch-and-link', 'rotary-cam'],
  'belt-material': ['polyester', 'nylon'],
  'belt-lap-adjuster': ['pull-up', 'pull-down'],
  'belt-head-and-neck': YES_NO,
  'belt-joined': YES_NO,
  'straps-crossed': YES_NO,
  'webbing-width': null,
  'wrap-guide-hoops': YES_NO,
  'wrap-bar-diameter': null,
  'wrap-tube-role': ['harness-bar', 'cage', 'floor'],
  'strap-slot': YES_NO,
  'slot-spare': null,
  'tab-to-tube': null,
  'sub-to-lap': null,
  'shoulder-anchorages': ['separate', 'shared'],
  'anchor-form': ANCHOR_FORMS,
  'eye-thread': null,
  'tab-thickness': null,
  'tab-shear': ['single', 'double'],
  'bar-diameter': null,
  'bar-wall': null,
  'bar-area': null,
  'bar-second-moment': null,
}

import type { PropertyId } from '../../rules/rule'

/** A property as a lower-case name. */
export const propertyName = (id: PropertyId): string => {
  switch (id) {
    case 'belt-points':
      return 'number of points'
    case 'belt-buckle':
      return 'buckle'
    case 'belt-material':
      return 'webbing material'
    case 'belt-lap-adjuster':
      return 'lap adjusters'
    case 'belt-head-and-neck':
      return 'head-and-neck restraint'
    case 'belt-joined':
      return 'shoulder straps joined'
    case 'straps-crossed':
      return 'straps crossed'
    case 'anchor-form':
      return 'fixed by'
    case 'eye-thread':
      return 'thread of the eye bolt'
    case 'webbing-width':
      return 'webbing width'
    case 'wrap-guide-hoops':
      return 'guide hoops'
    case 'wrap-tube-role':
      return 'kind of the wrapped tube'
    case 'strap-slot':
      return 'slot in the seat'
    case 'slot-spare':
      return 'slot length beyond the webbing’s width'
    case 'tab-to-tube':
      return 'distance to its own tube'
    case 'sub-to-lap':
      return 'distance to the lap strap’s anchor'
    case 'shoulder-anchorages':
      return 'shoulder anchorages'
    case 'wrap-bar-diameter':
      return 'diameter of the wrapped bar'
    case 'tab-thickness':
      return 'tab thickness'
    case 'tab-shear':
      return 'bolt held in'
    case 'bar-diameter':
      return 'outside diameter'
    case 'bar-wall':
      return 'wall'
    case 'bar-area':
      return 'steel section area'
    case 'bar-second-moment':
      return 'second moment of area'
  }
}

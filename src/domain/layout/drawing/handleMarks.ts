import { type Elevation, projected } from '../../geometry/plane'
import type { Handle } from '../edit/handle'
import type { MarkKind, Primitive } from './primitive'

/** The symbol of a handle that nothing else on the drawing marks; null for the hip point, shoulder point and anchors. */
const markOf = (handle: Handle): MarkKind | null => {
  switch (handle.ref.kind) {
    case 'recline':
      return 'recline'
    case 'slot':
      return 'slot'
    case 'tube-point':
    case 'tube-height':
      return 'tube-end'
    case 'hip':
    case 'shoulder-point':
    case 'anchor':
    case 'shell-point':
      return null
  }
}

/** Marks at what can be taken hold of and has no symbol of its own. */
export const handleMarks = (handles: readonly Handle[], elevation: Elevation): Primitive[] =>
  handles.flatMap((handle): Primitive[] => {
    const mark = markOf(handle)
    if (mark === null) return []
    const at = projected(handle.point, elevation)
    return [{ kind: 'mark', key: `handle/${handle.id}`, part: handle.id, at, mark, verdict: 'none' }]
  })

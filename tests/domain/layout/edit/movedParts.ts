import type { PointMm } from '../../../../src/domain/geometry/point'
import type { Layout, Place } from '../../../../src/domain/layout/document/layout'
import type { HandleRef } from '../../../../src/domain/layout/edit/handle'
import { handleById, handleId } from '../../../../src/domain/layout/edit/handles'
import type { StrapId } from '../../../../src/domain/straps/strap'
import { exampleLayout } from '../../../support/exampleLayouts'

export const rock = exampleLayout('rock-buggy.layout.json')
export const trail = exampleLayout('trail-car-two-seat.layout.json')

export const placeOf = (layout: Layout, id = 'driver'): Place => {
  const place = layout.places.find((candidate) => candidate.id === id)
  if (place === undefined) throw new Error(`no place ${id}`)
  return place
}

export const anchorPoint = (layout: Layout, strap: StrapId, placeId = 'driver'): PointMm => {
  const anchor = placeOf(layout, placeId).anchors.find((candidate) => candidate.strap === strap)
  if (anchor === undefined) throw new Error(`no anchor for ${strap}`)
  return anchor.mount.point
}

export const handlePoint = (layout: Layout, ref: HandleRef): PointMm => {
  const handle = handleById(layout, handleId(ref))
  if (handle === null) throw new Error(`no handle ${handleId(ref)}`)
  return handle.point
}

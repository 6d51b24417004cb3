import type { Primitive } from '../../domain/layout/drawing/primitive'
import { at, type Brush } from './brush'

type Zone = Extract<Primitive, { kind: 'zone' }>

/** Distance between hatch lines: fine enough to read as a tint, open enough to see through. Our judgement. */
const HATCH_PX = 7

const clipToRegion = (brush: Brush, zone: Zone): void => {
  brush.canvas.beginPath()
  for (const polygon of zone.region) {
    polygon.forEach((corner, index) => {
      const { xPx, yPx } = at(brush, corner)
      if (index === 0) brush.canvas.moveTo(xPx, yPx)
      else brush.canvas.lineTo(xPx, yPx)
    })
    brush.canvas.closePath()
  }
  brush.canvas.clip()
}

/**
 * Hatch lines over the whole stage, clipped to the zone. They are counted from the datum, so the hatch stays on the car while
 * panning instead of swimming under it.
 */
const hatch = (brush: Brush, hatchDeg: number, widthPx: number, heightPx: number): void => {
  const { canvas, view } = brush
  const across = {
    x: -Math.sin((-hatchDeg * Math.PI) / 180),
    y: Math.cos((-hatchDeg * Math.PI) / 180),
  }
  const along = { x: across.y, y: -across.x }
  const corners = [0, widthPx].flatMap((x) =>
    [0, heightPx].map((y) => (x - view.originXPx) * across.x + (y - view.originYPx) * across.y),
  )
  const reachPx = widthPx + heightPx
  const middle = {
    x: widthPx / 2 - view.originXPx,
    y: heightPx / 2 - view.originYPx,
  }
  const middleAlong = middle.x * along.x + middle.y * along.y
  canvas.beginPath()
  const first = Math.ceil(Math.min(...corners) / HATCH_PX)
  const last = Math.floor(Math.max(...corners) / HATCH_PX)
  for (let line = first; line <= last; line += 1) {
    const x = view.originXPx + across.x * line * HATCH_PX + along.x * middleAlong
    const y = view.originYPx + across.y * line * HATCH_PX + along.y * middleAlong
    canvas.moveTo(x - along.x * reachPx, y - along.y * reachPx)
    canvas.lineTo(x + along.x * reachPx, y + along.y * reachPx)
  }
  canvas.stroke()
}

export const paintZone = (brush: Brush, zone: Zone, widthPx: number, heightPx: number): void => {
  const { canvas, palette } = brush
  canvas.save()
  canvas.strokeStyle = palette.hatch
  canvas.setLineDash([])
  canvas.lineWidth = 0.75
  canvas.save()
  clipToRegion(brush, zone)
  hatch(brush, zone.hatchDeg, widthPx, heightPx)
  canvas.restore()
  canvas.lineWidth = 1.25
  canvas.beginPath()
  for (const [from, to] of zone.edges) {
    const start = at(brush, from)
    const end = at(brush, to)
    canvas.moveTo(start.xPx, start.yPx)
    canvas.lineTo(end.xPx, end.yPx)
  }
  canvas.stroke()
  canvas.restore()
}

import type { Elevation, PlanePointMm } from '../domain/geometry/plane'
import { handleAt, type HandleSpot } from './handles/handleHit'
import { panned, pinched, type PaneSizes, type PointPx, type SharedView } from './viewTransform'

/** What the pointer machine of one elevation may see and do; the page gives it the real thing, a test gives it a list. */
export interface PanePort {
  readonly elevation: Elevation
  readonly spots: () => readonly HandleSpot[]
  readonly selectedId: () => string | null
  readonly view: () => SharedView
  readonly sizes: () => PaneSizes
  readonly setView: (view: SharedView) => void
  readonly select: (id: string | null) => void
  readonly refuse: (id: string) => void
  readonly beginDrag: (id: string) => void
  /** From where the drag began. */
  readonly dragBy: (byMm: PlanePointMm) => void
  readonly endDrag: () => void
  readonly cancelDrag: () => void
  /** False once something else, such as Escape, has called the drag off. */
  readonly isDragRunning: () => boolean
  /** Calls back once before the next frame. */
  readonly onNextFrame: (callback: () => void) => void
}

type Mode =
  | { readonly kind: 'idle' }
  | { readonly kind: 'press'; readonly pointerId: number; readonly id: string; readonly from: PointPx }
  | { readonly kind: 'drag'; readonly pointerId: number; readonly from: PointPx }
  | { readonly kind: 'pan'; readonly pointerId: number; readonly last: PointPx; readonly hasMoved: boolean }
  | {
      readonly kind: 'pinch'
      readonly pointerIds: readonly [number, number]
      readonly start: { readonly view: SharedView; readonly fingers: readonly [PointPx, PointPx] }
    }

const IDLE: Mode = { kind: 'idle' }

/** A finger that is put down and lifted wanders by a few px; less than this is a tap. Our judgement. */
export const TAP_SLACK_PX = 4

const distancePx = (a: PointPx, b: PointPx): number => Math.hypot(b.xPx - a.xPx, b.yPx - a.yPx)

/**
 * What mouse and fingers mean on one elevation. One pointer on a handle: tap selects it, a move drags it. One pointer on empty
 * paper pans. A second finger always means pinch: it calls off a drag that its first finger may have begun by accident.
 */
export class PanePointer {
  readonly #port: PanePort
  readonly #fingers = new Map<number, PointPx>()
  #mode: Mode = IDLE
  #isFrameAsked = false

  constructor(port: PanePort) {
    this.#port = port
  }

  down(pointerId: number, at: PointPx): void {
    // A pointer that comes down twice was lifted where the page could not see it.
    this.cancel(pointerId)
    this.#fingers.set(pointerId, at)
    if (this.#fingers.size === 1) this.#press(pointerId, at)
    else if (this.#fingers.size === 2) this.#beginPinch()
  }

  move(pointerId: number, at: PointPx): void {
    if (!this.#fingers.has(pointerId)) return
    this.#fingers.set(pointerId, at)
    const mode = this.#mode
    if (mode.kind === 'press' && mode.pointerId === pointerId) {
      if (distancePx(mode.from, at) < TAP_SLACK_PX) return
      this.#port.beginDrag(mode.id)
      this.#mode = { kind: 'drag', pointerId, from: mode.from }
    }
    if (this.#mode.kind === 'drag') this.#askFrame()
    this.#pan(pointerId, at)
    this.#pinch()
  }

  up(pointerId: number): void {
    const mode = this.#mode
    if (mode.kind === 'drag' && mode.pointerId === pointerId) {
      // The last move may still wait for its frame; the drop is where the finger left the glass.
      this.#showDrag()
      this.#port.endDrag()
    }
    if (mode.kind === 'pan' && mode.pointerId === pointerId && !mode.hasMoved) this.#port.select(null)
    this.#fingers.delete(pointerId)
    if (mode.kind === 'idle') return
    if (mode.kind !== 'pinch') {
      if (mode.pointerId === pointerId) this.#mode = IDLE
    } else if (mode.pointerIds.includes(pointerId)) this.#mode = this.#afterPinch()
  }

  cancel(pointerId: number): void {
    if (!this.#fingers.has(pointerId)) return
    if (this.#mode.kind === 'drag' && this.#mode.pointerId === pointerId) this.#port.cancelDrag()
    this.#fingers.delete(pointerId)
    this.#mode = IDLE
  }

  #press(pointerId: number, at: PointPx): void {
    const spot = handleAt(this.#port.spots(), at, this.#port.selectedId())
    if (spot === null) {
      this.#mode = { kind: 'pan', pointerId, last: at, hasMoved: false }
      return
    }
    this.#port.select(spot.id)
    if (!spot.isMovable) this.#port.refuse(spot.id)
    this.#mode = spot.isMovable ? { kind: 'press', pointerId, id: spot.id, from: at } : IDLE
  }

  #askFrame(): void {
    if (this.#isFrameAsked) return
    this.#isFrameAsked = true
    this.#port.onNextFrame(() => this.#showDrag())
  }

  #showDrag(): void {
    this.#isFrameAsked = false
    const mode = this.#mode
    if (mode.kind !== 'drag') return
    const at = this.#fingers.get(mode.pointerId)
    if (!this.#port.isDragRunning()) this.#mode = IDLE
    else if (at !== undefined) {
      const { pxPerMm } = this.#port.view()
      this.#port.dragBy({
        uMm: (at.xPx - mode.from.xPx) / pxPerMm,
        vMm: (mode.from.yPx - at.yPx) / pxPerMm,
      })
    }
  }

  #pan(pointerId: number, at: PointPx): void {
    const mode = this.#mode
    if (mode.kind !== 'pan' || mode.pointerId !== pointerId) return
    if (!mode.hasMoved && distancePx(mode.last, at) < TAP_SLACK_PX) return
    const byPx = { xPx: at.xPx - mode.last.xPx, yPx: at.yPx - mode.last.yPx }
    this.#port.setView(panned(this.#port.view(), this.#port.elevation, byPx))
    this.#mode = { ...mode, last: at, hasMoved: true }
  }

  #beginPinch(): void {
    if (this.#mode.kind === 'drag') this.#port.cancelDrag()
    const [first, second] = [...this.#fingers]
    if (first === undefined || second === undefined) return
    this.#mode = {
      kind: 'pinch',
      pointerIds: [first[0], second[0]],
      start: { view: this.#port.view(), fingers: [first[1], second[1]] },
    }
  }

  #pinch(): void {
    const mode = this.#mode
    if (mode.kind !== 'pinch') return
    const [first, second] = mode.pointerIds.map((id) => this.#fingers.get(id))
    if (first === undefined || second === undefined) return
    this.#port.setView(pinched(mode.start, [first, second], this.#port.elevation, this.#port.sizes()))
  }

  /** The finger that stays after a pinch goes on panning. */
  #afterPinch(): Mode {
    const [rest] = [...this.#fingers]
    return rest === undefined ? IDLE : { kind: 'pan', pointerId: rest[0], last: rest[1], hasMoved: true }
  }
}

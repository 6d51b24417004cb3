import type { Elevation, PlanePointMm } from '../domain/geometry/plane'
import { crowdAt, handleAt, type HandleSpot, type PointerKind } from './handles/handleHit'
import {
  paneTransform,
  panned,
  pinched,
  type PaneSizes,
  type PointPx,
  type SharedView,
  toMm,
} from './viewTransform'

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
  /** Several handles lie where a finger or pen tapped: which one is meant can be chosen from a list. */
  readonly offer: (ids: readonly string[], at: PointPx) => void
  readonly beginDrag: (id: string, kind: PointerKind) => void
  /** From where the drag began. */
  readonly dragBy: (byMm: PlanePointMm) => void
  readonly endDrag: () => void
  readonly cancelDrag: () => void
  /** False once something else, such as Escape, has called the drag off. */
  readonly isDragRunning: () => boolean
  /** Calls back once before the next frame. */
  readonly onNextFrame: (callback: () => void) => void
}

/** A pointer as it comes down. */
export interface Contact {
  readonly id: number
  readonly kind: PointerKind
  /** On the clock of the page's events. */
  readonly timeMs: number
}

type Mode =
  | { readonly kind: 'idle' }
  | {
      readonly kind: 'press'
      readonly contact: Contact
      readonly spot: HandleSpot
      readonly from: PointPx
      readonly fromMm: PlanePointMm
      readonly crowd: readonly string[]
    }
  | { readonly kind: 'drag'; readonly pointerId: number; readonly fromMm: PlanePointMm }
  | {
      readonly kind: 'pan'
      readonly pointerId: number
      readonly last: PointPx
      readonly hasMoved: boolean
      /** Lifted without having moved it takes the selection away: a tap on empty paper. */
      readonly canDeselect: boolean
    }
  | {
      readonly kind: 'pinch'
      readonly pointerIds: readonly [number, number]
      readonly start: { readonly view: SharedView; readonly fingers: readonly [PointPx, PointPx] }
    }

const IDLE: Mode = { kind: 'idle' }

/** A finger that is put down and lifted wanders by a few px; less than this is a tap. Our judgement. */
export const TAP_SLACK_PX = 4

/** For so long after a pen was last near, a touch is more likely the hand that holds it than a finger that means it. Our judgement. */
export const PEN_MEMORY_MS = 1500

const distancePx = (a: PointPx, b: PointPx): number => Math.hypot(b.xPx - a.xPx, b.yPx - a.yPx)

/**
 * What mouse, pen and fingers mean on one elevation. One pointer on a handle: tap selects it, a move drags it. One pointer on empty
 * paper pans. A second finger always means pinch: it calls off a drag that its first finger may have begun by accident. A third
 * means nothing. While a pen is down the hand beside it is not heard; shortly after it fingers pan and pinch, and take no handle.
 */
export class PanePointer {
  readonly #port: PanePort
  readonly #fingers = new Map<number, PointPx>()
  #mode: Mode = IDLE
  #isFrameAsked = false
  #penId: number | null = null
  #penSeenMs = -Infinity

  constructor(port: PanePort) {
    this.#port = port
  }

  /** Nothing is down that it listens to. */
  get isIdle(): boolean {
    return this.#fingers.size === 0
  }

  down(contact: Contact, at: PointPx): void {
    // A pointer that comes down twice was lifted where the page could not see it.
    this.cancel(contact.id)
    if (contact.kind === 'pen') {
      // What lies on the glass already is the hand.
      this.cancelAll()
      this.#penId = contact.id
      this.penSeen(contact.timeMs)
    } else if (contact.kind === 'touch' && this.#penId !== null) return
    this.#fingers.set(contact.id, at)
    if (this.#fingers.size === 1) this.#press(contact, at)
    else if (this.#fingers.size === 2) this.#beginPinch()
  }

  /** A pen hovers over the pane or writes on it. */
  penSeen(timeMs: number): void {
    this.#penSeenMs = timeMs
  }

  move(pointerId: number, at: PointPx): void {
    if (!this.#fingers.has(pointerId)) return
    this.#fingers.set(pointerId, at)
    const mode = this.#mode
    if (mode.kind === 'press' && mode.contact.id === pointerId) this.#moveFromPress(mode, at)
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
    if (mode.kind === 'press' && mode.contact.id === pointerId && mode.crowd.length > 1)
      this.#port.offer(mode.crowd, mode.from)
    const isTap = mode.kind === 'pan' && mode.pointerId === pointerId && !mode.hasMoved
    if (isTap && mode.canDeselect) this.#port.select(null)
    this.#release(pointerId)
  }

  cancel(pointerId: number): void {
    if (!this.#fingers.has(pointerId)) return
    if (this.#mode.kind === 'drag' && this.#mode.pointerId === pointerId) this.#port.cancelDrag()
    this.#release(pointerId)
  }

  /** The device was turned, or a pen came down: nothing that was begun goes on. */
  cancelAll(): void {
    for (const pointerId of this.#fingers.keys()) this.cancel(pointerId)
  }

  #release(pointerId: number): void {
    this.#fingers.delete(pointerId)
    if (this.#penId === pointerId) this.#penId = null
    const mode = this.#mode
    if (mode.kind === 'idle') return
    if (mode.kind === 'pinch') {
      if (mode.pointerIds.includes(pointerId)) this.#mode = this.#afterPinch()
    } else if ((mode.kind === 'press' ? mode.contact.id : mode.pointerId) === pointerId) this.#mode = IDLE
  }

  #press(contact: Contact, at: PointPx): void {
    const { id, kind, timeMs } = contact
    const isBesidePen = kind === 'touch' && timeMs - this.#penSeenMs < PEN_MEMORY_MS
    const spots = isBesidePen ? [] : this.#port.spots()
    const spot = handleAt(spots, at, this.#port.selectedId(), kind)
    if (spot === null) {
      this.#mode = { kind: 'pan', pointerId: id, last: at, hasMoved: false, canDeselect: !isBesidePen }
      return
    }
    const crowd = kind === 'mouse' ? [] : crowdAt(spots, at, kind).map((candidate) => candidate.id)
    this.#port.select(spot.id)
    if (!spot.isMovable) this.#port.refuse(spot.id)
    this.#mode = { kind: 'press', contact, spot, from: at, fromMm: this.#mmAt(at), crowd }
  }

  #moveFromPress(mode: Extract<Mode, { kind: 'press' }>, at: PointPx): void {
    if (distancePx(mode.from, at) < TAP_SLACK_PX) return
    if (!mode.spot.isMovable) {
      this.#mode = IDLE
      return
    }
    this.#port.beginDrag(mode.spot.id, mode.contact.kind)
    this.#mode = { kind: 'drag', pointerId: mode.contact.id, fromMm: mode.fromMm }
  }

  #mmAt(at: PointPx): PlanePointMm {
    return toMm(paneTransform(this.#port.view(), this.#port.elevation), at)
  }

  #askFrame(): void {
    if (this.#isFrameAsked) return
    this.#isFrameAsked = true
    this.#port.onNextFrame(() => this.#showDrag())
  }

  /** Counted on the car and not in px: the handle stays under the finger when the drawing is zoomed or changes size meanwhile. */
  #showDrag(): void {
    this.#isFrameAsked = false
    const mode = this.#mode
    if (mode.kind !== 'drag') return
    const at = this.#fingers.get(mode.pointerId)
    if (!this.#port.isDragRunning()) this.#mode = IDLE
    else if (at !== undefined) {
      const { uMm, vMm } = this.#mmAt(at)
      this.#port.dragBy({ uMm: uMm - mode.fromMm.uMm, vMm: vMm - mode.fromMm.vMm })
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
    return rest === undefined
      ? IDLE
      : { kind: 'pan', pointerId: rest[0], last: rest[1], hasMoved: true, canDeselect: false }
  }
}

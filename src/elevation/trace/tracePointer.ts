import type { PointerKind } from '../handles/handleHit'
import { TAP_SLACK_PX } from '../panePointer'
import type { PointPx } from '../viewTransform'

/** What the pointers of a pane that is being traced on may do. */
export interface TracePort {
  /** A finger or pen aims at a place; null: it aims no more. */
  readonly aim: (at: PointPx | null) => void
  readonly place: (at: PointPx) => void
  readonly pan: (by: PointPx) => void
  readonly beginPinch: (fingers: readonly [PointPx, PointPx]) => void
  readonly pinch: (fingers: readonly [PointPx, PointPx]) => void
}

const distancePx = (a: PointPx, b: PointPx): number => Math.hypot(b.xPx - a.xPx, b.yPx - a.yPx)

type Mode =
  | { readonly kind: 'idle' }
  | { readonly kind: 'click' | 'pan'; readonly last: PointPx }
  | { readonly kind: 'aim' }
  | { readonly kind: 'pinch' }

const IDLE: Mode = { kind: 'idle' }

/**
 * What mouse, pen and fingers mean while something is traced. A click places; a mouse that moves with its button down pans. A finger or pen aims
 * from where it is put down and places where it is lifted, so that it can be led to the spot; two fingers pan and zoom and place nothing.
 */
export class TracePointer {
  readonly #port: TracePort
  readonly #down = new Map<number, PointPx>()
  #mode: Mode = IDLE

  constructor(port: TracePort) {
    this.#port = port
  }

  down(pointerId: number, kind: PointerKind, at: PointPx): void {
    this.#down.set(pointerId, at)
    if (this.#down.size === 1) {
      this.#mode = kind === 'mouse' ? { kind: 'click', last: at } : { kind: 'aim' }
      if (kind !== 'mouse') this.#port.aim(at)
    } else if (this.#down.size === 2) {
      this.#port.aim(null)
      this.#mode = { kind: 'pinch' }
      const fingers = this.#fingers()
      if (fingers !== null) this.#port.beginPinch(fingers)
    }
  }

  move(pointerId: number, at: PointPx): void {
    if (!this.#down.has(pointerId)) return
    this.#down.set(pointerId, at)
    const mode = this.#mode
    if (mode.kind === 'aim') this.#port.aim(at)
    else if (mode.kind === 'pinch') {
      const fingers = this.#fingers()
      if (fingers !== null) this.#port.pinch(fingers)
    } else if (mode.kind === 'pan' || (mode.kind === 'click' && distancePx(mode.last, at) >= TAP_SLACK_PX)) {
      this.#port.pan({ xPx: at.xPx - mode.last.xPx, yPx: at.yPx - mode.last.yPx })
      this.#mode = { kind: 'pan', last: at }
    }
  }

  up(pointerId: number): void {
    const at = this.#down.get(pointerId)
    if (at === undefined) return
    const mode = this.#mode
    this.cancel(pointerId)
    if (mode.kind === 'aim') this.#port.place(at)
    else if (mode.kind === 'click') this.#port.place(mode.last)
  }

  /** The pointer is gone without having meant anything. */
  cancel(pointerId: number): void {
    if (!this.#down.delete(pointerId)) return
    if (this.#mode.kind === 'aim') this.#port.aim(null)
    // The finger that stays after a pinch means nothing more.
    this.#mode = IDLE
  }

  #fingers(): readonly [PointPx, PointPx] | null {
    const [first, second] = [...this.#down.values()]
    return first === undefined || second === undefined ? null : [first, second]
  }
}

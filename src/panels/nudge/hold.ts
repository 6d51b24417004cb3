import type { PointMm } from '../../domain/geometry/point'
import { handleById } from '../../domain/layout/edit/handles'
import { movedHandle } from '../../domain/layout/edit/move'
import type { AppStore } from '../../state/store'
import { pauseAfterMs } from './holdRate'

/** One step: along which coordinate, and by how much, + toward the coordinate's own plus. */
export interface NudgeStep {
  readonly key: keyof PointMm
  readonly byMm: number
}

/** A button that is held: every step is counted from where the part was when it was pressed, so that nothing adds up on the way. */
export class Hold {
  readonly #store: AppStore
  readonly #step: () => boolean
  #gesture: ReturnType<AppStore['state']['getState']>['gesture'] = null
  #steps = 0
  #timer: ReturnType<typeof setTimeout> | undefined

  constructor(store: AppStore, handleId: string, { key, byMm }: NudgeStep) {
    const { layout } = store.state.getState()
    const start = handleById(layout, handleId)
    this.#store = store
    this.#step = () => {
      // Escape, or whatever else begins or ends a gesture, has taken the part out of this hand.
      if (start === null || !this.#isMine()) return false
      this.#steps += 1
      const to = { [key]: start.point[key] + this.#steps * byMm }
      store.actions.dragTo((before) => movedHandle(before, start.ref, to))
      return true
    }
    if (start === null) return
    store.actions.beginGesture(`Nudge ${start.name}`)
    this.#gesture = store.state.getState().gesture
    this.#go()
  }

  #isMine(): boolean {
    return this.#gesture !== null && this.#store.state.getState().gesture === this.#gesture
  }

  #go(): void {
    if (this.#step()) this.#timer = setTimeout(() => this.#go(), pauseAfterMs(this.#steps))
  }

  end(): void {
    clearTimeout(this.#timer)
    if (this.#isMine()) this.#store.actions.endGesture()
  }
}

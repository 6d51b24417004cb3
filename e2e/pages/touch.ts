import type { CDPSession, Page } from '@playwright/test'

export interface Finger {
  readonly x: number
  readonly y: number
}

/** Fingers on the glass, as the browser gets them from a touch screen (Chromium's own input, not synthetic events). */
export class Touch {
  readonly #session: CDPSession

  private constructor(session: CDPSession) {
    this.#session = session
  }

  static async on(page: Page): Promise<Touch> {
    return new Touch(await page.context().newCDPSession(page))
  }

  async down(...fingers: readonly Finger[]): Promise<void> {
    await this.#send('touchStart', fingers)
  }

  /** All fingers from where they are to the given places, in steps as hands do. */
  async move(from: readonly Finger[], to: readonly Finger[], steps = 5): Promise<void> {
    for (let step = 1; step <= steps; step += 1) {
      const share = step / steps
      const between = from.map(({ x, y }, index) => ({
        x: x + ((to[index]?.x ?? x) - x) * share,
        y: y + ((to[index]?.y ?? y) - y) * share,
      }))
      await this.#send('touchMove', between)
    }
  }

  /** Lifts every finger but those given. */
  async up(...left: readonly Finger[]): Promise<void> {
    await this.#send('touchEnd', left)
  }

  async #send(type: 'touchStart' | 'touchMove' | 'touchEnd', fingers: readonly Finger[]): Promise<void> {
    await this.#session.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: fingers.map(({ x, y }, id) => ({ x, y, id, radiusX: 8, radiusY: 8, force: 1 })),
    })
  }
}

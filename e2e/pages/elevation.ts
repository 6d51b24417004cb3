import { expect, type Locator } from '@playwright/test'
import type { App, Point } from './app'

/** Along and up in an elevation, mm: x and z in the side elevation, x and y in the top elevation. */
export interface Move {
  readonly u: number
  readonly v: number
}

interface Px {
  readonly x: number
  readonly y: number
}

/** Fine enough that a whole px is less than half a mm, so that a drag lands on the very mm that was meant. */
const FINE_PX_PER_MM = 3

/** One elevation under the mouse. Handles are found by where the parts list says they are and the pane's own scale and origin. */
export class Elevation {
  readonly app: App
  readonly name: 'side' | 'top'
  readonly pane: Locator

  constructor(app: App, name: 'side' | 'top') {
    this.app = app
    this.name = name
    this.pane = app.page.getByTestId(`elevation-${name}`)
  }

  async number(name: 'scale' | 'origin-x' | 'origin-y'): Promise<number> {
    return Number(await this.pane.getAttribute(`data-${name}`))
  }

  async pxPerMm(): Promise<number> {
    return await this.number('scale')
  }

  async box(): Promise<{ x: number; y: number; width: number; height: number }> {
    const box = await this.pane.boundingBox()
    if (box === null) throw new Error(`the ${this.name} elevation is not in view`)
    return box
  }

  async pxOf(point: Point): Promise<Px> {
    const box = await this.box()
    const scale = await this.pxPerMm()
    return {
      x: box.x + (await this.number('origin-x')) + point.x * scale,
      y: box.y + (await this.number('origin-y')) - (this.name === 'side' ? point.z : point.y) * scale,
    }
  }

  async pxOfHandle(handleId: string): Promise<Px> {
    return await this.pxOf(await this.app.at(handleId))
  }

  /** Wheel over the handle until a mm is wide enough to aim at. */
  async zoomOn(handleId: string, pxPerMm = FINE_PX_PER_MM): Promise<void> {
    const { mouse } = this.app.page
    const at = await this.pxOfHandle(handleId)
    await mouse.move(at.x, at.y)
    for (let scale = await this.pxPerMm(); scale < pxPerMm; scale = await this.pxPerMm()) {
      await mouse.wheel(0, -400)
      await expect.poll(async () => await this.pxPerMm()).toBeGreaterThan(scale)
    }
  }

  /** Presses on the handle and leaves the button down. The part is selected first: where several lie on one spot, that one is meant. */
  async grab(handleId: string): Promise<Px> {
    await this.app.select(handleId)
    await this.app.settled()
    const from = await this.pxOfHandle(handleId)
    await this.app.page.mouse.move(from.x, from.y)
    await this.app.page.mouse.down()
    return from
  }

  /** Moves what was grabbed at `from` by a distance on the car, in steps as a hand does. */
  async carry(from: Px, by: Move): Promise<void> {
    const scale = await this.pxPerMm()
    await this.app.page.mouse.move(from.x + by.u * scale, from.y - by.v * scale, { steps: 5 })
  }

  async drop(): Promise<void> {
    await this.app.page.mouse.up()
    await this.app.settled()
  }

  async drag(handleId: string, by: Move): Promise<void> {
    const from = await this.grab(handleId)
    await this.carry(from, by)
    await this.drop()
  }

  /** A drag at a scale where every mm counts. */
  async dragExactly(handleId: string, by: Move): Promise<void> {
    await this.zoomOn(handleId)
    await this.drag(handleId, by)
  }

  /** How many px of a square around a point, or of the whole drawing, are in the hatch's green; nothing else in a drawing is green. */
  async hatchedPx(around?: { readonly point: Point; readonly halfPx: number }): Promise<number> {
    await this.app.settled()
    return await this.hatchedNow(around)
  }

  /** The same without waiting for anything that is still being worked out. */
  async hatchedNow(around?: { readonly point: Point; readonly halfPx: number }): Promise<number> {
    const box = await this.box()
    const centre = around === undefined ? null : await this.pxOf(around.point)
    return await this.pane
      .locator('canvas')
      .first()
      .evaluate(
        (canvas, area) => {
          if (!(canvas instanceof HTMLCanvasElement)) throw new Error('no canvas')
          const context = canvas.getContext('2d')
          if (context === null) throw new Error('no context')
          const ratio = canvas.width / canvas.clientWidth
          const [x, y, width, height] =
            area === null ? [0, 0, canvas.width, canvas.height] : area.map((value) => value * ratio)
          const { data } = context.getImageData(x ?? 0, y ?? 0, width ?? 1, height ?? 1)
          let count = 0
          for (let index = 0; index < data.length; index += 4) {
            const [red = 0, green = 0, blue = 0, alpha = 0] = data.slice(index, index + 4)
            if (alpha > 60 && green - red > 20 && green - blue > 5) count += 1
          }
          return count
        },
        centre === null || around === undefined
          ? null
          : [
              centre.x - box.x - around.halfPx,
              centre.y - box.y - around.halfPx,
              2 * around.halfPx,
              2 * around.halfPx,
            ],
      )
  }

  /** The painted drawing, to tell whether it changed. */
  async picture(): Promise<string> {
    await this.app.settled()
    return await this.pane
      .locator('canvas')
      .first()
      .evaluate((canvas) => (canvas instanceof HTMLCanvasElement ? canvas.toDataURL() : ''))
  }
}

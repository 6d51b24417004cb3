import { expect, type Locator } from '@playwright/test'
import type { App } from './app'
import type { Elevation } from './elevation'
import type { Spot } from './syntheticPhoto'

/** The photo screen: pictures, their crosses and numbers. */
export class PhotoScreen {
  readonly app: App

  constructor(app: App) {
    this.app = app
  }

  async open(): Promise<void> {
    await this.app.page.getByRole('button', { name: 'Go to', exact: true }).click()
    await this.app.page.getByRole('button', { name: /^Photo a picture/ }).click()
    await expect(this.app.page.getByRole('heading', { name: 'Photo', exact: true })).toBeVisible()
  }

  async choose(name: string, buffer: Buffer, mimeType = 'image/png'): Promise<void> {
    await this.app.page.getByTestId('choose-photo').setInputFiles({ name, mimeType, buffer })
  }

  get stage(): Locator {
    return this.app.page.getByTestId('picture-stage')
  }

  get state(): Locator {
    return this.app.page.getByTestId('photo-state')
  }

  cross(id: string): Locator {
    return this.app.page.getByTestId(`cross:${id}`)
  }

  async larger(times: number): Promise<void> {
    for (let time = 0; time < times; time += 1)
      await this.app.page.getByRole('button', { name: 'Larger' }).click()
  }

  /** Taps the picture for the cross that is asked for next. */
  async tap(at: { readonly x: number; readonly y: number }): Promise<void> {
    const scale = Number(await this.stage.getAttribute('data-scale'))
    await this.stage.click({ position: { x: at.x * scale, y: at.y * scale } })
  }

  async at(id: string): Promise<{ readonly x: number; readonly y: number }> {
    const [x = NaN, y = NaN] = ((await this.cross(id).getAttribute('data-at')) ?? '').split(' ').map(Number)
    return { x, y }
  }

  /** Drags a cross by its own middle to a place of the picture. */
  async drag(id: string, to: { readonly x: number; readonly y: number }): Promise<void> {
    const { mouse } = this.app.page
    const cross = this.cross(id)
    await cross.scrollIntoViewIfNeeded()
    const box = await cross.boundingBox()
    if (box === null) throw new Error(`the cross ${id} is not in view`)
    const from = await this.at(id)
    const scale = Number(await this.stage.getAttribute('data-scale'))
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2]
    await mouse.move(x, y)
    await mouse.down()
    await mouse.move(x + (to.x - from.x) * scale, y + (to.y - from.y) * scale, { steps: 4 })
    await expect(this.app.page.getByTestId('cross-magnifier')).toBeVisible()
    await mouse.up()
    await expect(this.app.page.getByTestId('cross-magnifier')).toHaveCount(0)
  }

  async type(testId: string, text: string): Promise<void> {
    await this.app.typeInto(this.app.page.getByTestId(testId), text)
  }
}

/** Where on an elevation's lowest canvas the middle of everything of one colour is, as a place on the car; null when there is too little. */
export const spotOfColour = async (
  elevation: Elevation,
  colour: readonly [number, number, number],
): Promise<Spot | null> => {
  const [scale, x, y] = [
    await elevation.number('scale'),
    await elevation.number('origin-x'),
    await elevation.number('origin-y'),
  ]
  const middle = await elevation.pane
    .locator('canvas')
    .first()
    .evaluate((canvas, wanted) => {
      if (!(canvas instanceof HTMLCanvasElement)) throw new Error('no canvas')
      const context = canvas.getContext('2d')
      if (context === null) throw new Error('no context')
      const ratio = canvas.width / canvas.clientWidth
      const { data } = context.getImageData(0, 0, canvas.width, canvas.height)
      let [count, sumX, sumY] = [0, 0, 0]
      for (let index = 0; index < data.length; index += 4) {
        const isWanted = wanted.every((value, channel) => Math.abs((data[index + channel] ?? 0) - value) < 70)
        if (!isWanted || (data[index + 3] ?? 0) < 250) continue
        count += 1
        sumX += ((index / 4) % canvas.width) + 0.5
        sumY += Math.floor(index / 4 / canvas.width) + 0.5
      }
      return count < 12 ? null : { x: sumX / count / ratio, y: sumY / count / ratio }
    }, colour)
  return middle === null ? null : { u: (middle.x - x) / scale, v: (y - middle.y) / scale }
}

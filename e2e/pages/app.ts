import { expect, type Locator, type Page } from '@playwright/test'
import type { Layout } from '../../src/domain/layout/document/layout'
import { watchOwnOrigin } from './ownOrigin'

export type Axis = 'x' | 'y' | 'z'
export interface Point {
  readonly x: number
  readonly y: number
  readonly z: number
}

const asText = (layout: unknown): string => (typeof layout === 'string' ? layout : JSON.stringify(layout))

/** The page as a builder uses it: menus, panels and the numbers on it. */
export class App {
  readonly page: Page

  constructor(page: Page) {
    this.page = page
  }

  static async start(page: Page): Promise<App> {
    watchOwnOrigin(page)
    await page.goto('./')
    await expect(page.getByRole('application').first()).toBeVisible()
    return new App(page)
  }

  /**
   * Waits until what is written on the page stays the same over a few frames: panels may follow the drawing a moment later; rooms,
   * shown zones and remedies come when they are worked out.
   */
  async settled(): Promise<void> {
    await this.page.evaluate(async () => {
      const frame = (): Promise<number> => new Promise((resolve) => requestAnimationFrame(resolve))
      const read = (): string => document.querySelector('main')?.textContent ?? ''
      const isWorking = (): boolean =>
        document.querySelector('[data-completion="working"], [data-waiting]') !== null
      let text = read()
      for (let unchanged = 0; unchanged < 3; unchanged += 1) {
        await frame()
        const now = read()
        if (now !== text || isWorking()) unchanged = -1
        text = now
      }
    })
  }

  async openMenu(name: 'File' | 'View'): Promise<void> {
    const button = this.page.getByRole('button', { name, exact: true })
    if ((await button.getAttribute('aria-expanded')) !== 'true') await button.click()
  }

  /** Everything that is kept on this device, and the examples. */
  async openLayouts(): Promise<void> {
    await this.openMenu('File')
    await this.page.getByRole('button', { name: /^Layouts/ }).click()
    await expect(this.page.getByRole('heading', { name: 'Layouts', exact: true })).toBeVisible()
  }

  async openExample(title: string): Promise<void> {
    await this.openLayouts()
    const examples = this.page.getByRole('region', { name: 'Examples' })
    await examples.getByRole('button', { name: new RegExp(`^${title}`) }).click()
    await expect(this.notice).toContainText(new RegExp(`${title}.* is open`))
    await this.closeNotice()
  }

  /** Picks a file in the File menu; a layout is written to it as JSON. */
  async pickFile(content: Layout | string, name: string): Promise<void> {
    await this.openMenu('File')
    await this.page
      .getByTestId('open-file')
      .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(asText(content)) })
  }

  async openLayout(layout: Layout): Promise<void> {
    await this.pickFile(layout, 'bench.layout.json')
    await expect(this.notice).toContainText('bench.layout.json is open')
    await this.closeNotice()
  }

  get notice(): Locator {
    return this.page.locator('.notice')
  }

  async closeNotice(): Promise<void> {
    await this.notice.getByRole('button', { name: 'Close' }).click()
    await expect(this.notice).toHaveCount(0)
  }

  async tab(name: string): Promise<void> {
    // A count may stand after the words; "Belt" is not "Belt care".
    const tab = this.page.getByRole('tab', { name: new RegExp(`^${name}( \\d+)?$`) })
    await tab.click()
    await expect(tab).toHaveAttribute('aria-selected', 'true')
  }

  /** Where a wide page has room for both, every computed number and every part's place are in view at once. */
  async showNumbers(): Promise<void> {
    await this.tab('Numbers')
    await this.tab('Parts')
  }

  async undo(): Promise<void> {
    await this.page.getByRole('button', { name: 'Undo' }).click()
  }

  async redo(): Promise<void> {
    await this.page.getByRole('button', { name: 'Redo' }).click()
  }

  part(handleId: string): Locator {
    return this.page.getByTestId(`part:${handleId}`)
  }

  async select(handleId: string): Promise<void> {
    const part = this.part(handleId)
    if ((await part.getAttribute('aria-pressed')) !== 'true') await part.click()
    await expect(part).toHaveAttribute('aria-pressed', 'true')
  }

  readout(handleId: string, axis: Axis): Locator {
    return this.page.getByTestId(`readout:${handleId}:${axis}`)
  }

  async at(handleId: string): Promise<Point> {
    const read = async (axis: Axis): Promise<number> =>
      Number(await this.readout(handleId, axis).getAttribute('data-value'))
    return { x: await read('x'), y: await read('y'), z: await read('z') }
  }

  /** A part's place against what is expected, to 0.001 mm unless a tolerance is given; coordinates left out are not looked at. */
  async expectAt(handleId: string, expected: Partial<Point>, toleranceMm = 0.001): Promise<void> {
    for (const axis of ['x', 'y', 'z'] as const) {
      const value = expected[axis]
      if (value === undefined) continue
      await expect
        .poll(async () => Math.abs((await this.at(handleId))[axis] - value), {
          message: `${handleId} ${axis} should be ${value}`,
        })
        .toBeLessThanOrEqual(toleranceMm)
    }
  }

  async quantity(id: string, subject: string): Promise<number> {
    await this.settled()
    const value = await this.page.getByTestId(`quantity:${id}:${subject}`).getAttribute('data-value')
    if (value === null) throw new Error(`${id} of ${subject} has no value`)
    return Number(value)
  }

  async expectQuantity(id: string, subject: string, expected: number, digits = 6): Promise<void> {
    await expect
      .poll(async () => await this.quantity(id, subject), { message: `${id} of ${subject}` })
      .toBeCloseTo(expected, digits)
  }

  /** Both straps of a pair, which are alike while the pair moves as one. */
  async expectBoth(id: string, family: 'shoulder' | 'lap' | 'sub', expected: number): Promise<void> {
    await this.expectQuantity(id, `${family}-left`, expected)
    await this.expectQuantity(id, `${family}-right`, expected)
  }

  /** A field for the part that is taken hold of, by its label. */
  selectedField(label: string): Locator {
    return this.page.getByTestId('selected-part').getByLabel(label)
  }

  async typeInto(field: Locator, text: string): Promise<void> {
    await field.fill(text)
    await field.press('Enter')
  }

  finding(id: string): Locator {
    return this.page.getByTestId(`finding:${id}`)
  }

  /** Every number in view by its name, as text and unrounded: what must come back after undo. */
  async numbers(): Promise<Record<string, string>> {
    await this.settled()
    return await this.page
      .locator(
        '[data-testid^="quantity:"], [data-testid^="readout:"], [data-testid^="finding:"], [data-testid="finding-counts"]',
      )
      .evaluateAll((elements) =>
        Object.fromEntries(
          elements.map((element) => [
            element.getAttribute('data-testid') ?? '',
            `${element.getAttribute('data-value') ?? ''} ${element.textContent ?? ''}`,
          ]),
        ),
      )
  }

  /** One undo must bring back every number on the page, letter for letter. */
  async expectOneUndoGives(before: Record<string, string>): Promise<void> {
    expect(await this.numbers()).not.toEqual(before)
    await this.undo()
    await expect.poll(async () => await this.numbers()).toEqual(before)
  }

  async useInches(): Promise<void> {
    await this.chooseInView('Lengths in', 'inch')
  }

  async useMillimetres(): Promise<void> {
    await this.chooseInView('Lengths in', 'mm')
  }

  async chooseInView(setting: string, words: string): Promise<void> {
    await this.openMenu('View')
    await this.page.getByRole('group', { name: setting }).getByRole('radio', { name: words }).check()
    await this.page.keyboard.press('Escape')
  }

  async openSheet(): Promise<void> {
    await this.page.getByRole('button', { name: 'Papers', exact: true }).click()
    await expect(this.page.getByTestId('sheet-page-1')).toBeVisible()
  }
}

import { expect, type Locator, type Page } from '@playwright/test'

/** Only the keyboard: everything is reached by Tab, and where the focus is must be seen at every step. */
export class Keys {
  readonly page: Page

  constructor(page: Page) {
    this.page = page
  }

  /** Tab, or Shift+Tab, until the one that is meant has the focus. */
  async to(target: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
    await expect(target).toBeAttached()
    for (let presses = 0; presses < 150; presses += 1) {
      if (await target.evaluate((element) => element === document.activeElement)) return
      await this.page.keyboard.press(key)
      await this.expectSeen()
    }
    throw new Error(`Tab does not lead to ${target.toString()}`)
  }

  async press(target: Locator, key = 'Enter'): Promise<void> {
    await this.to(target)
    await this.page.keyboard.press(key)
  }

  /** Types over what a field holds and takes it over. */
  async type(field: Locator, text: string): Promise<void> {
    await this.to(field)
    await this.page.keyboard.press('ControlOrMeta+a')
    await this.page.keyboard.type(text)
    await this.page.keyboard.press('Enter')
  }

  /** To a panel: into its row of tabs, then along it with the arrows. */
  async tab(name: string): Promise<void> {
    const tab = this.page.getByRole('tab', { name: new RegExp(`^${name}( \\d+)?$`) })
    const row = this.page.getByRole('tablist').filter({ has: tab })
    await this.to(row.getByRole('tab', { selected: true }))
    for (let presses = 0; presses < 20; presses += 1) {
      if ((await tab.getAttribute('aria-selected')) === 'true') return
      await this.page.keyboard.press('ArrowRight')
      await this.expectSeen()
    }
    throw new Error(`the arrows do not lead to the tab ${name}`)
  }

  /** What has the focus is on the screen with a ring of at least 2 px about it, or about the label it is in. */
  async expectSeen(): Promise<void> {
    const seen = await this.page.evaluate(() => {
      const focused = document.activeElement
      if (focused === null || focused === document.body) return 'nothing has the focus'
      const ringed = [focused, focused.closest('label')].some((element) => {
        if (element === null) return false
        const { outlineStyle, outlineWidth } = getComputedStyle(element)
        return outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2
      })
      const box = focused.getBoundingClientRect()
      const isInView =
        box.bottom > 0 && box.right > 0 && box.top < window.innerHeight && box.left < window.innerWidth
      const what = `${focused.tagName} ${focused.getAttribute('aria-label') ?? focused.textContent?.slice(0, 40) ?? ''}`
      if (!ringed) return `no ring about ${what}`
      return isInView ? '' : `out of view: ${what}`
    })
    expect(seen).toBe('')
  }
}

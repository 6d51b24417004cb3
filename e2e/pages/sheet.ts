import { expect, type Locator, type Page } from '@playwright/test'
import { type PdfPage, readPdf } from './pdf'

/** Line ends and spaces vary with where a text was broken: what is written, without them. */
export const bare = (text: string): string => text.replaceAll(/\s+/g, '')

/** The mount sheet on screen and in print. */
export class Sheet {
  readonly page: Page

  constructor(page: Page) {
    this.page = page
  }

  get pages(): Locator {
    return this.page.locator('[data-testid^="sheet-page-"]')
  }

  async choosePaper(paper: 'A4' | 'US Letter'): Promise<void> {
    const button = this.page.getByRole('button', { name: paper, exact: true })
    await button.click()
    await expect(button).toHaveAttribute('aria-pressed', 'true')
  }

  /** Everything written on all pages, without spaces and without what stands between two columns or pages of the findings. */
  async text(): Promise<string> {
    return (
      bare((await this.pages.allTextContents()).join(' '))
        // Only from a page's foot over the next page's head: findings may as well begin further on.
        .replaceAll(/Tabwright·(?:(?!Tabwright·).){0,500}?Findings\(continued\)/g, '')
        .replaceAll('Findings(continued)', '')
    )
  }

  /** The texts of every table row and label one by one. */
  async pieces(): Promise<readonly string[]> {
    return await this.pages.locator('text').allTextContents()
  }

  /** Texts that reach over the edge of their page, by more than a tenth of a px. */
  async textsOffPaper(): Promise<readonly string[]> {
    return await this.pages.evaluateAll((pages) =>
      pages.flatMap((page) => {
        const svg = page.querySelector('svg')
        if (svg === null) return ['a page without a drawing']
        const paper = svg.getBoundingClientRect()
        return [...svg.querySelectorAll('text')]
          .filter((text) => {
            const box = text.getBoundingClientRect()
            const slack = 0.1
            return (
              box.left < paper.left - slack ||
              box.right > paper.right + slack ||
              box.top < paper.top - slack ||
              box.bottom > paper.bottom + slack
            )
          })
          .map((text) => text.textContent ?? '')
      }),
    )
  }

  /** Prints to a PDF as the page asks for it and reads that with a PDF reader. */
  async print(): Promise<readonly PdfPage[]> {
    return await readPdf(await this.page.pdf({ preferCSSPageSize: true }))
  }
}

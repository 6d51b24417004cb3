import AxeBuilder from '@axe-core/playwright'
import type { Page } from '@playwright/test'

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa']

/** What the checker finds on the page, or in a part of it. */
export const violations = async (page: Page, part = 'body'): Promise<readonly string[]> => {
  // Legacy mode spares the helper page that is only needed for frames; there are none here.
  const checker = new AxeBuilder({ page }).setLegacyMode(true).include(part).withTags(RULES)
  const { violations: found } = await checker.analyze()
  return found.flatMap(({ id, nodes }) => nodes.map((node) => `${id}: ${node.html} ${node.failureSummary}`))
}

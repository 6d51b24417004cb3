import type { Page } from '@playwright/test'

/** The layouts that the browser keeps for this page, as the texts of their files, in no order. */
export const keptTexts = async (page: Page): Promise<readonly string[]> =>
  await page.evaluate(
    () =>
      new Promise<readonly string[]>((resolve, reject) => {
        const opening = indexedDB.open('tabwright')
        opening.onerror = () => reject(new Error('no database'))
        opening.onsuccess = () => {
          const reading = opening.result.transaction('layouts').objectStore('layouts').getAll()
          reading.onerror = () => reject(new Error('nothing to read'))
          reading.onsuccess = () => {
            opening.result.close()
            resolve((reading.result as { text?: string }[]).flatMap(({ text }) => text ?? []))
          }
        }
      }),
  )

import type { Page } from '@playwright/test'

/** How many records lie on the phone. */
export const keptRecords = (page: Page): Promise<number> =>
  page.evaluate(
    () =>
      new Promise<number>((resolve, reject) => {
        const opening = indexedDB.open('fettleyard')
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const count = opening.result.transaction('views').objectStore('views').count()
          count.onsuccess = () => {
            opening.result.close()
            resolve(count.result)
          }
        }
      }),
  )

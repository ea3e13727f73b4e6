/** Where a record lies in the cache. */
export const projectKey = (id: string) => ['project', id] as const
/** Where a shop book lies in the cache. */
export const shopKey = (id: string) => ['shop', id] as const
/** Where it lies which projects stand on a shop's day sheet: their ids. */
export const daySheetKey = (shop: string) => ['day sheet', shop] as const

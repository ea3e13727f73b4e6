/** Where a record lies in the cache. */
export const projectKey = (id: string) => ['project', id] as const
/** Where a shop book lies in the cache. */
export const shopKey = (id: string) => ['shop', id] as const

/** Where this tab was lately: its own way only, so that a shared machine tells nobody's. */
const KEY = 'fettleyard-recent'
const MOST = 12

/** Addresses of screens, the latest first. */
export function recentPaths(): readonly string[] {
  try {
    const kept: unknown = JSON.parse(sessionStorage.getItem(KEY) ?? '[]')
    return Array.isArray(kept) ? kept.filter((path) => typeof path === 'string') : []
  } catch {
    return []
  }
}

/** Remembers a screen that was opened. */
export function visited(path: string): void {
  const paths = [path, ...recentPaths().filter((one) => one !== path)].slice(0, MOST)
  try {
    sessionStorage.setItem(KEY, JSON.stringify(paths))
  } catch {
    // Some private windows keep nothing: the list begins anew.
  }
}

/** The record that an address is about, a project's or a shop's, as the phone keeps it; undefined where it is about none. */
export function recordOfPath(pathname: string): string | undefined {
  return /^\/(?:p|shops)\/([^/]+)/.exec(pathname)?.[1]
}

/** Whether an address lists whatever the phone keeps: the first page, where an installed program opens, and the way to the day sheet. */
export const listsKept = (pathname: string): boolean =>
  pathname === '/' || pathname === '/day-sheet'

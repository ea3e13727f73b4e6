/** The record that an address is about, a project's or a shop's, as the phone keeps it; undefined where it is about none. */
export function recordOfPath(pathname: string): string | undefined {
  return /^\/(?:p|shops)\/([^/]+)/.exec(pathname)?.[1]
}

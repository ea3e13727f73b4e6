/** The first page on the way in: it goes on to where somebody's work is. */
const FIRST = '/?in'

/** Where to go after signing in: a place of our own only, whatever a link says. */
export function wayOn(next: string | readonly string[] | undefined): string {
  return typeof next === 'string' && /^\/(?![/\\])[^\\\s]*$/.test(next) ? next : FIRST
}

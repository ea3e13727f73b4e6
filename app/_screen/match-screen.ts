import { type ScreenPath, screenTitles } from './screen-titles.ts'

/** A screen that an address leads to, with the address's parts. */
export interface Matched {
  readonly path: ScreenPath
  readonly params: { readonly [name: string]: string }
}

const isPath = (path: string): path is ScreenPath => path in screenTitles

/** `new` is an address of its own, not the id of an order: the path with fewer open parts comes first. */
const paths = Object.keys(screenTitles)
  .filter(isPath)
  .map((path) => ({ path, parts: path.split('/'), open: path.split('[').length }))
  .toSorted((a, b) => a.open - b.open)

/** The screen at an address, as Next would find it; null where there is none. */
export function matchScreen(pathname: string): Matched | null {
  const asked = pathname.replace(/\/$/, '').split('/')
  for (const { path, parts } of paths) {
    const params = paramsOf(parts, asked)
    if (params !== null) return { path, params }
  }
  return null
}

function paramsOf(parts: readonly string[], asked: readonly string[]): Matched['params'] | null {
  if (parts.length !== asked.length) return null
  const params: { [name: string]: string } = {}
  for (const [at, part] of parts.entries()) {
    const value = asked[at] ?? ''
    if (part.startsWith('[')) params[part.slice(1, -1)] = decodeURIComponent(value)
    else if (part !== value) return null
  }
  return params
}

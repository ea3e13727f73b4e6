import type { JournalPage, ProjectView } from '@/lib/command/wire.ts'
import type { Late } from '@/lib/server/for-pages.ts'

/** What one screen has beyond its project or shop: of the server, or of what the phone keeps. */
export type ScreenSource =
  | { readonly kind: 'day sheet'; readonly late: Late }
  | {
      readonly kind: 'kept day sheet'
      readonly projects: readonly ProjectView[]
      /** Projects that belong on it, and that this phone does not keep. */
      readonly missing: readonly string[]
    }
  | { readonly kind: 'journal'; readonly page: JournalPage }
  | { readonly kind: 'as it stood'; readonly view: ProjectView | null }

/** One screen's address in parts, as the page or the phone read it, and what came with it. */
export interface Asked {
  readonly params: { readonly [name: string]: string | undefined }
  /** What follows the `?`; a name that came twice is left out. */
  readonly search: { readonly [name: string]: string | undefined }
  readonly source: ScreenSource | null
}

/** A part of the address that the screen's path has. @throws where it has not: the table is wrong */
export function param({ params }: Asked, name: string): string {
  const value = params[name]
  if (value === undefined) throw new Error(`The screen's address has no ${name}.`)
  return value
}

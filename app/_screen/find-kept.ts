import type { ProjectView, ShopView } from '@/lib/command/wire.ts'
import { keptFor } from '@/lib/live/phone/kept-views.ts'
import type { KeptView, PhoneStore } from '@/lib/live/phone/phone-store.ts'
import type { PersonId } from '@/lib/record/ids.ts'
import type { Asked } from './asked.ts'
import { matchScreen } from './match-screen.ts'
import type { ScreenPath } from './screen-titles.ts'

/** How old what stands on a kept screen is, and how the clocks stood. */
export interface KeptAge {
  readonly keptAt: KeptView['keptAt']
  readonly clockAhead: number
}

/** What this phone has for an address. */
export type Found =
  | {
      readonly is: 'screen'
      readonly path: ScreenPath
      readonly asked: Asked
      readonly age: KeptAge
      readonly frame:
        | { readonly kind: 'project'; readonly view: ProjectView }
        | { readonly kind: 'shop'; readonly view: ShopView }
    }
  | {
      /** A screen that stands in no record: what was pressed here and isn't sent, the scanning of a tag, the bench sums. */
      readonly is: 'alone'
      readonly path: ScreenPath
      readonly asked: Asked
    }
  | {
      /** No such record, or a page that is never kept. `of` is what the address asks for. */
      readonly is: 'missing' | 'list'
      readonly of: 'project' | 'shop' | 'page'
      readonly kept: readonly KeptView[]
    }

/** Addresses that the list of what is kept answers as well as the server's own page would. */
const LISTS: readonly string[] = ['/', '/day-sheet', '/shell']

/** What this phone has for an address, for that person; for nobody it has nothing. */
export async function findKept(
  phone: PhoneStore,
  person: PersonId | null,
  address: { readonly pathname: string; readonly search: string },
): Promise<Found> {
  const kept = person === null ? [] : await keptFor(phone, person)
  const matched = matchScreen(address.pathname)
  if (matched === null) {
    return { is: LISTS.includes(address.pathname) ? 'list' : 'missing', of: 'page', kept }
  }
  const { path, params } = matched
  const record = params.project ?? params.shop
  const search = Object.fromEntries(new URLSearchParams(address.search))
  if (record === undefined) return { is: 'alone', path, asked: { params, search, source: null } }
  const found = kept.find((one) => one.record === record)
  if (found === undefined)
    return { is: 'missing', of: params.shop === undefined ? 'project' : 'shop', kept }
  if (found.kind === 'project') {
    const asked: Asked = { params, search, source: null }
    return { is: 'screen', path, asked, age: found, frame: { kind: 'project', view: found.view } }
  }
  const { projects } = found
  // In the order that the server gave them.
  const sheet = (projects ?? []).flatMap((id) =>
    kept.flatMap((one) => (one.kind === 'project' && one.record === id ? [one] : [])),
  )
  const source =
    projects === null
      ? null
      : ({
          kind: 'kept day sheet',
          projects: sheet.map(({ view }) => view),
          missing: projects.filter((id) => !sheet.some(({ record: there }) => there === id)),
        } as const)
  // As old as the oldest that stands on it.
  const age = [found, ...sheet].reduce((old, one) => (one.keptAt < old.keptAt ? one : old))
  return {
    is: 'screen',
    path,
    asked: { params, search, source },
    age,
    frame: { kind: 'shop', view: found.view },
  }
}

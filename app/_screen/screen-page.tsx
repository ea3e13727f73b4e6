import type { Metadata } from 'next'
import type { ReactNode } from 'react'
import type { ScreenSource } from './asked.ts'
import { Screen } from './screen.tsx'
import { type ScreenPath, screenTitles } from './screen-titles.ts'

/** What Next hands to a page. */
export interface PageProps {
  readonly params: Promise<{ readonly [name: string]: string | string[] | undefined }>
  readonly searchParams: Promise<{ readonly [name: string]: string | string[] | undefined }>
}

/** The title of a screen's page. */
export const screenMetadata = (path: ScreenPath): Metadata => ({
  title: `${screenTitles[path]} · Fettleyard`,
})

/** The screen at that path as its page; `fetchSource` fetches what it needs besides its project or shop. */
export async function screenPage(
  path: ScreenPath,
  props: PageProps,
  fetchSource?: (params: Single, search: Single) => Promise<ScreenSource | null>,
): Promise<ReactNode> {
  const params = single(await props.params)
  const search = single(await props.searchParams)
  const source = fetchSource === undefined ? null : await fetchSource(params, search)
  return <Screen path={path} asked={{ params, search, source }} />
}

/** Parts of an address that came once. */
export type Single = { readonly [name: string]: string | undefined }

const single = (all: { readonly [name: string]: string | string[] | undefined }): Single =>
  Object.fromEntries(
    Object.entries(all).map(([name, value]) => [
      name,
      typeof value === 'string' ? value : undefined,
    ]),
  )

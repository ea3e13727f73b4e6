import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { askedPath } from '@/app/_ui/door/asked-path.ts'
import { cookieHeader } from '@/app/_ui/door/cookie.ts'
import { forPages, type JournalFilter } from '@/lib/server/for-pages.ts'
import { AsItStood } from './as-it-stood.tsx'
import { JournalScreen } from './journal-screen.tsx'

export const metadata: Metadata = { title: 'Journal · Fettleyard' }

type Asked = { readonly [name: string]: string | readonly string[] | undefined }

export default async function JournalPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ readonly project: string }>
  readonly searchParams: Promise<Asked>
}) {
  const { project } = await params
  const asked = await searchParams
  const cookie = await cookieHeader()
  const at = one(asked, 'at')
  if (at !== '') {
    const stood = await forPages().asOf(cookie, project, endOfDay(at))
    return <AsItStood day={at} view={stood?.view ?? null} />
  }
  const page = await forPages().journal(cookie, project, filterOf(asked))
  if (page === null) redirect(`/sign-in?next=${encodeURIComponent(await askedPath())}`)
  return (
    <JournalScreen
      first={page}
      filter={{
        person: one(asked, 'person'),
        command: one(asked, 'command'),
        entity: one(asked, 'entity'),
        older: one(asked, 'before') !== '',
      }}
    />
  )
}

const one = (asked: Asked, name: string): string => {
  const value = asked[name]
  return typeof value === 'string' ? value : ''
}

/** All of a day belongs to how things stood on it. */
const endOfDay = (day: string): string =>
  /^\d{4}-\d{2}-\d{2}$/.test(day) ? `${day}T23:59:59.999Z` : day

function filterOf(asked: Asked): JournalFilter {
  const before = Number(one(asked, 'before'))
  return {
    limit: 50,
    ...(Number.isSafeInteger(before) && before > 0 ? { before } : {}),
    ...(one(asked, 'person') === '' ? {} : { person: one(asked, 'person') }),
    ...(one(asked, 'command') === '' ? {} : { command: one(asked, 'command') }),
    ...(one(asked, 'entity') === '' ? {} : { entity: one(asked, 'entity') }),
  }
}

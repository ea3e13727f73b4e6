import { redirect } from 'next/navigation'
import {
  type PageProps,
  type Single,
  screenMetadata,
  screenPage,
} from '@/app/_screen/screen-page.tsx'
import { askedPath } from '@/app/_ui/door/asked-path.ts'
import { cookieHeader } from '@/app/_ui/door/cookie.ts'
import { forPages, type JournalFilter } from '@/lib/server/for-pages.ts'

export const metadata = screenMetadata('/p/[project]/journal')

export default function JournalPage(props: PageProps) {
  return screenPage('/p/[project]/journal', props, async ({ project = '' }, search) => {
    const cookie = await cookieHeader()
    if (search.at !== undefined && search.at !== '') {
      const stood = await forPages().asOf(cookie, project, endOfDay(search.at))
      return { kind: 'as it stood', view: stood?.view ?? null }
    }
    const page = await forPages().journal(cookie, project, filterOf(search))
    if (page === null) redirect(`/sign-in?next=${encodeURIComponent(await askedPath())}`)
    return { kind: 'journal', page }
  })
}

/** All of a day belongs to how things stood on it. */
const endOfDay = (day: string): string =>
  /^\d{4}-\d{2}-\d{2}$/.test(day) ? `${day}T23:59:59.999Z` : day

function filterOf({ before, person, command, entity }: Single): JournalFilter {
  const older = Number(before)
  return {
    limit: 50,
    ...(Number.isSafeInteger(older) && older > 0 ? { before: older } : {}),
    ...(person === undefined || person === '' ? {} : { person }),
    ...(command === undefined || command === '' ? {} : { command }),
    ...(entity === undefined || entity === '' ? {} : { entity }),
  }
}

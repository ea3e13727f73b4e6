import { redirect } from 'next/navigation'
import type { ReactNode } from 'react'
import { ProjectFrame } from '@/app/_screen/frames.tsx'
import { askedPath } from '@/app/_ui/door/asked-path.ts'
import { cookieHeader } from '@/app/_ui/door/cookie.ts'
import { Gone } from '@/app/_ui/gone.tsx'
import { readerLocale } from '@/app/_ui/reader-locale.ts'
import { forPages } from '@/lib/server/for-pages.ts'

/** All screens of a project: the record comes once, with the first of them; from then on it lives. */
export default async function ProjectLayout({
  params,
  children,
}: {
  readonly params: Promise<{ readonly project: string }>
  readonly children: ReactNode
}) {
  const { project } = await params
  const cookie = await cookieHeader()
  const late = await forPages().project(cookie, project)
  if (late === null) {
    const me = await forPages().me(cookie)
    if (me === null) redirect(`/sign-in?next=${encodeURIComponent(await askedPath())}`)
    return <Gone what="project" />
  }
  return (
    <ProjectFrame locale={await readerLocale()} now={new Date().toISOString()} late={late}>
      {children}
    </ProjectFrame>
  )
}

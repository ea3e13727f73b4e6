'use client'
import { type ReactNode, useEffect } from 'react'
import { Gone } from '@/app/_ui/gone.tsx'
import { ShopPhoneDesk } from '@/app/_ui/shop-phone/shop-phone-desk.tsx'
import { ToastProvider } from '@/app/_ui/toast.tsx'
import { ProjectShell } from '@/app/p/[project]/project-shell.tsx'
import type { ProjectView } from '@/lib/command/wire.ts'
import { LiveProvider, type Setting } from '@/lib/live/live-provider.tsx'
import { phoneIsOf } from '@/lib/live/phone/whose-phone.ts'
import { ProjectProvider } from '@/lib/live/project-provider.tsx'
import { NOBODY } from '@/lib/record/ids.ts'
import type { Late } from '@/lib/server/for-pages.ts'
import { lateProject } from './late.ts'

/** A project's record as this person sees it, and the shell around each of its screens. */
export function WholeProject({
  locale,
  now,
  view,
  children,
}: Setting & { readonly view: ProjectView; readonly children: ReactNode }) {
  useEffect(() => phoneIsOf(view.person), [view.person])
  return (
    <LiveProvider locale={locale} now={now}>
      <ToastProvider>
        <ShopPhoneDesk on={view.person === NOBODY} />
        <ProjectProvider initial={view} gone={<Gone what="project" />}>
          <ProjectShell>{children}</ProjectShell>
        </ProjectProvider>
      </ToastProvider>
    </LiveProvider>
  )
}

/** The same on a page of the server's, which does not carry what it is made of. */
export function ServedProject({
  late,
  ...rest
}: Setting & { readonly late: Late; readonly children: ReactNode }) {
  return <WholeProject {...rest} view={lateProject.use(late)} />
}

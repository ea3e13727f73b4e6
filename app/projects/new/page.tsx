import type { Metadata } from 'next'
import Link from 'next/link'
import { redirect } from 'next/navigation'
import { AloneFrame } from '@/app/_screen/frames.tsx'
import { cookieHeader } from '@/app/_ui/door/cookie.ts'
import { EmptyState, Plate } from '@/app/_ui/paper.tsx'
import { readerLocale } from '@/app/_ui/reader-locale.ts'
import { forPages } from '@/lib/server/for-pages.ts'
import { NewProjectForm } from './new-project-form.tsx'

export const metadata: Metadata = { title: 'Begin a project · Fettleyard' }

export default async function NewProjectPage({
  searchParams,
}: {
  readonly searchParams: Promise<{ readonly [name: string]: string | string[] | undefined }>
}) {
  const { shop } = await searchParams
  const me = await forPages().me(await cookieHeader())
  if (me === null) redirect('/sign-in?next=/projects/new')
  const managed = me.shops.filter(({ role }) => role === 'manager')
  const first = managed.find(({ id }) => id === shop) ?? managed[0]
  return (
    <main className="page stack">
      <Plate title="Begin a project" under="One car’s restoration, with your shop as its lead">
        <b>{me.person.name}</b>
      </Plate>
      <p className="way">
        <Link href="/">All projects and shops</Link>
      </p>
      {first === undefined ? (
        <EmptyState title="A shop’s manager begins a project">
          The shop becomes its lead. Ask your shop’s manager.
        </EmptyState>
      ) : (
        <AloneFrame locale={await readerLocale()} now={new Date().toISOString()}>
          <NewProjectForm shops={managed} first={first.id} />
        </AloneFrame>
      )}
    </main>
  )
}

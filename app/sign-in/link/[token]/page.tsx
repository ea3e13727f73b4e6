import type { Metadata } from 'next'
import { wayOn } from '@/app/_ui/door/way-on.ts'
import { TakeLink } from './take-link.tsx'

export const metadata: Metadata = { title: 'Sign in · Fettleyard', referrer: 'no-referrer' }

/** The mailed link works once, so it waits for a press: mail programs open links by themselves. */
export default async function LinkPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ readonly token: string }>
  readonly searchParams: Promise<{ readonly [name: string]: string | string[] | undefined }>
}) {
  const { token } = await params
  const { next } = await searchParams
  return (
    <main className="page stack">
      <header className="plate">
        <div>
          <h1>Fettleyard</h1>
          <p>Signing in by a mailed link</p>
        </div>
      </header>
      <TakeLink token={token} way={wayOn(next)} />
    </main>
  )
}

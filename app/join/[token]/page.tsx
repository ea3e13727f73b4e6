import type { Metadata } from 'next'
import Link from 'next/link'
import { forPages } from '@/lib/server/for-pages.ts'
import { JoinForm } from './join-form.tsx'

export const metadata: Metadata = { title: 'Join · Fettleyard', referrer: 'no-referrer' }

export default async function JoinPage({
  params,
}: {
  readonly params: Promise<{ readonly token: string }>
}) {
  const { token } = await params
  const joining = await forPages().joining(token)
  return (
    <main className="page stack">
      <header className="plate">
        <div>
          <h1>Fettleyard</h1>
          <p>{joining === null ? 'An invitation' : `Invitation to ${joining.to}`}</p>
        </div>
      </header>
      {joining === null ? (
        <section className="sheet stack">
          <h2>This invitation leads nowhere</h2>
          <p>
            It has been used, has run out, or was taken back. Whoever invited you can make a new
            one.
          </p>
          <p>
            <Link className="btn btn-line" href="/sign-in">
              Sign in
            </Link>
          </p>
        </section>
      ) : (
        <JoinForm token={token} joining={joining} />
      )}
    </main>
  )
}

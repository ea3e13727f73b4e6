import type { Metadata } from 'next'
import Link from 'next/link'
import { forPages } from '@/lib/server/for-pages.ts'
import { BecomePhone } from './become-phone.tsx'

export const metadata: Metadata = {
  title: 'A phone of the shop · Fettleyard',
  referrer: 'no-referrer',
}

export default async function PhonePage({
  params,
}: {
  readonly params: Promise<{ readonly token: string }>
}) {
  const { token } = await params
  const link = await forPages().phoneLink(token)
  return (
    <main className="page stack">
      <header className="plate">
        <div>
          <h1>{link === null ? 'Fettleyard' : link.name}</h1>
          <p>{link === null ? 'A phone of the shop' : `A phone of ${link.shopName}`}</p>
        </div>
      </header>
      {link === null ? (
        <section className="sheet stack">
          <h2>This link leads nowhere</h2>
          <p>
            It has been used, or its fifteen minutes are over. A manager of the shop makes a new one
            under Shop, Phones of the shop.
          </p>
          <p>
            <Link className="btn btn-line" href="/sign-in">
              Sign in
            </Link>
          </p>
        </section>
      ) : (
        <BecomePhone token={token} link={link} />
      )}
    </main>
  )
}

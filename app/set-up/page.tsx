import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { forPages } from '@/lib/server/for-pages.ts'
import { FirstShopForm } from './first-shop-form.tsx'
import { LoadDemonstration } from './load-demonstration.tsx'

export const metadata: Metadata = { title: 'First visit · Fettleyard' }

export default async function SetUpPage() {
  const { empty, demoOffered } = await forPages().installation()
  if (!empty) redirect('/sign-in')
  return (
    <main className="page stack">
      <header className="plate">
        <div>
          <h1>Fettleyard</h1>
          <p>First visit: nothing is here yet</p>
        </div>
      </header>
      <section className="card stack tight">
        <p className="big">One car, several shops, one record.</p>
        <p>
          Who has the engine, what may start, what keeps it from starting and who can clear that:
          the shops and the owner of one car read it here, each from their own phone.
        </p>
      </section>
      <div className="cols cols-2">
        <FirstShopForm />
        {demoOffered && <LoadDemonstration />}
      </div>
    </main>
  )
}

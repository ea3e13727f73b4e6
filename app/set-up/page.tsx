import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { Card } from '@/app/_ui/paper.tsx'
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
      <Card title="One car, several shops, one record.">
        <div className="stack tight">
          <p>
            Who has the engine, what may start, what keeps it from starting and who can clear that:
            the shops and the owner of one car read it here, each from their own phone.
          </p>
          {demoOffered && (
            <p className="way phone">
              <a href="#look-around">Or look around first, in the demonstration</a>
            </p>
          )}
        </div>
      </Card>
      <div className="cols cols-2">
        <FirstShopForm />
        {demoOffered && <LoadDemonstration />}
      </div>
    </main>
  )
}

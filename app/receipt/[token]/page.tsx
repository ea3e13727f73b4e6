import type { Metadata } from 'next'
import { AloneFrame } from '@/app/_screen/frames.tsx'
import { readerLocale } from '@/app/_ui/reader-locale.ts'
import { forPages } from '@/lib/server/for-pages.ts'
import { GuestReceipt } from './guest-receipt.tsx'

export const metadata: Metadata = { title: 'Handover · Fettleyard', referrer: 'no-referrer' }

export default async function ReceiptPage({
  params,
}: {
  readonly params: Promise<{ readonly token: string }>
}) {
  const { token } = await params
  const receipt = await forPages().receipt(token)
  return (
    <main className="page stack">
      <header className="plate">
        <div>
          <h1>{receipt?.project ?? 'Fettleyard'}</h1>
          <p>
            {receipt === null ? 'A handover' : `Handover from ${receipt.from} to ${receipt.to}`}
          </p>
        </div>
      </header>
      {receipt === null ? (
        <section className="sheet stack">
          <h2>This link leads nowhere</h2>
          <p>
            It has run out, or the handover was taken back. Whoever gave it to you can make a new
            one. Nothing was changed.
          </p>
        </section>
      ) : (
        <AloneFrame locale={await readerLocale()} now={new Date().toISOString()}>
          <GuestReceipt token={token} initial={receipt} />
        </AloneFrame>
      )}
    </main>
  )
}

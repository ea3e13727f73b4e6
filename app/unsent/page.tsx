import type { Metadata } from 'next'
import { AloneFrame } from '@/app/_screen/frames.tsx'
import { Screen } from '@/app/_screen/screen.tsx'
import { readerLocale } from '@/app/_ui/reader-locale.ts'

export const metadata: Metadata = { title: 'Unsent · Fettleyard' }

/** What was pressed on this phone and the server has not said yes to. It lies on the phone alone: the page is the same for everybody. */
export default async function UnsentPage() {
  return (
    <AloneFrame locale={await readerLocale()} now={new Date().toISOString()}>
      <Screen path="/unsent" asked={{ params: {}, search: {}, source: null }} />
    </AloneFrame>
  )
}

import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { AloneFrame } from '@/app/_screen/frames.tsx'
import { readerLocale } from '@/app/_ui/reader-locale.ts'
import { forPages } from '@/lib/server/for-pages.ts'
import { PartsPage } from './parts-page.tsx'

export const metadata: Metadata = { title: 'Parts of the look' }

/** Every part of the look in every state, for whoever builds screens. In production only with PARTS_PAGE=yes. */
export default async function PartsOfTheLook() {
  if (!forPages().partsPage) notFound()
  return (
    <AloneFrame locale={await readerLocale()} now="2027-02-11T09:31:00.000Z">
      <PartsPage />
    </AloneFrame>
  )
}

import type { Metadata } from 'next'
import { cookieHeader } from '@/app/_ui/door/cookie.ts'
import { forPages } from '@/lib/server/for-pages.ts'
import { DaySheetScreen } from './day-sheet-screen.tsx'

export const metadata: Metadata = { title: 'Day sheet · Fettleyard' }

export default async function DaySheetPage({
  params,
}: {
  readonly params: Promise<{ readonly shop: string }>
}) {
  const { shop } = await params
  const source = await forPages().daySheet(await cookieHeader(), shop)
  // Without a right to it the layout has said so already.
  return source === null ? null : <DaySheetScreen projects={source.projects} />
}

import type { Metadata } from 'next'
import { DiaryScreen } from './diary-screen.tsx'

export const metadata: Metadata = { title: 'Shop diary · Fettleyard' }

export default async function DiaryPage({
  searchParams,
}: {
  readonly searchParams: Promise<{ readonly [name: string]: string | string[] | undefined }>
}) {
  const { week } = await searchParams
  return <DiaryScreen week={typeof week === 'string' ? week : undefined} />
}

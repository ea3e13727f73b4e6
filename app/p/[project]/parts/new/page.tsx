import type { Metadata } from 'next'
import { WantForm } from './want-form.tsx'

export const metadata: Metadata = { title: 'A part · Fettleyard' }

export default async function NewPartPage({
  searchParams,
}: {
  readonly searchParams: Promise<{ readonly [name: string]: string | string[] | undefined }>
}) {
  const { stage } = await searchParams
  return <WantForm stage={typeof stage === 'string' ? stage : undefined} />
}

import type { Metadata } from 'next'
import { PrepareForm } from './prepare-form.tsx'

export const metadata: Metadata = { title: 'Prepare a handover · Fettleyard' }

export default async function NewHandoverPage({
  searchParams,
}: {
  readonly searchParams: Promise<{ readonly [name: string]: string | string[] | undefined }>
}) {
  const { assembly, to, stage } = await searchParams
  return (
    <PrepareForm
      assemblies={typeof assembly === 'string' ? assembly.split(',') : []}
      to={typeof to === 'string' ? to : undefined}
      stage={typeof stage === 'string' ? stage : undefined}
    />
  )
}

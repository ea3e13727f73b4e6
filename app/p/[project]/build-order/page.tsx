import type { Metadata } from 'next'
import { BuildOrderScreen } from './build-order-screen.tsx'

export const metadata: Metadata = { title: 'Build order · Fettleyard' }

export default async function BuildOrderPage({
  searchParams,
}: {
  readonly searchParams: Promise<{
    readonly [name: string]: string | readonly string[] | undefined
  }>
}) {
  const { assembly } = await searchParams
  return <BuildOrderScreen assembly={typeof assembly === 'string' ? assembly : null} />
}

import type { Metadata } from 'next'
import { WindowsScreen } from './windows-screen.tsx'

export const metadata: Metadata = { title: 'Slots and windows · Fettleyard' }

export default async function WindowsPage({
  searchParams,
}: {
  readonly searchParams: Promise<{ readonly [name: string]: string | string[] | undefined }>
}) {
  const asked = await searchParams
  const one = (name: string) => {
    const value = asked[name]
    return typeof value === 'string' ? value : undefined
  }
  return <WindowsScreen window={one('window')} stage={one('stage')} assembly={one('assembly')} />
}

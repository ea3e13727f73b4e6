import type { Metadata } from 'next'
import { Shell } from '@/app/_screen/shell.tsx'

export const metadata: Metadata = { title: 'Fettleyard', robots: 'noindex' }

/** Outside all records, and the same for everybody: what the service worker answers at any address where there is no network. */
export default function ShellPage() {
  return <Shell />
}

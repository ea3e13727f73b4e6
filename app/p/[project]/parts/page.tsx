import type { Metadata } from 'next'
import { PartList } from './part-list.tsx'

export const metadata: Metadata = { title: 'Parts · Fettleyard' }

export default function PartsPage() {
  return <PartList />
}

import type { Metadata } from 'next'
import { HandoverList } from './handover-list.tsx'

export const metadata: Metadata = { title: 'Handovers · Fettleyard' }

export default function HandoversPage() {
  return <HandoverList />
}

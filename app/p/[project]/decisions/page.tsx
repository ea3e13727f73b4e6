import type { Metadata } from 'next'
import { DecisionList } from './decision-list.tsx'

export const metadata: Metadata = { title: 'Decisions · Fettleyard' }

export default function DecisionsPage() {
  return <DecisionList />
}

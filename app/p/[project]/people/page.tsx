import type { Metadata } from 'next'
import { PeopleScreen } from './people-screen.tsx'

export const metadata: Metadata = { title: 'People · Fettleyard' }

export default function PeoplePage() {
  return <PeopleScreen />
}

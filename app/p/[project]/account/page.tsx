import type { Metadata } from 'next'
import { AccountScreen } from './account-screen.tsx'

export const metadata: Metadata = { title: 'Account · Fettleyard' }

export default function AccountPage() {
  return <AccountScreen />
}

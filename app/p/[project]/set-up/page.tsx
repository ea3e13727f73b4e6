import type { Metadata } from 'next'
import { SetUpScreen } from './set-up-screen.tsx'

export const metadata: Metadata = { title: 'Project set-up · Fettleyard' }

export default function ProjectSetUpPage() {
  return <SetUpScreen />
}

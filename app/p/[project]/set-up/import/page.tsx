import type { Metadata } from 'next'
import { ImportScreen } from './import-screen.tsx'

export const metadata: Metadata = { title: 'Import a build order · Fettleyard' }

export default function ImportPage() {
  return <ImportScreen />
}

import type { Metadata } from 'next'
import { ScanPage } from './scan-page.tsx'

export const metadata: Metadata = { title: 'Scan a tag · Fettleyard' }

/** The same for everybody, so that a phone without a network may keep it. */
export default function Scan() {
  return <ScanPage asked={null} />
}

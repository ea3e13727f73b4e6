import type { Metadata } from 'next'
import { ScanPage } from '@/app/scan/scan-page.tsx'

export const metadata: Metadata = { title: 'A tag · Fettleyard' }

/** Where a tag's QR code leads: its assembly opens, also for who came by the phone's own camera. */
export default async function Tag({
  params,
}: {
  readonly params: Promise<{ readonly code: string }>
}) {
  const { code } = await params
  return <ScanPage asked={code} />
}

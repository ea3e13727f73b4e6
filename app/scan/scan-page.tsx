'use client'
import Link from 'next/link'
import { Plate } from '@/app/_ui/paper.tsx'
import { ScanScreen } from './scan-screen.tsx'

/** Around the scanning, with the way back. */
export const ScanPage = ({ asked }: { readonly asked: string | null }) => (
  <main className="page stack">
    <Plate title="Scan a tag" under="The tag on an assembly leads to it" />
    <p className="way">
      <Link prefetch={false} href="/day-sheet">
        Day sheet
      </Link>
    </p>
    <ScanScreen asked={asked} />
  </main>
)

import type { Metadata } from 'next'
import { notFound } from 'next/navigation'
import { forPages } from '@/lib/server/for-pages.ts'
import './parts.css'
import { PartsPage } from './parts-page.tsx'

export const metadata: Metadata = { title: 'Parts of the look' }

/** Every part of the look in every state, for whoever builds screens. In production only with PARTS_PAGE=yes. */
export default function PartsOfTheLook() {
  if (!forPages().partsPage) notFound()
  return <PartsPage />
}

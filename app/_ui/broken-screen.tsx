'use client'
import { useEffect } from 'react'
import { isPartMissing } from '@/lib/live/service-worker/part-missing.ts'
import { BrokenFace } from './broken-face.tsx'
import { replayEarlyTouch } from './install/early-touch.ts'

/** In the place of a screen that broke: the fault is ours, the record is untouched. */
export function BrokenScreen({
  error,
  reset,
}: {
  readonly error: Error
  readonly reset: () => void
}) {
  useEffect(() => console.error(error), [error])
  useEffect(replayEarlyTouch, [])
  const missing = isPartMissing(error)
  return <BrokenFace missing={missing} onPress={missing ? () => window.location.reload() : reset} />
}

'use client'
import { BrokenScreen } from '@/app/_ui/broken-screen.tsx'

export default function ShopError({
  error,
  reset,
}: {
  readonly error: Error
  readonly reset: () => void
}) {
  return <BrokenScreen error={error} reset={reset} />
}

'use client'
import { BrokenScreen } from '@/app/_ui/broken-screen.tsx'

export default function AppError({
  error,
  reset,
}: {
  readonly error: Error
  readonly reset: () => void
}) {
  return (
    <main className="page stack">
      <BrokenScreen error={error} reset={reset} />
    </main>
  )
}
